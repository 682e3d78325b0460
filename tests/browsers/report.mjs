/** Says what failed in the browser tests, and nothing of what passes. */

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

/** @param {string} bundle path of a bundle */
export const sourceOf = bundle => bundle.slice(bundle.indexOf('/tests/') + 1).replace(/\.js$/, '.ts')

/**
 * @param {Count} count
 * @returns {Reporter}
 */
export function shortReporter(count) {
  return {
    reportTestFileResults({ sessionsForTestFile, testFile }) {
      for (const session of sessionsForTestFile) reportSession(session, sourceOf(testFile), count)
    },
  }
}

/** The suite of what is asked of one engine only (`tests/once.ts`), and so says nothing about any. */
const askedOnce = 'in one engine'

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
    if (!path.includes(askedOnce)) count.results.set(`${source} › ${test.name}`, test.passed)
    if (test.passed || !test.error) continue // without an error it was not reached: its suite says why
    console.log(`\n✗ ${[...path, test.name].join(' › ')}  (${source})\n${inFull(test.error)}`)
  }
  for (const inner of suite.suites) reportSuite(inner, [...path, inner.name], source, count)
}
