import {
  type Formula,
  finalDoughOf,
  type Hold,
  isInProportion,
  type Line,
} from '../../src/dough/document/formula.js'
import { holdWords } from '../../src/dough/document/words.js'
import type { Change } from '../../src/dough/document/workbook.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { hasSoaker, leadingHydration } from '../../src/dough/sheet/ranges.js'
import { type NumberStyle, showGrams, showPercent } from '../base/numbers.js'
import { readingInSentence } from '../base/words.js'
import type { Desk, DeskEvent } from './desk.js'
import { saidWords } from './said-words.js'

/** What happened on a desk, in a sentence: `Water set to 700 grams; true hydration 73.3 %`. */
export function said(desk: Desk, happened: DeskEvent): string {
  const { sheet, numbers } = desk
  const { event, before: reading } = happened
  const { transaction, way, before } = event
  const { label, changes } = transaction
  if (way === 'undo') return withHydration(saidWords.undone(label))
  if (way === 'redo') return withHydration(saidWords.doneAgain(label))
  if (way === 'load' || !sheet) return label
  const was = before.formulas.find(f => f.id === sheet.formula.id)
  const hold = was && newlyHeld(changes, was.holds, sheet.formula)
  const own = was && (hold ? holdInWords(sheet, hold, numbers) : inWords(sheet, was, changes, numbers))
  const first = own ?? saidWords.done(label)
  const soaked = soakerCountedIn(desk, happened)
  return soaked ? saidWords.also(first, soaked) : withHydration(first, hold)

  function withHydration(first: string, hold?: Hold): string {
    if (!sheet || reading?.formula !== sheet.formula.id) return first
    const lead = leadingHydration(name => sheet.reading(name))
    const [then, now] = [reading[lead], sheet.reading(lead)].map(
      value => value !== undefined && `${showPercent(value, numbers)} %`,
    )
    if (!then || !now || then === now || hold?.reading === lead) return first
    return saidWords.withHydration(first, readingInSentence(lead), now)
  }
}

/**
 * Why the hydration that leads is another at once: an edit has a soaker's water counted in it that had none. Said that once,
 * and also shown; '' of any other edit.
 */
export function soakerCountedIn({ sheet, numbers }: Desk, { event, before }: DeskEvent): string {
  if (event.way !== 'do' || !sheet || before?.formula !== sheet.formula.id) return ''
  if (before.soaked || before.trueHydration === undefined || !hasSoaker(sheet)) return ''
  if (leadingHydration(name => sheet.reading(name)) !== 'trueHydration') return ''
  const [withIt, without] = (['trueHydration', 'hydrationWithoutSoakers'] as const).map(name => {
    const value = sheet.reading(name)
    return value === undefined ? '' : `${showPercent(value, numbers)} %`
  })
  return withIt && without ? saidWords.soakerCountedIn(withIt, without) : ''
}

/** The hold that an edit of nothing else has put on a reading. */
function newlyHeld(
  [change, ...others]: readonly Change[],
  before: readonly Hold[] = [],
  formula: Formula,
): Hold | undefined {
  if (others.length || change?.of !== 'fields' || change.formula !== formula.id) return undefined
  return change.value.holds?.find(hold => !before.includes(hold))
}

/** `Salt held at 2 %; Salt gives, 22.3 grams` */
function holdInWords(sheet: FigureSheet, hold: Hold, style: NumberStyle): string | undefined {
  if (isInProportion(hold)) return saidWords.heldInProportion(holdWords(hold, ''))
  const line = finalDoughOf(sheet.formula).lines.find(l => l.id === hold.line)
  if (!line) return undefined
  const { weight, problem } = sheet.line(line.id)
  if (problem || weight === undefined) return problem?.message
  return saidWords.held(holdWords(hold, line.ingredient), line.ingredient, showGrams(weight, style))
}

/** What became of the one line or stage that was changed or moved. */
function inWords(
  sheet: FigureSheet,
  before: Formula,
  changes: readonly Change[],
  style: NumberStyle,
): string | undefined {
  const { stages, id: formula } = sheet.formula
  const change = changes.at(-1)
  if (!change || !('value' in change) || !('formula' in change) || change.formula !== formula)
    return undefined
  if (change.of === 'stage' && changes.length === 1) {
    const stage = change.value
    if (!stage || !before.stages.includes(stage)) return undefined
    return saidWords.stageMoved(stage.name, stages.indexOf(stage) + 1, stages.length)
  }
  if (change.of !== 'line' || !change.value) return undefined
  const line = change.value
  const was = before.stages.flatMap(s => s.lines).find(l => l.id === line.id)
  if (was === line && changes.every(one => one.of === 'line' && one.id === line.id)) {
    const stage = stages.find(s => s.id === change.stage)
    const at = stage?.lines.indexOf(line) ?? -1
    if (!stage || at < 0) return undefined
    const above = stage.lines[at - 1]?.ingredient ?? ''
    return saidWords.lineMoved(line.ingredient, at + 1, stage.lines.length, stage.name, above)
  }
  if (changes.length !== 1 || was?.amount === line.amount || line.amount === '') return undefined
  return lineInWords(sheet, line, style)
}

function lineInWords(sheet: FigureSheet, { id, ingredient, amount }: Line, style: NumberStyle) {
  const { weight, problem, typedIn, plain } = sheet.line(id)
  if (weight === undefined) return problem && saidWords.lineProblem(ingredient, problem.message)
  const isGrams = plain && typedIn === 'weight'
  return saidWords.lineSet(ingredient, isGrams ? '' : amount.replace(/%$/, ' %'), showGrams(weight, style))
}
