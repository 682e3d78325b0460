/**
 * Runs everything that is tested: format and lint, types, the Node tests, then the tests in Chromium.
 * `node tests/run.mjs [part ...] [--only=text] [--fix]` runs some parts (lint, types, node, browser), of the
 * tests only the files whose path holds the text, and formats first.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync } from 'node:fs'
import { rm } from 'node:fs/promises'

const args = process.argv.slice(2)
const only = args.find(a => a.startsWith('--only='))?.slice('--only='.length) ?? ''
const parts = args.filter(a => !a.startsWith('--'))
const testFiles = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .map(f => `tests/${f.replaceAll('\\', '/')}`)
  .filter(f => f.endsWith('.test.ts') && f.includes(only))
const total = { passed: 0, failed: 0 }

/** @param {string} part */
const wanted = part => parts.length === 0 || parts.includes(part)

/**
 * @param {string} label
 * @param {() => boolean | Promise<boolean>} work true when it passed
 */
async function report(label, work) {
  const started = Date.now()
  const passed = await Promise.resolve(work()).catch(error => {
    console.error(error instanceof Error ? error.message : error)
    return false
  })
  const seconds = ((Date.now() - started) / 1000).toFixed(1)
  console.log(`${label}: ${passed ? 'passed' : 'FAILED'} in ${seconds} s`)
  if (!passed) process.exitCode = 1
}

/**
 * @param {string} program an installed package's command
 * @param {string[]} argv
 */
const command = (program, argv) =>
  spawnSync(process.execPath, [`node_modules/${program}`, ...argv], { stdio: 'inherit' }).status === 0

/**
 * @param {string[]} files
 * @param {(files: string[], outdir: string) => Promise<{ passed: number, failed: number }>} runner
 */
async function tests(files, runner) {
  if (files.length === 0) return true
  // A folder of its own, so that two runs at once do not sweep away each other's bundles.
  mkdirSync('.build', { recursive: true })
  const outdir = mkdtempSync('.build/tests-')
  try {
    const count = await runner(files, outdir)
    total.passed += count.passed
    total.failed += count.failed
    return count.failed === 0 && count.passed > 0
  } finally {
    await rm(outdir, { recursive: true, force: true })
  }
}

const inBrowser = testFiles.filter(f => f.endsWith('.browser.test.ts'))
const inNode = testFiles.filter(f => !inBrowser.includes(f))
const fix = args.includes('--fix') ? ['--write'] : []

if (wanted('lint')) {
  await report('Format and lint', () =>
    command('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', ...fix, '.']),
  )
}
if (wanted('types')) await report('Types', () => command('typescript/bin/tsc', []))
if (wanted('node')) {
  const { runNodeTests } = await import('./node.mjs')
  await report('Tests in Node', () => tests(inNode, runNodeTests))
}
if (wanted('browser')) {
  const { runBrowserTests } = await import('./browser.mjs')
  await report('Tests in Chromium', () => tests(inBrowser, runBrowserTests))
}
if (wanted('node') || wanted('browser')) console.log(`${total.passed} passed, ${total.failed} failed`)
process.exit()
