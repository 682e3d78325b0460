import { stepOfMarkup } from '../markup/markup-steps.js'
import type { Said } from '../text/page-cells.js'
import { readPage } from './page-rows.js'

/** What is done, as a recipe's data tells it. */
export interface Instruction {
  readonly section: string | undefined // the name of the section it stands in
  readonly name: string // '' where it has none
  readonly text: string
  readonly minutes: number | undefined // that are stated beside its words
  readonly isTip: boolean
  readonly own?: { readonly step: Said; readonly text: string } | undefined // where Tarebook wrote it
}

/** A recipe as a page's data has it. */
export interface RecipeData {
  readonly name: string
  readonly description: string
  readonly makes: string // `2 loaves`; '' where it is not said
  readonly times: Readonly<Record<'prep' | 'baking' | 'total', number | undefined>> // minutes
  readonly ingredients: readonly string[]
  readonly instructions: readonly Instruction[]
}

type Fields = Readonly<Record<string, unknown>>
const deepest = 12
const most = 5000 // of anything in a list; no recipe has so many

const fieldsOf = (value: unknown): Fields | undefined =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : undefined
const field = (of: Fields, name: string): unknown => (Object.hasOwn(of, name) ? of[name] : undefined)
const listOf = (value: unknown): readonly unknown[] =>
  Array.isArray(value) ? value.slice(0, most) : value === undefined || value === null ? [] : [value]

/** Whether something says that it is of a type; names of types may stand with or without their address. */
const isOf = (of: Fields, type: string): boolean =>
  listOf(field(of, '@type')).some(one => typeof one === 'string' && one.replace(/^.*[/:#]/, '') === type)

/** A text of the data, whose tags and entities are read, in rows. */
function textOf(value: unknown): string {
  if (typeof value === 'number') return String(value)
  if (typeof value !== 'string') return ''
  const text = /[<&]/.test(value) ? readPage(value).text : value
  return text
    .split(/\r\n?|\n|\u2028|\u2029/)
    .map(row => row.trim())
    .filter(row => row !== '')
    .join('\n')
}

/** Minutes of an ISO 8601 duration, `PT1H30M`; undefined of anything else, and of none. */
export function minutesOf(value: unknown): number | undefined {
  const text = typeof value === 'string' ? value : field(fieldsOf(value) ?? {}, 'duration')
  const iso =
    /^\s*P(?:(\d{1,4})W)?(?:(\d{1,4}(?:[.,]\d+)?)D)?(?:T(?:(\d{1,5}(?:[.,]\d+)?)H)?(?:(\d{1,6}(?:[.,]\d+)?)M)?(?:(\d{1,7}(?:[.,]\d+)?)S)?)?\s*$/i
  const [, ...counts] = (typeof text === 'string' && iso.exec(text)) || []
  const minutes = [10_080, 1440, 60, 1, 1 / 60].reduce(
    (sum, unit, at) => sum + unit * Number((counts[at] ?? '0').replace(',', '.')),
    0,
  )
  return minutes > 0 ? minutes : undefined
}

/** The time that something states of itself. */
const timeOf = (of: Fields): number | undefined =>
  ['performTime', 'totalTime', 'cookTime', 'prepTime']
    .map(name => minutesOf(field(of, name)))
    .find(minutes => minutes !== undefined)

/** Goes through the instructions of a recipe: texts, steps, sections, lists of any of them. */
class Instructions {
  readonly all: Instruction[] = []

  read(value: unknown, section: string | undefined, depth = 0): void {
    if (depth > deepest) return
    if (Array.isArray(value)) for (const one of listOf(value)) this.read(one, section, depth + 1)
    else if (typeof value === 'string') this.#put({ section, text: textOf(value) })
    const of = fieldsOf(value)
    if (of) this.#object(of, section, depth)
  }

  #object(of: Fields, section: string | undefined, depth: number): void {
    const inside = listOf(field(of, 'itemListElement') ?? field(of, 'steps'))
    const [asName, asText] = [field(of, 'name') ?? '', field(of, 'text') ?? field(of, 'description')]
    const isOurs = isOf(of, 'HowToStep') && typeof asName === 'string' && typeof asText === 'string'
    const step = isOurs ? stepOfMarkup(asName, asText, field(of, 'additionalType')) : undefined
    const isWhole = inside.every(one => field(fieldsOf(one) ?? {}, 'text') === asText) // all it says is its text
    const own = step && isWhole ? { step, text: String(asText) } : undefined
    const [name, text] = [textOf(asName), textOf(asText)]
    if (own) return this.#put({ section, name, text: text || own.text, minutes: timeOf(of), own })
    const isStep = isOf(of, 'HowToStep') || isOf(of, 'HowToDirection') || isOf(of, 'HowToTip')
    if (isStep || inside.length === 0) return this.#step(of, { section, name, text }, inside)
    const within = isOf(of, 'HowToSection') || name !== '' ? name : section
    if (text !== '') this.#put({ section: within, text })
    const before = this.all.length
    this.read(inside, within, depth + 1)
    const minutes = timeOf(of) // of all that stands in it
    const [only, ...others] = this.all.slice(before)
    if (only && others.length === 0) this.all[before] = { ...only, minutes: only.minutes ?? minutes }
  }

  #step(
    of: Fields,
    { section, name, text }: Pick<Instruction, 'section' | 'name' | 'text'>,
    inside: readonly unknown[],
  ): void {
    const directions = inside.flatMap(one => {
      const fields = typeof one === 'string' ? { text: one } : fieldsOf(one)
      const isTip = fields !== undefined && isOf(fields, 'HowToTip')
      const said = fields && textOf(field(fields, 'text') ?? field(fields, 'name'))
      return said ? [{ text: said, minutes: timeOf(fields), isTip }] : []
    })
    const told = directions.filter(({ isTip }) => !isTip)
    const isTip = isOf(of, 'HowToTip')
    const minutes = timeOf(of)
    if (text === '' && told.length > 0) {
      const [first, ...others] = told
      this.#put({
        section,
        name,
        text: first!.text,
        minutes: first!.minutes ?? (others.length ? undefined : minutes),
      })
      for (const other of others) this.#put({ section, ...other })
    } else if (told.every(one => text.includes(one.text))) {
      const stated = told.flatMap(one => one.minutes ?? [])
      const one = stated.length === 1 ? stated[0] : undefined
      this.#put({ section, name, text: text || name, minutes: minutes ?? one, isTip })
    } else {
      this.#put({ section, name, text, minutes, isTip })
      for (const other of told) if (!text.includes(other.text)) this.#put({ section, ...other })
    }
    for (const tip of directions.filter(one => one.isTip)) this.#put({ section, ...tip })
  }

  #put(one: Partial<Instruction> & Pick<Instruction, 'section' | 'text'>): void {
    if (one.text === '' || this.all.length >= most) return
    this.all.push({ name: '', minutes: undefined, isTip: false, ...one })
  }
}

