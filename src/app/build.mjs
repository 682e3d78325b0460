/**
 * Builds the app into a folder of static files. `npm run build` writes `.build/site` and prints what a
 * baker's browser has to fetch; serving, tests and measurements call `buildSite`.
 */
import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { copyFile, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { licencesOf } from './licences.mjs'

/** @import { BuildOptions, Metafile } from 'esbuild' */
/** @typedef {{ raw: number, gzip: number, brotli: number }} Bytes */

const here = dirname(fileURLToPath(import.meta.url))

/** Copied as they are, under their own names: the browser asks for them by address. */
const copied = ['icon.svg', 'icon-192.png', 'icon-512.png', 'manifest.webmanifest']

/** Built under names made of their contents, which the page is given. */
const entries = ['main.ts', 'styles.css']

/** Likewise, but each by itself: what one shares with the page would otherwise part the page's one file. */
const workers = ['day-worker.ts', 'reading-worker.ts']

/** @type {BuildOptions} */
const shared = {
  bundle: true,
  format: 'esm',
  target: 'es2022', // `esnext` would ship syntax that current browsers refuse
  loader: { '.csv': 'text' },
  charset: 'utf8', // as modules and workers are read; escapes are longer
  legalComments: 'none', // licences lie beside the code: licences.txt
  logLevel: 'warning',
}

/**
 * Makes the module `examples:formulas` by reading the example files once, here, rather than in every baker's browser.
 * @type {import('esbuild').Plugin}
 */
const examples = {
  name: 'examples',
  setup(site) {
    site.onResolve({ filter: /^examples:formulas$/ }, () => ({ path: 'formulas', namespace: 'examples' }))
    site.onLoad({ filter: /./, namespace: 'examples' }, async () => {
      const { outputFiles } = await build({
        ...shared,
        entryPoints: [join(here, 'example-files.ts')],
        platform: 'node',
        write: false,
      })
      const code = Buffer.from(outputFiles[0]?.contents ?? []).toString('base64')
      const { exampleFormulas } = await import(`data:text/javascript;base64,${code}`)
      return { contents: JSON.stringify(exampleFormulas()), loader: 'json' }
    })
  },
}

/**
 * Takes comments and needless blanks out of the style sheets in elements, and the indentation out of their templates,
 * which esbuild leaves as they are: text to it.
 * @type {import('esbuild').Plugin}
 */
const leanText = {
  name: 'lean text',
  setup(site) {
    site.onLoad({ filter: /[\\/]components[\\/].*\.ts$/ }, async ({ path }) => {
      const code = await readFile(path, 'utf8')
      const contents = code.replace(/\bcss`[^`]*`/g, styles =>
        styles
          .replace(/\/\*[\s\S]*?\*\//g, '')
          .replace(/\s+/g, ' ')
          .replace(/ ?([{};]) ?/g, '$1')
          .replace(/;}/g, '}')
          .replace(/([a-z]): /g, '$1:')
          .replace(/, /g, ',')
          .replace(/\b0(\.\d)/g, '$1'),
      )
      return { contents: contents.replace(/\n\s+/g, '\n'), loader: 'ts' }
    })
  },
}

/**
 * Keeps what the page begins with in one file. esbuild puts what parts that are fetched later use as well into files
 * of their own, a dozen of them, which together compress worse than one. Where every such part imports the whole
 * beginning, there is nothing to put apart.
 * @type {(main: string) => import('esbuild').Plugin}
 */
const oneBeginning = main => ({
  name: 'one beginning',
  setup(site) {
    site.onResolve({ filter: /./ }, async ({ path, kind, pluginData, ...from }) => {
      if (kind !== 'dynamic-import' || pluginData === main) return undefined
      const part = await site.resolve(path, { ...from, kind, pluginData: main })
      return part.errors.length ? part : { path: part.path, namespace: 'later' }
    })
    site.onLoad({ filter: /./, namespace: 'later' }, ({ path }) => ({
      contents: `import ${JSON.stringify(main)}\nexport * from ${JSON.stringify(path)}`,
      resolveDir: dirname(path),
    }))
  },
})

/**
 * @param {{
 *   outdir?: string,
 *   minify?: boolean,
 *   define?: Record<string, string>,
 *   source?: string,
 * }} [options] `source` is the folder with index.html and main.ts
 * @returns {Promise<{ outdir: string, files: string[], metafile: Metafile }>} `files` is all that is needed
 *   offline, as paths from the site's root
 */
export async function buildSite({ outdir = '.build/site', minify = true, define = {}, source = here } = {}) {
  await rm(outdir, { recursive: true, force: true })
  await mkdir(outdir, { recursive: true })
  const { metafile } = await build({
    ...shared,
    entryPoints: entries.map(name => join(source, name)),
    outdir,
    minify,
    define,
    plugins: [examples, oneBeginning(join(source, 'main.ts')), ...(minify ? [leanText] : [])],
    splitting: true,
    entryNames: '[name]-[hash]',
    chunkNames: 'part-[name]-[hash]',
    assetNames: '[name]-[hash]',
    metafile: true,
  })
  const { metafile: apart } = await build({
    ...shared,
    entryPoints: workers.map(name => join(source, name)).filter(existsSync),
    outdir,
    minify,
    define,
    entryNames: '[name]-[hash]',
    metafile: true,
  })
  const outputs = { ...metafile.outputs, ...apart.outputs }
  for (const name of copied) {
    if (existsSync(join(source, name))) await copyFile(join(source, name), join(outdir, name))
  }
  await buildRescue(source, outdir, { minify, define }, outputs)
  const html = await readFile(join(source, 'index.html'), 'utf8')
  await writeFile(join(outdir, 'index.html'), withBuiltNames(html, outputs))
  await writeFile(join(dirname(outdir), 'meta.json'), JSON.stringify(metafile))
  const own = await readFile(join(here, '..', '..', 'LICENSE'), 'utf8')
  await writeFile(join(outdir, 'licences.txt'), await licencesOf(metafile, own))

  const files = (await readdir(outdir)).sort()
  if (existsSync(join(source, 'worker.ts'))) {
    await build({
      ...shared,
      entryPoints: [join(source, 'worker.ts')],
      outfile: join(outdir, 'worker.js'),
      format: 'iife',
      minify,
      define: {
        ...define,
        __FILES__: JSON.stringify(files),
        __VERSION__: JSON.stringify(await versionOf(outdir, files)),
      },
    })
  }
  return { outdir, files, metafile }
}

/**
 * The page for when the other does not start: it shares no file of script with it.
 * @param {string} source
 * @param {string} outdir
 * @param {BuildOptions} options
 * @param {Metafile['outputs']} outputs of the page; its styles are the same
 */
async function buildRescue(source, outdir, options, outputs) {
  const page = join(source, 'rescue.html')
  if (!existsSync(page)) return
  const { metafile } = await build({
    ...shared,
    ...options,
    entryPoints: [join(source, 'rescue.ts')],
    outdir,
    entryNames: '[name]-[hash]',
    metafile: true,
  })
  let html = await readFile(page, 'utf8')
  for (const [path, { entryPoint }] of Object.entries({ ...outputs, ...metafile.outputs }))
    if (entryPoint) html = html.replace(`"${basename(entryPoint)}"`, `"${basename(path)}"`)
  await writeFile(join(outdir, 'rescue.html'), html)
}

/**
 * Points the page at the built script and styles, leaves its comments and indentation out, and has the browser fetch the script's parts at once
 * rather than one after the other.
 * @param {string} html
 * @param {Metafile['outputs']} outputs
 */
function withBuiltNames(html, outputs) {
  /** @type {Set<string>} */
  const parts = new Set()
  /** @param {string} path */
  const addPartsOf = path => {
    for (const { path: part, kind } of outputs[path]?.imports ?? []) {
      if (kind !== 'import-statement' || parts.has(part)) continue
      parts.add(part)
      addPartsOf(part)
    }
  }
  let page = html
  for (const [path, { entryPoint }] of Object.entries(outputs)) {
    const name = basename(entryPoint ?? '')
    if (!entries.includes(name) && !workers.includes(name)) continue
    if (!page.includes(`"${name}"`)) throw new Error(`index.html does not mention "${name}".`)
    page = page.replace(`"${name}"`, `"${basename(path)}"`)
    if (entries.includes(name)) addPartsOf(path)
  }
  const links = [...parts].map(part => `<link rel="modulepreload" href="${basename(part)}">\n`).join('')
  const lean = page.replace(/<!--[\s\S]*?-->/g, '').replace(/\n\s+/g, '\n')
  return lean.replace('</head>', `${links}</head>`)
}

/**
 * @param {string} outdir
 * @param {string[]} files
 */
async function versionOf(outdir, files) {
  const hash = createHash('sha256')
  for (const name of files) hash.update(name).update(await readFile(join(outdir, name)))
  return hash.digest('hex').slice(0, 12)
}

/**
 * What files weigh as they are and as servers send them, each compressed by itself; pictures left out.
 * @param {string} outdir
 * @param {readonly string[]} files
 * @returns {Promise<Bytes>}
 */
export async function bytesOf(outdir, files) {
  const sum = { raw: 0, gzip: 0, brotli: 0 }
  for (const name of files.filter(f => !/\.(png|svg)$/.test(f))) {
    const content = await readFile(join(outdir, name))
    sum.raw += content.length
    sum.gzip += gzipSync(content, { level: 9 }).length
    sum.brotli += brotliCompressSync(content).length
  }
  return sum
}

/**
 * @param {string} outdir
 * @param {readonly string[]} files
 */
export async function sizeInWords(outdir, files) {
  const { raw, gzip, brotli } = await bytesOf(outdir, files)
  const [r, g, b] = [raw, gzip, brotli].map(n => `${(n / 1000).toFixed(1)} kB`)
  return `${r} kept for work offline; ${g} with gzip, ${b} with brotli`
}

/**
 * esbuild has already said where and why; its message says it once more from the second line on.
 * @param {unknown} error
 */
export const inShort = error => (error instanceof Error ? error.message : String(error)).split('\n')[0]

if (basename(process.argv[1] ?? '') === 'build.mjs') {
  try {
    const { outdir, files } = await buildSite()
    console.log(`Built ${outdir}: ${await sizeInWords(outdir, files)}`)
  } catch (error) {
    console.error(`Tarebook was not built. ${inShort(error)}`)
    process.exitCode = 1
  }
}
