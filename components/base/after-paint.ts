/** Resolves when the page has next been painted: what waits in a timer alone may come before that. */
export const afterPaint = (): Promise<void> =>
  new Promise(resolve => requestAnimationFrame(() => setTimeout(resolve)))

/** Resolves when the page has been painted and has nothing else to do. */
async function idle(): Promise<void> {
  await afterPaint()
  await new Promise<void>(resolve => {
    // Safari has no requestIdleCallback.
    if ('requestIdleCallback' in window) requestIdleCallback(() => resolve(), { timeout: 500 })
    else setTimeout(resolve, 50)
  })
}

const waiting = new Set<Promise<void>>()

async function fetchNow(fetch: () => Promise<unknown>): Promise<void> {
  await idle()
  try {
    await fetch()
  } catch {
    addEventListener('online', () => void fetchWhenIdle(fetch), { once: true })
  }
}

/** Fetches what is not needed to begin with, when the page is idle; where that fails, once more when there is a network. */
export async function fetchWhenIdle(fetch: () => Promise<unknown>): Promise<void> {
  const fetching = fetchNow(fetch)
  waiting.add(fetching)
  await fetching
  waiting.delete(fetching)
}

/** Resolves when all that is fetched when the page is idle is there, as far as it can be had. */
export async function furnished(): Promise<void> {
  while (waiting.size > 0) await Promise.all(waiting)
}
