/** What the page says of itself once the browser has kept it. */
interface Told {
  /** It opens without a network from now on. */
  kept: () => void
  /** The browser has not kept it, with the reason in words. */
  refused: (why: string) => void
  /** A newer build was fetched. It takes over once no page of the old one is open: no page ever mixes the two. */
  newer: () => void
}

/** Keeps the page itself in this browser, and asks the browser to keep what is typed. Never rejects. */
export async function keepForOffline(base: URL, { kept, refused, newer }: Told): Promise<void> {
  const { serviceWorker, storage } = navigator as Partial<Navigator>
  if (!serviceWorker) return refused(isSecureContext ? NOT_KEPT : NOT_HTTPS)
  try {
    const registration = await serviceWorker.register(new URL('service-worker.js', base))
    await installed(serviceWorker, registration)
    kept()
    watchForNewer(registration, newer)
    await storage?.persist?.()
  } catch (error) {
    console.warn('The page cannot be saved for use without a network:', error)
    refused(WHY)
  }
}

/** Resolves once the page is kept. The browser waits for ever where it has given up the first attempt: then this rejects. */
function installed(
  { ready }: ServiceWorkerContainer,
  registration: ServiceWorkerRegistration,
): Promise<void> {
  const { installing } = registration
  return new Promise((resolve, reject) => {
    const look = (): void => {
      if (installing?.state === 'redundant' && !registration.active)
        reject(new Error('the browser gave up storing its files'))
    }
    installing?.addEventListener('statechange', look)
    look()
    void ready.then(() => resolve())
  })
}

/** Browsers say neither why they gave up nor, for the sake of privacy, how much room there really is. */
const WHY = 'its files could not be stored. Check that this device has free space, then open the page again'

/** Browsers offer their store of pages only where the address is secure, and some not at all. */
const NOT_HTTPS = 'browsers save a page only from an https address. Ask whoever runs the service for it'
const NOT_KEPT = 'this browser does not save pages, perhaps because the window is private'

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
