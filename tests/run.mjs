/**
 * Runs everything that is tested: format and lint, types, the Node tests, then the Chromium tests.
 * `node tests/run.mjs [part ...] [--only=text]` runs some parts (lint, types, node, browser), and of the
 * tests only the files whose path holds the text.
 */
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { rm } from 'node:fs/promises'
import { build } from 'esbuild'

const args = process.argv.slice(2)
const only = args.find(a => a.startsWith('--only='))?.slice('--only='.length) ?? ''
const parts = args.filter(a => !a.startsWith('--'))
const wanted = part => parts.length === 0 || parts.includes(part)

function run(label, command, argv, env = {}) {
  const started = Date.now()
  const { status } = spawnSync(command, argv, { stdio: 'inherit', env: { ...process.env, ...env } })
  console.log(
    `${label}: ${status === 0 ? 'passed' : 'failed'} in ${((Date.now() - started) / 1000).toFixed(1)} s`,
  )
  if (status !== 0) process.exitCode = 1
}

async function nodeTests() {
  const entryPoints = readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .map(f => `tests/${f}`)
    .filter(f => f.endsWith('.test.ts') && !f.endsWith('.browser.test.ts') && f.includes(only))
  await rm('.build/node-tests', { recursive: true, force: true })
  await build({
    entryPoints,
    outdir: '.build/node-tests',
    outbase: 'tests',
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    packages: 'external',
    sourcemap: 'inline',
    logLevel: 'warning',
    outExtension: { '.js': '.mjs' },
  })
  run('Node tests', process.execPath, [
    '--enable-source-maps',
    '--test',
    ...entryPoints.map(f => f.replace(/^tests/, '.build/node-tests').replace(/\.ts$/, '.mjs')),
  ])
}

if (wanted('lint')) run('Format and lint', 'npx', ['biome', 'check', '--error-on-warnings', '.'])
if (wanted('types')) run('Types', 'npx', ['tsc'])
if (wanted('node')) await nodeTests()
