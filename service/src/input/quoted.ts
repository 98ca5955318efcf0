/** A value as typed on a command line. */
export const quoted = (value: string): string =>
  /^[\w./:+-]+$/.test(value) ? value : `"${value.replaceAll('"', '\\"')}"`
