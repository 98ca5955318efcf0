/** What the page says of itself once the browser has kept it. */
interface Told {
  /** It opens without a network from now on. */
  kept: () => void
  /** A newer build was fetched. It takes over once no page of the old one is open: no page ever mixes the two. */
  newer: () => void
}

/** Keeps the page itself in this browser, and asks the browser to keep what is typed. Never rejects. */
export async function keepForOffline(base: URL, { kept, newer }: Told): Promise<void> {
  const { serviceWorker, storage } = navigator as Partial<Navigator>
  if (!serviceWorker) return
  try {
    const registration = await serviceWorker.register(new URL('service-worker.js', base))
    await serviceWorker.ready
    kept()
    watchForNewer(registration, newer)
    await storage?.persist?.()
  } catch (error) {
    console.warn('The page cannot be saved for use without a network:', error)
  }
}

function watchForNewer(registration: ServiceWorkerRegistration, newer: () => void): void {
  const look = (): void => {
    if (registration.waiting) newer()
    else
      registration.installing?.addEventListener('statechange', () => {
        if (registration.waiting) newer()
      })
  }
  look()
  registration.addEventListener('updatefound', look)
}
