import type { Worksheet } from 'exceljs'

const fill = (argb: string) => ({
  type: 'pattern' as const,
  pattern: 'solid' as const,
  bgColor: { argb },
  fgColor: { argb },
})

/** The words carry the message; colour only helps to find them. */
export function colourVerdicts(sheet: Worksheet, ref: string): void {
  const rule = (word: string, background: string, ink: string, priority: number) => ({
    type: 'cellIs' as const,
    operator: 'equal' as const,
    formulae: [`"${word}"`],
    priority,
    style: { fill: fill(background), font: { color: { argb: ink } } },
  })
  sheet.addConditionalFormatting({
    ref,
    rules: [
      rule('meets', 'FFDDF3E4', 'FF1B6E3C', 1),
      rule('fails', 'FFFBDCDC', 'FF8B0000', 2),
      rule('not valid', 'FFF1F3F5', 'FF8B0000', 3),
      rule('altered', 'FFFCE8B2', 'FF8B0000', 4),
    ],
  })
}
