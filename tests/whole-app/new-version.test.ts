import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { test } from 'node:test'

test('after another tab took a new version, the old tab still has its late parts and says that there is one', async () => {
  const said: string[] = []
  const running = spawn(process.execPath, ['tests/whole-app/new-version.mjs'])
  for (const stream of [running.stdout, running.stderr]) stream.on('data', words => said.push(String(words)))
  const code = await new Promise(resolve => running.on('close', resolve))
  assert.equal(code, 0, said.join(''))
})
