import assert from 'node:assert/strict'
import { test } from 'node:test'
import { printedBy } from './printed.js'

interface Printed {
  readonly name: string
  readonly paper: 'a4' | 'letter'
  readonly pages: number
  readonly stages: readonly { readonly inside: string; readonly height: number }[]
  readonly hidden: boolean
  readonly room: number
}

test('the sheet of every example is two pages at most, on A4 and Letter, and no stage is broken', async () => {
  const printed = await printedBy<Printed>('tests/whole-app/sheet-printed.mjs')
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
