/**
 * `npm run bench`: prints tables of what was measured in Node, in Chromium, of the built page and in each engine. It
 * informs. `node tests/bench/run.mjs [node] [fuzz] [chromium] [page] [engines]` measures some of it; with `fuzz` come the
 * Node tests, the random ones with all their rounds.
 */
import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import { build } from 'esbuild'
import { launch } from 'puppeteer-core'
import { serve } from '../../src/app/server.mjs'
import { browserArguments, findBrowser } from '../browsers/chromium.mjs'
import { engineRows } from './engines.mjs'
import { pageRows } from './page.mjs'

/**
 * @import { Browser } from 'puppeteer-core'
 * @import { Row } from './row'
 */

mkdirSync('.build', { recursive: true })
const folder = mkdtempSync('.build/bench-')

/**
 * @param {string} json which has no NaN: null stands for it
 * @returns {Row[]}
 */
const rowsOf = json => JSON.parse(json, (_, value) => value ?? Number.NaN)

/**
 * @param {string[]} wanted parts of in-node.ts
 * @returns {Promise<Row[]>}
 */
async function nodeRows(wanted) {
  await build({
    entryPoints: ['tests/bench/in-node.ts'],
    outfile: `${folder}/in-node.mjs`,
    bundle: true,
    minify: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
  })
  const argv = ['--expose-gc', `${folder}/in-node.mjs`, ...wanted]
  const { stdout, stderr, status } = spawnSync(process.execPath, argv, { encoding: 'utf8', maxBuffer: 1e8 })
  process.stderr.write(status === 0 ? stderr : '')
  if (status !== 0) throw new Error(`The rows of Node failed.\n${stderr}`)
  return rowsOf(stdout)
}

/**
 * @param {Browser} browser
 * @returns {Promise<Row[]>}
 */
async function chromiumRows(browser) {
  const outdir = `${folder}/engine`
  await build({
    entryPoints: ['tests/bench/in-page.ts'],
    outdir,
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
  })
  writeFileSync(`${outdir}/index.html`, '<!doctype html><script type="module" src="in-page.js"></script>')
  const server = await serve(outdir, 0)
  const page = await browser.newPage()
  try {
    await page.goto(`http://localhost:${server.port}/`)
    await page.waitForFunction('globalThis.rows !== undefined')
    return rowsOf(String(await page.evaluate('JSON.stringify(globalThis.rows())')))
  } finally {
    await page.close()
    server.close()
  }
}

/** @param {number | undefined} value */
function figure(value) {
  if (value === undefined) return ''
  const digits = Math.abs(value) < 10 ? 2 : Math.abs(value) < 100 ? 1 : 0
  return value.toLocaleString('en', { minimumFractionDigits: digits, maximumFractionDigits: digits })
}

/**
 * @param {string} where
 * @param {Row} row
 */
function cells(where, { name, value, unit, baseline, ratio, budget }) {
  const held = ratio ?? value
  const verdict = budget === undefined ? '' : held <= budget ? 'ok' : 'over'
  const allowed = budget === undefined ? '' : `${figure(budget)}${ratio === undefined ? ` ${unit}` : ' ×'}`
  const times = ratio === undefined ? '' : `${figure(ratio)} ×`
  return [where, name, `${figure(value)} ${unit}`, figure(baseline), times, allowed, verdict]
}

/** @param {string[][]} table the first row its headings; the first two columns are words, the others numbers */
function print(table) {
  const widths = table[0]?.map((_, column) => Math.max(...table.map(row => row[column]?.length ?? 0))) ?? []
  for (const row of table) {
    const padded = row.map((cell, column) =>
      column < 2 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
    )
    console.log(padded.join('  ').trimEnd())
  }
}

const parts = process.argv.slice(2)
const wanted = /** @param {string} part */ part => parts.length === 0 || parts.includes(part)

if (wanted('fuzz')) {
  const all = { env: { ...process.env, ALL_ROUNDS: 'yes' }, stdio: /** @type {const} */ ('inherit') }
  process.exitCode = spawnSync(process.execPath, ['tests/run.mjs', 'node'], all).status ?? 1
}
const started = Date.now()
const browser = await launch({
  executablePath: findBrowser(),
  args: [...browserArguments, '--js-flags=--expose-gc', '--enable-precise-memory-info'],
})
try {
  /** @type {[string, string, () => Promise<Row[]>][]} */
  const measured = [
    ['Node', 'node', () => nodeRows(['node'])],
    ['Node', 'fuzz', () => nodeRows(['fuzz'])],
    ['Chromium', 'chromium', () => chromiumRows(browser)],
    ['page', 'page', () => pageRows(browser, folder)],
    ['engines', 'engines', () => engineRows(folder)],
  ]
  // What was measured is printed before the next is: a part that fails takes nothing with it.
  for (const [where, part, rows] of measured.filter(([, part]) => wanted(part))) {
    const heading = [where, `what (${part})`, 'measured', 'baseline', 'ratio', 'budget', '']
    print([heading, ...(await rows()).map(row => cells(where, row))])
    console.log()
  }
  const { version } = process
  console.log(
    `Medians, ${version} and ${await browser.version()}, ${Math.round((Date.now() - started) / 1000)} s.`,
  )
} finally {
  await browser.close()
  await rm(folder, { recursive: true, force: true })
}
