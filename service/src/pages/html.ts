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
