import type { Line, Stage } from '../../../src/dough/document/formula.js'
import { sameData } from '../../../src/dough/document/same-data.js'
import { holdWords, per100 } from '../../../src/dough/document/words.js'
import {
  type FigureSheet,
  isUnsaid,
  type LineFigures,
  type StageFigures,
} from '../../../src/dough/sheet/figures.js'
import { asTheyWrite, type NumberStyle, showGrams, showPercent } from '../../base/numbers.js'
import { buildWords, hasBatch, type WeighedShown, weighedLine, weighedStage } from '../../batch/weighing.js'
import {
  type AddRow,
  type AmountColumn,
  addKey,
  type Cause,
  causeName,
  type LineRow,
  type Row,
  rowAt,
  type Shown,
  type StageRow,
  type SumRow,
  stageKey,
  sumKey,
  type Table,
} from './table.js'
import { placeWords, shareOfFlour, someLine, stageWords } from './words.js'

/**
 * The rows of the sheet as it stands. A row that would look the same as in `before` is the same object, so
 * that a template can tell by identity that there is nothing to paint.
 */
export function tableOf(sheet: FigureSheet, style: NumberStyle, readOnly: boolean, before: Table): Table {
  const causes = causesIn(sheet)
  const batch = hasBatch(sheet.formula)
  const groups = sheet.formula.stages.map(stage => {
    const figures = sheet.stage(stage.id)
    const { isFinal } = figures
    const lines = stage.lines.map(line => ({ line, figures: sheet.line(line.id) }))
    const flourless = !lines.some(l => l.figures.is === 'flour')
    const of: Of = { stage: stage.id, isFinal, flourless, style, causes }
    const weighed = (line: Line) => (batch ? weighedLine(sheet, line.id, style) : undefined)
    const built = batch ? buildWords(sheet, stage, style) : undefined
    const sum = batch ? weighedStage(sheet, stage, style) : undefined
    const rows: Row[] = [
      stageRow(stage, figures, built, of, rowAt(before, stageKey(stage.id))),
      ...lines.map(l => lineRow(l.line, l.figures, weighed(l.line), of, rowAt(before, l.line.id))),
      ...(readOnly ? [] : [addRow(stage, isFinal, rowAt(before, addKey(stage.id)))]),
      sumRow(stage, figures, sum, style, rowAt(before, sumKey(stage.id))),
    ]
    return { stage, rows }
  })
  const rows = groups.flatMap(g => g.rows)
  return { rows, groups, index: new Map(rows.map((row, i) => [row.key, i])), batch }
}

/** What the rows of a stage have in common. */
interface Of {
  readonly stage: string // id
  readonly isFinal: boolean
  readonly flourless: boolean
  readonly style: NumberStyle
  readonly causes: ReadonlyMap<string, Cause>
}

/** Lines with a problem, by their ids, for those that only suffer from it. */
function causesIn(sheet: FigureSheet): Map<string, Cause> {
  const causes = new Map<string, Cause>()
  for (const stage of sheet.formula.stages)
    for (const line of stage.lines) {
      if (!sheet.line(line.id).problem) continue
      const name = line.ingredient || someLine
      const place = placeWords(name, stage.name)
      causes.set(line.id, { key: line.id, stage: stage.id, name, place })
    }
  return causes
}

/** Equal field by field; only why there is no figure is more than a value. */
function same<T extends object>(a: T | undefined, b: T | undefined): boolean {
  if (a === undefined || b === undefined) return a === b
  for (const key in a) if (!sameData(a[key], b[key])) return false
  return true
}

function stageRow(
  stage: Stage,
  figures: StageFigures,
  built: readonly string[] | undefined,
  of: Of,
  old: Row | undefined,
): StageRow {
  const cause = of.causes.get(figures.problem?.cause ?? '')
  const row: StageRow = {
    kind: 'stage',
    key: stageKey(stage.id),
    stage,
    figures,
    words: saidOfStage(figures, built, of.style, cause && causeName(cause, stage.id)),
    problem: cause ? undefined : figures.problem?.message,
  }
  const isSame =
    old?.kind === 'stage' &&
    old.stage.name === stage.name &&
    old.stage.ferments === stage.ferments &&
    old.words === row.words &&
    old.problem === row.problem
  return isSame ? old : row
}

/** `ferments, 220 g as written, 210 g taken`; in a batch what is made of it goes before what is taken as written. */
function saidOfStage(
  figures: StageFigures,
  built: readonly string[] | undefined,
  style: NumberStyle,
  waitsFor: string | undefined,
): string {
  const words: string[] = []
  if (!figures.isFinal) words.push(stageWords.ferments(figures.ferments))
  if (figures.weight !== undefined) words.push(stageWords.written(showGrams(figures.weight, style)))
  if (waitsFor) words.push(stageWords.waitsFor(waitsFor))
  if (built?.length) words.push(...built)
  else if (figures.taken !== undefined)
    words.push(figures.taken === 0 ? stageWords.notTaken : stageWords.taken(showGrams(figures.taken, style)))
  return words.join(', ')
}

