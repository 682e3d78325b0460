import { type CountsAs, newId, sameName } from '../../src/dough/document/formula.js'
import { type Ingredient, isUnlisted, type Larder } from '../../src/dough/document/larder.js'
import { guessCountsAs } from '../../src/dough/larder/counts-as-guess.js'
import { allergensFor, type Said, substancesIn } from '../../src/dough/larder/substances.js'
import type { NumberStyle } from '../base/numbers.js'
import { showNumber } from '../base/numbers.js'
import { readNumber, readWeight } from '../typed/typed-numbers.js'
import { type LabelField, type OnLabel, onLabelErrors, onLabelIn, onLabelOf } from './label-fields.js'
import { faultWords } from './words.js'

export type Kind = CountsAs['kind']
export const percentFields = ['moisture', 'fat', 'sugar', 'salt'] as const
export const gramFields = ['tsp', 'tbsp', 'cup', 'density', 'each'] as const
/** Of how it is bought; each may be left empty. Weights are typed with their unit, `25 kg`. */
export const boughtFields = ['pack', 'price', 'stock'] as const
export type BoughtField = (typeof boughtFields)[number]
export type NumberField = 'hydration' | (typeof percentFields)[number] | (typeof gramFields)[number]
export type DraftField = NumberField | BoughtField | LabelField | 'name' | 'countsAs'

/** An ingredient as its form shows it: every number as text in the baker's own way of writing. */
export interface Draft extends Said, Readonly<Record<NumberField | BoughtField, string>> {
  readonly name: string
  readonly supplier: string
  readonly countsAs: Kind | '' // '' until the baker says
  readonly kind: string
  readonly onLabel: OnLabel // what its own label says
  readonly note: string
}

/** What is wrong, in a sentence at its field. */
export type DraftErrors = Partial<Record<DraftField, string>>

const cupMillilitres = 236.588 // a US cup
const densityOfCup = (cup: number): number => Math.round((cup / cupMillilitres) * 1e4) / 1e4
const fresh: Omit<Ingredient, 'id' | 'name' | 'kind' | 'countsAs'> = {
  otherNames: [],
  moisture: 0,
  fat: 0,
  sugar: 0,
  protein: 0,
  salt: 0,
  note: '',
}

/** A weight as a baker would type it: `25 kg`, `500 g`. */
export function weightAsTyped(grams: number | undefined, numbers: NumberStyle): string {
  if (grams === undefined) return ''
  return grams >= 1000 ? `${showNumber(grams / 1000, numbers)} kg` : `${showNumber(grams, numbers)} g`
}

/** The form of a known ingredient, or of a new one of this name with a guess at what it counts as. */
export function draftOf(known: Ingredient | undefined, name: string, numbers: NumberStyle): Draft {
  const grams = (value: number | undefined) => (value === undefined ? '' : showNumber(value, numbers))
  const percent = (value: number) => (value === 0 ? '' : showNumber(value * 100, numbers))
  const from = known ?? fresh
  const reckoned = from.cup !== undefined && from.density === densityOfCup(from.cup)
  return {
    name: known?.name ?? name,
    countsAs: known?.countsAs.kind ?? guessCountsAs(name) ?? '',
    kind: known?.kind ?? '',
    hydration:
      known === undefined
        ? '100'
        : known.countsAs.kind === 'starter'
          ? percent(known.countsAs.hydration)
          : '',
    moisture: percent(from.moisture),
    fat: percent(from.fat),
    sugar: percent(from.sugar),
    salt: percent(from.salt),
    tsp: grams(from.tsp),
    tbsp: grams(from.tbsp),
    cup: grams(from.cup),
    density: reckoned ? '' : grams(from.density),
    each: grams(from.each),
    pack: weightAsTyped(from.pack, numbers),
    price: grams(from.price),
    stock: weightAsTyped(from.stock, numbers),
    supplier: from.supplier ?? '',
    contains: substancesIn(from.allergens),
    onLabel: onLabelOf(known, numbers),
    none: from.allergens !== undefined && isUnlisted(from.allergens),
    note: from.note,
  }
}

const isPercent = (field: NumberField): boolean =>
  field === 'hydration' || percentFields.some(name => name === field)

function numberError(field: NumberField, text: string, numbers: NumberStyle): string | undefined {
  if (!text.trim()) {
    if (field !== 'hydration') return undefined
    return faultWords.noHydration
  }
  const value = readNumber(text, numbers)
  if (value === undefined)
    return faultWords.notANumber(text.trim(), showNumber(isPercent(field) ? 12.5 : 4.5, numbers))
  if (value < 0) return faultWords.negative
  if (field === 'hydration') {
    if (value < 10 || value > 1000) return faultWords.hydrationOutOfRange
  } else if (isPercent(field)) {
    if (value > 100) return faultWords.moreThanWhole
  } else if (value === 0) return faultWords.weighsNothing
  else if (field === 'density' && value > 5) return faultWords.tooDense(showNumber(0.53, numbers))
  return undefined
}