function recipeOf(of: Fields): RecipeData {
  const instructions = new Instructions()
  instructions.read(field(of, 'recipeInstructions'), undefined)
  const makes = listOf(field(of, 'recipeYield')).map(textOf)
  return {
    name: textOf(field(of, 'name')),
    description: textOf(field(of, 'description')),
    makes: makes.toSorted((a, b) => b.length - a.length)[0] ?? '', // of `2` and `2 loaves` the one that says more
    times: {
      prep: minutesOf(field(of, 'prepTime')),
      baking: minutesOf(field(of, 'cookTime')),
      total: minutesOf(field(of, 'totalTime')),
    },
    ingredients: listOf(field(of, 'recipeIngredient') ?? field(of, 'ingredients')).flatMap(one =>
      textOf(one)
        .split('\n')
        .filter(row => row !== ''),
    ),
    instructions: instructions.all,
  }
}

/** Every recipe in data of any kind, the first one first. */
function* recipesIn(value: unknown, depth = 0): Generator<RecipeData> {
  if (depth > deepest) return
  for (const one of listOf(value)) {
    const of = fieldsOf(one)
    if (of && isOf(of, 'Recipe')) yield recipeOf(of)
    else if (of)
      for (const name of ['@graph', 'mainEntity', 'mainEntityOfPage', 'itemListElement', 'item', 'hasPart'])
        yield* recipesIn(field(of, name), depth + 1)
    else if (Array.isArray(one)) yield* recipesIn(one, depth + 1)
  }
}

/** Whether a text may be data of a recipe, before it is read. */
export const isRecipeData = (text: string): boolean =>
  /^\s*[[{]/.test(text.slice(0, 1000)) && /"@type"\s*:\s*(?:\[[^\]]{0,200})?"[^"]{0,60}Recipe"/.test(text)

/** The first recipe in texts of JSON-LD that says what goes in or what is done; undefined where there is none. Never throws. */
export function recipeInData(texts: readonly string[]): RecipeData | undefined {
  for (const text of texts) {
    for (const recipe of recipesIn(parsed(text)))
      if (recipe.ingredients.length + recipe.instructions.length > 0) return recipe
  }
  return undefined
}

/** The data of a text; undefined where it is none, even where line ends in its texts are taken for blanks. */
function parsed(text: string): unknown {
  const json = text.replace(
    /^\s*(?:<!--|\/\*\s*<!\[CDATA\[\s*\*\/|<!\[CDATA\[)|(?:-->|\/\*\s*\]\]>\s*\*\/|\]\]>)\s*$/g,
    '',
  )
  for (const one of [json, json.replace(/\p{Cc}+/gu, ' ')])
    try {
      return JSON.parse(one) as unknown
    } catch {}
  return undefined
}
