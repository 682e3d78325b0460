import { equal, ok, waitUntil } from '../assert'

/** The built page, opened as a browser would, with a database of its own and without its offline worker. */
describe('The built app', () => {
  const frame = document.createElement('iframe')
  const complaints: string[] = []
  let view: Window & typeof globalThis

  before(async () => {
    frame.style.cssText = 'width: 1000px; height: 700px'
    frame.src = `/site/index.html?offline=no&database=house-${Date.now()}`
    document.body.append(frame)
    // The frame's window is there before its page is: hear every complaint from the first script on.
    await waitUntil(() => frame.contentWindow?.location.pathname === '/site/index.html', 'the page has begun')
    view = frame.contentWindow as Window & typeof globalThis
    view.addEventListener('error', event => complaints.push(event.message))
    view.addEventListener('unhandledrejection', event => complaints.push(String(event.reason)))
    view.document.addEventListener('securitypolicyviolation', event => complaints.push(event.blockedURI))
    const error = view.console.error
    view.console.error = (...words: unknown[]) => {
      complaints.push(words.join(' '))
      error(...words)
    }
    await waitUntil(
      () => view.document.querySelector('tb-app')?.shadowRoot?.querySelector('*'),
      'the app has drawn something',
    )
  })

  after(() => frame.remove())

  it('starts without a complaint', () => equal(complaints.join('\n'), ''))

  it('asks no other origin for anything', () => {
    const asked = view.performance.getEntriesByType('resource').map(entry => entry.name)
    ok(asked.length > 0)
    equal(asked.filter(address => new URL(address).origin !== location.origin).join(), '')
  })

  it('fetches nothing of the days for one who edits formulas', async () => {
    await waitUntil(
      () => view.document.querySelector('tb-app')?.shadowRoot?.querySelector('tb-dialogs:defined'),
      'what is fetched when the page is idle is there',
    )
    const asked = view.performance.getEntriesByType('resource').map(entry => entry.name)
    const scripts = asked.filter(name => name.endsWith('.js'))
    ok(scripts.length > 3)
    equal(scripts.filter(name => name.includes('day-worker')).join(), '')
    const texts = await Promise.all(scripts.map(async name => (await fetch(name)).text()))
    const defined = texts.flatMap(text =>
      [...text.matchAll(/define\("(tb-[\w-]+)"/g)].map(([, name]) => name),
    )
    ok(defined.includes('tb-app'))
    equal(defined.filter(name => /^tb-(?:days|day|by-clock|temperatures)(?:-|$)/.test(name!)).join(), '')
  })

  it('says in the page itself that no other origin may be asked', () => {
    const policy = view.document.querySelector<HTMLMetaElement>('meta[http-equiv="Content-Security-Policy"]')
    ok(policy?.content.startsWith("default-src 'self'"))
  })

  const away = 'http://127.0.0.2:9/of-another-origin'
  const element = (name: string, fields: Record<string, string>) => () => {
    const made = Object.assign(view.document.createElement(name), fields)
    view.document.body.append(made)
  }
  const tries: readonly (readonly [directive: string, attempt: () => unknown])[] = [
    ['connect-src', () => view.fetch(away).catch(() => {})],
    ['img-src', element('img', { src: away })],
    ['media-src', element('video', { src: away })],
    ['style-src-elem', element('link', { rel: 'stylesheet', href: away })],
    ['script-src-elem', element('script', { src: away })],
    ['script-src-elem', element('script', { textContent: 'globalThis.ran = true' })],
    ['script-src-attr', element('div', { innerHTML: '<img src="data:," onerror="globalThis.ran = true">' })],
    ['frame-src', element('iframe', { src: away })],
    ['object-src', element('object', { data: away })],
    ['base-uri', element('base', { href: away })],
  ]
  for (const [directive, attempt] of tries)
    it(`lets nothing in it ask another origin or run a text: ${directive}`, async () => {
      const blocked: string[] = []
      const hear = (event: SecurityPolicyViolationEvent) => void blocked.push(event.effectiveDirective)
      view.document.addEventListener('securitypolicyviolation', hear)
      attempt()
      await waitUntil(() => blocked.includes(directive), 'the browser has kept it from it')
      view.document.removeEventListener('securitypolicyviolation', hear)
      equal('ran' in view, false)
    })

  it('has one polite region for announcements from the start', () => {
    equal(view.document.querySelectorAll('[aria-live="polite"]').length, 1)
  })

  it('has a name, a language and an icon', async () => {
    equal(view.document.title.includes('Tarebook'), true)
    equal(view.document.documentElement.lang, 'en')
    const manifest = await (await fetch('/site/manifest.webmanifest')).json()
    for (const { src } of manifest.icons) ok((await fetch(`/site/${src}`)).ok, `icon ${src}`)
  })
})
