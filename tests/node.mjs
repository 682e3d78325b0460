/** Runs the Node tests: bundled by esbuild with their packages, then each file in a process of its own under node:test. */
import { readFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { relative } from 'node:path'
import { run } from 'node:test'
import { inspect } from 'node:util'
import { build } from 'esbuild'

/**
 * @typedef {object} Count
 * @property {number} passed
 * @property {number} failed
 * @property {Map<string, number>} times that each file took, in milliseconds
 * @property {Map<string, boolean>} results of the browser tests, by `file › title`
 */

/** What starts a browser, draws at random or counts work takes longest, and begins first. */
const takesLong = /** @param {string} file */ file =>
  file.startsWith('tests/whole-app/') || /\/(random|work)(\.js)?'/.test(readFileSync(file, 'utf8'))

/**
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir where their bundles go
 * @returns {Promise<Count>}
 */
export async function runNodeTests(files, outdir) {
  await build({
    entryPoints: files,
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
  process.env.NODE_OPTIONS =
    `${process.env.NODE_OPTIONS ?? ''} --enable-source-maps --disable-warning=ExperimentalWarning`.trim()
  /** @type {Count} */
  const count = { passed: 0, failed: 0, times: new Map(), results: new Map() }
  const inOrder = [...files.filter(takesLong), ...files.filter(file => !takesLong(file))]
  const bundles = inOrder.map(f => `${outdir}/${f.replace(/\.ts$/, '.mjs')}`)
  const results = run({ files: bundles, concurrency: availableParallelism() })
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
    console.log(`\n✗ ${name}  (${sourceOf(file)})\n${inspect(details.error.cause ?? details.error)}`)
  })
  results.on('test:stdout', ({ message }) => process.stdout.write(message))
  results.on('test:stderr', ({ message }) => process.stderr.write(message))
  for await (const event of results) if (event.type === 'test:summary') break
  return count
}
