import { equal, waitUntil } from '../assert.js'
import { Turns } from '../browsers/turns.mjs'

type Page = Window & typeof globalThis

/** What the page shows in the end. On a slow machine it says that it has not started, and then does. */
const works = 'works'
const notStarted = 'says that it has not started'
const unread = 'says that nothing could be read'
const gone = 'says that a workbook is gone'

/** What is done to a page before it begins, or to what it finds there, and what it is to show. */
interface Case {
  readonly what: string
  readonly first?: (page: Page) => unknown
  readonly before?: (database: string) => unknown
  readonly lacks?: string // files with this in their names
  readonly hash?: string
  readonly shows: string
}

/** Takes away a part of the browser, by its path from the window. */
function takeAway(page: Page, path: string): void {
  const names = path.split('.')
  const name = names.pop()!
  let of: object = page
  for (const step of names) of = Reflect.get(of, step)
  for (let at: object | null = of; at; at = Object.getPrototypeOf(at))
    if (Object.hasOwn(at, name)) Object.defineProperty(at, name, { value: undefined, configurable: true })
}

/** Makes a database as it may be found, of a version and without its store. */
const make = (database: string, version: number) =>
  new Promise(resolve => {
    const opening = indexedDB.open(database, version)
    opening.onsuccess = () => resolve(opening.result.close())
  })

function shown({ contentDocument: page, contentWindow }: HTMLIFrameElement): string {
  const trouble = page?.querySelector('.trouble')
  if (trouble && contentWindow!.getComputedStyle(trouble).visibility === 'visible')
    return trouble.querySelector('a[href="rescue.html"]') ? notStarted : ''
  const app = page?.querySelector('tb-app')?.shadowRoot
  const empty = app?.querySelector('tb-empty-shelf')?.shadowRoot
  if (empty?.querySelector('a[href^="rescue.html"]')) return unread
  const notices = app?.querySelector('tb-notices')?.shadowRoot?.textContent ?? ''
  if (notices.includes('There was a workbook here')) return gone
  const grid = app?.querySelector('tb-sheet')?.shadowRoot?.querySelector('tb-grid')?.shadowRoot
  return !trouble && grid?.querySelector('td') ? works : ''
}

/** Parts of the browser, and what is shown without them. */
const parts = {
  [works]: [
    'navigator.locks',
    'navigator.serviceWorker',
    'navigator.storage',
    'navigator.language',
    'crypto.randomUUID',
    'localStorage',
    'BroadcastChannel',
    'structuredClone',
    'CSS',
    'requestIdleCallback',
    'requestAnimationFrame',
    'visualViewport',
    'HTMLDialogElement',
    'CompressionStream',
    'Worker',
    'performance',
    'reportError',
    'history',
  ],
  [notStarted]: [
    'crypto',
    'customElements',
    'CSSStyleSheet',
    'Intl',
    'ResizeObserver',
    'IntersectionObserver',
    'matchMedia',
    'URLSearchParams',
    'AbortController',
  ],
  [unread]: ['indexedDB'],
}

const cases: readonly Case[] = [
  ...Object.entries(parts).flatMap(([shows, missing]) =>
    missing.map(part => ({ what: `no ${part}`, first: (page: Page) => takeAway(page, part), shows })),
  ),
  {
    what: 'storage that never answers',
    first: ({ IDBFactory }) => {
      IDBFactory.prototype.open = () => ({}) as IDBOpenDBRequest
    },
    shows: notStarted,
  },
  {
    what: 'locks that never answer',
    first: ({ LockManager }) => {
      LockManager.prototype.request = () => new Promise(() => {})
    },
    shows: works,
  },
  {
    what: 'a language that is none',
    first: ({ navigator }) =>
      Object.defineProperty(navigator, 'language', { value: 'en-US@posix', configurable: true }),
    shows: works,
  },
  { what: 'a stray % in the address', hash: '#50%', shows: works },
  { what: 'a database of a later version', before: name => make(name, 2), shows: unread },
  { what: 'a database without its store', before: name => make(name, 1), shows: unread },
  {
    what: 'a database that the browser has dropped',
    before: name =>
      localStorage.setItem(
        `tarebook was here ${name}`,
        JSON.stringify({ savedAt: '2026-11-28T04:00:00.000Z', formulas: 12 }),
      ),
    shows: gone,
  },
  { what: 'a script that is not there', lacks: 'main-', shows: notStarted },
]

/** The built page in frames, several at once as it waits before it complains: it works, or says that it does not. */
describe('Whatever part of the browser is missing or does not answer', () => {
  const turns = new Turns(6)
  const of = new Map<Window | null, Case>()
  const shows = new Map<Case, Promise<string>>()

  async function open(one: Case): Promise<string> {
    const database = `${one.what} ${Date.now()}`
    await one.before?.(database)
    const frame = document.createElement('iframe')
    frame.style.cssText = 'position: absolute; inset: 0; width: 800px; height: 600px'
    frame.src = `/lacking/${one.lacks ?? 'nothing'}/index.html?offline=no&database=${database}${one.hash ?? ''}`
    document.body.append(frame)
    of.set(frame.contentWindow, one)
    let last = ''
    const isThere = () => {
      last = shown(frame)
      return last === one.shows
    }
    await waitUntil(isThere, one.shows).catch(() => {})
    frame.remove()
    return last
  }

  before(() => {
    // The page calls it before anything of it runs: `lacking` in browsers/run.mjs.
    Object.assign(globalThis, { isAboutToBegin: (page: Page) => of.get(page)?.first?.(page) })
    for (const one of cases)
      shows.set(
        one,
        turns.take().then(() => open(one).finally(() => turns.giveBack())),
      )
  })

  for (const one of cases)
    it(`${one.what}: it ${one.shows}`, async () => equal(await shows.get(one), one.shows))
})
