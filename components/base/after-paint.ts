/** Resolves when the page has next been painted: what waits in a timer alone may come before that. */
export const afterPaint = (): Promise<void> =>
  new Promise(resolve => requestAnimationFrame(() => setTimeout(resolve)))
