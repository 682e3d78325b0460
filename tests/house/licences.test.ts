import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { test } from 'node:test'

interface Output {
  readonly inputs: Readonly<Record<string, { readonly bytesInOutput: number }>>
}

test('the built site carries the licence of each package that something of is in it, whole', () => {
  const outdir = process.env.BUILT_SITE!
  const metafile: { outputs: Record<string, Output> } = JSON.parse(
    readFileSync(join(outdir, '..', 'meta.json'), 'utf8'),
  )
  const said = readFileSync(join(outdir, 'licences.txt'), 'utf8')
  assert.ok(said.includes(readFileSync('LICENSE', 'utf8').trim()))
  // What an output has of an input is told by esbuild; a package is the folder after the last node_modules.
  const parts = Object.values(metafile.outputs).flatMap(({ inputs }) => Object.entries(inputs))
  const paths = parts.filter(([path, { bytesInOutput }]) => bytesInOutput && path.includes('node_modules'))
  const names = new Set(
    paths.map(([path]) => {
      const [first, second] = path.split('node_modules/').at(-1)!.split('/')
      return first!.startsWith('@') ? `${first}/${second}` : first!
    }),
  )
  for (const wanted of ['lit-html', 'mathjs', 'papaparse', 'idb-keyval']) assert.ok(names.has(wanted), wanted)
  for (const name of names) {
    const { version } = JSON.parse(readFileSync(`node_modules/${name}/package.json`, 'utf8'))
    assert.ok(said.includes(`\n${name} ${version} (`), name)
  }
  for (const file of [
    'mathjs/LICENSE',
    'mathjs/NOTICE',
    'lit/LICENSE',
    'papaparse/LICENSE',
    'idb-keyval/LICENCE',
  ])
    assert.ok(said.includes(readFileSync(`node_modules/${file}`, 'utf8').trim()), file)
})
