import fc from 'fast-check'

export const BOUNDARY = 'between-two-parts'

const names = fc.oneof(
  { weight: 12, arbitrary: fc.constant('files') },
  { weight: 1, arbitrary: fc.constantFrom('layouts', 'keys', '__proto__', 'files[0]', '') },
)
const fileNames = fc.oneof(
  fc.string(),
  fc.constantFrom(
    'log.xlsx',
    'log.csv',
    'log.ods',
    '../../etc/log.xlsx',
    '=1+1.csv',
    'a\u0000b.xlsx',
    '\u202efdp.xlsx',
    `${'n'.repeat(5000)}.csv`,
    '\ud83d.xlsx',
    '"; filename="other.csv',
  ),
)
const lines = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.constantFrom(
    'Pressure (Pa);Flow (m³/h)\n50;400\n',
    '"'.repeat(4000),
    `${'" '.repeat(3000)}\n`,
    ';'.repeat(5000),
    `${' '.repeat(5000)}x`,
    `--${BOUNDARY.slice(0, -1)}`.repeat(300),
    '{"format":"draughtbook/layout@1","format":1}',
    '['.repeat(3000),
  ),
)

/** Bytes of a good file with a few of them changed, or its end cut off. */
const spoilt = (good: Uint8Array): fc.Arbitrary<Buffer> =>
  fc
    .tuple(fc.array(fc.tuple(fc.nat(), fc.nat(255)), { maxLength: 6 }), fc.nat(), fc.boolean())
    .map(([changes, length, isCut]) => {
      const bytes = Buffer.from(good)
      for (const [at, byte] of changes) bytes[at % bytes.length] = byte
      return isCut ? bytes.subarray(0, length % bytes.length) : bytes
    })

/** Multipart bodies of files: good and spoilt workbooks, hostile texts, wrong names and parts, cut short now and then. */
export function archiveBodies(good: Uint8Array): fc.Arbitrary<Uint8Array> {
  const part = fc
    .record({
      name: names,
      file: fileNames,
      content: fc.oneof(
        lines.map((text) => Buffer.from(text)),
        spoilt(good),
        fc.uint8Array({ maxLength: 300 }).map((bytes) => Buffer.from(bytes)),
      ),
      more: fc.constantFrom(
        '',
        '',
        '',
        'content-transfer-encoding: base64\r\n',
        `x: ${'y'.repeat(2000)}\r\n`,
      ),
    })
    .map(({ name, file, content, more }) =>
      Buffer.concat([
        Buffer.from(
          `--${BOUNDARY}\r\ncontent-disposition: form-data; name="${name}"; filename="${file}"\r\n${more}\r\n`,
        ),
        content,
        Buffer.from('\r\n'),
      ]),
    )
  return fc
    .tuple(
      fc.array(part, { minLength: 1, maxLength: 5 }),
      fc.oneof(
        { weight: 9, arbitrary: fc.constant(`--${BOUNDARY}--\r\n`) },
        { weight: 1, arbitrary: fc.constantFrom(`--${BOUNDARY}--`, `--${BOUNDARY}`, '') },
      ),
    )
    .map(([parts, end]) => Buffer.concat([...parts, Buffer.from(end)]))
}
