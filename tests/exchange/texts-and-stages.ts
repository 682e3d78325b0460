import assert from 'node:assert/strict'
import { test } from 'node:test'
import type { Formula } from '../../src/dough/document/formula.js'
import { arrive } from '../../src/exchange/arriving/arrive.js'

/** A text as it is pasted, and the stages it is read into: `Levain: Bread flour 50 g, Water 50 g`. */
export type TextCase = readonly [what: string, recipe: string, ...stages: string[]]

/** The dough of most of them, and the list that is read into it. */
export const dough = 'Bread flour 500 g, Water 340 g, Salt 10 g'
export const list = '500 g bread flour\n340 g water\n10 g salt'

/** The stages of a formula as the cases have them. */
export const stagesShown = ({ stages }: Formula): string[] =>
  stages.map(
    ({ name, lines }) => `${name}: ${lines.map(l => `${l.ingredient} ${l.amount}`.trim()).join(', ')}`,
  )

/** A test of each: its text arrives as these stages. */
export function testArrivals(cases: readonly TextCase[]): void {
  for (const [what, recipe, ...stages] of cases)
    test(what, () => assert.deepEqual(stagesShown(arrive(recipe).formulas[0]!), stages))
}
