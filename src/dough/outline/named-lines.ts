import type { Worded } from '../../engine/index.js'
import type { Formula } from '../document/formula.js'
import type { Larder } from '../document/larder.js'
import { linesCalled } from './names.js'
import { type LinePlan, type Outline, outlineOf } from './outline.js'
import { above } from './too-large.js'
import type { OutlineDiagnostic } from './words.js'

type Open<T> = { -readonly [K in keyof T]: T[K] }

/** How many lines of its stage the names in an amount stand for. */
const namedIn = (amount: LinePlan['amount'], { stage }: LinePlan): number =>
  !amount || 'problem' in amount
    ? 0
    : amount.expression.names.reduce((sum, name) => sum + linesCalled(name, stage).length, 0)

const counts = new WeakMap<Outline, number>()

/**
 * Why amounts of an outline name more lines than are worked out, were some of them `others`: each line that gives may move
 * every one of them. Undefined: they do not, and it counts with the others from now on.
 */
export function tooMuchNamed(
  outline: Outline,
  others: ReadonlyMap<LinePlan, LinePlan['amount']>,
): Worded<OutlineDiagnostic> | undefined {
  let named = counts.get(outline) ?? 0
  for (const [line, amount] of others) named += namedIn(amount, line) - namedIn(line.amount, line)
  const why = above('namings', named * (1 + outline.giving.length))
  if (!why) counts.set(outline, named)
  return why
}

/** A formula outlined as far as it can be worked out: where there is too much of it, no line has an amount and none gives. */
export function workableOutline(formula: Formula, larder: Larder): Outline {
  const outline = outlineOf(formula, larder) as Open<Outline>
  const lines = outline.stages.flatMap(stage => stage.lines) as Open<LinePlan>[]
  let named = 0
  for (const line of lines) named += namedIn(line.amount, line)
  counts.set(outline, named)
  outline.tooMuch ??= tooMuchNamed(outline, new Map())
  const why = outline.tooMuch
  if (!why) return outline
  for (const line of lines) {
    const { amount } = line
    if (amount) line.amount = { problem: why, typedIn: amount.typedIn, typed: amount.typed }
    line.gives = undefined
  }
  outline.giving = []
  outline.doughWeight = undefined
  return outline
}
