import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFile, utimes, writeFile } from 'node:fs/promises'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { Locked, withLock } from '../../service/src/library/with-lock'
import { BIN } from './support/built'
import { folder } from './support/command-line'
import { runCommand } from './support/spawned'

const lock = async () => join(await folder(), '.fan-a.lock')

/** Process id of a process that has ended. */
async function endedProcess(): Promise<number> {
  const child = spawn(process.execPath, ['-e', ''])
  await once(child, 'exit')
  return child.pid ?? Number.NaN
}

describe('a lock', () => {
  it('that a dead process left is taken over at once, by one at a time', async () => {
    const path = await lock()
    await writeFile(path, `${hostname()} ${await endedProcess()} left`)
    let inside = 0
    const most: number[] = []
    await Promise.all(
      Array.from({ length: 6 }, () =>
        withLock(path, async () => {
          most.push(++inside)
          await new Promise((resolve) => setImmediate(resolve))
          inside--
        }),
      ),
    )
    expect(most).toEqual(Array.from({ length: 6 }, () => 1))
    await expect(readFile(path)).rejects.toThrow('ENOENT')
  })

  it('of another machine is left alone until it is old', async () => {
    const path = await lock()
    await writeFile(path, `another-machine 1 held`)
    await expect(withLock(path, async () => 'done')).rejects.toThrow(Locked)
    const past = new Date(Date.now() - 60_000)
    await utimes(path, past, past)
    expect(await withLock(path, async () => 'done')).toBe('done')
  })

  it('that was taken over is not removed by the one who had it', async () => {
    const path = await lock()
    await withLock(path, () => writeFile(path, 'another-machine 1 held'))
    expect(await readFile(path, 'utf8')).toBe('another-machine 1 held')
  })

  it('that a full disk had no room for does not stay: with room again, the next change is made at once', async () => {
    const disk = await folder()
    const file = join(disk, 'tokens.json')
    const add = `'${process.execPath}' '${BIN}' token add first --tokens '${file}'`
    const first = `mount -t tmpfs -o size=16k tmpfs '${disk}' && { head -c 100000 /dev/zero >'${disk}/fill'; ${add}; rm '${disk}/fill'; }`
    const { code, err } = await runCommand(['token', 'add', 'second', '--tokens', file], first)
    expect(err).toMatch(/the disk is full[\s\S]*token [0-9a-f]{16} for second/)
    expect(code).toBe(0)
  })
})
