/** Rows of what a browser fetches. */
import { rm } from 'node:fs/promises'
import { build } from 'esbuild'
import { bytesOf } from '../../src/app/build.mjs'

/** @import { Row } from './row' */

const kilobytes = /** @param {number} bytes */ bytes => bytes / 1000

/**
 * @param {string} site
 * @param {readonly string[]} kept
 * @param {readonly string[]} fetched
 * @returns {Promise<Row[]>}
 */
export async function sizes(site, kept, fetched) {
  const engine = `${site}-engine`
  await build({
    stdin: {
      contents: "export * from './index'\nexport * from './solve'",
      resolveDir: 'src/engine',
      loader: 'ts',
    },
    bundle: true,
    minify: true,
    format: 'esm',
    target: 'es2022',
    legalComments: 'none',
    outfile: `${engine}/index.js`,
  })
  const alone = await bytesOf(engine, ['index.js'])
  await rm(engine, { recursive: true })
  // A first start fetches the example formulas besides; they are something to edit, not what edits.
  const examples = fetched.filter(name => name.includes('first-start'))
  if (examples.length !== 1) throw new Error('The example formulas are not in a file of their own any more.')
  const toEdit = await bytesOf(
    site,
    fetched.filter(name => !examples.includes(name)),
  )
  const firstStart = await bytesOf(site, fetched)
  const all = await bytesOf(site, kept)
  const unit = 'kB'
  return [
    { name: 'page, needed to edit offline: as it is', value: kilobytes(toEdit.raw), unit },
    { name: 'page, needed to edit offline: gzip', value: kilobytes(toEdit.gzip), unit },
    { name: 'page, needed to edit offline: brotli', value: kilobytes(toEdit.brotli), unit, budget: 93.8 },
    { name: 'the same with the examples of a first start', value: kilobytes(firstStart.brotli), unit },
    { name: 'page, all that is kept for work offline: brotli', value: kilobytes(all.brotli), unit },
    { name: 'engine, parser and solver: gzip', value: kilobytes(alone.gzip), unit, budget: 19.6 },
  ]
}
