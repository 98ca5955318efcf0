/** What a problem's `type` means: the anchors of the API page. */
export const problemKinds: Readonly<Record<string, string>> = {
  'malformed-json': '400. The body is not JSON; each error names line, column and field.',
  'unusable-input':
    '422. The body is JSON, but does not fit the schema or cannot be computed; each error names its field, and its cell where the input came from a sheet.',
  'wrong-type': '415. The body has another media type than the one named.',
  'too-large': '413. The body is larger than the operation takes.',
  'too-much-work':
    '422. Working on the input would need more memory, or more time, than one request may use.',
  'unknown-caller': '401. No access token, or one that is unknown, expired or revoked.',
  precondition:
    '412 or 428. A change must say which state it is based on (If-Match, or If-None-Match: * for a new entry), and that state must still be the present one.',
  'library-storage':
    '503 or 507. The library’s folder cannot be written, or the disk is full. Nothing was changed.',
  'upload-storage':
    '503 or 507. The folder in which uploaded files are kept while they are worked on cannot be written, or its disk is full.',
  'too-many': '429. More requests in a minute than one caller may make; Retry-After says how long to wait.',
  busy: '503. More requests than can be served now, or one that took too long; Retry-After says how long to wait.',
  fault: '500. A fault of the service. Quote the instance when you report it.',
}
