/**
 * Finds and opens WebKit, as WebKitGTK has it: its driver, a window of our own in it, and a display that nobody sees.
 * Each window has a display by itself, and so a focus and a clipboard.
 */
import { spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdtempSync } from 'node:fs'
import { rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { patience } from './patience.mjs'
import { freePort } from './ports.mjs'
import { programIn } from './programs.mjs'
import { Session } from './webdriver.mjs'

/** @import { ChildProcess } from 'node:child_process' */
/** @import { Seat, TestPage } from './seats.mjs' */

const window = fileURLToPath(new URL('webkit-window.py', import.meta.url))

/** @returns {string | undefined} path of the driver, where the other things that are needed are here as well */
export function findWebKit() {
  const others = ['Xvfb', 'openbox', '/usr/bin/python3']
  if (process.platform !== 'linux' || !others.every(name => existsSync(name) || programIn({ linux: [name] })))
    return
  const imports = 'import gi; gi.require_version("Gtk", "3.0"); gi.require_version("WebKit2", "4.1")'
  if (spawnSync('/usr/bin/python3', ['-c', imports]).status !== 0) return
  return programIn({ linux: ['WebKitWebDriver'] })
}

/**
 * @template T
 * @param {() => Promise<T | undefined | false>} look
 * @param {string} sentence of what is waited for
 * @returns {Promise<T>}
 */
async function until(look, sentence) {
  const end = Date.now() + patience
  for (;;) {
    const found = await look()
    if (found) return found
    if (Date.now() > end) throw new Error(`WebKit: waited in vain until ${sentence}.`)
    await new Promise(resolve => setTimeout(resolve, 20))
  }
}

/** @returns {Promise<{ display: string, screen: ChildProcess }>} */
async function newScreen() {
  const screen = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1600x1200x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  })
  const said = /** @type {import('node:stream').Readable} */ (screen.stdio[3])
  const [number] = await Promise.race([
    once(said, 'data'),
    once(screen, 'error').then(([error]) => Promise.reject(error)),
  ])
  return { display: `:${String(number).trim()}`, screen }
}

/**
 * @param {string} driverPath
 * @returns {(origin: string) => Promise<Seat>}
 */
export const webKitSeats = driverPath => async () => {
  const folder = mkdtempSync(join(tmpdir(), 'tarebook-webkit-'))
  const schemes = join(folder, 'schemes')
  spawnSync('mkfifo', [schemes])
  const { display, screen } = await newScreen()
  const env = {
    ...process.env,
    DISPLAY: display,
    GDK_BACKEND: 'x11',
    WEBKIT_DISABLE_COMPOSITING_MODE: '1', // by software, drawing in layers costs as much as all the rest
    JSC_useDFGJIT: '0', // no page of tests lives long enough for what the compiler that optimizes costs
    TAREBOOK_SCHEMES: schemes,
    TAREBOOK_DOWNLOADS: folder,
  }
  const manager = spawn('openbox', [], { env, stdio: 'ignore' })
  const port = await freePort()
  const driver = spawn(driverPath, [`--port=${port}`], { env, stdio: 'ignore' })
  const base = `http://127.0.0.1:${port}`
  await until(
    () =>
      fetch(`${base}/status`).then(
        ({ ok }) => ok,
        () => false,
      ),
    'its driver answers',
  )
  const session = new Session(base)
  await session.begin({ 'webkitgtk:browserOptions': { binary: window, args: [] } })

  let address = ''
  /** @type {TestPage} */
  const page = {
    keyboard: session.keyboard,
    mouse: session.mouse,
    url: () => address,
    async goto(url) {
      address = url
      await session.mouse.reset() // no key and no button stays down
      await session.goto(url)
    },
    async setViewport({ width, height }) {
      await session.resize({ width, height })
      await until(
        () => session.evaluate(`return innerWidth === ${width} && innerHeight === ${height}`),
        'it has its size',
      )
    },
    async emulateMediaType(type) {
      if (type === 'print') throw new Error('WebKitGTK shows no page as if printed.')
    },
    async emulateMediaFeatures(features) {
      const scheme = features?.find(({ name }) => name === 'prefers-color-scheme')?.value || 'light'
      await writeFile(schemes, `${scheme}\n`)
      await until(
        () => session.evaluate(`return matchMedia('(prefers-color-scheme: ${scheme})').matches`),
        `it is ${scheme}`,
      )
    },
  }
  return {
    page,
    evaluate: script => session.evaluate(script),
    pids: [driver, manager, screen].map(({ pid }) => pid ?? 0),
    async close() {
      await session.end().catch(() => {}) // its window may have gone already
      for (const each of [driver, manager, screen]) each.kill()
      await rm(folder, { recursive: true, force: true })
    },
  }
}
