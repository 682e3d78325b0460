import { nameFor, parse, type Worded } from '../../engine/index.js'
import type { Formula } from '../document/formula.js'
import type { DecimalMark } from '../lexicon/digits.js'
import { inDoubt, plainNumbers, typedText } from '../lexicon/plain-numbers.js'
import { isOnlyUnit, unitWords } from '../lexicon/unit-words.js'
import { type JottingDiagnostic, jottingProblem } from './jotting-words.js'
import { readingsByName } from './jottings.js'

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
): Worded<JottingDiagnostic> | undefined {
  const used = nameFor(name)
  if (!/[\p{L}\p{N}]/u.test(used)) return jottingProblem({ code: 'jottingWithoutName' })
  const taken = (by: 'jotting' | 'Tarebook' | 'unit') =>
    jottingProblem({ code: 'jottingNameTaken', name, by })
  if (ownNames.has(used) || readingsByName.has(used)) return taken('Tarebook')
  if (isOnlyUnit(used)) return taken('unit')
  const like = (named: string, what: 'ingredient' | 'stage') =>
    jottingProblem({ code: 'jottingNamedLike', name: named, what })
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
