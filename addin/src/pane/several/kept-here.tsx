import { counted } from '@draughtbook/shared-calc'
import { useEffect, useState } from 'preact/hooks'
import { plainName } from '../../host/download.js'
import type { KeptTest } from '../../kept/kept-test.js'
import type { PageTests } from '../page/page-tests.js'

interface KeptHereProps {
  tests: PageTests | undefined
  working: boolean
  onFiles: (files: File[]) => void
}

/** Takes the finished tests that are kept in this browser, as if their records were chosen as files. */
export function KeptHere({ tests, working, onFiles }: KeptHereProps) {
  const [found, setFound] = useState<readonly KeptTest[]>([])
  useEffect(() => {
    void tests?.list().then((all) => setFound(all.filter(({ about }) => about.whole && about.draft)))
  }, [tests])
  if (found.length < 2) return null
  return (
    <button type="button" disabled={working} onClick={() => onFiles(found.map(recordFile))}>
      Use the {counted(found.length, 'test')} kept here
    </button>
  )
}

const recordFile = ({ about: { name, date = '', draft } }: KeptTest): File =>
  new File([JSON.stringify(draft)], `${plainName(name) || 'test'}${date && `-${date}`}.json`)
