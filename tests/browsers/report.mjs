/** Says what failed in the browser tests, and nothing of what passes. */
import { log } from './say.mjs'

/**
 * @import { Reporter, TestSession, TestSuiteResult } from '@web/test-runner-core'
 * @import { Count } from '../node.mjs'
 */

/** The runner's own progress goes unsaid; its complaints do not. */
export const quietLogger = {
  ...console,
  log() {},
  debug() {},
  logSyntaxError: console.error,
}

/**
 * @param {(page: string) => Count} countOf gives the count of a page by its program
 * @param {ReadonlySet<string>} keyless full titles of what is asked of one engine only, and so says nothing about any
 * @returns {Reporter}
 */
export function shortReporter(countOf, keyless) {
  return {
    reportTestFileResults({ sessionsForTestFile, testFile }) {
      for (const session of sessionsForTestFile) reportSession(session, testFile, countOf(testFile), keyless)
    },
  }
}

/** The suite of what is asked of one engine whatever it uses (`tests/once.ts`). */
const askedOnce = 'in one engine'

/** @param {{ message?: string, stack?: string }} error */
const inFull = ({ message = '', stack = '' }) =>
  stack.includes(message) ? stack : `${message}\n${stack}`.trimEnd()

/**
 * @param {TestSession} session
 * @param {string} page
 * @param {Count} count
 * @param {ReadonlySet<string>} keyless
 */
function reportSession(session, page, count, keyless) {
  const files = session.testResults?.suites ?? []
  for (const error of session.errors) {
    count.failed += 1
    log(`\n✗ ${files.map(({ name }) => name).join(', ') || page}\n${inFull(error)}`)
  }
  for (const suite of files) {
    count.times.set(suite.name, timeOf(suite))
    reportSuite(suite, [], suite.name, { count, keyless })
  }
  if (!session.passed) {
    for (const path of session.request404s) log(`  not found: ${path}`)
    for (const said of session.logs) log('  console:', ...said)
  }
}

/** @type {(suite: TestSuiteResult) => number} milliseconds, without what comes before and after a test */
const timeOf = ({ tests, suites }) =>
  tests.reduce((sum, { duration = 0 }) => sum + duration, 0) +
  suites.reduce((sum, suite) => sum + timeOf(suite), 0)

/**
 * @param {TestSuiteResult} suite
 * @param {string[]} path titles of the suites around it
 * @param {string} source
 * @param {{ count: Count, keyless: ReadonlySet<string> }} to
 */
function reportSuite(suite, path, source, { count, keyless }) {
  for (const test of suite.tests) {
    if (test.skipped) continue
    count[test.passed ? 'passed' : 'failed'] += 1
    if (!path.includes(askedOnce) && !keyless.has([source, ...path, test.name].join(' ')))
      count.results.set(`${source} › ${test.name}`, test.passed)
    if (test.passed || !test.error) continue // without an error it was not reached: its suite says why
    log(`\n✗ ${[...path, test.name].join(' › ')}  (${source})\n${inFull(test.error)}`)
  }
  for (const inner of suite.suites) reportSuite(inner, [...path, inner.name], source, { count, keyless })
}
