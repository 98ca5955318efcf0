import { afterEach, beforeEach, expect, it } from 'vitest'
import { Office } from '../support/office'
import { pdfPages } from '../support/pdf-pages'

const path = process.env.PATH
beforeEach(() => {
  process.env.PATH = '/nowhere'
})
afterEach(() => {
  process.env.PATH = path
})

it('fails and says what to install where LibreOffice is missing', async () => {
  await expect(new Office('').convert(new Uint8Array(), '')).rejects.toThrow(
    /soffice is not installed; run "bash test\/tools\/install-tools.sh" .*libreoffice-calc/,
  )
})

it('fails and says what to install where poppler is missing', async () => {
  await expect(pdfPages(new Uint8Array(), 'missing-tool')).rejects.toThrow(
    /pdftoppm is not installed.*poppler-utils/,
  )
})
