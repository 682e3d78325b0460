/**
 * Runs the browser tests: each `*.browser.test.ts` is a mocha file, bundled by esbuild; some share a page, which
 * @web/test-runner opens. The built app is served beside them at `/site/`.
 *
 * `sendKeys` and the other commands of @web/test-runner-commands are bundled like any import; they reach the
 * runner through a script that only its server has, so that one import stays as it is.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { cp, readFile } from 'node:fs/promises'
import { resolve } from 'node:path'
import { startTestRunner } from '@web/test-runner'
import { a11ySnapshotPlugin } from '@web/test-runner-commands/plugins'
import { build } from 'esbuild'
import { noCount } from '../node.mjs'
import { isOfCases } from './pages/sharing.mjs'
import { patience } from './patience.mjs'
import { freePort } from './ports.mjs'
import { quietLogger, shortReporter } from './report.mjs'
import { launcherOf } from './seats.mjs'
import { isNamed } from './table.mjs'

/**
 * @import { TestRunnerConfig, TestRunnerPlugin } from '@web/test-runner'
 * @import { Asked } from './pages/asked.mjs'
 * @import { Count } from '../node.mjs'
 * @import { Engine } from './engines.mjs'
 * @import { Turns } from './turns.mjs'
 */

/**
 * @typedef {object} Ran
 * @property {Count[]} counts of each page
 * @property {Count} besides of what is of none
 */

const inPage = 'tests/browsers/pages/one-page.mjs'

/**
 * Bundles the tests, with the app beside them.
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir
 * @param {string} site folder of the built app
 */
export async function bundle(files, outdir, site) {
  await build({
    entryPoints: [...files, inPage],
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
 * The program of a page; it is read when the page begins.
 * @param {string} path
 * @param {readonly string[]} files
 * @param {readonly string[]} asked
 */
function writeProgram(path, files, asked) {
  const given = [files, asked].map(each => JSON.stringify(each)).join()
  writeFileSync(path, `import { load } from '/${inPage.replace(/mjs$/, 'js')}'\nawait load(${given})\n`)
}

/**
 * @param {Engine} engine
 * @param {string} program its path
 * @param {string[][]} pages the files, as they were bundled, that share a page; none where this engine has none of it
 * @param {string} outdir of the bundles; all that lies there is served
 * @param {{ atOnce: number, turns: Turns, asks: boolean, asked: Asked }} how how many pages run side by side, when it is their
 *   turn among those of all engines; whether it is the one that is asked what is asked once, and what that one was asked
 * @returns {Promise<Ran>}
 */
export async function runIn({ name, seats }, program, pages, outdir, { atOnce, turns, asks, asked }) {
  const counts = pages.map(noCount)
  const besides = noCount()
  const root = resolve(outdir)
  const pathOf = /** @param {number} at */ at => `${root}/tests/${name}-${at}.js`
  const programs = pages.flatMap((files, at) => (files.length > 0 ? [{ path: pathOf(at), files }] : []))
  // What has to wait until another engine was asked comes last.
  if (!asks) programs.sort((a, b) => Number(a.files.some(isOfCases)) - Number(b.files.some(isOfCases)))
  for (const { path } of programs) writeFileSync(path, '')
  /** @type {Set<string>} full titles */
  const keyless = new Set()
  /** @param {string | undefined} path */
  const pageAt = path => pages.findIndex((_, at) => pathOf(at) === path)
  /** @param {string} id of a session, which is a page */
  const pageOf = async id => pageAt((await starting)?.sessions.get(id)?.testFile)
  /** @param {string} id */
  const begins = async id => {
    const page = await pageOf(id)
    const files = pages[page] ?? []
    writeProgram(pathOf(page), files, asks || !files.some(isOfCases) ? [] : await asked.of(page))
  }
  /** @type {(id: string, ms: number) => Promise<void>} */
  const worked = async (id, ms) => {
    const page = await pageOf(id)
    const { busy } = counts[page] ?? besides
    const [first, ...others] = pages[page] ?? []
    const what = first ? `${first} and ${others.length} more` : 'opening the browser'
    busy.set(what, (busy.get(what) ?? 0) + ms)
  }
  /** @type {TestRunnerPlugin} */
  const noting = {
    name: 'keyless',
    executeCommand({ command, payload, session }) {
      if (command !== 'keyless') return
      // A full title begins with the file.
      const titles = /** @type {string[]} */ (payload).filter(title => isOfCases(title) && !isNamed(title))
      for (const title of titles) keyless.add(title)
      if (asks) asked.tell(pageAt(session.testFile), titles)
      return true
    },
  }
  const starting = startTestRunner({
    readCliArgs: false,
    readFileConfig: false,
    autoExitProcess: false,
    config: {
      rootDir: outdir,
      port: await freePort(), // several runners at once would find the same one
      files: programs.map(({ path }) => path),
      browsers: [
        launcherOf(name, Math.min(atOnce, programs.length), turns, seats(program), { begins, worked }),
      ],
      browserStartTimeout: 900_000, // in which it waits for its turn
      testsStartTimeout: 4 * patience,
      testsFinishTimeout: 15 * patience,
      middleware: [built(outdir), apart(), lacking(`${outdir}/site`)],
      browserLogs: true,
      staticLogging: true,
      testFramework: { config: { ui: 'bdd', timeout: String(5 * patience) } },
      testRunnerHtml: tests =>
        `<!DOCTYPE html><html><head></head><body><script>globalThis.isAskedOnce = ${asks}</script><script type="module" src="${tests}"></script></body></html>`,
      plugins: [a11ySnapshotPlugin(), noting],
      reporters: [shortReporter(path => counts[pageAt(path)] ?? besides, keyless)],
      logger: quietLogger,
    },
  })
  const runner = await starting
  if (!runner) throw new Error(`The tests in ${name} did not start.`)
  runner.sessions.on('session-status-updated', ({ testFile, status }) => {
    if (status === 'FINISHED' && asks) asked.tell(pageAt(testFile), [])
  })
  await new Promise(done => runner.on('stopped', done))
  return { counts, besides }
}
