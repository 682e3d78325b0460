/**
 * Runs the browser tests in real Chromium: each `*.browser.test.ts` is a mocha file, bundled by esbuild and
 * opened on a page of its own by @web/test-runner. The built app is served beside them at `/site/`.
 *
 * `sendKeys` and the other commands of @web/test-runner-commands are bundled like any import; they reach the
 * runner through a script that only its server has, so that one import stays as it is.
 */
import { startTestRunner } from '@web/test-runner'
import { chromeLauncher } from '@web/test-runner-chrome'
import { a11ySnapshotPlugin } from '@web/test-runner-commands/plugins'
import { build } from 'esbuild'
import { buildSite, inShort } from '../src/app/build.mjs'
import { browserArguments, findBrowser } from './find-browser.mjs'

/**
 * @import { Reporter, TestSession, TestSuiteResult } from '@web/test-runner-core'
 * @import { Count } from './node.mjs'
 */

/**
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir where their bundles go; what else lies there is served too
 * @returns {Promise<Count>}
 */
export async function runBrowserTests(files, outdir) {
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
    sourcemap: 'inline',
    logLevel: 'warning',
  })
  /** @type {Count} */
  const count = { passed: 0, failed: 0 }
  await buildSite({ outdir: `${outdir}/site` }).catch(error => {
    count.failed += 1
    console.log(`\n✗ the app is not built: ${inShort(error)}`)
  })
  const runner = await startTestRunner({
    readCliArgs: false,
    readFileConfig: false,
    autoExitProcess: false,
    config: {
      rootDir: outdir,
      files: files.map(f => `${outdir}/${f.replace(/\.ts$/, '.js')}`),
      browsers: [
        chromeLauncher({
          launchOptions: { executablePath, args: browserArguments },
          createPage: async ({ context, config }) => {
            const origin = `${config.protocol}//${config.hostname}:${config.port}`
            await context.overridePermissions(origin, [
              'clipboard-read',
              'clipboard-write',
              'clipboard-sanitized-write', // what a button that copies asks for
            ])
            return context.newPage()
          },
        }),
      ],
      concurrency: 1, // real keys go to the one page that has the focus
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
  await new Promise(resolve => runner.on('stopped', resolve))
  return count
}

/** The runner's own progress goes unsaid; its complaints do not. */
const quietLogger = {
  ...console,
  log() {},
  debug() {},
  logSyntaxError: console.error,
}

/**
 * Says nothing of what passes.
 * @param {Count} count
 * @returns {Reporter}
 */
function shortReporter(count) {
  return {
    reportTestFileResults({ sessionsForTestFile, testFile }) {
      const source = testFile.slice(testFile.indexOf('/tests/') + 1).replace(/\.js$/, '.ts')
      for (const session of sessionsForTestFile) reportSession(session, source, count)
    },
  }
}

/** @param {{ message?: string, stack?: string }} error */
const inFull = ({ message = '', stack = '' }) =>
  stack.includes(message) ? stack : `${message}\n${stack}`.trimEnd()

/**
 * @param {TestSession} session
 * @param {string} source
 * @param {Count} count
 */
function reportSession(session, source, count) {
  for (const error of session.errors) {
    count.failed += 1
    console.log(`\n✗ ${source}\n${inFull(error)}`)
  }
  if (session.testResults) reportSuite(session.testResults, [], source, count)
  if (!session.passed) {
    for (const path of session.request404s) console.log(`  not found: ${path}`)
    for (const log of session.logs) console.log('  console:', ...log)
  }
}

/**
 * @param {TestSuiteResult} suite
 * @param {string[]} path titles of the suites around it
 * @param {string} source
 * @param {Count} count
 */
function reportSuite(suite, path, source, count) {
  for (const test of suite.tests) {
    if (test.skipped) continue
    count[test.passed ? 'passed' : 'failed'] += 1
    if (test.passed || !test.error) continue // without an error it was not reached: its suite says why
    console.log(`\n✗ ${[...path, test.name].join(' › ')}  (${source})\n${inFull(test.error)}`)
  }
  for (const inner of suite.suites) reportSuite(inner, [...path, inner.name], source, count)
}
