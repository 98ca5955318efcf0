import { type Jobs, jobsHere } from '../../../service/src/jobs/jobs'

/** Work that begins only once it is released. */
export function heldJobs(): { readonly jobs: Jobs; readonly release: () => void } {
  let release: () => void = () => undefined
  const held = new Promise<void>((resolve) => {
    release = resolve
  })
  const jobs: Jobs = {
    ...jobsHere,
    run: (name, input, signal) => held.then(() => jobsHere.run(name, input, signal)),
  }
  return { jobs, release: () => release() }
}
