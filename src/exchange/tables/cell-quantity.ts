import { readAmount } from '../../dough/amounts/amounts.js'
import { weightUnits } from '../../dough/amounts/units.js'
import { tidy } from '../../dough/document/words.js'
import { type DecimalMark, type Doubt, plainAmount } from '../values/decimals.js'
import type { ColumnUse } from './types.js'
import type { NoAmount } from './words.js'

/** The columns that hold amounts. */
export type AmountUse = Extract<ColumnUse, 'amount' | 'percent' | 'grams' | 'kilograms' | 'ounces' | 'pounds'>

const unitOfUse: Readonly<Record<AmountUse, string>> = {
  amount: 'g',
  percent: '%',
  grams: 'g',
  kilograms: 'kg',
  ounces: 'oz',
  pounds: 'lb',
}

export const isAmountUse = (use: ColumnUse | undefined): use is AmountUse =>
  use !== undefined && use in unitOfUse

/** What a cell of an amount column says. */
export type CellRead =
  | { readonly is: 'nothing' }
  | { readonly is: 'words'; readonly why: NoAmount }
  | Quantity

export interface Quantity {
  readonly is: 'quantity'
  readonly text: string // as a line keeps it
  readonly grams?: number // of a weight
  readonly percent?: number // of a percentage, as a fraction of 1
  readonly measure?: { readonly count: number; readonly unit: string } // a spoon, a cup, an egg
  readonly step: number // the last printed digit's worth: grams, or a fraction of 1
  readonly bare: boolean // without a unit of its own
  readonly doubts: readonly Doubt[]
  readonly remark?: string // text to keep in the note: a range, an “about”
}

const spellings: Readonly<Record<string, string>> = {
  g: 'g gr gm gms gram grams gramme grammes gramm',
  kg: 'kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes kilogramm',
  oz: 'oz ozs ounce ounces once onces unze unzen',
  lb: 'lb lbs pound pounds',
  '%': '% pct percent prozent pourcent',
  ml: 'ml millilitre millilitres milliliter milliliters',
  cl: 'cl',
  dl: 'dl',
  l: 'l litre litres liter liters',
  tsp: 'tsp teaspoon teaspoons tl teelöffel càc cc',
  tbsp: 'tbsp tablespoon tablespoons el esslöffel càs cs',
  cup: 'cup cups',
  'fl oz': 'floz',
  each: 'each piece pieces pcs stück stk pièce pièces',
}
const unitWords = new Map(
  Object.entries(spellings).flatMap(([unit, words]) => words.split(' ').map(word => [word, unit] as const)),
)
const inMillilitres: Readonly<Record<string, number>> = { cl: 10, dl: 100 }

const number = String.raw`\d{1,3}(?:[ '’\u00a0\u2009\u202f]\d{3})+(?:[.,]\d+)?(?![\d/])|\d+(?:[.,]\d+)*(?:[eE][+-]?\d+)?|[.,]\d+`
const amount = String.raw`(?:(?<whole>\d+)(?:[ \u00a0]+|(?=[¼-¾⅐-⅞])))?(?<part>\d+[/⁄]\d+|[¼½¾⅐-⅞])|(?<number>${number})`
const unit = String.raw`\s*(?<unit>%|\p{L}[\p{L}]*\.?)?`
const quantity = new RegExp(`^(?:${amount})${unit}$`, 'u')
const twoUnits = new RegExp(
  `^(?<a>${number})\\s*(?:lbs?|pounds?)\\.?,?\\s*(?<b>${number})\\s*(?:oz|ounces?)\\.?$`,
  'iu',
)
const range = new RegExp(`^(?<from>${number})\\s*(?:[-–—]|to|bis|à)\\s*(?<to>${number})${unit}$`, 'iu')
const about = /^(?:~|≈|ca\.?|approx\.?|about|etwa|env\.?|environ|circa)\s*/i
const nothing = /^(?:[-–—.…/]+|n\/?a|nil|none|keine?|aucune?)?$/i
const reading =
  /°\s*[CF]?$|\d\s*(?:h|hrs?|hours?|min\.?|mins|minutes?|std\.?|stunden?|heures?|minuten|uhr|days?|tage?|jours?)$/i

