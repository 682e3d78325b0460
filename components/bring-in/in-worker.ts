let start: (() => Worker) | undefined

/** Says how a worker that reads what arrives is started; at start-up, by the page that knows its address. */
export function offerReadingWorker(how: () => Worker): void {
  start = how
}

/** A worker that reads what arrives, where there is one. */
export function newReadingWorker(): Worker | undefined {
  try {
    return start?.()
  } catch {
    return undefined // no workers here: the page reads it itself
  }
}
