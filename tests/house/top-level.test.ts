import assert from 'node:assert/strict'
import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { test } from 'node:test'

const allowed = new Set([
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'src',
  'components',
  'examples',
  'tests',
  'README.md',
  'DEVELOPERS.md',
  'LICENSE',
])

// Written and not yet committed files are held to the same rules as committed ones.
const files = execFileSync('git', ['ls-files', '--cached', '--others', '--exclude-standard'], {
  encoding: 'utf8',
})
  .split('\n')
  .filter(path => path !== '' && existsSync(path))

const isCode = (path: string) => /\.(ts|mjs)$/.test(path)
const textOf = (path: string) => readFileSync(path, 'utf8')

test('the top level holds what the house allows and nothing else', () => {
  const others = files.map(f => f.split('/')[0]!).filter(name => !name.startsWith('.') && !allowed.has(name))
  assert.deepEqual([...new Set(others)], [])
})

test('every command that the README gives is a script of package.json', () => {
  const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> }
  const blocks = [...textOf('README.md').matchAll(/```sh\n([\s\S]*?)```/g)].map(([, block]) => block!)
  const commands = blocks.flatMap(block => [...block.matchAll(/\bnpm (?:run )?([\w-]+)/g)].map(([, c]) => c!))
  assert.deepEqual(commands.slice(0, 2), ['start', 'test'], 'the README opens with these two')
  for (const command of commands) assert.ok(command in scripts, `npm ${command}`)
})

test('whatever runs first puts the packages in place by itself', () => {
  const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> }
  for (const name of ['start', 'test', 'build', 'bench']) {
    assert.equal(scripts[`pre${name}`], 'node src/app/packages.mjs')
  }
  const imported = [...textOf('src/app/packages.mjs').matchAll(/from '([^']+)'/g)].map(([, name]) => name!)
  assert.deepEqual(
    imported.filter(name => !name.startsWith('node:')),
    [],
  )
})

test('no test is left out or run alone', () => {
  for (const path of files.filter(f => f.endsWith('.test.ts'))) {
    assert.doesNotMatch(
      textOf(path),
      /\b(?:it|test|describe|suite)\.(?:only|skip|todo)\b|\bx(?:it|describe)\(/,
      path,
    )
  }
})

test('no file of code is longer than 400 lines', () => {
  const long = files.filter(f => isCode(f) && textOf(f).split('\n').length > 401)
  assert.deepEqual(long, [])
})

test('public names are listed one by one', () => {
  for (const path of files.filter(f => isCode(f) && /^(src|components)\//.test(f))) {
    assert.doesNotMatch(textOf(path), /^export \*/m, path)
  }
})
