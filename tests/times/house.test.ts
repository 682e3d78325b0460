import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { test } from 'node:test'

const room = 'src/times'
const files = readdirSync(room, { recursive: true, encoding: 'utf8' })
  .filter(file => file.endsWith('.ts'))
  .map(file => join(room, file))

const importsOf = (file: string) =>
  [...readFileSync(file, 'utf8').matchAll(/from '([^']*)'/g)].map(([, target]) =>
    target!.startsWith('.') ? normalize(join(dirname(file), target!)).replace(/\.js$/, '.ts') : target!,
  )

test('the solver of times imports nothing but its own files', () => {
  assert.ok(files.length > 10)
  for (const file of files)
    for (const target of importsOf(file)) assert.ok(files.includes(target), `${file}: ${target}`)
})

test('no file of the solver imports itself by a circle', () => {
  const left = new Map(files.map(file => [file, importsOf(file)]))
  for (let before = -1; before !== left.size; ) {
    before = left.size
    for (const [file, targets] of left) if (!targets.some(target => left.has(target))) left.delete(file)
  }
  assert.deepEqual([...left.keys()], [])
})
