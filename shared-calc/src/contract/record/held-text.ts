/** Characters no workbook can hold: XML 1.0 has no way to write them (section 2.2), and half a surrogate pair is none. */
const UNHELD =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** A text as a workbook can hold it: what it cannot hold becomes U+FFFD, and a lone carriage return a line feed. */
export const heldText = (text: string): string =>
  // Most texts need no change.
  text.replace(UNHELD, '\ufffd').replace(/\r\n?/g, '\n')

/** Whether a text holds a character that no workbook can hold. */
export const isHeld = (text: string): boolean => text.replace(UNHELD, '\ufffd') === text

/** Every text of a record that a workbook cannot hold, by its path. */
export function unheldTexts(value: unknown, path = ''): string[] {
  if (typeof value === 'string') return isHeld(value) ? [] : [path]
  if (Array.isArray(value)) return value.flatMap((item, i) => unheldTexts(item, `${path}[${i}]`))
  if (value === null || typeof value !== 'object') return []
  return Object.entries(value).flatMap(([key, item]) =>
    unheldTexts(item, path === '' ? key : `${path}.${key}`),
  )
}
