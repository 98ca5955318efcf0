/** What a problem's `type` means: the anchors of the API page. */
export const problemKinds: Readonly<Record<string, string>> = {
  'malformed-json': '400. The body is not JSON; each error names line, column and field.',
  'unusable-input':
    '422. The body is JSON, but does not fit the schema or cannot be computed; each error names its field, and its cell where the input came from a sheet.',
  'wrong-type': '415. The body has the wrong media type.',
  'too-large': '413. The body is too large for this operation.',
  'too-much-work':
    '422. Working on the input would need more memory, or more time, than one request may use.',
  'unknown-caller': '401. No access token, or one that is unknown, expired or revoked.',
  precondition:
    '412 or 428. A change must name the version it is based on (If-Match, or If-None-Match: * for a new entry), and that version must still be current.',
  'library-storage':
    '503 or 507. The library’s folder cannot be written, or the disk is full. Nothing was changed.',
  'upload-storage':
    '503 or 507. The folder in which uploaded files are kept while they are worked on cannot be written, or its disk is full.',
  'too-many': '429. Too many requests in a minute from one caller; Retry-After says how long to wait.',
  busy: '503. Too many requests at once, or a request that took too long; Retry-After says how long to wait.',
  fault: '500. A bug in the service. Quote the instance when you report it.',
}
