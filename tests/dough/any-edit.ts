import type { Batch, Scale } from '../../src/dough/document/batch.js'
import {
  type CountsAs,
  type Formula,
  finalDoughOf,
  type Jotting,
  newId,
  type Stage,
} from '../../src/dough/document/formula.js'
import { readingNames } from '../../src/dough/document/reading-names.js'
import type { Transaction, Workbook } from '../../src/dough/document/workbook.js'
import * as edits from '../../src/dough/edits/edits.js'
import { setBatch, setKeepBack, setScale, setStageLoss } from '../../src/dough/edits/fetched/batch-edits.js'
import { putJotting, removeJotting } from '../../src/dough/edits/fetched/jotting-edits.js'
import { defineIngredient, forgetIngredient } from '../../src/dough/edits/fetched/larder-edits.js'
import { writeInGrams, writeInPercentages } from '../../src/dough/edits/fetched/rebase.js'
import { markBase, removeLines, removeStage, setFerments } from '../../src/dough/edits/fetched/row-edits.js'
import { bringBack, forgetState, keepState } from '../../src/dough/edits/fetched/state-edits.js'
import { usualLarder } from '../../src/dough/larder/usual-larder.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import type { randomOf } from '../random.js'

type Random = ReturnType<typeof randomOf>

const ingredients =
  'Bread flour;Wholemeal spelt;Water;Salt;Ripe starter;Egg;Butter;moon dust;Honey;;Levain;Soaker;Final dough;water'.split(
    ';',
  )
const amounts = [
  ...';10%;70%;100%;2%;20 g;200 g;0.4 g;2 tsp;1 each;2*salt;50% + 5 g;min(salt, 10 g);levain.water;water/2;levain.ripe_starter * 2'.split(
    ';',
  ),
  ...'0.1*flour;what?;3;per_loaf;twice * 10 g;0.02 * dough_weight;bread_flour - water;water + 2%;honey;5 g - 20 g;base/4;salt + honey'.split(
    ';',
  ),
]
const texts = 'dough_weight/6;2;3 + twice;salt * 2;true_hydration * 2;nothing;levain.flour;per_loaf/2'.split(
  ';',
)
const batches: readonly Batch[] = [
  { make: 'as written' },
  { make: 'pieces', pieces: [{ count: 6, weight: 900 }], loss: 0.02 },
  { make: 'baked pieces', pieces: [{ count: 3, weight: 400 }], bakeLoss: 0.1 },
  { make: 'dough', grams: 4321 },
  { make: 'flour', grams: 500 },
  { make: 'factor', factor: 1.5 },
  { make: 'all of', ingredient: 'Ripe starter', grams: 55 },
  { make: 'all of', ingredient: 'Levain', grams: 310 },
]
const scales: readonly Scale[] = [
  { step: 1, fineStep: 0.1, fineBelow: 10 },
  { step: 5, fineStep: 1, fineBelow: 20 },
]
const meanings: readonly CountsAs[] = [
  { kind: 'flour' },
  { kind: 'water' },
  { kind: 'starter', hydration: 1.25 },
  { kind: 'other' },
]

/** One edit of the only formula of a workbook, of any kind that a baker can make; undefined where there is none. */
export function anyEdit(workbook: Workbook, sheet: FigureSheet, random: Random): Transaction | undefined {
  const formula = workbook.formulas[0]!
  const kind = random.below(10)
  if (kind < 4) return lineEdit(workbook, formula, random)
  if (kind < 6) return stageEdit(workbook, formula, random)
  return formulaEdit(workbook, formula, sheet, random)
}

const placeIn = (formula: Formula, stage: Stage, random: Random) => {
  const line = stage.lines.length ? random.pick(stage.lines).id : 'none'
  return { formula: formula.id, stage: stage.id, line }
}

function lineEdit(workbook: Workbook, formula: Formula, random: Random): Transaction | undefined {
  const stage = random.pick(formula.stages)
  const at = placeIn(formula, stage, random)
  const amount = () => edits.enterAmount(workbook, at, 'weight', random.pick(amounts))
  switch (random.below(12)) {
    case 0:
      return edits.enterIngredient(workbook, at, random.pick(ingredients))
    case 1:
      return edits.addLine(
        at,
        edits.newLine({ ingredient: random.pick(ingredients), amount: random.pick(amounts) }),
        random.below(stage.lines.length + 1),
      )
    case 2:
      return removeLines(workbook, [at])
    case 3:
      return edits.moveLine(workbook, at, random.pick([-1, 1] as const))
    case 4:
      return markBase(workbook, at, random.below(2) === 0)
    case 5:
      return edits.enterNote(workbook, at, random.pick(['', 'cold', 'warm']))
    case 6:
      return edits.enterAmount(workbook, at, 'wholeDough', random.pick(['', '5', '60']))
    case 7: {
      const other = placeIn(formula, random.pick(formula.stages), random)
      const second = edits.enterAmount(workbook, other, 'percent', random.pick(amounts))
      return edits.together('Paste', [amount(), second])
    }
    default:
      return amount()
  }
}

