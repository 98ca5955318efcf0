import type { Plugin } from 'vite'

/** A plugin that works on the built files once all of them are written. Plugins do so in the order in which they are listed. */
export function afterWriting(name: string, work: (folder: string) => void | Promise<void>): Plugin {
  let folder = ''
  return {
    name: `draughtbook:${name}`,
    apply: 'build',
    configResolved(config) {
      folder = config.build.outDir
    },
    writeBundle: { order: 'post', handler: (options) => work(options.dir ?? folder) },
  }
}
