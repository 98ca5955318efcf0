const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
}

/** Text made safe for XML content and attribute values. */
export const escapeXml = (text: string): string => text.replace(/[&<>"']/g, (mark) => entities[mark] ?? mark)
