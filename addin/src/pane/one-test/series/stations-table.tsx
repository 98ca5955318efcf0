import { withMinus } from '@draughtbook/shared-calc'
import type { ToldStation } from '@draughtbook/shared-calc/log'
import { figure } from '../../figures.js'

interface StationsTableProps {
  stations: readonly ToldStation[]
  flow: 'm³/h' | 'Pa'
  onGo: (cells: string) => void
}

/** Every steady stretch: what was averaged, how it scattered, how sure the mean is, and why one was not taken. */
export function StationsTable({ stations, flow, onGo }: StationsTableProps) {
  const start = stations[0]?.start_s ?? 0
  let reading = 0
  return (
    <table class="figures stations">
      <thead>
        <tr>
          <th scope="col">station</th>
          <th scope="col">
            mean
            <span class="unit">Pa; {flow}</span>
          </th>
          <th scope="col">
            <abbr title="standard deviation of the samples">s</abbr>
          </th>
          <th scope="col">
            <abbr title="standard uncertainty of the mean, allowing for correlation between samples">u</abbr>
          </th>
          <th scope="col">
            <abbr title="number of samples">N</abbr>
          </th>
        </tr>
      </thead>
      <tbody>
        {stations.map((station) => {
          const { kind, cells, start_s, end_s, pressure, flow: second, rejected } = station
          const name = rejected ? 'rejected' : kind === 'zero-flow' ? 'zero flow' : `reading ${++reading}`
          return (
            <tr key={cells} class={rejected ? 'rejected' : kind}>
              <th scope="row">
                <button type="button" class="link" title={`Go to ${cells}`} onClick={() => onGo(cells)}>
                  {name}
                </button>
                <span class="hint">
                  {why(station) ?? `${seconds(start_s - start)} to ${seconds(end_s - start)} s`}
                </span>
              </th>
              <td>
                {mean(pressure)}
                <span>{mean(second)}</span>
              </td>
              <td>
                {figure(pressure.standardDeviation, 2)}
                <span>{figure(second.standardDeviation, 2)}</span>
              </td>
              <td>
                {uncertainty(pressure.standardUncertainty)}
                <span>{uncertainty(second.standardUncertainty)}</span>
              </td>
              <td>{pressure.samples}</td>
            </tr>
          )
        })}
      </tbody>
    </table>
  )
}

function why({ rejected, pressure, start_s, end_s }: ToldStation): string | undefined {
  if (rejected === 'drift') return `drifts by ${figure(Math.abs(pressure.drift), 2)} Pa`
  if (rejected === 'short') return `steady for only ${seconds(end_s - start_s)} s`
  return undefined
}

/** The mean to the place its standard uncertainty reaches to. */
function mean({ mean: value, standardUncertainty: u = 0 }: ToldStation['pressure']): string {
  const decimals = u > 0 ? Math.min(6, Math.max(0, 1 - Math.floor(Math.log10(u)))) : 2
  return withMinus(value.toFixed(decimals))
}

const seconds = (value: number): string => value.toFixed(0)
/** Too few independent samples say nothing of the scatter there is. */
const uncertainty = (value: number | undefined): string => (value === undefined ? '?' : figure(value, 2))
