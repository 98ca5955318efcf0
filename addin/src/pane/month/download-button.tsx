import { useState } from 'preact/hooks'
import { saveFile } from '../../host/download.js'

interface DownloadButtonProps {
  label: string
  fileName: string
  write: () => Promise<Uint8Array>
}

/** Writes a workbook when asked, and hands it to the user. */
export function DownloadButton({ label, fileName, write }: DownloadButtonProps) {
  const [said, setSaid] = useState('')
  const [busy, setBusy] = useState(false)
  const run = async (): Promise<void> => {
    setBusy(true)
    setSaid('Writing the workbook …')
    try {
      saveFile(await write(), fileName)
      setSaid(`Downloaded ${fileName}.`)
    } catch (error) {
      setSaid(`The workbook could not be written: ${error instanceof Error ? error.message : String(error)}`)
    }
    setBusy(false)
  }
  return (
    <>
      <button type="button" class="main-action" disabled={busy} onClick={() => void run()}>
        {label}
      </button>
      <p role="status">{said}</p>
    </>
  )
}
