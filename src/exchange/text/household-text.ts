import { type Household, type HouseholdOptions, householdOf } from '../../dough/about/household.js'
import { householdSentence } from '../../dough/about/words.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { aligned, householdHeading, inLines } from './plain-cells.js'
import { gramsSaid, percentSaid } from './printed.js'
import { measuredSentence } from './words.js'

const systemWords = { us: 'US', metric: 'metric', imperial: 'imperial' } as const

const signs: Readonly<Record<string, string>> = {
  '1/2': '½',
  '1/3': '⅓',
  '2/3': '⅔',
  '1/4': '¼',
  '3/4': '¾',
  '1/8': '⅛',
  '3/8': '⅜',
  '5/8': '⅝',
  '7/8': '⅞',
}

/** `3 ¼ cups + 1 tbsp` for `3 1/4 cups + 1 tbsp`. */
export const measureSaid = (words: string): string =>
  words.replace(/\b\d+\/\d+/g, fraction => signs[fraction] ?? fraction)

/** `off by +3 %`; nothing below half a per cent. */
export function errorSaid(error: number): string {
  const whole = Math.round(error * 100)
  return whole === 0 ? '' : `off by ${whole > 0 ? '+' : '−'}${Math.abs(whole)} %`
}

/** What measuring does to the dough, a sentence; undefined where that is not known. */
export function changeSaid({ trueHydration, salt }: Household): string | undefined {
  const parts = [
    { words: 'true hydration', ...trueHydration },
    { words: 'salt', ...salt },
  ].flatMap(({ words, weighed, measured }) =>
    weighed === undefined || measured === undefined
      ? []
      : [`${words} ${percentSaid(measured)} instead of ${percentSaid(weighed)}`],
  )
  return parts.length ? measuredSentence(parts) : undefined
}

/** A formula's batch in cups and spoons, to stand beneath its plain text: for people, and passed over when it is read back. */
export function writeHousehold(sheet: FigureSheet, options: HouseholdOptions): string {
  const household = householdOf(sheet, options)
  const byLine = new Map(household.lines.map(line => [line.line, line]))
  const rows = sheet.formula.stages.flatMap(({ name, lines }) =>
    lines.flatMap(({ id, ingredient }) => {
      const line = byLine.get(id)
      if (!line?.grams) return [] // not known, or nothing to measure
      const error = line.error === undefined ? '' : errorSaid(line.error)
      return [
        [
          tidied(name),
          tidied(ingredient),
          gramsSaid(line.grams),
          line.words ? measureSaid(line.words) : 'weigh it',
          error,
        ],
      ]
    }),
  )
  const change = changeSaid(household)
  const told = [
    ...aligned(rows, new Set([2])),
    ...inLines(householdSentence),
    ...(change ? inLines(change) : []),
  ]
  return `${householdHeading} (${systemWords[options.system]}):\n${told.map(line => `> ${line}\n`).join('')}`
}

const tidied = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\s]+/gu, ' ').trim() || '–'
