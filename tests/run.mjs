/**
 * Runs everything that is tested: format and lint, types and the Node tests side by side, then the tests in each browser.
 * `node tests/run.mjs [part ...] [--only=text] [--browser=name] [--fix] [--times]` runs some parts (lint, types, node,
 * browser), of the tests only the files whose path holds the text, in one browser, formats first, and says which files
 * took longest.
 */
import { spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readdirSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { dirname, resolve } from 'node:path'
import { error, log } from './browsers/say.mjs'
import { add, noCount, runNodeTests, startsBrowsers } from './node.mjs'

/**
 * @import { Engine } from './browsers/engines.mjs'
 * @import { Ran } from './browsers/run.mjs'
 * @import { Count } from './node.mjs'
 */

const args = process.argv.slice(2)
const only = args.find(a => a.startsWith('--only='))?.slice('--only='.length) ?? ''
const parts = args.filter(a => !a.startsWith('--'))
const testFiles = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .map(f => `tests/${f.replaceAll('\\', '/')}`)
  .filter(f => f.endsWith('.test.ts') && f.includes(only))
const browser = args.find(a => a.startsWith('--browser='))?.slice('--browser='.length)
const total = { passed: 0, failed: 0, again: /** @type {string[]} */ ([]) }
/** @type {Engine[]} */
const missing = []

/** @param {string} part */
const wanted = part => parts.length === 0 || parts.includes(part)

/**
 * @param {string} label
 * @param {() => Promise<boolean | string>} work true when it passed, false when it failed, words when neither is said yet
 */
async function report(label, work) {
  const started = Date.now()
  const outcome = await work().catch(fault => {
    error(fault instanceof Error ? fault.message : fault)
    return false
  })
  const seconds = ((Date.now() - started) / 1000).toFixed(1)
  log(`${label}: ${outcome === true ? 'passed' : outcome || 'FAILED'} in ${seconds} s`)
  if (!outcome) process.exitCode = 1
}

/**
 * Says what the command says once it has ended, so that two at once do not talk at the same time.
 * @param {string} program an installed package's command
 * @param {string[]} argv
 * @returns {Promise<boolean>}
 */
const command = (program, argv) =>
  new Promise(resolve => {
    const running = spawn(process.execPath, [`node_modules/${program}`, ...argv])
    /** @type {Buffer[]} */
    const said = []
    for (const stream of [running.stdout, running.stderr]) stream.on('data', words => said.push(words))
    running.on('close', code => {
      process.stdout.write(Buffer.concat(said))
      resolve(code === 0)
    })
  })

/** @param {Count} count */
function sayTimes({ times, busy }) {
  for (const [what, all] of Object.entries({ 'a page kept processors busy': busy, 'a file took': times })) {
    const longest = [...all].sort(([, a], [, b]) => b - a).slice(0, 25)
    const sum = [...all.values()].reduce((sum, ms) => sum + ms, 0)
    if (longest.length > 0) log(`What ${what}, of ${(sum / 1000).toFixed(1)} s in all:`)
    for (const [file, ms] of longest) log(`${(ms / 1000).toFixed(1).padStart(6)} s  ${file}`)
  }
}

/** @param {Count} count */
function passes(count) {
  total.passed += count.passed
  total.failed += count.failed
  if (args.includes('--times')) sayTimes(count)
  return count.failed === 0 && count.passed > 0
}

/**
 * @template T
 * @param {(outdir: string) => Promise<T>} work with a folder of its own, so that two runs at once do not sweep away each
 *   other's bundles
 * @returns {Promise<T>}
 */
async function inFolder(work) {
  mkdirSync('.build', { recursive: true })
  const outdir = mkdtempSync('.build/tests-')
  try {
    return await work(outdir)
  } finally {
    await rm(outdir, { recursive: true, force: true })
  }
}

/** @type {Promise<string> | undefined} */
let building
/** The built app, built once for all that want it: its folder. */
function builtSite() {
  building ??= (async () => {
    const { buildSite } = await import('../src/app/build.mjs')
    mkdirSync('.build', { recursive: true })
    const { outdir } = await buildSite({ outdir: resolve(mkdtempSync('.build/tests-'), 'site') })
    return outdir
  })()
  return building
}

/** @param {string[]} files */
async function testInBrowsers(files) {
  const { Asked } = await import('./browsers/pages/asked.mjs')
  const { engines } = await import('./browsers/engines.mjs')
  const { pagesOf } = await import('./browsers/pages/sharing.mjs')
  const { bundle, runIn } = await import('./browsers/run.mjs')
  const { tableStands } = await import('./browsers/table.mjs')
  const { Turns } = await import('./browsers/turns.mjs')
  const chosen = engines.filter(({ name }) => !browser || name.toLowerCase() === browser)
  if (chosen.length === 0) throw new Error(`There is no engine ${browser}.`)
  const pages = pagesOf(files)
  /** @param {Engine} engine */
  const pagesIn = ({ takes = () => true }) => pages.map(page => page.filter(takes))
  const there = chosen
    .filter(engine => pagesIn(engine).flat().length > 0)
    .flatMap(engine => {
      const program = engine.find()
      if (!program) missing.push(engine)
      return program ? [{ engine, program }] : []
    })
  // More than cores: a page mostly waits for its browser, and that for the page.
  const atOnce = Math.min(8, availableParallelism() + 1)
  const turns = new Turns(atOnce)
  const asked = new Asked(pages.length)
  await inFolder(async outdir => {
    await bundle(files, outdir, await builtSite())
    /** @type {Map<Engine, Ran>} */
    const all = new Map()
    await Promise.all(
      there.map(({ engine, program }) =>
        report(`Tests in ${engine.name}`, async () => {
          const asks = engine === there[0]?.engine
          const ran = await runIn(engine, program, pagesIn(engine), outdir, {
            atOnce: asks ? atOnce : Math.ceil(atOnce / there.length), // it has the most to do
            turns,
            asks,
            asked,
          }).finally(() => asks && asked.end())
          all.set(engine, ran)
          const failed = ran.counts.filter(count => count.failed > 0).length
          return failed === 0 || `${failed} of ${ran.counts.length} pages to be asked again`
        }),
      ),
    )
    // A machine that has three browsers to run, and kills others, may give a page no time for a minute.
    for (const { engine, program } of there) {
      const { counts = [] } = all.get(engine) ?? {}
      const failed = counts.flatMap((count, at) => (count.failed > 0 ? at : []))
      if (failed.length === 0) continue
      await report(`Asked again in ${engine.name}`, async () => {
        const pages = pagesIn(engine).map((page, at) => (failed.includes(at) ? page : []))
        const asks = engine === there[0]?.engine
        const again = await runIn(engine, program, pages, outdir, { atOnce: 1, turns, asks, asked })
        for (const at of failed) counts[at] = again.counts[at] ?? noCount()
        const right = failed.filter(at => counts[at]?.failed === 0)
        for (const at of right) total.again.push(`${engine.name}: ${pages[at]?.join(', ')}`)
        return right.length === failed.length
      })
    }
    const sums = there.flatMap(({ engine }) => {
      const { counts, besides } = all.get(engine) ?? {}
      if (!counts || !besides) return []
      const sum = noCount()
      for (const count of [...counts, besides]) add(sum, count)
      if (!passes(sum)) process.exitCode = 1
      return sum
    })
    if (only || sums.length < engines.length) return
    const names = engines.map(({ name }) => name)
    if (!tableStands(names, sums, args.includes('--fix'))) process.exitCode = 1
  })
}

const inBrowser = testFiles.filter(f => f.endsWith('.browser.test.ts'))
const inNode = testFiles.filter(f => !inBrowser.includes(f))
const lint = ['check', '--error-on-warnings', ...(args.includes('--fix') ? ['--write'] : []), '.']

/**
 * @param {string} label
 * @param {string[]} files
 */
const testInNode = (label, files) =>
  wanted('node') &&
  files.length > 0 &&
  report(label, () => inFolder(async outdir => passes(await runNodeTests(files, outdir, builtSite))))

// The browsers after the rest: a page that has to wait for a processor is slower than its tests expect.
await Promise.all([
  wanted('lint') && report('Format and lint', () => command('@biomejs/biome/bin/biome', lint)),
  wanted('types') && report('Types', () => command('typescript/bin/tsc', [])),
  testInNode(
    'Tests in Node',
    inNode.filter(f => !startsBrowsers(f)),
  ),
])
await Promise.all([
  testInNode('Tests that start browsers and kill them', inNode.filter(startsBrowsers)),
  wanted('browser') &&
    inBrowser.length > 0 &&
    testInBrowsers(inBrowser).catch(fault => {
      error(`\n✗ the tests or the app are not built: ${fault instanceof Error ? fault.message : fault}`)
      process.exitCode = 1
    }),
])
if (building) await building.then(site => rm(dirname(site), { recursive: true, force: true })).catch(() => {})
if (wanted('node') || wanted('browser')) log(`${total.passed} passed, ${total.failed} failed`)
for (const pages of total.again) log(`Passed only when asked again in ${pages}`)
for (const { name, toInstall } of missing) log(`NOT TESTED in ${name}, which is not here: ${toInstall}.`)
process.exit()
