import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { describe, test } from 'node:test'

const seed = 20261130

describe('whatever is killed', { concurrency: true }, () => {
  for (const [what, times, session] of [
    ['while somebody types', 20, 'typing'],
    ['while somebody weighs at the bench', 10, 'bench'],
  ] as const)
    test(`${times} kills of page and browser ${what} (seed ${seed}) lose nothing that was shown as saved`, async () => {
      const said: string[] = []
      const asked = ['tests/bench/kills.mjs', String(times), String(seed), session]
      const running = spawn(process.execPath, asked)
      for (const stream of [running.stdout, running.stderr])
        stream.on('data', words => said.push(String(words)))
      const code = await new Promise(resolve => running.on('close', resolve))
      process.stdout.write(said.join(''))
      assert.equal(code, 0, said.join(''))
      const counts = JSON.parse(/\{.*\}/.exec(said.join(''))![0])
      assert.equal(counts.kills, times)
      assert.ok(counts.ofTheBrowser > 0 && counts.seenSaved > 0, JSON.stringify(counts))
    })
})
