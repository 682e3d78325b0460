import assert from 'node:assert/strict'
import { type Bench, benchOf, happenedAt } from '../../src/day/bench/bench-day.js'
import { type AtBench, noteDone } from '../../src/day/bench/bench-edits.js'
import { type BenchNow, beginningOf, benchNow, type Todo } from '../../src/day/bench/todos.js'
import { weighingList } from '../../src/day/bench/weighing-list.js'
import { todoName } from '../../src/day/bench/words.js'
import { type DaySheet, openDay, openFound } from '../../src/day/plan/open-day.js'
import { Planning } from '../../src/day/plan/planning.js'
import { Weights } from '../../src/day/plan/weigh-list.js'
import type { Day } from '../../src/dough/document/day.js'
import type { Formula } from '../../src/dough/document/formula.js'
import { applyChanges, type Transaction, type Workbook } from '../../src/dough/document/workbook.js'
import { saturday } from './notation.js'
import { workedWheat } from './worked-bread.js'

export const start = Date.parse('2026-12-03T00:00Z') / 60_000 // the worked check counts minutes from here

/** A bench that is lived through: its workbook, its clock, and what it shows. */
export class Lived {
  workbook: Workbook
  now = 0 // minutes from the start
  readonly #key: string

  constructor(formulas: readonly Formula[], day: Day | undefined) {
    this.workbook = { name: '', formulas, larder: [], ...(day && { days: [day] }) }
    this.#key = day?.id ?? formulas[0]!.id
  }
  get bench(): Bench {
    return benchOf(this.workbook, this.#key, start + this.now, 'UTC')!
  }
  get sheet(): DaySheet {
    const { bench } = this
    const { day, formulas, leeway } = bench
    const of = { day, formulas, leeway, happened: happenedAt(bench, start + this.now) }
    const planning = new Planning(of)
    while (!planning.step());
    return openFound(of, new Weights(formulas, undefined), planning.found())
  }
  get shown(): BenchNow {
    return benchNow(this.sheet, happenedAt(this.bench, start + this.now))
  }
  get where(): AtBench {
    const { day, formulas } = this.bench
    const planned = openDay(day, formulas).plan?.at ?? new Map()
    return { bench: this.bench, now: start + this.now, planned }
  }
  todo(name: string): Todo {
    const found = this.shown.todos.find(todo => todoName(todo) === name && todo.done === undefined)
    assert.ok(found, `${name} among ${this.shown.todos.map(todo => todoName(todo)).join(', ')}`)
    return found
  }
  apply({ changes }: Transaction): void {
    this.workbook = applyChanges(this.workbook, changes).workbook
  }
  done(name: string, at = this.now): void {
    const todo = this.todo(name)
    const from = beginningOf(todo, start + at, happenedAt(this.bench, start + this.now))
    this.apply(noteDone(this.workbook, this.where, todo, { name, at: start + at, from }))
  }
  due(name: string): number {
    return this.todo(name).due - start
  }
}

export const list = (lived: Lived, name: string) =>
  weighingList(lived.sheet, lived.todo(name), lived.bench.bakes)

/** The worked bread on its day, ready at 3420; nothing is done yet. */
export function worked(more: Partial<Day> = {}): Lived {
  const formula = workedWheat()
  return new Lived([formula], saturday([[formula, 6]], more))
}