/** `1.025`: which of its marks is the decimal? `sign` where the number can only be read one way. */
export function readNumber(
  typed: string,
  mark: DecimalMark,
): { plain: string; sign?: DecimalMark; doubtful?: true } | undefined {
  const tight = typed.replace(/[ '’\u00a0\u2009\u202f]/g, '')
  const gaps = tight !== typed
  const [, digits = '', exponent = ''] = /^([\d.,]+)(?:[eE]([+-]?\d+))?$/.exec(tight) ?? []
  if (digits === '') return undefined
  const marks = digits.replace(/\d/g, '')
  const plainOf = (whole: string, rest: string) => {
    const plain = rest === '' ? whole : `${whole || '0'}.${rest}`
    return exponent === '' ? plain : String(tidy(Number(`${plain}e${exponent}`)))
  }
  if (marks === '') return { plain: plainOf(digits, '') }
  const last = marks.at(-1) as DecimalMark
  const at = digits.lastIndexOf(last)
  const [before, after] = [digits.slice(0, at), digits.slice(at + 1)]
  const other: DecimalMark = last === ',' ? '.' : ','
  if (marks.length === 1) {
    const ambiguous = !gaps && exponent === '' && after.length === 3 && /^[1-9]\d{0,2}$/.test(before)
    if (!ambiguous) return { plain: plainOf(before, after), sign: last }
    return { plain: last === mark ? plainOf(before, after) : before + after, doubtful: true }
  }
  const grouped = /^\d{1,3}(?:[.,]\d{3})+$/
  if (!marks.includes(other))
    return grouped.test(digits) ? { plain: digits.replaceAll(last, ''), sign: other } : undefined
  return grouped.test(before) && !before.includes(last)
    ? { plain: plainOf(before.replaceAll(other, ''), after), sign: last }
    : undefined
}

const zeros = Array.from('٠۰०০０', zero => zero.charCodeAt(0))
/** Arabic and other digits, full-width letters and signs, as the rest of the world's keyboards have them. */
const withPlainDigits = (text: string): string =>
  /[^\x20-\x7e]/.test(text)
    ? text
        .replace(/[٠-٩۰-۹०-९০-৯０-９]/g, digit => {
          const code = digit.charCodeAt(0)
          return String(code - zeros.find(zero => code >= zero && code <= zero + 9)!)
        })
        .replaceAll('％', '%')
        .replaceAll('٫', '.')
        .replaceAll('−', '-')
    : text

const fractions = '¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'
const fractionValues = [1 / 4, 1 / 2, 3 / 4, 1 / 7, 1 / 9, 1 / 10, 1 / 3, 2 / 3, 1 / 5, 2 / 5, 3 / 5, 4 / 5]
fractionValues.push(1 / 6, 5 / 6, 1 / 8, 3 / 8, 5 / 8, 7 / 8)

function partValue(part: string): number {
  const vulgar = fractions.indexOf(part)
  if (vulgar >= 0) return fractionValues[vulgar]!
  const [top, bottom] = part.split(/[/⁄]/)
  return Number(top) / Number(bottom)
}

const steps = [1, 0.1, 0.01, 0.001, 1e-4, 1e-5, 1e-6]
function stepOf(plain: string): number {
  const point = plain.indexOf('.')
  return point < 0 ? 1 : (steps[plain.length - point - 1] ?? 0)
}

const none: readonly Doubt[] = []

/** A number with its unit as a quantity; `step` is what its last digit is worth. */
function inUnit(
  plain: string,
  value: number,
  step: number,
  unit: string,
  bare: boolean,
  doubts: readonly Doubt[] = none,
): Quantity {
  if (unit === '%')
    return { is: 'quantity', text: `${plain}%`, percent: value / 100, step: step / 100, bare, doubts }
  if (Object.hasOwn(weightUnits, unit)) {
    const each = weightUnits[unit as keyof typeof weightUnits]
    const grams = each === 1 ? value : tidy(value * each)
    return { is: 'quantity', text: `${plain} ${unit}`, grams, step: step * each, bare, doubts }
  }
  const ml = inMillilitres[unit]
  const measure = ml ? { count: value * ml, unit: 'ml' } : { count: value, unit }
  const text = ml ? `${tidy(value * ml)} ml` : `${plain} ${unit}`
  return { is: 'quantity', text, measure, step, bare, doubts }
}

const withRemark = (quantity: Quantity, remark: string | undefined): Quantity =>
  remark === undefined ? quantity : { ...quantity, remark }

const words = (code: Exclude<NoAmount['code'], 'unknown unit'>): CellRead => ({ is: 'words', why: { code } })

/** What a cell of an amount column says; `mark` is the decimal mark where a number alone does not tell. */
export function readCell(cell: string, use: AmountUse, mark: DecimalMark): CellRead {
  let typed = withPlainDigits(cell).trim()
  if (nothing.test(typed)) return { is: 'nothing' }
  const hedged = about.exec(typed)?.[0]
  if (hedged) typed = typed.slice(hedged.length)
  const remark = hedged ? cell.trim() : undefined
  if (typed.length > 80) return words('too long')
  if (reading.test(typed)) return words('not edible')
  if (/^[-(]\s*\d/.test(typed)) return words('negative')
  if (/^[=#]/.test(typed)) return words('calculation')
  const found = quantity.exec(typed)?.groups
  if (found) {
    const own = found.unit?.replace(/\.$/, '').toLowerCase()
    const unit = own === undefined ? unitOfUse[use] : unitWords.get(own)
    if (unit === undefined) return { is: 'words', why: { code: 'unknown unit', unit: found.unit! } }
    if (found.part !== undefined) {
      const value = Number(found.whole ?? 0) + partValue(found.part)
      if (!Number.isFinite(value)) return words('by nothing')
      const text = `${found.whole ? `${found.whole} ` : ''}${found.part.replace('⁄', '/')}`
      return withRemark(inUnit(text, value, 0, unit, own === undefined), remark)
    }
    const read = readNumber(found.number!, mark)
    const value = Number(read?.plain)
    if (!read || !Number.isFinite(value) || value > 1e12) return words('no number')
    const doubts = read.doubtful ? [{ typed: found.number!, read: read.plain }] : none
    return withRemark(inUnit(read.plain, value, stepOf(read.plain), unit, own === undefined, doubts), remark)
  }
  return several(typed, cell.trim(), use, mark)
}

/** Is it a name by its first letter, without the signs of a calculation? Nothing else of it need be looked at. */
export const isName = (cell: string): boolean =>
  /^\p{L}[^*/+()=<>%]*$/u.test(cell) && !about.test(cell) && !nothing.test(cell)

/** `1 lb 4 oz`, `650–680 g`, and what Tarebook itself would take as an amount. */
function several(typed: string, cell: string, use: AmountUse, mark: DecimalMark): CellRead {
  const pounds = twoUnits.exec(typed)?.groups
  if (pounds) {
    const [a, b] = [readNumber(pounds.a!, mark), readNumber(pounds.b!, mark)]
    if (!a || !b) return words('no number')
    const [lb, oz] = [
      inUnit(a.plain, Number(a.plain), 1, 'lb', false),
      inUnit(b.plain, Number(b.plain), stepOf(b.plain), 'oz', false),
    ]
    return { ...oz, text: `${lb.text} + ${oz.text}`, grams: tidy(lb.grams! + oz.grams!) }
  }
  const between = range.exec(typed)?.groups
  if (between) {
    const [from, to] = [readNumber(between.from!, mark), readNumber(between.to!, mark)]
    const own = between.unit?.replace(/\.$/, '').toLowerCase()
    const unit = own === undefined ? unitOfUse[use] : unitWords.get(own)
    if (!from || !to || unit === undefined) return words('no amount')
    const middle = tidy((Number(from.plain) + Number(to.plain)) / 2)
    if (!(middle <= 1e12)) return words('no number')
    const spread = Math.abs(Number(to.plain) - Number(from.plain))
    const doubts = [from, to].flatMap((n, i) =>
      n.doubtful ? [{ typed: i ? between.to! : between.from!, read: n.plain }] : [],
    )
    return withRemark(inUnit(String(middle), middle, spread, unit, own === undefined, doubts), cell)
  }
  if (use === 'amount' && /\d/.test(typed)) {
    const plain = plainAmount(typed, mark)
    const understood = readAmount(plain.text)
    if (understood && 'expression' in understood)
      return { is: 'quantity', text: plain.text, step: 0, bare: plain.bare, doubts: plain.doubts }
  }
  return words('no amount')
}

const numberCell = new RegExp(`^(?<number>${number})\\s*(?:%|\\p{L}{1,12}\\.?)?$`, 'u')
/** The number of a cell that holds one and perhaps a unit. */
export const numberIn = (cell: string): string | undefined =>
  cell.length < 40 ? numberCell.exec(withPlainDigits(cell).trim())?.groups?.number : undefined
