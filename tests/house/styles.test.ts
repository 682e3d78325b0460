import assert from 'node:assert/strict'
import { readdirSync, readFileSync } from 'node:fs'
import { test } from 'node:test'

test('a text-decoration that says more than its line is written in longhands, or WebKit drops it', () => {
  const files = ['components', 'src/app'].flatMap(folder =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(name => `${folder}/${name}`),
  )
  const found = files
    .filter(file => /\.(ts|css)$/.test(file))
    .flatMap(file =>
      [...readFileSync(file, 'utf8').matchAll(/text-decoration: [\w-]+ [^;]*/g)].map(
        ([said]) => `${file}: ${said}`,
      ),
    )
  assert.deepEqual(found, [])
})
