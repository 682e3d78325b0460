import { type Hold, nameKey } from '../../dough/document/formula.js'
import { isWeightReading, readingWords } from '../../dough/document/words.js'
import { gramsText, percentText, readGrams, readPercent } from './written-weights.js'

type Held = Hold['reading']

const settings: ReadonlyMap<Held, string> = new Map<Held, string>([
  ...Object.entries(readingWords).map(([reading, words]) => [reading as Held, `hold ${words}`] as const),
  ['wholeDough', 'hold whole dough'],
])
const readings: ReadonlyMap<string, Held> = new Map([...settings].map(([reading, name]) => [name, reading]))

/** The setting's name of a hold: `hold true hydration`. */
export const holdSetting = (hold: Hold): string => settings.get(hold.reading)!

/** The reading that a setting of this name holds. */
export const heldBy = (setting: string): Held | undefined => readings.get(nameKey(setting))

/** What stands in texts where else the line is that gives: every line does. */
export const inProportion = 'in proportion'

export const holdText = ({ reading, value }: Hold): string =>
  isWeightReading(reading) ? gramsText(value) : percentText(value)

/** The value of a hold: a fraction of 1, or grams; undefined where the text is not of that kind. */
export const readHoldValue = (reading: Held, text: string): number | undefined => {
  const value = isWeightReading(reading) ? readGrams(text) : readPercent(text)
  return value === undefined || Number.isFinite(value) ? value : undefined
}
