import {
  type CountsAs,
  finalDoughOf,
  type Hold,
  nameKey,
  type Stage,
  type Step,
} from '../../src/dough/document/formula.js'
import { batchWords, isWeightReading, readingWords, tidy } from '../../src/dough/document/words.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { asTheyWrite, type NumberStyle } from '../base/numbers.js'
import { losesInBaking, losesInMixing } from '../batch/batch-words.js'
import { countsAsWords } from '../larder/ingredient-words.js'

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
  const put = (key: string, what: string, says: string, none = 'nothing'): void => {
    let [at, count] = [key, 1]
    while (settings.has(at)) at = `${key} ${++count}`
    settings.set(at, { what: count > 1 ? `${what} (${count})` : what, says, else: none })
  }

  const { batch = { make: 'as written' } } = formula
  const { loss, bakeLoss } = losesInMixing(batch.make) ? batch : {}
  const lost = [
    ...(loss ? [`${per100(loss)} lost`] : []),
    ...(bakeLoss && losesInBaking(batch.make) ? [`${per100(bakeLoss)} lost in baking`] : []),
  ]
  put('make', 'how much to make', [batchWords(batch, grams), ...lost].join(', '))
  if (isFlourSet(sheet, final))
    put('flour weight', 'what 100 % flour weighs', grams(formula.flourWeight), 'what its lines say')
  for (const stage of formula.stages) {
    const { name, keepBack, loss: part, ferments, method } = stage
    const of = stage === final ? 'final' : `stage ${nameKey(name)}`
    if (keepBack)
      put(
        `keep ${of}`,
        `what is kept back of ${name}`,
        keepBack === 'seed' ? 'as much as its seed' : grams(keepBack),
      )
    if (part) put(`loss ${of}`, `what is lost of ${name}`, per100(part))
    if (method?.length) put(`method ${of}`, `the method of ${name}`, method.map(stepSaid).join('\n'), 'none')
    if (ferments !== undefined)
      put(`ferments ${of}`, `whether ${name} ferments`, ferments ? 'yes' : 'no', 'as its lines say')
  }
  for (const hold of formula.holds ?? []) {
    const ingredient = final.lines.find(l => l.id === hold.line)?.ingredient || 'a line'
    const held = heldWords(hold, ingredient)
    const value = isWeightReading(hold.reading) ? grams(hold.value) : per100(hold.value)
    put(`hold ${held}`, `the hold of ${held}`, `${value}, ${ingredient} gives`, 'not held')
  }
  for (const { name, text } of formula.jottings ?? [])
    put(`jotting ${nameKey(name)}`, `the jotting ${name}`, asTheyWrite(text, style), 'none')
  for (const { ingredient, countsAs } of formula.meanings)
    put(
      `counts ${nameKey(ingredient)}`,
      `what ${ingredient} counts as`,
      countsWords(countsAs, per100),
      'what the larder says',
    )
  if (formula.note) put('note', 'the note', formula.note)
  for (const stage of formula.stages)
    for (const { ingredient, note } of stage.lines)
      if (note)
        put(
          `note ${stage === final ? 'final' : nameKey(stage.name)} ${nameKey(ingredient)}`,
          `the note on ${ingredient || 'a line'} in ${stage.name}`,
          note,
        )
  return settings
}

/** Whether the weight of 100 % flour counts for anything: every flour of the final dough is a percentage. */
function isFlourSet(sheet: FigureSheet, { lines }: Stage): boolean {
  const flours = lines.map(line => sheet.line(line.id)).filter(line => line.is === 'flour')
  return flours.length > 0 && flours.every(flour => flour.typedIn === 'percent')
}

/** `Bulk (wait) 3.5–4.5 h, at 24 °C: grown by half` */
const stepSaid = ({ does, kind, text, note }: Step): string =>
  [does, `(${kind})`, `${text}${note && `: ${note}`}`].filter(Boolean).join(' ')

const heldWords = ({ reading }: Hold, ingredient: string): string =>
  reading === 'wholeDough' ? `${ingredient} on all flour` : readingWords[reading]

const countsWords = (countsAs: CountsAs, per100: (part: number) => string): string =>
  countsAs.kind === 'starter'
    ? `starter of ${per100(countsAs.hydration)} hydration`
    : countsAsWords[countsAs.kind].name.toLowerCase()

/** `the note, the jotting tin and the hold of salt`; of many the first ones, and how many more. */
export function listed(things: readonly string[]): string {
  const most = 4
  const shown = things.length > most + 1 ? [...things.slice(0, most), `${things.length - most} more`] : things
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`
}

/**
 * What bringing a state back does besides its lines, after `Bringing it back also`: `changes how much to make, and
 * takes away the jotting tin`. The left of a pair is the state, the right what is now. Empty where it does nothing.
 */
export function alsoDone(pairs: readonly SettingPair[]): string {
  const of = (gone: boolean) => listed(pairs.filter(p => (p.only === 'right') === gone).map(p => p.what))
  const [changes, takes] = [of(false), of(true)]
  return [...(changes ? [`changes ${changes}`] : []), ...(takes ? [`takes away ${takes}`] : [])].join(
    ', and ',
  )
}
