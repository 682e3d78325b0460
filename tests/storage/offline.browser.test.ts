import { equal, ok, waitUntil } from '../assert'

/** The built site with its offline worker. The server has no page at the address asked for: the worker answers. */
describe('The offline worker', () => {
  const frame = document.createElement('iframe')
  let registration: ServiceWorkerRegistration

  before(async () => {
    registration = await navigator.serviceWorker.register('/site/worker.js', { updateViaCache: 'none' })
    await waitUntil(() => registration.active?.state === 'activated', 'the worker is active')
    document.body.append(frame)
  })

  after(async () => {
    frame.remove()
    await registration.unregister()
    for (const name of await caches.keys()) await caches.delete(name)
  })

  it('keeps every file of the build in one cache', async () => {
    const names = await caches.keys()
    equal(names.length, 1)
    const kept = (await (await caches.open(names[0]!)).keys()).map(request => new URL(request.url).pathname)
    ok(kept.includes('/site/index.html'))
    ok(kept.some(path => /main-\w+\.js$/.test(path)))
    ok(!kept.includes('/site/worker.js'))
  })

  it('answers for a page with the kept one', async () => {
    equal((await fetch('/site/not-there.html')).status, 404)
    frame.src = '/site/not-there.html?offline=no&database=offline-test'
    await waitUntil(() => frame.contentDocument?.querySelector('tb-app'), 'the kept page is shown')
    ok(frame.contentWindow?.navigator.serviceWorker.controller)
  })
})
