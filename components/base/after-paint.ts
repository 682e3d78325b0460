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

/** Fetches what is not needed to begin with, when the page is idle; where that fails, once more when there is a network. */
export async function fetchWhenIdle(fetch: () => Promise<unknown>): Promise<void> {
  await idle()
  try {
    await fetch()
  } catch {
    addEventListener('online', () => void fetchWhenIdle(fetch), { once: true })
  }
}
