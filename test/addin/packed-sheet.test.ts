import { openLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { packSheet, unpackSheet } from '../../addin/src/worker/packed-sheet.js'
import { madeUpLogs } from '../log/logs/index.js'

describe('a sheet packed for the worker', () => {
  it.each(madeUpLogs)('holds every cell, hidden row and merged heading of $name as it was', async (log) => {
    const grid = openLog(await log.write(), log.fileName)
    for (const name of grid.sheetNames) {
      const sheet = grid.sheet(name)
      if (!sheet) throw new Error(name)
      const { rows, columns } = sheet
      const packed = packSheet(sheet, { top: 0, left: 0, bottom: rows - 1, right: columns - 1 })
      // As the browser hands it to the worker.
      const back = unpackSheet(structuredClone(packed))
      expect([back.name, back.hidden, back.rows, back.columns]).toEqual([name, sheet.hidden, rows, columns])
      for (let row = 0; row < rows; row++) {
        if (back.isRowHidden(row) !== sheet.isRowHidden(row)) throw new Error(`row ${row} hidden`)
        for (let column = 0; column < columns; column++) {
          const cell = sheet.at(row, column)
          expect(back.at(row, column)).toEqual(cell)
          if (cell?.kind === 'text') expect(back.mergeAt(row, column)).toEqual(sheet.mergeAt(row, column))
        }
      }
    }
  })

  it('holds only the part asked for, at the same places', () => {
    const csv = new TextEncoder().encode('Time (s),Pressure (Pa)\n0,-50\n1,-51\n2,-52')
    const sheet = openLog(csv, 'gauge.csv').sheet('gauge')
    if (!sheet) throw new Error('no sheet')
    const part = unpackSheet(packSheet(sheet, { top: 1, left: 1, bottom: 2, right: 1 }))
    expect(part.at(1, 1)).toEqual(sheet.at(1, 1))
    expect([part.at(0, 1), part.at(3, 1), part.at(1, 0)]).toEqual([undefined, undefined, undefined])
  })
})
