import { spawn } from 'node:child_process'
import { mkdir, mkdtemp, readFile, rename, rm, stat, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { pathToFileURL } from 'node:url'
import { LARGE_PAGES, runTool } from './run-tool.js'

/** It shows nothing, and touches no file but those it is given. */
export const QUIET = ['--headless', '--norestore', '--nolockcheck', '--nodefault', '--nologo']
/** It ends by itself after so long without an order: the tests that started it may be gone. */
const IDLE_s = 15
/** What an order may take. */
const LONGEST_ms = 240_000

/** It ended before it had answered an order: it was idle when the order came, or the workbook brought it down. */
export class OfficeEnded extends Error {
  override message = 'LibreOffice ended before it had converted the workbook'
}

/**
 * One LibreOffice that stays open: starting it takes longer than to convert a workbook. It has a profile of its own, and takes orders
 * from a folder: nothing of the user's is read or changed, and two of them cannot meet.
 */
export class Office {
  readonly #folder: Promise<string>
  #orders = 0
  #ended = false
  #pid: number | undefined

  /** @param settings registrymodifications.xcu of the profile */
  constructor(settings: string) {
    this.#folder = makeProfile(settings)
    void this.#folder
      .then((folder) => this.#run(folder))
      .catch(() => undefined)
      .finally(() => {
        this.#ended = true
      })
  }

  get ended(): boolean {
    return this.#ended
  }

  /**
   * The workbook as LibreOffice saves it with one of its filters.
   * @throws OfficeEnded where it has ended, or ends now
   */
  async convert(workbook: Uint8Array | string, filter: string): Promise<Uint8Array> {
    const bytes = typeof workbook === 'string' ? await readFile(workbook) : workbook
    const folder = await this.#folder
    if (this.#ended) throw new OfficeEnded()
    this.#orders += 1
    const order = join(folder, `order-${this.#orders}`)
    const target = `${order}.out`
    const lines = [pathToFileURL(`${order}.xlsx`).href, pathToFileURL(target).href, filter]
    try {
      await writeFile(`${order}.xlsx`, bytes)
      // It is read as soon as it has its name.
      await writeFile(`${order}.part`, lines.join('\n'))
      await rename(`${order}.part`, order)
    } catch (error) {
      // Its folder goes a moment before anyone hears that it has ended.
      throw (await exists(folder)) ? error : new OfficeEnded()
    }
    for (const until = Date.now() + LONGEST_ms; Date.now() < until; await wait(20)) {
      if (await exists(`${target}.done`)) return new Uint8Array(await readFile(target))
      if (await exists(`${target}.failed`))
        throw new Error(
          `LibreOffice could not load the workbook\n${await readFile(`${target}.failed`, 'utf8')}`,
        )
      if (this.#ended) throw new OfficeEnded()
    }
    if (this.#pid) process.kill(-this.#pid, 'SIGKILL')
    await rm(folder, { recursive: true, force: true })
    throw new Error('LibreOffice did not convert the workbook in time')
  }

  /** Its folder goes with it, also where the tests that started it are gone by then. */
  async #run(folder: string): Promise<void> {
    const program = ['soffice "$@"; rm -rf "$FOLDER"', 'sh', profileOf(folder), ...QUIET]
    const child = spawn('sh', ['-c', ...program, 'macro:///Standard.Module1.TakeOrders'], {
      detached: true,
      stdio: 'ignore',
      env: { ...process.env, ...LARGE_PAGES, FOLDER: folder },
    })
    child.unref()
    this.#pid = child.pid
    await new Promise((resolve) => child.once('exit', resolve))
  }
}

async function makeProfile(settings: string): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'office-'))
  await mkdir(join(folder, 'profile', 'user'), { recursive: true })
  await writeFile(join(folder, 'profile', 'user', 'registrymodifications.xcu'), settings)
  // The first start of a profile writes an empty module, over any that is there.
  await runTool('soffice', [profileOf(folder), ...QUIET, '--terminate_after_init'], 'libreoffice-calc')
  await writeFile(
    join(folder, 'profile', 'user', 'basic', 'Standard', 'Module1.xba'),
    moduleWith(takeOrders(folder)),
  )
  return folder
}

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  )

export const profileOf = (folder: string): string =>
  `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`

/** A module of LibreOffice Basic as a profile keeps it. */
export const moduleWith = (program: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Module1" script:language="StarBasic">${program
  .replaceAll('&', '&amp;')
  .replaceAll('<', '&lt;')}</script:module>`

/** Macros of the workbooks are never run, and their links to other files never followed. */
const takeOrders = (folder: string): string => `Sub TakeOrders
idle = 0
number = 1
Do While idle < ${IDLE_s * 50}
  order = "${folder}/order-" & number
  If FileExists(order) Then
    Convert(order)
    number = number + 1
    idle = 0
  Else
    idle = idle + 1
    Wait 20
  End If
Loop
StarDesktop.terminate()
End Sub

Sub Convert(order)
On Error Goto Failed
handle = FreeFile
Open order For Input As #handle
Line Input #handle, source
Line Input #handle, target
Line Input #handle, filter
Close #handle
ending = ".done"
said = ""
Dim how(2) As New com.sun.star.beans.PropertyValue
how(0).Name = "Hidden"
how(0).Value = True
how(1).Name = "MacroExecutionMode"
how(1).Value = 0
how(2).Name = "UpdateDocMode"
how(2).Value = 0
book = StarDesktop.loadComponentFromURL(source, "_blank", 0, how())
Dim kind(0) As New com.sun.star.beans.PropertyValue
kind(0).Name = "FilterName"
kind(0).Value = filter
book.storeToURL(target, kind())
book.close(True)
Goto Tell
Failed:
ending = ".failed"
said = Error$
Resume Tell
Tell:
handle = FreeFile
Open order & ".out" & ending For Output As #handle
Print #handle, said
Close #handle
End Sub`