function stageEdit(workbook: Workbook, formula: Formula, random: Random): Transaction | undefined {
  const stage = random.pick(formula.stages)
  const at = { formula: formula.id, stage: stage.id }
  switch (random.below(8)) {
    case 0: {
      if (formula.stages.length > 3) return removeStage(workbook, at)
      const line = edits.newLine({ ingredient: 'Ripe starter', amount: random.pick(amounts) })
      return edits.addStage(workbook, formula.id, edits.newStage(random.pick(['Soaker', 'Poolish']), [line]))
    }
    case 1:
      return edits.renameStage(workbook, at, random.pick(['Levain', 'Soaker', 'Sponge', 'Final dough']))
    case 2:
      return edits.moveStage(workbook, at, random.pick([-1, 1] as const))
    case 3:
      return setFerments(workbook, at, random.pick([true, false, undefined]))
    case 4:
    case 5:
      return setKeepBack(workbook, at, random.pick([0, 50, 'seed'] as const))
    default:
      return setStageLoss(workbook, at, random.pick([0, 0.03]))
  }
}

function formulaEdit(
  workbook: Workbook,
  formula: Formula,
  sheet: FigureSheet,
  random: Random,
): Transaction | undefined {
  const { id } = formula
  const fields = (label: string, value: Partial<Omit<Formula, 'id' | 'stages'>>): Transaction => ({
    label,
    changes: [{ of: 'fields', formula: id, value }],
  })
  switch (random.below(16)) {
    case 0: {
      const hold = formula.holds?.[random.below(formula.holds.length)]
      const value = hold && hold.value * random.pick([0.9, 1.05])
      const final = finalDoughOf(formula).id
      return (
        hold &&
        edits.holdReading(workbook, { formula: id, stage: final, line: hold.line }, hold.reading, value!)
      )
    }
    case 1:
    case 15:
      return edits.holdReading(
        workbook,
        placeIn(formula, finalDoughOf(formula), random),
        random.pick(readingNames),
        random.pick([0.02, 0.15, 0.7, 0.75, 900, 2000]),
      )
    case 2:
      return edits.releaseHold(workbook, id, () => random.below(2) === 0)
    case 3:
    case 4:
      return setBatch(workbook, id, random.pick(batches))
    case 5:
      return edits.setFlourWeight(workbook, id, random.pick([500, 1000, 1234]))
    case 6: {
      const usual = usualLarder.find(i => i.name === random.pick(['Honey', 'Egg', 'Butter']))
      if (!usual || workbook.larder.length) return forgetIngredient(workbook, workbook.larder[0]?.id ?? '')
      return defineIngredient({ ...usual, moisture: 0.31, tsp: 6 })
    }
    case 7:
      return setScale(random.pick(scales))
    case 8:
    case 9: {
      const known = formula.jottings?.find(() => random.below(2) === 0)
      const jotting: Jotting = known ?? { id: newId(), name: random.pick(['per_loaf', 'twice']), text: '' }
      return putJotting(workbook, id, { ...jotting, text: random.pick(texts) })
    }
    case 10:
      return removeJotting(workbook, id, formula.jottings?.[0]?.id ?? '')
    case 11: {
      const meaning = { ingredient: random.pick(ingredients), countsAs: random.pick(meanings) }
      return fields('Say what it counts as', { meanings: random.below(3) ? [meaning] : [] })
    }
    case 12:
      return random.below(2) ? writeInGrams(sheet) : writeInPercentages(sheet)
    case 13: {
      const state = formula.states?.at(-1)
      if (!state) return keepState(workbook, id, 'Before', '2026-05-01T08:00:00.000Z')
      return random.below(2) ? bringBack(workbook, id, state.id) : forgetState(workbook, id, state.id)
    }
    default:
      return random.below(2)
        ? edits.renameFormula(workbook, id, random.pick(['Mill loaf', 'Tin loaf']))
        : fields('Note', { note: random.pick(['', 'For Saturday']) })
  }
}
