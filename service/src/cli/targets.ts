import { type TargetPreset, targetPresets, visible } from '@draughtbook/shared-calc'
import type { AddCommand } from './command.js'

export const addTargets: AddCommand = (command, { terminal }) => {
  command
    .option('--json', 'print the targets with their limits as JSON')
    .action(({ json }: { json?: true }) => {
      terminal.out(json ? JSON.stringify(targetPresets, null, 2) : visible(listed(targetPresets)))
    })
}

/** One line a target: what to type after --target, its name, and the edition where the name does not say it. */
function listed(targets: readonly TargetPreset[]): string {
  const width = Math.max(...targets.map(({ id }) => id.length)) + 2
  return [
    ...targets.map(
      ({ id, label, edition }) =>
        `${id.padEnd(width)}${label}${label.includes(edition) ? '' : ` (${edition})`}`,
    ),
    '',
    'Local codes decide: check the edition in force where the building stands.',
  ].join('\n')
}
