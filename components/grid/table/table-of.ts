import { hasBatch, type Line, type Stage } from '../../../src/dough/document/formula.js'
import { sameData } from '../../../src/dough/document/same-data.js'
import { holdWords, isUnconfirmed, per100 } from '../../../src/dough/document/words.js'
import {
  type FigureSheet,
  isUnsaid,
  type LineFigures,
  type StageFigures,
} from '../../../src/dough/sheet/figures.js'
import { allTouched, type Touched } from '../../../src/dough/sheet/touched.js'
import { asTheyWrite, type NumberStyle, showGrams, showPercent } from '../../base/numbers.js'
import { groupsOf } from './row-groups.js'
import { type LineRead, SheetReader, type StageRead } from './sheet-reader.js'
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
 * The rows of the sheet as it stands. Only what is touched is read from it anew; a row that would look the same as in
 * `before` is the same object, so that a template can tell by identity that there is nothing to paint.
 */
export function tableOf(
  sheet: FigureSheet,
  style: NumberStyle,
  readOnly: boolean,
  before: Table,
  touched: Touched = allTouched,
): Table {
  const batch = hasBatch(sheet.formula)
  const reader = new SheetReader(sheet, style, batch, before, touched)
  const stages = sheet.formula.stages.map(stage => ({ stage, lines: stage.lines.map(l => reader.line(l)) }))
  const causes = causesIn(stages)
  const begun = new Map(before.groups.map(group => [group.key, group]))
  const groups = stages.flatMap(({ stage, lines }) => {
    const read = reader.stage(stage)
    const { isFinal } = read.figures
    const flourless = !lines.some(l => l.figures.is === 'flour')
    const units = new Set(lines.map(({ figures }) => figures.isBase && figures.typedIn))
    const isMixed = units.has('percent') && units.has('weight')
    const of: Of = { stage: stage.id, isFinal, flourless, isMixed, style, causes }
    const rows: Row[] = [
      stageRow(stage, read, of, rowAt(before, stageKey(stage.id))),
      ...lines.map(l => lineRow(l, of)),
      ...(readOnly ? [] : [addRow(stage, isFinal, rowAt(before, addKey(stage.id)))]),
      sumRow(stage, read, style, rowAt(before, sumKey(stage.id))),
    ]
    return groupsOf(rows, begun)
  })
  const rows = groups.flatMap(g => g.rows)
  return { rows, groups, index: indexOf(rows, before), batch, heavy: rows.some(isHeavy) }
}

const isHeavy = (row: Row): boolean =>
  row.kind === 'sum' && Math.max(row.figures.weight ?? 0, row.batch?.grams ?? 0) > 9999

/** Where each row is; the same object where they are as they were. */
const indexOf = (rows: readonly Row[], before: Table): ReadonlyMap<string, number> =>
  rows.length === before.rows.length && rows.every((row, i) => row.key === before.rows[i]!.key)
    ? before.index
    : new Map(rows.map((row, i) => [row.key, i]))

/** What the rows of a stage have in common. */
interface Of {
  readonly stage: string // id
  readonly isFinal: boolean
  readonly flourless: boolean
  readonly isMixed: boolean // flours in grams and others in percentages
  readonly style: NumberStyle
  readonly causes: ReadonlyMap<string, Cause>
}

/** Lines with a problem, by their ids, for those that only suffer from it. */
function causesIn(
  stages: readonly { readonly stage: Stage; readonly lines: readonly LineRead[] }[],
): Map<string, Cause> {
  const causes = new Map<string, Cause>()
  for (const { stage, lines } of stages)
    for (const { line, figures } of lines) {
      if (!figures.problem) continue
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

function stageRow(stage: Stage, { figures, built }: StageRead, of: Of, old: Row | undefined): StageRow {
  const cause = of.causes.get(figures.problem?.cause ?? '')
  const row: StageRow = {
    kind: 'stage',
    key: stageKey(stage.id),
    stage,
    figures,
    built,
    words: saidOfStage(figures, built, of.style, cause && causeName(cause, stage.id), !!stage.build),
    problem: cause ? undefined : figures.problem?.message,
  }
  const isSame =
    old?.kind === 'stage' &&
    old.stage === stage &&
    old.words === row.words &&
    old.problem === row.problem &&
    same(old.figures, figures)
  return isSame ? old : row
}

/** `ferments, 220 g as written, 210 g taken`; in a batch what is made of it goes before what is taken as written. */
function saidOfStage(
  figures: StageFigures,
  built: readonly string[],
  style: NumberStyle,
  waitsFor: string | undefined,
  isBuild: boolean,
): string {
  const words: string[] = isBuild ? [stageWords.build] : []
  if (!figures.isFinal) words.push(stageWords.ferments(figures.ferments))
  if (figures.hydration !== undefined) words.push(stageWords.hydration(showPercent(figures.hydration, style)))
  if (figures.weight !== undefined) words.push(stageWords.written(showGrams(figures.weight, style)))
  if (waitsFor) words.push(stageWords.waitsFor(waitsFor))
  if (built.length) words.push(...built)
  else if (figures.taken !== undefined)
    words.push(figures.taken === 0 ? stageWords.notTaken : stageWords.taken(showGrams(figures.taken, style)))
  return words.join(', ')
}

function lineRow({ line, figures, weighed, old }: LineRead, of: Of): LineRow {
  const cause = of.causes.get(figures.problem?.cause ?? '')
  const waitsFor = cause?.key === line.id ? undefined : cause
  const none = isUnsaid(line, figures)
  const batch = none && weighed ? { ...weighed, text: '–' } : weighed
  const { is, isBase, isStale } = figures
  const isOpen =
    (is === 'unknown' && line.ingredient !== '') ||
    (is === 'stage' && none) ||
    (isBase && of.isMixed) ||
    isStale ||
    isUnconfirmed(line.note) ||
    (figures.gives !== undefined && figures.weight === undefined)
  if (
    old &&
    old.line === line &&
    old.stage === of.stage &&
    old.isFinal === of.isFinal &&
    old.flourless === of.flourless &&
    old.isOpen === isOpen &&
    same(old.waitsFor, waitsFor) &&
    same(old.batch, batch) &&
    same(old.figures, figures)
  )
    return old
  const { percent, weight, wholeDough, gives } = figures
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
    batch,
    gives: gives ? givesWords(figures, line) : '',
    isOpen,
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
  { figures, sum: batch }: StageRead,
  style: NumberStyle,
  old: Row | undefined,
): SumRow {
  if (
    old?.kind === 'sum' &&
    old.stageName === stage.name &&
    old.method === stage.method &&
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
    method: stage.method,
  }
}
