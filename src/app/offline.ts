/**
 * Has the browser keep Tarebook for work without a network. Calls `onNewVersion` when another version
 * is ready and waits; the function it hands over puts that version in place and reloads the page.
 * Does nothing where there is no service worker: in private windows of some browsers, and on plain http.
 */
export async function keepOffline(onNewVersion: (takeOver: () => void) => void): Promise<void> {
  if (!('serviceWorker' in navigator)) return
  const { serviceWorker } = navigator
  const registration = await serviceWorker
    .register('worker.js', { updateViaCache: 'none' })
    .catch(() => undefined)
  if (!registration) return

  const hadOne = serviceWorker.controller !== null // the first version of all is not news
  let asked = false
  const takeOver = () => {
    asked = true
    registration.waiting?.postMessage('take over')
  }
  const tell = () => {
    if (registration.waiting && hadOne) onNewVersion(takeOver)
  }
  tell()
  registration.addEventListener('updatefound', () => {
    registration.installing?.addEventListener('statechange', tell)
  })
  serviceWorker.addEventListener('controllerchange', () => {
    if (asked) location.reload()
    // Another tab asked. This one may hold an edit, so it is told, and reloads when its baker says so.
    else if (hadOne) onNewVersion(() => location.reload())
  })
}
