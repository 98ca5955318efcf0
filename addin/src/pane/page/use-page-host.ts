import { useEffect, useState } from 'preact/hooks'
import type { PageHost } from '../../host/page/page-host.js'

/** Draws anew whenever the page's workbook, its selection or its marks change. */
export function usePageHost(host: PageHost): number {
  const [drawn, setDrawn] = useState(0)
  useEffect(() => host.onView(() => setDrawn((count) => count + 1)), [host])
  return drawn
}

/** Whether a log is open on the page; draws anew only when that changes. */
export function useOpenLog(host: PageHost | undefined): boolean {
  const [open, setOpen] = useState(host?.book !== undefined)
  useEffect(() => host?.onView(() => setOpen(host.book !== undefined)), [host])
  return open
}
