/** Runs the Node tests: bundled by esbuild with their packages, then a folder's files in few processes under node:test. */
import { readFileSync, writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { dirname, relative } from 'node:path'
import { run } from 'node:test'
import { inspect } from 'node:util'
import { build } from 'esbuild'
import { log } from './browsers/say.mjs'

/**
 * @typedef {object} Count
 * @property {number} passed
 * @property {number} failed
 * @property {Map<string, number>} times that each file took, in milliseconds
 * @property {Map<string, number>} busy that a page in a browser kept processors, in milliseconds
 * @property {Map<string, boolean>} results of the browser tests, by `file › title`
 */

/** @returns {Count} */
export const noCount = () => ({ passed: 0, failed: 0, times: new Map(), busy: new Map(), results: new Map() })

/**
 * @param {Count} to
 * @param {Count} more
 */
export function add(to, more) {
  to.passed += more.passed
  to.failed += more.failed
  for (const [what, ms] of more.times) to.times.set(what, (to.times.get(what) ?? 0) + ms)
  for (const [what, ms] of more.busy) to.busy.set(what, (to.busy.get(what) ?? 0) + ms)
  for (const [test, passed] of more.results) to.results.set(test, passed)
}

/** @param {string} file */
export const startsBrowsers = file => file.startsWith('tests/whole-app/')

/**
 * What a file says of how it runs. Alone: one that says so, that counts work, or whose hooks would be those of others too.
 * Long: what starts a browser, draws at random or counts work.
 * @param {string} file
 */
function howRun(file) {
  const text = readFileSync(file, 'utf8')
  const counts = /\/work(\.js)?'/.test(text)
  return {
    file,
    alone: startsBrowsers(file) || counts || /^(before|after)(Each)?\(|In a process of its own:/m.test(text),
    long: startsBrowsers(file) || counts || /\/random(\.js)?'/.test(text),
  }
}

const nodeOptions =
  `${process.env.NODE_OPTIONS ?? ''} --enable-source-maps --disable-warning=ExperimentalWarning`.trim()

const inGroup = 10 // files: a start, and compiling what it imports, cost more than the tests of most

/**
 * Files that run in one process: some of a folder, as they share much of what they import, with as many that take long in
 * each. Those with most of these come first.
 * @param {string[]} files
 * @returns {string[][]}
 */
function groupsOf(files) {
  const how = files.map(howRun).sort((a, b) => Number(b.long) - Number(a.long))
  /** @type {Map<string, typeof how>} */
  const byFolder = new Map()
  for (const each of how.filter(({ alone }) => !alone)) {
    const folder = dirname(each.file)
    byFolder.set(folder, [...(byFolder.get(folder) ?? []), each])
  }
  const shared = [...byFolder.values()].flatMap(those => {
    const groups = Math.ceil(those.length / inGroup)
    return Array.from({ length: groups }, (_, i) => those.filter((_, at) => at % groups === i))
  })
  const long = /** @param {typeof how} those */ those => those.filter(each => each.long).length
  return [...how.filter(({ alone }) => alone).map(each => [each]), ...shared]
    .sort((a, b) => long(b) - long(a))
    .map(those => those.map(({ file }) => file))
}

/**
 * The program of a process: each file by itself, so that one that cannot be loaded keeps no other from its tests.
 * @param {string[]} files
 */
const programOf = files => `import { test } from 'node:test'
for (const file of ${JSON.stringify(files)})
  await import('./' + file.replace(/ts$/, 'mjs')).catch(error => test('is loaded: ' + file, () => Promise.reject(error)))
`

/**
 * @param {string[]} entryPoints
 * @param {string} outdir
 */
const bundle = (entryPoints, outdir) =>
  build({
    entryPoints,
    outdir,
    outbase: '.',
    bundle: true, // with packages, for reading mathjs file by file takes each process a second
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    loader: { '.csv': 'text' },
    sourcemap: 'linked',
    sourcesContent: false,
    logLevel: 'warning',
    outExtension: { '.js': '.mjs' },
  })

/**
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir where their bundles go
 * @param {() => Promise<string>} site builds the app: tests that want it find its folder in `BUILT_SITE`
 * @returns {Promise<Count>}
 */
export async function runNodeTests(files, outdir, site) {
  const wantsSite = files.some(
    file => startsBrowsers(file) || readFileSync(file, 'utf8').includes('BUILT_SITE'),
  )
  if (wantsSite) process.env.BUILT_SITE = await site()
  // A file that uses all of mathjs would have the others load it too, of which they use the parser.
  const useAll = files.filter(file => /from 'mathjs'/.test(readFileSync(file, 'utf8')))
  await Promise.all([useAll, files.filter(file => !useAll.includes(file))].map(each => bundle(each, outdir)))
  process.env.NODE_OPTIONS = nodeOptions
  const count = noCount()
  const programs = groupsOf(files).map((group, at) => {
    const program = `${outdir}/group-${at}.mjs`
    writeFileSync(program, programOf(group))
    return program
  })
  const results = run({ files: programs, concurrency: availableParallelism() })
  /** @param {string | undefined} file */
  const sourceOf = file =>
    relative('.', file ?? '')
      .replace(`${outdir}/`, '')
      .replace(/\.mjs$/, '.ts')
  /** @param {{ file?: string, nesting: number, details: { duration_ms: number } }} event */
  const took = ({ file, nesting, details }) => {
    if (nesting > 0) return
    count.times.set(sourceOf(file), (count.times.get(sourceOf(file)) ?? 0) + details.duration_ms)
  }
  results.on('test:pass', event => {
    took(event)
    if (event.details.type !== 'suite') count.passed += 1
  })
  results.on('test:fail', event => {
    took(event)
    const { name, details, file } = event
    // A suite fails with its tests; only a fault of its own is news.
    const { failureType } = /** @type {{ failureType?: string }} */ (details.error)
    if (failureType === 'subtestsFailed') return
    count.failed += 1
    log(`\n✗ ${name}  (${sourceOf(file)})\n${inspect(details.error.cause ?? details.error)}`)
  })
  results.on('test:stdout', ({ message }) => process.stdout.write(message))
  results.on('test:stderr', ({ message }) => process.stderr.write(message))
  for await (const event of results) if (event.type === 'test:summary') break
  return count
}
