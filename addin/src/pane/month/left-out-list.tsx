import type { LeftOut } from '@draughtbook/shared-calc/register'

/** Every file that is not in the result, with the reason. */
export function LeftOutList({ leftOut }: { leftOut: readonly LeftOut[] }) {
  if (leftOut.length === 0) return null
  return (
    <details class="section" open={leftOut.some(({ expected }) => !expected)}>
      <summary>Left out: {leftOut.length}</summary>
      <ul class="left-out">
        {leftOut.map(({ file, part, why }) => (
          <li key={`${file} ${part ?? ''}`}>
            <b>
              {file}
              {part ? ` (${part})` : ''}
            </b>
            : {why}
          </li>
        ))}
      </ul>
    </details>
  )
}
