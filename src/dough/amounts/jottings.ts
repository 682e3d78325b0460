import {
  type Dimension,
  dimensionOf,
  type Expression,
  ExpressionError,
  nameFor,
  parse,
  type Worded,
} from '../../engine/index.js'
import type { Jotting } from '../document/formula.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import { isWeightReading, readingWords } from '../document/words.js'
import { longestTyped } from '../lexicon/digits.js'
import { readingsInDoubt } from '../lexicon/plain-numbers.js'
import { unitWords } from '../lexicon/unit-words.js'
import { expressionProblem } from './expression-problem.js'
import { namedFirst } from './named-first.js'
import { amountProblem } from './words.js'

/** A jotting with what follows from its text alone. */
export interface JottingPlan {
  readonly jotting: Jotting
  readonly name: string // as amounts use it
  readonly expression: Expression | undefined
  readonly problem: Worded | undefined // why it is not understood
  readonly dimension: Dimension
}

/** `dough_weight`; `salt_on_flour`, since `salt` is the salt itself. */
const nameOfReading = (reading: ReadingName): string => {
  const name = nameFor(readingWords[reading])
  return name.includes('_') ? name : `${name}_on_flour`
}

/** The names by which amounts and jottings speak of readings: `dough_weight` → doughWeight. */
export const readingsByName: ReadonlyMap<string, ReadingName> = new Map(
  readingNames.map(reading => [nameOfReading(reading), reading]),
)

/** What a name measures that is a reading's: a weight, or a ratio without a unit. */
export const readingDimension = (name: string): Dimension | undefined => {
  const reading = readingsByName.get(name)
  return reading && (isWeightReading(reading) ? 'weight' : 'number')
}

/** The jottings by name; of two with one name the first is meant. None is read where there is a reason for it. */
export function planJottings(jottings: readonly Jotting[], unread?: Worded): Map<string, JottingPlan> {
  const parsed = new Map<string, { jotting: Jotting; expression?: Expression; problem?: Worded }>()
  for (const jotting of jottings) {
    const name = nameFor(jotting.name)
    if (parsed.has(name)) continue
    parsed.set(name, { jotting, ...(unread ? { problem: unread } : understood(jotting.text)) })
  }
  const plans = new Map<string, JottingPlan>()
  const measure = (expression: Expression): { dimension: Dimension; problem: Worded | undefined } => {
    try {
      // A name that is neither a reading nor a jotting is a line or a total of a stage: a weight.
      const of = (name: string) => plans.get(name)?.dimension ?? readingDimension(name) ?? 'weight'
      return { dimension: dimensionOf(expression, of), problem: undefined }
    } catch (error) {
      if (error instanceof ExpressionError)
        return { dimension: 'number', problem: expressionProblem(error.problem) }
      throw error
    }
  }
  const plan = (name: string): void => {
    const { jotting, expression, problem } = parsed.get(name)!
    const measured = expression ? measure(expression) : { dimension: 'number' as const, problem }
    plans.set(name, { jotting, name, expression, ...measured })
  }
  for (const name of parsed.keys())
    namedFirst(
      name,
      one => plans.has(one) || !parsed.has(one),
      one => parsed.get(one)?.expression?.names ?? [],
      plan,
    )
  return plans
}

/** What the names of jottings measure. */
export const dimensionsOf = (plans: ReadonlyMap<string, JottingPlan>): ReadonlyMap<string, Dimension> =>
  new Map([...plans].map(([name, plan]) => [name, plan.dimension]))

function understood(text: string): { expression: Expression } | { problem: Worded } {
  try {
    return { expression: parse(text, { units: unitWords, percentOf: null }) }
  } catch (error) {
    if (!(error instanceof ExpressionError)) throw error
    const doubt = text.length > longestTyped ? undefined : readingsInDoubt(text)
    return {
      problem: doubt
        ? amountProblem({ code: 'amountInTwoWays', ...doubt })
        : expressionProblem(error.problem),
    }
  }
}
