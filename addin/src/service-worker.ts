import { clientsClaim } from 'workbox-core'
import { type PrecacheEntry, precacheAndRoute } from 'workbox-precaching'

declare const self: { __WB_MANIFEST: (PrecacheEntry | string)[] }

// Every file of the page is kept at the first visit, so that it opens and calculates with the network off. Calls of the
// service are never kept. A new build takes over once no page of the old one is open: no page ever mixes the two.
precacheAndRoute(self.__WB_MANIFEST, { ignoreURLParametersMatching: [/.*/] })

// The page of the first visit has its later parts from here too, also once the network is gone.
clientsClaim()
