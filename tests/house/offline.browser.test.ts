import { keepOffline } from '../../src/app/offline'
import { deepEqual, equal, match, ok, waitUntil } from '../assert'

/** The offline worker of the built app, put in place as the app does, for the pages below /site/ only. */
describe('Without a network', () => {
  const frame = document.createElement('iframe')
  let cache: Cache

  const open = async (address: string) => {
    frame.src = address
    await new Promise(resolve => frame.addEventListener('load', resolve, { once: true }))
    return frame.contentDocument!
  }

  const registrationOf = () => navigator.serviceWorker.getRegistration('/site/')

  const clear = async () => {
    await (await registrationOf())?.unregister()
    for (const name of await caches.keys()) await caches.delete(name)
  }

  before(async () => {
    document.body.append(frame)
    await clear()
    const page = await open('/site/index.html?offline=no&database=offline')
    const base = page.createElement('base')
    base.href = '/site/'
    document.head.append(base) // the worker is registered by a path from the page's own place
    let told = 0
    await keepOffline(() => {
      told += 1
    })
    base.remove()
    const registration = await registrationOf()
    await waitUntil(() => registration?.active?.state === 'activated', 'the worker is at work')
    equal(told, 0, 'the first version of all is no news')
    const names = await caches.keys()
    equal(names.length, 1)
    match(names[0]!, /^tarebook-[0-9a-f]{12}$/)
    cache = await caches.open(names[0]!)
  })

  after(async () => {
    frame.remove()
    await clear()
  })

  it('every file that the page asks for is kept', async () => {
    const page = await open('/site/index.html?offline=no&database=offline')
    const asked = page.defaultView!.performance.getEntriesByType('resource').map(entry => entry.name)
    ok(asked.length > 0)
    const missing: string[] = []
    // The runner puts a script of its own into every page it serves.
    for (const address of asked.filter(a => new URL(a).pathname.startsWith('/site/')))
      if (!(await cache.match(address))) missing.push(address)
    deepEqual(missing, [])
  })

  it('the licences are kept, and shown where they are asked for', async () => {
    const page = await open('/site/licences.txt')
    match(page.body.textContent!, /^Tarebook\n/)
    ok(await cache.match(new URL('/site/licences.txt', location.href)), 'they are kept')
  })

  it('the parts that are fetched later are kept too', async () => {
    const kept = (await cache.keys()).map(request => new URL(request.url).pathname)
    const scripts = kept.filter(path => path.endsWith('.js'))
    for (const script of scripts) {
      const text = await (await cache.match(script))!.text()
      for (const [, part] of text.matchAll(/import\("\.\/([^"]+)"\)/g))
        ok(kept.includes(`/site/${part}`), part)
    }
  })

  it('the page itself comes from what is kept, at any of its addresses', async () => {
    const marked = new Response('<!doctype html><p>kept</p>', { headers: { 'content-type': 'text/html' } })
    await cache.put('/site/index.html', marked)
    for (const address of ['/site/', '/site/index.html?database=other', '/site/#formula']) {
      const page = await open(address)
      equal(page.querySelector('p')?.textContent, 'kept', address)
      await open('about:blank')
    }
  })
})
