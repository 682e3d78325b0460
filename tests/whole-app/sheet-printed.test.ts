import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { test } from 'node:test'

interface Printed {
  readonly name: string
  readonly paper: 'a4' | 'letter'
  readonly pages: number
  readonly stages: readonly { readonly inside: string; readonly height: number }[]
  readonly hidden: boolean
  readonly room: number
}

test('the sheet of every example is two pages at most, on A4 and Letter, and no stage is broken', async () => {
  const said: string[] = []
  const wrong: string[] = []
  const running = spawn(process.execPath, ['tests/whole-app/sheet-printed.mjs'])
  running.stdout.on('data', words => said.push(String(words)))
  running.stderr.on('data', words => wrong.push(String(words)))
  const code = await new Promise(resolve => running.on('close', resolve))
  assert.equal(code, 0, wrong.join(''))
  const printed = said
    .join('')
    .split('\n')
    .filter(line => line.startsWith('{'))
    .map(line => JSON.parse(line) as Printed)
  assert.equal(printed.length, 12, 'six examples on two papers')
  for (const { name, paper, pages, stages, hidden, room } of printed) {
    const which = `${name} on ${paper}`
    assert.ok(pages === 1 || pages === 2, `${which} is ${pages} pages`)
    assert.ok(stages.length >= 2, which)
    for (const { inside, height } of stages) {
      assert.equal(inside, 'avoid', which)
      assert.ok(height > 0 && height < room, `a stage of ${which} is ${height} px high, of ${room}`)
    }
    assert.ok(hidden, `${which} is without what is there to work with`)
  }
})
