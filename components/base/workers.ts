/** Starts a worker whose address stands in the page's head, as `<meta name="day-worker">`; undefined where there are none. */
export function newWorker(name: 'reading-worker' | 'day-worker'): Worker | undefined {
  const address = document.querySelector<HTMLMetaElement>(`meta[name=${name}]`)?.content
  try {
    return address ? new Worker(new URL(address, document.baseURI), { type: 'module' }) : undefined
  } catch {
    return undefined // no workers here: the page does it itself
  }
}