function boughtError(field: BoughtField, draft: Draft, numbers: NumberStyle): string | undefined {
  const text = draft[field].trim()
  if (!text)
    return field === 'pack' && (readNumber(draft.price, numbers) ?? 0) > 0 ? faultWords.noPack : undefined
  if (field === 'price') {
    const price = readNumber(text, numbers)
    if (price === undefined) return faultWords.notANumber(text, showNumber(18.5, numbers))
    return price < 0 ? faultWords.negative : undefined
  }
  const grams = readWeight(text, numbers)
  if (grams === undefined) return faultWords.notAWeight(text, showNumber(12.5, numbers))
  if (grams < 0) return faultWords.negative
  return field === 'pack' && grams === 0 ? faultWords.weighsNothing : undefined
}

/** What is wrong with the fields; empty when nothing is. */
export function errorsIn(
  draft: Draft,
  known: Ingredient | undefined,
  larder: Larder,
  numbers: NumberStyle,
): DraftErrors {
  const errors: DraftErrors = {}
  const name = draft.name.trim()
  const other = name ? larder.find(name) : undefined
  if (!name) errors.name = faultWords.noName
  else if (other && other.id !== known?.id)
    errors.name = sameName(other.name, name)
      ? faultWords.isInLarder(other.name)
      : faultWords.isOtherNameOf(name, other.name)
  if (!draft.countsAs) errors.countsAs = faultWords.noCountsAs
  for (const field of fieldsFor(draft.countsAs)) {
    const error = numberError(field, draft[field], numbers)
    if (error) errors[field] = error
  }
  for (const field of boughtFields) {
    const error = boughtError(field, draft, numbers)
    if (error) errors[field] = error
  }
  const parts = percentFields.filter(field => fieldsFor(draft.countsAs).includes(field))
  const sum = parts.reduce((total, field) => total + (readNumber(draft[field], numbers) ?? 0), 0)
  const last = parts.findLast(field => draft[field].trim())
  if (sum > 100.5 && last) errors[last] ??= faultWords.sumTooLarge(showNumber(sum, numbers))
  return { ...errors, ...onLabelErrors(draft.onLabel, numbers) }
}

/** The number fields that mean something for what an ingredient counts as. Flour's own moisture is not counted. */
export function fieldsFor(kind: Kind | ''): readonly NumberField[] {
  if (kind === 'starter') return ['hydration', ...gramFields]
  if (kind === 'other') return [...percentFields, ...gramFields]
  if (kind === 'flour') return ['fat', 'sugar', ...gramFields]
  return gramFields
}

/** The ingredient a faultless draft describes. A field left as it was keeps the figure it was shown for. */
export function ingredientOf(draft: Draft, known: Ingredient | undefined, numbers: NumberStyle): Ingredient {
  const before = draftOf(known, '', numbers)
  const from = known ?? fresh
  const kind = draft.countsAs || 'other'
  const fields = fieldsFor(kind)
  const share = (field: (typeof percentFields)[number]): number => {
    if (!fields.includes(field)) return 0
    if (draft[field] === before[field]) return from[field]
    return (readNumber(draft[field], numbers) ?? 0) / 100
  }
  const weights: { -readonly [F in (typeof gramFields)[number]]?: number } = {}
  for (const field of gramFields) {
    const value = draft[field] === before[field] ? from[field] : readNumber(draft[field], numbers)
    if (value !== undefined) weights[field] = value
  }
  const bought: { -readonly [F in BoughtField]?: number } = {}
  for (const field of boughtFields) {
    const read = field === 'price' ? readNumber : readWeight
    const value = draft[field] === before[field] ? from[field] : read(draft[field], numbers)
    if (value !== undefined) bought[field] = value
  }
  const supplier = draft.supplier.trim()
  if (!draft.density.trim()) {
    delete weights.density
    if (weights.cup !== undefined) weights.density = densityOfCup(weights.cup)
  }
  const hydration = (readNumber(draft.hydration, numbers) ?? 100) / 100
  const moistures = { flour: 0, water: 1, salt: 0, starter: hydration / (1 + hydration) }
  const allergens = allergensFor(draft, from.allergens)
  const name = draft.name.trim()
  const formerName = known && !sameName(known.name, name) ? [known.name] : []
  return {
    id: known?.id ?? newId(),
    name,
    // Formulas that speak of it by its former name go on finding it.
    otherNames: [...from.otherNames.filter(n => !sameName(n, name)), ...formerName],
    kind: kind === 'other' ? draft.kind || 'other' : known?.countsAs.kind === kind ? known.kind : kind,
    countsAs: kind === 'starter' ? { kind, hydration } : { kind },
    moisture: kind === 'other' ? share('moisture') : moistures[kind],
    fat: share('fat'),
    sugar: share('sugar'),
    protein: from.protein,
    salt: kind === 'salt' ? 1 : share('salt'),
    ...weights,
    ...bought,
    ...(supplier && { supplier }),
    ...(allergens && { allergens }),
    ...(draft.none && { noneListed: true }),
    ...onLabelIn(draft.onLabel, known, numbers),
    note: draft.note.trim(),
  }
}

/** Whether two drafts say the same. */
export function sameDraft(a: Draft, b: Draft): boolean {
  const texts = (d: Draft) => JSON.stringify({ ...d, contains: [...d.contains].sort() })
  return texts(a) === texts(b)
}
