import type { Worksheet } from 'exceljs'
import type { RerunOutcome } from '../report.js'

const colours: Readonly<Record<RerunOutcome, string>> = {
  'exactly as issued': 'FFDDF3E4',
  'saved again': 'FFDDF3E4',
  agrees: 'FFDDF3E4',
  'older calculation version': 'FFFCE8B2',
  differs: 'FFF4A6A6',
  'inputs changed after issue': 'FFF4A6A6',
  'signature not accepted': 'FFF4A6A6',
  'cannot be read': 'FFE4E7EB',
}

/** The words stay the message; colour only helps the eye. */
export function colourOutcomes(sheet: Worksheet, ref: string): void {
  sheet.addConditionalFormatting({
    ref,
    rules: Object.entries(colours).map(([word, argb], i) => ({
      type: 'cellIs' as const,
      operator: 'equal' as const,
      formulae: [`"${word}"`],
      priority: i + 1,
      style: {
        fill: { type: 'pattern' as const, pattern: 'solid' as const, bgColor: { argb }, fgColor: { argb } },
      },
    })),
  })
}
