/** Style of the service's own pages. System fonts and colours; works in light and dark, from 320 px. */
export const style = `
:root { color-scheme: light dark; --line: light-dark(#c9c4b8, #4a463d); --quiet: light-dark(#5c574b, #b5ae9f);
  --ground: light-dark(#fcfbf8, #1c1a16); --ink: light-dark(#26231c, #ece7dc); --on: light-dark(#1d5c3a, #86d3a6); }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; }
main { max-width: 62rem; margin: 0 auto; padding: 1.5rem 1rem 4rem; }
h1 { font-size: 1.6rem; margin: 0 0 .5rem; }
h2 { font-size: 1.2rem; margin: 2.2rem 0 .5rem; border-bottom: 1px solid var(--line); }
h3 { font-size: 1rem; margin: 1.6rem 0 .3rem; }
p, dd { margin: .3rem 0; }
a { color: inherit; }
code { font-family: ui-monospace, monospace; font-size: .93em; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; margin: .5rem 0; }
th, td { overflow-wrap: break-word; text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line); }
th { font-weight: 600; color: var(--quiet); font-size: .88rem; }
td.number { font-variant-numeric: tabular-nums; }
.verb { display: inline-block; min-width: 4.2em; font-weight: 700; }
.quiet { color: var(--quiet); }
.on { color: var(--on); font-weight: 700; }
.scroll { overflow-x: auto; }
@media (max-width: 36rem) {
  .stacked thead { display: none; }
  .stacked tr, .stacked th, .stacked td { display: block; padding-right: 0; }
  .stacked th, .stacked td:not(:last-child) { border-bottom: 0; }
  .stacked td::before { content: attr(data-head) ": "; color: var(--quiet); }
}
`

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Text as HTML shows it. */
export const escaped = (text: string): string =>
  text.replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '')

/** A whole page around a body. No script, one style sheet of our own. */
export const page = (title: string, body: string): string => `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="/pages.css">
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
${body}
</main>
</body>
</html>
`
