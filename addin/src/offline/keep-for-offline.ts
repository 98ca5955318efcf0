/**
 * Keeps the page itself in this browser, and asks the browser to keep what is typed.
 * @returns whether the page opens without a network from now on; never rejects
 */
export async function keepForOffline(base: URL): Promise<boolean> {
  if (!('serviceWorker' in navigator)) return false
  try {
    await navigator.serviceWorker.register(new URL('service-worker.js', base))
    await navigator.serviceWorker.ready
    await navigator.storage?.persist?.()
    return true
  } catch (error) {
    console.warn('The page is not kept for use without a network:', error)
    return false
  }
}
