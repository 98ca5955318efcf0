import { InputError } from '@draughtbook/shared-calc'
import { isMissingPart, MISSING_PART } from '../pane/missing-part.js'
import type { Done, Job } from './messages.js'

/** The parts of the worker's own scope that are used; the DOM library names the window's instead. */
const scope = self as unknown as {
  onmessage: ((event: MessageEvent<Job>) => void) | null
  postMessage(message: Done): void
}

scope.onmessage = ({ data }) => {
  void work(data).then((done) => scope.postMessage(done))
}

async function work(job: Job): Promise<Done> {
  try {
    if (job.kind === 'warm') {
      await Promise.all([
        import('./open-book.js'),
        import('./read-series.js'),
        import('./write-summary.js'),
        import('./write-pdf.js'),
        import('../patch/patch-workbook.js'),
        import('../patch/patch-text.js'),
        import('../patch/patch-spreadsheet.js'),
      ])
      return { kind: 'warmed' }
    }
    if (job.kind === 'open') {
      const { openBook } = await import('./open-book.js')
      return { kind: 'opened', book: openBook(job.bytes, job.fileName) }
    }
    if (job.kind === 'series') {
      const { readSeries } = await import('./read-series.js')
      return { kind: 'series-read', series: readSeries(job) }
    }
    if (job.kind === 'patch') {
      const { patchWorkbook } = await import('../patch/patch-workbook.js')
      return { kind: 'patched', ...patchWorkbook(job.bytes, job.patches) }
    }
    if (job.kind === 'patch-text') {
      const { patchText } = await import('../patch/patch-text.js')
      return { kind: 'patched', ...patchText(job.bytes, job.patches, job.decimal) }
    }
    if (job.kind === 'patch-spreadsheet') {
      const { patchSpreadsheet } = await import('../patch/patch-spreadsheet.js')
      return { kind: 'patched', ...patchSpreadsheet(job.bytes, job.patches) }
    }
    if (job.kind === 'template') {
      const { writeLogTemplate } = await import('@draughtbook/shared-calc/workbook')
      return { kind: 'template-written', bytes: await writeLogTemplate(job) }
    }
    if (job.kind === 'plan') {
      const { writePlanWorkbook } = await import('@draughtbook/shared-calc/workbook')
      return { kind: 'plan-written', bytes: await writePlanWorkbook(job.request) }
    }
    if (job.kind === 'pdf') {
      const { writePdfFor } = await import('./write-pdf.js')
      return { kind: 'pdf-written', ...(await writePdfFor(job)) }
    }
    const { writeSummaryFor } = await import('./write-summary.js')
    return { kind: 'written', ...(await writeSummaryFor(job)) }
  } catch (error) {
    const problems =
      error instanceof InputError
        ? [...error.problems]
        : [{ path: '', message: isMissingPart(error) ? MISSING_PART : String(error) }]
    return { kind: 'failed', problems }
  }
}