function lineRow(
  line: Line,
  figures: LineFigures,
  batch: WeighedShown | undefined,
  of: Of,
  old: Row | undefined,
): LineRow {
  const cause = of.causes.get(figures.problem?.cause ?? '')
  const waitsFor = cause?.key === line.id ? undefined : cause
  if (
    old?.kind === 'line' &&
    old.line === line &&
    old.stage === of.stage &&
    old.isFinal === of.isFinal &&
    old.flourless === of.flourless &&
    old.waitsFor?.key === waitsFor?.key &&
    same(old.batch, batch) &&
    same(old.figures, figures)
  )
    return old
  const { percent, weight, wholeDough, gives } = figures
  const none = isUnsaid(line, figures)
  const percentText = none || percent === undefined ? undefined : showPercent(percent, of.style)
  const weightText = none || weight === undefined ? undefined : showGrams(weight, of.style)
  const shareText = none || wholeDough === undefined ? undefined : showPercent(wholeDough, of.style)
  return {
    kind: 'line',
    key: line.id,
    stage: of.stage,
    line,
    figures,
    percent: shown(percentText, 'percent', figures, of.style),
    weight: shown(weightText, 'weight', figures, of.style),
    wholeDough: shareShown(shareText, figures, of.style),
    batch: none && batch ? { ...batch, text: '–' } : batch,
    gives: gives ? givesWords(figures, line) : '',
    isFinal: of.isFinal,
    flourless: of.flourless,
    problem: waitsFor ? undefined : figures.problem?.message,
    waitsFor,
  }
}

const givesWords = ({ gives }: LineFigures, line: Line): string =>
  gives?.reading === 'wholeDough'
    ? shareOfFlour(per100(gives.value))
    : gives
      ? holdWords(gives, line.ingredient)
      : ''

/**
 * A calculation that may go on in another line beside its signs, and within a name that is wider than any column. What
 * allows it has no width, and amounts are read over it.
 */
const inLines = (typed: string): string =>
  typed
    .replace(/[\p{L}_][\p{L}\p{N}_.]{11,}/gu, name => name.replace(/[_.]/g, '$&\u200b'))
    .replace(/[-+*/]/g, '\u200b$&')
    .replace(/[-+*/,]/g, '$&\u200b')

function shown(
  figure: string | undefined,
  column: AmountColumn,
  figures: LineFigures,
  style: NumberStyle,
): Shown {
  const text = figure ?? '–'
  if (figures.typedIn !== column) {
    const known = figures.isStale ? 'stale' : 'computed'
    return { text, is: figure ? known : 'missing', typed: '' }
  }
  const typed = asTheyWrite(figures.typed, style)
  // Of more digits than anybody types, a figure is shown; the editor has them all.
  const isLong = figure !== undefined && typed.replace(/\D/g, '').length > 7
  if (figures.plain) return { text: isLong ? figure : typed, is: 'typed', typed: '' }
  const calculation = asTheyWrite(inLines(figures.typed), style)
  return figure ? { text, is: 'computed', typed: calculation } : { text: calculation, is: 'raw', typed: '' }
}

/** A share of the whole dough is nobody's but where it is typed, or on the last line of its ingredient. */
function shareShown(figure: string | undefined, figures: LineFigures, style: NumberStyle): Shown {
  if (figures.typedIn === 'wholeDough') return shown(figure, 'wholeDough', figures, style)
  return { text: figure ?? '', is: 'computed', typed: '' }
}

function addRow(stage: Stage, isFinal: boolean, old: Row | undefined): AddRow {
  if (old?.kind === 'add' && old.stageName === stage.name && old.isFinal === isFinal) return old
  return { kind: 'add', key: addKey(stage.id), stage: stage.id, stageName: stage.name, isFinal }
}

function sumRow(
  stage: Stage,
  figures: StageFigures,
  batch: WeighedShown | undefined,
  style: NumberStyle,
  old: Row | undefined,
): SumRow {
  if (
    old?.kind === 'sum' &&
    old.stageName === stage.name &&
    same(old.batch, batch) &&
    same(old.figures, figures)
  )
    return old
  return {
    kind: 'sum',
    key: sumKey(stage.id),
    stage: stage.id,
    stageName: stage.name,
    figures,
    percent: figures.percent === undefined ? '–' : showPercent(figures.percent, style),
    weight: figures.weight === undefined ? '–' : showGrams(figures.weight, style),
    batch,
  }
}
