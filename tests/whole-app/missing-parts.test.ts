import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { test } from 'node:test'

test('whatever part of the browser is missing or does not answer, the page works or says that it does not', async () => {
  const said: string[] = []
  const running = spawn(process.execPath, ['tests/whole-app/missing-parts.mjs'])
  for (const stream of [running.stdout, running.stderr]) stream.on('data', words => said.push(String(words)))
  const code = await new Promise(resolve => running.on('close', resolve))
  assert.equal(code, 0, said.join(''))
  assert.match(said.join(''), /parts taken away: \d{2}, without a sentence: 0/)
})
