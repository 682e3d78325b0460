/**
 * Calls `listener` when the page may be about to go, perhaps more than once; returns what ends that. Phones end
 * pages after `visibilitychange` alone; a page that is reloaded or left for another hears `pagehide` first.
 */
export function onPageLeave(listener: () => void): () => void {
  if (typeof document === 'undefined') return () => {}
  const onHidden = () => {
    if (document.visibilityState === 'hidden') listener()
  }
  document.addEventListener('visibilitychange', onHidden)
  window.addEventListener('pagehide', listener)
  return () => {
    document.removeEventListener('visibilitychange', onHidden)
    window.removeEventListener('pagehide', listener)
  }
}

/** Asks the browser to keep this site's data when disk space runs low. Firefox asks the baker. */
export async function askToPersist(): Promise<boolean> {
  return (await globalThis.navigator?.storage?.persist?.()) ?? false
}
