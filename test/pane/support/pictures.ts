import { fileURLToPath } from 'node:url'
import type { Locator, Page } from 'playwright-core'

/** Pictures for people to look at, in `test/output`, where they are asked for (PICTURES=1): drawing and packing them takes time. */
export async function shoot(what: Page | Locator, name: string): Promise<void> {
  if (process.env.PICTURES !== '1') return
  const path = fileURLToPath(new URL(`../../output/${name}.png`, import.meta.url))
  await ('goto' in what ? what.screenshot({ path, fullPage: true }) : what.screenshot({ path }))
}
