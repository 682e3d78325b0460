/**
 * Runs the browser tests: each `*.browser.test.ts` is a mocha file, bundled by esbuild and opened on a page of its own
 * by @web/test-runner. The built app is served beside them at `/site/`.
 *
 * `sendKeys` and the other commands of @web/test-runner-commands are bundled like any import; they reach the
 * runner through a script that only its server has, so that one import stays as it is.
 */
import { readFileSync } from 'node:fs'
import { cp, readFile } from 'node:fs/promises'
import { startTestRunner } from '@web/test-runner'
import { a11ySnapshotPlugin } from '@web/test-runner-commands/plugins'
import { build } from 'esbuild'
import { patience } from './patience.mjs'
import { freePort } from './ports.mjs'
import { quietLogger, shortReporter, sourceOf } from './report.mjs'
import { launcherOf } from './seats.mjs'

/**
 * @import { TestRunnerConfig } from '@web/test-runner'
 * @import { Count } from '../node.mjs'
 * @import { Engine } from './engines.mjs'
 * @import { Turns } from './turns.mjs'
 */

/**
 * Bundles the tests, with the app beside them.
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir
 * @param {string} site folder of the built app
 */
export async function bundle(files, outdir, site) {
  await build({
    entryPoints: files,
    outdir,
    outbase: '.',
    bundle: true,
    splitting: true,
    format: 'esm',
    target: 'es2022',
    external: ['/__web-dev-server__web-socket.js'],
    alias: { 'axe-core': 'axe-core/axe.min.js' },
    loader: { '.csv': 'text' },
    minifySyntax: true, // every page reads it anew
    minifyWhitespace: true,
    sourcemap: 'linked', // fetched when something fails
    logLevel: 'warning',
  })
  await cp(site, `${outdir}/site`, { recursive: true })
}

/**
 * Serves the bundles, and those of the app's files whose names are made of their contents, as they are and for good: pages
 * share nearly all of them, some eighty each.
 * @param {string} outdir
 * @returns {NonNullable<TestRunnerConfig['middleware']>[number]}
 */
function built(outdir) {
  /** @type {Map<string, Buffer>} */
  const files = new Map()
  return async (context, next) => {
    const { path } = context
    const isNamedByContent = /^\/(?:site\/)?[\w.-]+-[A-Z0-9]{8}\.(?:js|css)$/.test(path)
    if (!isNamedByContent && !/^\/tests\/[\w/.-]+\.js$/.test(path)) return next()
    const file = files.get(path) ?? (await readFile(outdir + path))
    files.set(path, file)
    context.type = path.replace(/.*\./, '')
    if (isNamedByContent) context.set('cache-control', 'max-age=86400, immutable')
    context.body = file
  }
}

/**
 * Serves the app once more below `/apart/NAME/`, for a test that cuts its network by asking for `/apart/NAME/cut`.
 * @returns {NonNullable<TestRunnerConfig['middleware']>[number]}
 */
function apart() {
  /** @type {Set<string>} */
  const cut = new Set()
  return (context, next) => {
    const [, name, path] = /^\/apart\/([^/]+)\/(.*)$/.exec(context.path) ?? []
    if (name === undefined) return next()
    if (cut.has(name)) {
      context.respond = false
      context.req.socket.destroy()
    } else if (path === 'cut') {
      cut.add(name)
      context.body = 'cut'
    } else {
      context.path = `/site/${path}`
      return next()
    }
  }
}

/**
 * Serves the app once more below `/lacking/NAME/`, without the files that have NAME in theirs; its page calls
 * `isAboutToBegin` of the one around it, with its window, before anything else.
 * @param {string} site folder of the built app
 * @returns {NonNullable<TestRunnerConfig['middleware']>[number]}
 */
function lacking(site) {
  const html = readFileSync(`${site}/index.html`, 'utf8')
  const page = html.replace('<head>', '<head><script src="first.js"></script>')
  return (context, next) => {
    const [, name, path = ''] = /^\/lacking\/([^/]+)\/(.*)$/.exec(context.path) ?? []
    if (name === undefined) return next()
    if (path === 'index.html' || path === 'first.js') {
      context.type = path.replace(/.*\./, '')
      context.body = path === 'index.html' ? page : 'parent.isAboutToBegin(window)'
    } else if (path.includes(name)) context.status = 404
    else {
      context.path = `/site/${path}`
      return next()
    }
  }
}

/**
 * @param {Engine} engine
 * @param {string} program its path
 * @param {string[]} files as they were bundled
 * @param {string} outdir of the bundles; all that lies there is served
 * @param {{ atOnce: number, turns: Turns, asks: boolean }} how how many of its files run side by side, when it is their turn
 *   among those of all engines; and whether it is the one that is asked what is asked once
 * @returns {Promise<Count>}
 */
export async function runIn({ name, seats }, program, files, outdir, { atOnce, turns, asks }) {
  /** @type {Count} */
  const count = { passed: 0, failed: 0, times: new Map(), results: new Map() }
  const runner = await startTestRunner({
    readCliArgs: false,
    readFileConfig: false,
    autoExitProcess: false,
    config: {
      rootDir: outdir,
      port: await freePort(), // several runners at once would find the same one
      files: files.map(f => `${outdir}/${f.replace(/\.ts$/, '.js')}`),
      browsers: [launcherOf(name, Math.min(atOnce, files.length), turns, seats(program))],
      browserStartTimeout: 900_000, // in which it waits for its turn
      testsStartTimeout: 4 * patience,
      testsFinishTimeout: 15 * patience,
      middleware: [built(outdir), apart(), lacking(`${outdir}/site`)],
      browserLogs: true,
      staticLogging: true,
      testFramework: { config: { ui: 'bdd', timeout: String(5 * patience) } },
      testRunnerHtml: tests =>
        `<!DOCTYPE html><html><head></head><body><script>globalThis.isAskedOnce = ${asks}</script><script type="module" src="${tests}"></script></body></html>`,
      plugins: [a11ySnapshotPlugin()],
      reporters: [shortReporter(count)],
      logger: quietLogger,
    },
  })
  if (!runner) throw new Error(`The tests in ${name} did not start.`)
  /** @type {Map<string, number>} */
  const began = new Map()
  runner.sessions.on('session-status-updated', ({ id, status, testFile }) => {
    if (String(status) === 'TEST_STARTED') began.set(id, Date.now())
    if (status === 'FINISHED') count.times.set(sourceOf(testFile), Date.now() - (began.get(id) ?? Date.now()))
  })
  await new Promise(resolve => runner.on('stopped', resolve))
  return count
}
