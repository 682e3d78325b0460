import {
  type Dimension,
  dimensionOf,
  type Expression,
  ExpressionError,
  nameFor,
  parse,
  type Worded,
} from '../../engine/index.js'
import type { Formula, Jotting } from '../document/formula.js'
import { type ReadingName, readingNames } from '../document/reading-names.js'
import { isWeightReading, readingWords } from '../document/words.js'
import { inDoubt, plainNumbers, readingsInDoubt } from './plain-numbers.js'
import { typedText } from './typed.js'
import { isOnlyUnit, unitWords } from './unit-words.js'
import { type AmountDiagnostic, amountProblem } from './words.js'
import type { DecimalMark } from './written-numbers.js'

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

/** What amounts call by themselves in every stage. */
const ownNames = new Set('base flour water salt weight total_flour total_water total_salt'.split(' '))

/** A name as it is kept: as typed where amounts can use it so, or else as they can: `per loaf` is `per_loaf`. */
export function jottingNameAsKept(typed: string): string {
  const name = typed.trim()
  const used = nameFor(name)
  return name.toLowerCase().normalize('NFC') === used ? name : used
}

/** Why a name cannot be a jotting's; undefined when it can. `id` is of the jotting to be named so. */
export function jottingNameProblem(
  name: string,
  formula: Formula,
  id = '',
): Worded<AmountDiagnostic> | undefined {
  const used = nameFor(name)
  if (!/[\p{L}\p{N}]/u.test(used)) return amountProblem({ code: 'jottingWithoutName' })
  const taken = (by: 'jotting' | 'Tarebook' | 'unit') => amountProblem({ code: 'jottingNameTaken', name, by })
  if (ownNames.has(used) || readingsByName.has(used)) return taken('Tarebook')
  if (isOnlyUnit(used)) return taken('unit')
  const like = (named: string, what: 'ingredient' | 'stage') =>
    amountProblem({ code: 'jottingNamedLike', name: named, what })
  const line = formula.stages.flatMap(s => s.lines).find(l => l.ingredient && nameFor(l.ingredient) === used)
  if (line) return like(line.ingredient, 'ingredient')
  const stage = formula.stages.find(s => nameFor(s.name) === used)
  if (stage) return like(stage.name, 'stage')
  return formula.jottings?.some(j => j.id !== id && nameFor(j.name) === used) ? taken('jotting') : undefined
}

/** What is kept of a jotting's text: decimal points; what is not understood as it is. */
export function jottingAsKept(typed: string, decimal: DecimalMark): string {
  const plain = plainNumbers(typedText(typed), decimal)
  const doubt = plain.doubts.find(d => !d.typed.includes(decimal))
  if (doubt) return inDoubt(plain, doubt)
  try {
    return parse(plain.text, { units: unitWords, percentOf: null }).text
  } catch {
    return typedText(typed)
  }
}

/** The jottings by name; of two with one name the first is meant. */
export function planJottings(jottings: readonly Jotting[]): Map<string, JottingPlan> {
  const parsed = new Map<string, { jotting: Jotting; expression?: Expression; problem?: Worded }>()
  for (const jotting of jottings) {
    const name = nameFor(jotting.name)
    if (!parsed.has(name)) parsed.set(name, { jotting, ...understood(jotting.text) })
  }
  const plans = new Map<string, JottingPlan>()
  const open = new Set<string>()
  const planOf = (name: string): JottingPlan | undefined => {
    const one = parsed.get(name)
    if (!one || plans.has(name) || open.has(name)) return plans.get(name)
    open.add(name)
    const { jotting, expression } = one
    const measured = expression ? measure(expression) : { dimension: 'number' as const, problem: one.problem }
    plans.set(name, { jotting, name, expression, ...measured })
    return plans.get(name)
  }
  const measure = (expression: Expression): { dimension: Dimension; problem: Worded | undefined } => {
    try {
      // A name that is neither a reading nor a jotting is a line or a total of a stage: a weight.
      const of = (name: string) => planOf(name)?.dimension ?? readingDimension(name) ?? 'weight'
      return { dimension: dimensionOf(expression, of), problem: undefined }
    } catch (error) {
      if (error instanceof ExpressionError) return { dimension: 'number', problem: error.problem }
      throw error
    }
  }
  for (const name of parsed.keys()) planOf(name)
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
    const doubt = readingsInDoubt(text)
    return { problem: doubt ? amountProblem({ code: 'amountInTwoWays', ...doubt }) : error.problem }
  }
}
