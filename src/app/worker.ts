/**
 * The offline worker: keeps every file of one build, all or none, and answers from what it keeps. A new
 * build waits until the page says that it may take over, so that the files of two builds never mix.
 */
declare const __FILES__: readonly string[] // paths of the build, from the worker's own place
declare const __VERSION__: string // of their contents

// TypeScript's library for workers cannot be loaded beside that of pages: here is what is used of it.
interface LifeEvent extends Event {
  waitUntil(work: Promise<unknown>): void
}
interface FetchEvent extends LifeEvent {
  readonly request: Request
  respondWith(answer: Promise<Response>): void
}
interface WorkerScope {
  readonly registration: { readonly scope: string }
  readonly clients: { claim(): Promise<void> }
  skipWaiting(): Promise<void>
  addEventListener(name: 'install' | 'activate', hear: (event: LifeEvent) => void): void
  addEventListener(name: 'fetch', hear: (event: FetchEvent) => void): void
  addEventListener(name: 'message', hear: (event: MessageEvent) => void): void
}
const worker = self as unknown as WorkerScope

const ours = 'tarebook-'
const current = `${ours}${__VERSION__}`
const addressOf = (path: string) => new URL(path, worker.registration.scope).href

worker.addEventListener('install', event => {
  // `reload`: a file that a browser kept from an earlier build must not slip in under a name without a hash.
  const wanted = __FILES__.map(path => new Request(addressOf(path), { cache: 'reload' }))
  event.waitUntil(caches.open(current).then(cache => cache.addAll(wanted)))
})

worker.addEventListener('activate', event => {
  const clear = async () => {
    // The one before stays: a tab that is still of it fetches late parts of it.
    const names = await caches.keys()
    const others = names.filter(name => name.startsWith(ours) && name !== current)
    await Promise.all(others.slice(0, -1).map(name => caches.delete(name)))
    await worker.clients.claim()
  }
  event.waitUntil(clear())
})

worker.addEventListener('message', ({ data }) => {
  if (data === 'take over') void worker.skipWaiting()
})

/** Hosts that send `/index.html` on to `/` leave a mark on the answer that browsers refuse for a page. */
const withoutRedirect = (answer: Response): Response =>
  answer.redirected ? new Response(answer.body, { headers: answer.headers }) : answer

worker.addEventListener('fetch', event => {
  const { request } = event
  if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return
  const answer = async () => {
    const cache = await caches.open(current)
    const asked =
      (await cache.match(request, { ignoreSearch: true })) ??
      (request.mode === 'navigate' ? undefined : await caches.match(request, { ignoreSearch: true }))
    const kept = asked ?? (request.mode === 'navigate' && (await cache.match(addressOf('index.html'))))
    return kept ? withoutRedirect(kept) : fetch(request)
  }
  event.respondWith(answer())
})
