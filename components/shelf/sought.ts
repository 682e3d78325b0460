import type { Formula, Stage } from '../../src/dough/document/formula.js'
import { folded } from '../../src/dough/lexicon/folded.js'

/** Where in a formula a text was found that is looked for. */
export interface Found {
  readonly formula: Formula
  readonly where: string // what holds it, shortened about it; '' where that is the formula’s name
}

const around = 24 // characters shown on each side of what was found

const tidied = (text: string): string => text.normalize('NFC').replace(/\s+/g, ' ').trim()
/** What a text is looked through by: neither case nor accents matter. */
const keyOf = (text: string): string => folded(tidied(text))

/** What there is to find in a stage. */
const textsOf = ({ name, lines, method = [] }: Stage): string[] => [
  ...lines.flatMap(line => [line.ingredient, line.note]),
  name,
  ...method.flatMap(step => [`${step.does} ${step.text}`, step.note]),
]

/** A text cut about what is found in it, between words. */
function excerpt(text: string, sought: string): string {
  const whole = tidied(text)
  const key = keyOf(text)
  const at = key.length === whole.length ? key.indexOf(sought) : 0
  const blank = whole.indexOf(' ', at - around)
  const from = at <= around ? 0 : blank < at ? blank + 1 : at
  const end = whole.indexOf(' ', at + sought.length + around)
  return `${from ? '…' : ''}${end < 0 ? whole.slice(from) : `${whole.slice(from, end)}…`}`
}

/** Where a formula holds what is looked for; undefined where it does not. Its own words come first. */
function foundIn(formula: Formula, sought: string): string | undefined {
  if (keyOf(formula.name).includes(sought)) return ''
  const texts = [
    ...formula.stages.flatMap(textsOf),
    formula.note,
    formula.group ?? '',
    ...(formula.states ?? []).map(state => state.name),
  ]
  const text = texts.find(one => keyOf(one).includes(sought))
  return text === undefined ? undefined : excerpt(text, sought)
}

/** The formulas that hold a text in their names, then those that hold it among their ingredients, notes, stages or steps. */
export function soughtIn(formulas: readonly Formula[], text: string): readonly Found[] {
  const sought = keyOf(text)
  const found = formulas.flatMap((formula): Found[] => {
    const where = foundIn(formula, sought)
    return where === undefined ? [] : [{ formula, where }]
  })
  return [...found.filter(one => !one.where), ...found.filter(one => one.where)]
}
