/**
 * Runs the browser tests: each `*.browser.test.ts` is a mocha file, bundled by esbuild and opened on a page of its own
 * by @web/test-runner. The built app is served beside them at `/site/`.
 *
 * `sendKeys` and the other commands of @web/test-runner-commands are bundled like any import; they reach the
 * runner through a script that only its server has, so that one import stays as it is.
 */
import { availableParallelism } from 'node:os'
import { startTestRunner } from '@web/test-runner'
import { a11ySnapshotPlugin } from '@web/test-runner-commands/plugins'
import { build } from 'esbuild'
import { buildSite, inShort } from '../../src/app/build.mjs'
import { chromiumSeats, findBrowser } from './chromium.mjs'
import { quietLogger, shortReporter, sourceOf } from './report.mjs'
import { launcherOf } from './seats.mjs'

/** @import { Count } from '../node.mjs' */

/**
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir where their bundles go; what else lies there is served too
 * @returns {Promise<Count>}
 */
export async function runBrowserTests(files, outdir) {
  /** @type {Count} */
  const count = { passed: 0, failed: 0, times: new Map() }
  const executablePath = findBrowser()
  await build({
    entryPoints: files,
    outdir,
    outbase: '.',
    bundle: true,
    splitting: true,
    format: 'esm',
    target: 'es2022',
    external: ['/__web-dev-server__web-socket.js'],
    loader: { '.csv': 'text' },
    sourcemap: 'linked', // fetched when something fails
    logLevel: 'warning',
  })
  await buildSite({ outdir: `${outdir}/site` }).catch(error => {
    count.failed += 1
    console.log(`\n✗ the app is not built: ${inShort(error)}`)
  })
  const seats = Math.min(4, availableParallelism(), files.length)
  const runner = await startTestRunner({
    readCliArgs: false,
    readFileConfig: false,
    autoExitProcess: false,
    config: {
      rootDir: outdir,
      files: files.map(f => `${outdir}/${f.replace(/\.ts$/, '.js')}`),
      browsers: [launcherOf('Chromium', seats, chromiumSeats(executablePath))],
      testsFinishTimeout: 120_000,
      browserLogs: true,
      staticLogging: true,
      testFramework: { config: { ui: 'bdd', timeout: '20000' } },
      plugins: [a11ySnapshotPlugin()],
      reporters: [shortReporter(count)],
      logger: quietLogger,
    },
  })
  if (!runner) throw new Error('The browser tests did not start.')
  const started = Date.now()
  /** @type {Map<string, number>} */
  const began = new Map()
  runner.sessions.on('session-status-updated', ({ id, status, testFile }) => {
    if (status === 'INITIALIZING') began.set(id, Date.now())
    if (status === 'FINISHED') count.times.set(sourceOf(testFile), Date.now() - (began.get(id) ?? started))
  })
  await new Promise(resolve => runner.on('stopped', resolve))
  return count
}
