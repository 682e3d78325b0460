import { batchWords } from '../../src/dough/document/batch-words.js'
import {
  type CountsAs,
  finalDoughOf,
  type Hold,
  isInProportion,
  nameKey,
  type Stage,
} from '../../src/dough/document/formula.js'
import { isWeightReading, readingWords, tidy } from '../../src/dough/document/words.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { asTheyWrite, type NumberStyle } from '../base/numbers.js'
import { losesInBaking, losesInMixing } from '../batch/batch-prose.js'
import { countsAsWords } from '../larder/counts-as-words.js'
import { doneWords, onAllFlour, saidWords, settingWords, unsaidWords } from './settings-words.js'

/** Something besides its lines that two formulas do not say alike, in words. */
export interface SettingPair {
  readonly what: string // `how much to make`, `the jotting per_loaf`
  readonly left: string
  readonly right: string
  readonly only: 'left' | 'right' | undefined // which formula alone says something of it
}

interface Setting {
  readonly what: string
  readonly says: string
  readonly else: string // what stands where another formula does not say it
}

/** What two formulas say besides their lines and not alike: the left's order, what only the right says last. */
export function settingsBeside(left: FigureSheet, right: FigureSheet, style: NumberStyle): SettingPair[] {
  const [l, r] = [settingsOf(left, style), settingsOf(right, style)]
  return [...new Set([...l.keys(), ...r.keys()])].flatMap((key): SettingPair[] => {
    const [one, other] = [l.get(key), r.get(key)]
    if (one?.says === other?.says) return []
    const { what, else: none } = (one ?? other)!
    return [
      {
        what,
        left: one?.says ?? none,
        right: other?.says ?? none,
        only: one && other ? undefined : one ? 'left' : 'right',
      },
    ]
  })
}

/** Everything a formula says besides its lines, by a key that two formulas have in common. */
function settingsOf(sheet: FigureSheet, style: NumberStyle): Map<string, Setting> {
  const { formula } = sheet
  const final = finalDoughOf(formula)
  const exact = new Intl.NumberFormat(style.language, { maximumFractionDigits: 10 })
  const grams = (weight: number) => `${exact.format(tidy(weight))}\u00a0g`
  const per100 = (part: number) => `${exact.format(tidy(part * 100))}\u00a0%`
  const settings = new Map<string, Setting>()
  /** Of two with one key, the second is called so: two lines of one ingredient may both have a note. */
  const put = (key: string, what: string, says: string, none: string = unsaidWords.nothing): void => {
    let [at, count] = [key, 1]
    while (settings.has(at)) at = `${key} ${++count}`
    settings.set(at, { what: count > 1 ? settingWords.another(what, count) : what, says, else: none })
  }

  const { batch = { make: 'as written' } } = formula
  const { loss, bakeLoss } = losesInMixing(batch.make) ? batch : {}
  const lost = [
    ...(loss ? [saidWords.lost(per100(loss))] : []),
    ...(bakeLoss && losesInBaking(batch.make) ? [saidWords.lostInBaking(per100(bakeLoss))] : []),
  ]
  put('make', settingWords.make, [batchWords(batch, grams), ...lost].join(', '))
  if (isFlourSet(sheet, final))
    put('flour weight', settingWords.flourWeight, grams(formula.flourWeight), unsaidWords.flourWeight)
  for (const stage of formula.stages) {
    const { name, keepBack, loss: part, ferments, method } = stage
    const of = stage === final ? 'final' : `stage ${nameKey(name)}`
    if (keepBack)
      put(
        `keep ${of}`,
        settingWords.keptBack(name),
        keepBack === 'seed' ? saidWords.asItsSeed : grams(keepBack),
      )
    if (part) put(`loss ${of}`, settingWords.lost(name), per100(part))
    if (method?.length)
      put(
        `method ${of}`,
        settingWords.method(name),
        method.map(saidWords.step).join('\n'),
        unsaidWords.method,
      )
    if (ferments !== undefined)
      put(
        `ferments ${of}`,
        settingWords.ferments(name),
        ferments ? saidWords.yes : saidWords.no,
        unsaidWords.ferments,
      )
  }
  for (const hold of formula.holds ?? []) {
    const ingredient = final.lines.find(l => l.id === hold.line)?.ingredient ?? ''
    const held = heldWords(hold, ingredient)
    const value = isWeightReading(hold.reading) ? grams(hold.value) : per100(hold.value)
    put(
      `hold ${held}`,
      settingWords.hold(held),
      isInProportion(hold) ? saidWords.inProportion(value) : saidWords.gives(value, ingredient),
      unsaidWords.hold,
    )
  }
  for (const { name, text } of formula.jottings ?? [])
    put(`jotting ${nameKey(name)}`, settingWords.jotting(name), asTheyWrite(text, style), unsaidWords.jotting)
  for (const { ingredient, countsAs } of formula.meanings)
    put(
      `counts ${nameKey(ingredient)}`,
      settingWords.countsAs(ingredient),
      countsWords(countsAs, per100),
      unsaidWords.countsAs,
    )
  if (formula.note) put('note', settingWords.note, formula.note)
  for (const stage of formula.stages)
    for (const { ingredient, note } of stage.lines)
      if (note)
        put(
          `note ${stage === final ? 'final' : nameKey(stage.name)} ${nameKey(ingredient)}`,
          settingWords.noteOn(ingredient, stage.name),
          note,
        )
  return settings
}

/** Whether the weight of 100 % flour counts for anything: every flour of the final dough is a percentage. */
function isFlourSet(sheet: FigureSheet, { lines }: Stage): boolean {
  const flours = lines.map(line => sheet.line(line.id)).filter(line => line.is === 'flour')
  return flours.length > 0 && flours.every(flour => flour.typedIn === 'percent')
}

const heldWords = ({ reading }: Hold, ingredient: string): string =>
  reading === 'wholeDough' ? onAllFlour(ingredient) : readingWords[reading]

const countsWords = (countsAs: CountsAs, per100: (part: number) => string): string =>
  countsAs.kind === 'starter'
    ? saidWords.starter(per100(countsAs.hydration))
    : countsAsWords[countsAs.kind].name.toLowerCase()

/**
 * What bringing a state back does besides its lines, after `Bringing it back also`: `changes how much to make, and
 * takes away the jotting tin`. The left of a pair is the state, the right what is now. Empty where it does nothing.
 */
export function alsoDone(pairs: readonly SettingPair[]): string {
  const of = (gone: boolean) => pairs.filter(p => (p.only === 'right') === gone).map(p => p.what)
  return doneWords(of(false), of(true))
}
