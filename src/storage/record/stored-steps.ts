import { readBakeData } from '../../day/bench/bake-data.js'
import '../../dough/cells/rare-cells-at-once.js'
import { readClearedData } from '../../dough/data/cleared-data.js'
import { readDayData } from '../../dough/data/day-data.js'
import { isFields, type Tell } from '../../dough/data/fields.js'
import { readFormulaData } from '../../dough/data/formula-data.js'
import { readIngredientData } from '../../dough/data/ingredient-data.js'
import { isPlain } from '../../dough/data/plain.js'
import type { Formula, Stage } from '../../dough/document/formula.js'
import type { Change, Workbook } from '../../dough/document/workbook.js'
import { hasTexts, optionsIn } from './read-part.js'
import type { Step, Steps } from './undo-steps.js'

const most = 50 // steps that outlive the page
const mostLines = 20_000 // of the formulas in them, so that a save stays quick

const linesIn = (formula: Pick<Formula, 'stages'>): number =>
  formula.stages.reduce((sum, stage) => sum + stage.lines.length, 1)

/** How much is written for a change. */
function weight(change: Change): number {
  if (change.of === 'stage') return change.value?.lines.length ?? 1
  const thing = change.of === 'cleared' ? change.value?.thing : change.of === 'formula' && change.value
  return isFields(thing) && Array.isArray(thing.stages) ? linesIn(thing as unknown as Formula) : 1
}

/** The latest steps, as many as are kept; the baker's places with them. */
export function stepsToKeep({ done, undone }: Steps<unknown>): Steps<unknown> {
  let left = mostLines
  const latest = (steps: readonly Step<unknown>[]) => {
    const kept: Step<unknown>[] = []
    for (const step of steps.slice(-most).reverse()) {
      left -= [...step.changes, ...step.inverse].reduce((sum, change) => sum + weight(change), 0)
      if (left < 0) break
      kept.unshift(step)
    }
    return kept
  }
  return { done: latest(done), undone: latest(undone) }
}

/** Whether a value is data that its reader takes as it is. */
const isWhole = (value: unknown, read: (value: unknown, tell: Tell) => unknown): boolean => {
  let told = false
  const tell = () => {
    told = true
  }
  return read(value, tell) === value && !told
}

const blank = { id: 'x', name: '', note: '', stages: [{ id: 'y', name: '', lines: [] }] }
const inFormula = (fields: object) => ({
  ...blank,
  flourWeight: 1,
  meanings: [],
  keptSettings: [],
  ...fields,
})

const isStage = (stage: unknown): boolean => isWhole(inFormula({ stages: [stage] }), readFormulaData)

/** Whether a change is one that can be made, as far as it can be told without the workbook. */
function isChange(change: unknown): change is Change {
  if (!isFields(change)) return false
  const { value, index } = change
  if (index !== undefined && !Number.isInteger(index)) return false
  const none = value === undefined
  switch (change.of) {
    case 'workbook':
      return (
        isFields(value) && (value.name === undefined || typeof value.name === 'string') && optionsAre(value)
      )
    case 'day':
      return hasTexts(change, 'id') && (none || isWhole(value, readDayData))
    case 'bake':
      return hasTexts(change, 'id') && (none || isWhole(value, readBakeData))
    case 'cleared':
      return hasTexts(change, 'id') && (none || isWhole(value, readClearedData))
    case 'ingredient':
      return hasTexts(change, 'id') && (none || isWhole(value, readIngredientData))
    case 'formula':
      return hasTexts(change, 'id') && (none || isWhole(value, readFormulaData))
    case 'fields':
      return hasTexts(change, 'formula') && isFields(value) && isWhole(inFormula(value), readFormulaData)
    case 'stage':
      return hasTexts(change, 'formula', 'id') && (none || isStage(value))
    case 'line':
      return (
        hasTexts(change, 'formula', 'stage', 'id') &&
        (none || isStage({ id: 'y', name: '', lines: [value] } as unknown as Stage))
      )
    default:
      return false
  }
}

const optionsAre = ({ scale, leeway, currency, later }: Partial<Workbook>): boolean => {
  const read = optionsIn({ scale, leeway, currency, later })
  return read.scale === scale && read.leeway === leeway && read.currency === currency && read.later === later
}

/** Of a baker's place only texts are used, each looked for before it is gone to. */
const isPlace = (at: unknown): boolean =>
  at === undefined || (isFields(at) && Object.values(at).every(part => typeof part === 'string'))

function isStep(step: unknown): step is Step<unknown> {
  if (!hasTexts(step, 'label')) return false
  const { place } = step
  if (place !== undefined && !(hasTexts(place, 'formula') && isPlace(place.at))) return false
  const { changes, inverse } = step as { changes?: unknown; inverse?: unknown }
  return [changes, inverse].every(list => Array.isArray(list) && list.every(isChange))
}

/** The steps in a stored part; undefined where one of them is not whole, since each follows from the one before. */
export function readSteps(part: unknown): Steps<unknown> | undefined {
  if (!isPlain(part) || !isFields(part)) return undefined
  const { done, undone } = part
  if (![done, undone].every(list => Array.isArray(list) && list.every(isStep))) return undefined
  return part as unknown as Steps<unknown>
}
