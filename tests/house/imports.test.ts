import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { test } from 'node:test'

/** Imports go one way: engine ← dough ← exchange, storage ← components ← app. */
const mayImport: Record<string, readonly string[]> = {
  'src/engine': [],
  'src/dough': ['src/engine'],
  'src/exchange': ['src/engine', 'src/dough'],
  'src/storage': ['src/engine', 'src/dough'],
  components: ['src/engine', 'src/dough', 'src/exchange', 'src/storage'],
  'src/app': ['src/engine', 'src/dough', 'src/exchange', 'src/storage', 'components', 'examples'],
}

const houseOf = (path: string) => Object.keys(mayImport).find(room => path.startsWith(`${room}/`))

for (const [room, allowed] of Object.entries(mayImport)) {
  test(`${room} imports only from ${allowed.join(', ') || 'itself'}`, () => {
    const files = readdirSync(room, { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts'))
    for (const file of files.map(f => join(room, f))) {
      const text = readFileSync(file, 'utf8')
      for (const [, target] of text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']*)'/g)) {
        const goesTo = normalize(join(dirname(file), target!))
        const there = houseOf(goesTo) ?? goesTo.split('/')[0]!
        assert.ok(there === room || allowed.includes(there), `${file} imports ${target}`)
      }
    }
  })
}

for (const room of ['src/engine', 'src/dough', 'src/exchange']) {
  test(`${room} never touches the DOM`, () => {
    const files = readdirSync(room, { recursive: true, encoding: 'utf8' }).filter(f => f.endsWith('.ts'))
    for (const file of files) {
      const code = readFileSync(join(room, file), 'utf8').replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '')
      assert.doesNotMatch(
        code,
        /\b(document|window|HTMLElement|localStorage|indexedDB)\s*[.[(]/,
        join(room, file),
      )
    }
  })
}
