import { type Formula, finalDoughOf, nameKey, newId, type Problem, sameName } from '../document/formula.js'
import type { Ingredient } from '../document/larder.js'
import type { Transaction, Workbook } from '../document/workbook.js'
import { takeable, takeBuild } from '../edits/builds/build-edits.js'
import type { LineAt } from '../edits/edit-places.js'
import { defineIngredient } from '../edits/fetched/larder-edits.js'
import { holdReading, releaseHold } from '../edits/hold-edits.js'
import { confirmLine, enterAmount, enterIngredient, pathBack } from '../edits/line-edits.js'
import { type Likeness, likenessOf } from '../larder/known-within.js'
import { nearlySpelled } from '../larder/misspelt.js'
import type { RemarkDiagnostic } from '../remarks/remark-words.js'
import { type FigureSheet, isUnsaid } from '../sheet/figures.js'
import { offerWords } from './words.js'

/** What can be done at once about something that a sheet noticed. */
export interface Offer {
  readonly label: string
  readonly edit: (workbook: Workbook) => Transaction | undefined
}

/**
 * What can be done at once about a remark on the open formula; nothing where that is not known. `formulas` are those of the
 * workbook, whose doughs it can take.
 */
export function offersFor(
  sheet: FigureSheet,
  problem: Problem,
  formulas: readonly Formula[] = [],
): readonly Offer[] {
  const { formula } = sheet
  const { stage = '', line = '' } = problem.where
  const at = { formula: formula.id, stage, line }
  const told = problem as Problem & RemarkDiagnostic
  switch (told.code) {
    case 'baseInOtherUnit':
      return told.others.map(amount => ({
        label: offerWords.takeAs(amount),
        edit: workbook => enterAmount(workbook, at, 'weight', amount),
      }))
    case 'ingredientUnknown':
      return [
        ...taking(formulas, sheet, at, told.ingredient),
        ...meantBy(sheet, at, told.ingredient),
        ...countedAs(sheet, told.ingredient),
      ]
    case 'lineNotConfirmed':
      return [{ label: offerWords.right, edit: workbook => confirmLine(workbook, at) }]
    case 'lineWithoutAmount':
    case 'stageLeftOver':
      return takingAll(sheet, told.stage, told.code === 'lineWithoutAmount' ? told.line : undefined)
    case 'holdOutOfReach': {
      const { hold, nearest } = told
      const giving = { formula: formula.id, stage: finalDoughOf(formula).id, line: hold.line }
      return [
        {
          label: offerWords.holdAt({ ...hold, value: nearest }),
          edit: workbook => holdReading(workbook, giving, hold.reading, nearest),
        },
        {
          label: offerWords.release,
          edit: workbook =>
            releaseHold(workbook, formula.id, one => one.reading === hold.reading && one.line === hold.line),
        },
      ]
    }
    default:
      return []
  }
}

/** How many names may begin with what was typed for it to be one of them. */
const fewNames = 3

/** The names that may be meant: those that a name left unfinished begins, and the one that it is a misspelling of. */
function meantBy(sheet: FigureSheet, at: LineAt, typed: string): readonly Offer[] {
  const begun = begunWith(sheet, at, typed)
  const near = begun.length === 0 ? nearlySpelled(typed, sheet.larder) : undefined
  return (near === undefined ? begun : [near]).map(name => ({
    label: offerWords.means(name),
    edit: workbook => enterIngredient(workbook, at, name),
  }))
}

/** The names of stages that the line could take, and of ingredients known, that begin so. */
function begunWith({ formula, larder }: FigureSheet, at: LineAt, typed: string): readonly string[] {
  const begun = nameKey(typed)
  if (begun.length < 3) return []
  const begins = ({ name }: { readonly name: string }) => nameKey(name).startsWith(begun)
  const own = formula.stages.find(({ id }) => id === at.stage)
  const stages = formula.stages.filter(one => begins(one) && own && !pathBack(formula, own, one.name))
  const meant = [...new Set([...stages, ...larder.ingredients.filter(begins)].map(({ name }) => name))]
  return meant.length > fewNames ? [] : meant
}

/** A build of the workbook or the dough of another formula, to be made for this one. */
function taking(
  formulas: readonly Formula[],
  { formula }: FigureSheet,
  at: LineAt,
  name: string,
): readonly Offer[] {
  const from = takeable(formulas, formula, name)
  if (!from) return []
  const of = { formula: from.formula.id, stage: from.stage.id }
  const whole = from.stage === finalDoughOf(from.formula)
  return [
    {
      label: offerWords.takeBuild(whole ? '' : from.stage.name, from.formula.name),
      edit: workbook => takeBuild(workbook, at, of),
    },
  ]
}

/** An ingredient of the baker's own that counts like the one whose name it holds, or for what its words say. */
function countedAs({ larder }: FigureSheet, name: string): readonly Offer[] {
  const likeness = likenessOf(name, larder)
  if (!likeness) return []
  return [{ label: offerWords.countAs(likeness), edit: () => defineIngredient(ownOf(name, likeness)) }]
}

function ownOf(name: string, { like, countsAs }: Likeness): Ingredient {
  const own = { id: newId(), name: name.trim(), otherNames: [], countsAs }
  if (like) return { ...like, ...own, note: offerWords.likeNote(like.name) }
  return { ...own, kind: countsAs.kind, moisture: 0, fat: 0, sugar: 0, protein: 0, salt: 0, note: '' }
}

/** All of a stage that makes more than is taken of it, or of which a line takes no amount yet. */
function takingAll(sheet: FigureSheet, stage: string, takes?: string): readonly Offer[] {
  const { formula, workedOut } = sheet
  const { outline, plan } = workedOut
  const lines = outline.stages
    .flatMap(s => s.lines)
    .filter(({ source, line, stage: of }) =>
      takes === undefined
        ? source && sameName(source.stage.name, stage)
        : source &&
          of.stage.name === stage &&
          line.ingredient === takes &&
          isUnsaid(line, sheet.line(line.id)),
    )
  const [only, other] = lines
  if (!only?.source || other || only.gives || plan.isFree(only.source)) return []
  const at = { formula: formula.id, stage: only.stage.stage.id, line: only.line.id }
  return [
    {
      label: offerWords.takeAll(only.source.stage.name),
      edit: workbook => enterAmount(workbook, at, 'weight', offerWords.all),
    },
  ]
}
