import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'

/** A workbook as its parts, to be changed below any program's own notion of them. Written from the file format's standard. */
export class PackageText {
  readonly parts: Record<string, Uint8Array>

  constructor(bytes: Uint8Array) {
    this.parts = unzipSync(bytes)
  }

  text(path: string): string {
    const part = this.parts[path]
    if (!part) throw new Error(`the workbook has no part ${path}`)
    return strFromU8(part)
  }

  set(path: string, text: string): this {
    this.parts[path] = strToU8(text)
    return this
  }

  /** Changes one part; a change that changes nothing is an error of the test. */
  edit(path: string, from: string | RegExp, to: string | ((...found: string[]) => string)): this {
    const before = this.text(path)
    const after = before.replace(from, to as string)
    if (after === before) throw new Error(`nothing changed in ${path}: ${from}`)
    return this.set(path, after)
  }

  /** Part of the first chart: LibreOffice numbers the charts of all that it saves, one after the other. */
  get chart(): string {
    const number = (path: string): number => Number(/^xl\/charts\/chart(\d+)\.xml$/.exec(path)?.[1])
    const [first] = Object.keys(this.parts)
      .filter((path) => !Number.isNaN(number(path)))
      .sort((one, other) => number(one) - number(other))
    if (!first) throw new Error('the workbook has no chart')
    return first
  }

  /** Part of a sheet, by the order in which relations name it. */
  sheet(name: string): string {
    const workbook = this.text('xl/workbook.xml')
    const tag = workbook.match(/<sheet\b[^>]*>/g)?.find((one) => one.includes(`name="${name}"`)) ?? ''
    const id = /r:id="([^"]+)"/.exec(tag)?.[1]
    const link = this.text('xl/_rels/workbook.xml.rels')
      .match(/<Relationship\b[^>]*>/g)
      ?.find((one) => one.includes(`Id="${id}"`))
    return `xl/${/Target="([^"]+)"/.exec(link ?? '')?.[1]}`
  }

  /** Adds a relation of a sheet, and returns its id. */
  relate(sheet: string, kind: string, target: string, external = false): string {
    const path = sheet.replace(/([^/]+)$/, '_rels/$1.rels')
    const empty =
      '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"></Relationships>'
    const before = this.parts[path] ? this.text(path) : empty
    const type = `http://schemas.openxmlformats.org/officeDocument/2006/relationships/${kind}`
    const mode = external ? ' TargetMode="External"' : ''
    const id = 'rIdAdded'
    this.set(
      path,
      before.replace(
        '</Relationships>',
        `<Relationship Id="${id}" Type="${type}" Target="${target}"${mode}/></Relationships>`,
      ),
    )
    return id
  }

  /** Index of a new cell style: a copy of another's with changes to its xml. */
  addStyle(index: number, change: (xf: string) => string): number {
    const block = /<cellXfs[^>]*>(.*?)<\/cellXfs>/s.exec(this.text('xl/styles.xml'))?.[1] ?? ''
    const all = block.match(/<xf\b[^>]*?(?:\/>|>.*?<\/xf>)/gs) ?? []
    // The change may add a font to the same part.
    const copy = change(all[index] ?? '')
    this.edit('xl/styles.xml', block, () => block + copy)
    return all.length
  }

  /** Index of a new font, fill or number format. */
  addTo(list: 'fonts' | 'fills' | 'numFmts', xml: string): number {
    const styles = this.text('xl/styles.xml')
    const count = (new RegExp(`<${list}[^>]*>(.*?)</${list}>`, 's').exec(styles)?.[1] ?? '').match(
      list === 'fonts' ? /<font>|<font\/>/g : list === 'fills' ? /<fill>/g : /<numFmt /g,
    )?.length
    this.set('xl/styles.xml', styles.replace(`</${list}>`, `${xml}</${list}>`))
    return count ?? 0
  }

  /** Changes the font of a cell, and nothing else of it: its own font with a change to its xml. */
  refont(sheet: string, address: string, change: (font: string) => string): this {
    return this.restyle(sheet, address, (xf) => {
      const fonts = /<fonts[^>]*>(.*?)<\/fonts>/s.exec(this.text('xl/styles.xml'))?.[1] ?? ''
      const own =
        fonts.match(/<font>.*?<\/font>|<font\/>/gs)?.[Number(/fontId="(\d+)"/.exec(xf)?.[1] ?? 0)] ?? ''
      const other = change(own)
      if (other === own) throw new Error(`the font of ${address} is as it was: ${own}`)
      return xf.replace(/fontId="\d+"/, `fontId="${this.addTo('fonts', other)}"`)
    })
  }

  /** Gives a cell another style. */
  restyle(sheet: string, address: string, change: (xf: string) => string): this {
    const path = this.sheet(sheet)
    const tag = new RegExp(`<c r="${address}"[^>]*>`).exec(this.text(path))?.[0] ?? ''
    const style = Number(/ s="(\d+)"/.exec(tag)?.[1] ?? 0)
    const index = this.addStyle(style, change)
    const other = / s="/.test(tag)
      ? tag.replace(/ s="\d+"/, ` s="${index}"`)
      : tag.replace(`r="${address}"`, `r="${address}" s="${index}"`)
    return this.edit(path, tag, other)
  }

  /** Stored as they are: packing a few hundred copies of a workbook, and unpacking them, would take a sixth of the time of their tests. */
  get bytes(): Uint8Array {
    return zipSync(this.parts, { level: 0 })
  }
}
