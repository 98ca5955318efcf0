import { type FunctionRow, functionTable } from './table.js'

/**
 * functions.json as Excel reads it. Arguments are of any type: only so does an empty cell arrive as empty instead
 * of as a zero. Addresses are asked for, so that an error can name its cell.
 */
export function functionsJson(): string {
  const functions = (functionTable as readonly FunctionRow[]).map(
    ({ id, description, parameters, spills }) => ({
      id,
      name: id,
      description,
      parameters: parameters.map(({ name, description: words, matrix, optional }) => ({
        name,
        description: words,
        type: 'any',
        dimensionality: matrix ? 'matrix' : 'scalar',
        ...(optional ? { optional: true } : {}),
      })),
      result: spills
        ? { type: 'any', dimensionality: 'matrix' }
        : { type: 'number', dimensionality: 'scalar' },
      options: { requiresParameterAddresses: true },
    }),
  )
  return `${JSON.stringify({ functions }, undefined, 2)}\n`
}
