import { type Block, blockText, parseBlock } from './address.js'

/** Addresses as blocks, in reading order: Log!C9, Log!C10, Log!D9, Log!D10 → Log!C9:D10. Every cell given is in one of them, and no other. */
export function compactCells(cells: readonly string[]): string[] {
  const sheets = new Map<string, Block[]>()
  const others: string[] = []
  for (const cell of cells) {
    const cut = cell.lastIndexOf('!')
    const block = parseBlock(cell.slice(cut + 1))
    const sheet = cell.slice(0, cut + 1)
    const own = sheets.get(sheet)
    if (!block) others.push(cell)
    else if (own) own.push(block)
    else sheets.set(sheet, [block])
  }
  const blocks = [...sheets].flatMap(([sheet, own]) =>
    merge(own).map((block) => `${sheet}${blockText(block)}`),
  )
  return [...blocks, ...others]
}

function merge(blocks: readonly Block[]): Block[] {
  const columns = joined(
    [...blocks].sort((a, b) => a.left - b.left || a.right - b.right || a.top - b.top),
    (a, b) => a.left === b.left && a.right === b.right && a.bottom + 1 === b.top,
  )
  return joined(
    columns.sort((a, b) => a.top - b.top || a.bottom - b.bottom || a.left - b.left),
    (a, b) => a.top === b.top && a.bottom === b.bottom && a.right + 1 === b.left,
  )
}

/** Joins neighbours of a sorted list for which `meets` holds. */
function joined(blocks: readonly Block[], meets: (a: Block, b: Block) => boolean): Block[] {
  const result: Block[] = []
  for (const block of blocks) {
    const last = result.at(-1)
    if (last && meets(last, block))
      result[result.length - 1] = { ...last, bottom: block.bottom, right: block.right }
    else result.push(block)
  }
  return result
}
