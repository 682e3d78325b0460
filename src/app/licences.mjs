/** The licences of the packages that are built in. Each asks that its text goes along with the code. */
import { readdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'

/** @import { Metafile } from 'esbuild' */

/**
 * The folders of the packages of which something is in the build.
 * @param {Metafile} metafile
 * @returns {string[]}
 */
export function packagesIn({ outputs }) {
  const used = Object.values(outputs).flatMap(({ inputs }) =>
    Object.entries(inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
  )
  const folders = used.flatMap(
    path => /^(?:later:)?(.*\bnode_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? [],
  )
  return [...new Set(folders)].sort()
}

/**
 * @param {string} folder of a package
 * @returns {Promise<string>} its name and version, and the texts it comes with
 * @throws {Error} where it has none
 */
async function licenceOf(folder) {
  const { name, version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'))
  const files = (await readdir(folder)).filter(file => /^(?:licen[cs]e|notice|copying)\b/i.test(file)).sort()
  const texts = await Promise.all(files.map(file => readFile(join(folder, file), 'utf8')))
  if (texts.length === 0) throw new Error(`${name} comes without the text of its licence.`)
  return [`${name} ${version} (${license})`, ...texts.map(text => text.trim())].join('\n\n')
}

/**
 * @param {Metafile} metafile
 * @param {string} own the text of Tarebook's licence
 * @returns {Promise<string>}
 */
export async function licencesOf(metafile, own) {
  const others = await Promise.all(packagesIn(metafile).map(licenceOf))
  const head = 'Tarebook is built with the packages named here, each under its own licence.'
  return `${[`Tarebook\n\n${own.trim()}`, head, ...others].join(`\n\n${'-'.repeat(72)}\n\n`)}\n`
}
