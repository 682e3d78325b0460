/** Runs the Node tests: each bundled by esbuild, then in a process of its own under node:test. */
import { availableParallelism } from 'node:os'
import { relative } from 'node:path'
import { run } from 'node:test'
import { inspect } from 'node:util'
import { build } from 'esbuild'

/** @typedef {{ passed: number, failed: number }} Count */

/**
 * @param {string[]} files test files, paths from the top of the repository
 * @param {string} outdir where their bundles go
 * @returns {Promise<Count>}
 */
export async function runNodeTests(files, outdir) {
  await build({
    entryPoints: files,
    outdir,
    outbase: 'tests',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    loader: { '.csv': 'text' },
    sourcemap: 'inline',
    logLevel: 'warning',
    outExtension: { '.js': '.mjs' },
  })
  process.env.NODE_OPTIONS =
    `${process.env.NODE_OPTIONS ?? ''} --enable-source-maps --disable-warning=ExperimentalWarning`.trim()
  const count = { passed: 0, failed: 0 }
  const bundles = files.map(f => f.replace(/^tests/, outdir).replace(/\.ts$/, '.mjs'))
  const results = run({ files: bundles, concurrency: availableParallelism() })
  results.on('test:pass', ({ details }) => {
    if (details.type !== 'suite') count.passed += 1
  })
  results.on('test:fail', ({ name, details, file }) => {
    // A suite fails with its tests; only a fault of its own is news.
    const { failureType } = /** @type {{ failureType?: string }} */ (details.error)
    if (failureType === 'subtestsFailed') return
    count.failed += 1
    const source = relative('.', file ?? '').replace(`${outdir}/`, '')
    console.log(`\n✗ ${name}  (${source})\n${inspect(details.error.cause ?? details.error)}`)
  })
  results.on('test:stdout', ({ message }) => process.stdout.write(message))
  results.on('test:stderr', ({ message }) => process.stderr.write(message))
  for await (const event of results) if (event.type === 'test:summary') break
  return count
}
