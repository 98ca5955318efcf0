import { escaped, page } from './html.js'

/** One thing that is kept somewhere: where, and what ends it. */
export interface Stored {
  readonly what: string
  readonly where: string
  readonly until: string
}

/** Everything the service, its queue and its pane keep. `deploy/README.md` has the same table. */
export const stored: readonly Stored[] = [
  {
    what: 'Records and workbooks sent to be evaluated',
    where: 'nowhere: only in memory, while the answer is made',
    until: 'the answer is sent',
  },
  {
    what: 'Workbooks sent for a register or a re-run',
    where: 'a folder of its own under TMPDIR',
    until: 'the answer is sent or the sender disconnects; after a crash, the next start',
  },
  {
    what: 'Devices, gauges, layouts and targets, with all earlier versions',
    where: 'the library’s folder; earlier versions under .history',
    until: 'DELETE /v1/library/…; earlier versions until DELETE /v1/library/…/history',
  },
  {
    what: 'Tokens: name, roles, dates, salted hash',
    where: 'the token file',
    until: 'draughtbook token remove ID; the token stops working on its expiry date, or with token revoke',
  },
  {
    what: 'Last use of each token, to the minute',
    where: 'a file next to the token file',
    until: 'the token is removed',
  },
  {
    what: 'One line for each call: who, what, digest of the record, status, time',
    where: 'standard output; the service keeps none of it',
    until: 'decided by whoever collects the log',
  },
  {
    what: 'Paths of files and what was read from them, where a queue is used',
    where: 'Redis',
    until: '1 hour after they are done; 24 hours if no worker takes them',
  },
  {
    what: 'The access token and what was typed in the pane',
    where: 'the browser, or the workbook where the pane runs in a spreadsheet',
    until:
      'the token goes when the tab is closed, unless you chose to keep it; "Remove from this device" removes a test, "Remove everything from this device" (page, All tests) all tests and the token; the service cannot see any of it',
  },
]

export function storedPage(): string {
  const rows = stored.map(
    ({ what, where, until }) =>
      `<tr><th scope="row">${escaped(what)}</th><td data-head="Where">${escaped(where)}</td><td data-head="Until">${escaped(until)}</td></tr>`,
  )
  return page(
    'What is stored',
    `<p>What Draughtbook keeps, where, and until when.</p>
<div class="scroll"><table class="stacked"><thead><tr><th scope="col">What</th><th scope="col">Where</th><th scope="col">Until</th></tr></thead>
<tbody>${rows.join('\n')}</tbody></table></div>`,
  )
}
