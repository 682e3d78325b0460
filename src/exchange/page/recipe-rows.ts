import { lengthWritten } from '../steps/step-draft.js'
import type { ToldRow, ToldText } from '../steps/told-row.js'
import type { Instruction, RecipeData } from './recipe-data.js'

/** Writes rows, and beside them what is known of them. */
class Rows {
  readonly #rows: string[] = []
  readonly #told = new Map<number, ToldRow>()

  put(text: string, told?: ToldRow): void {
    for (const row of text.split('\n')) {
      this.#rows.push(row)
      if (told && row !== '') this.#told.set(this.#rows.length, told)
    }
  }

  get text(): ToldText {
    return { text: this.#rows.join('\n'), told: this.#told }
  }
}

/** A stage of a recipe that Tarebook wrote: what it weighs, and the steps of its method. */
interface OwnStage {
  readonly name: string
  readonly weighs: string // `Levain: weigh 40 g Ripe starter and …`; '' where it weighs nothing
  readonly steps: readonly Instruction[]
}

/**
 * The stages of a recipe of ours, where it has a method: sections of nothing but steps that we wrote, beneath what is weighed.
 * Undefined of any other recipe.
 */
function ownStages(instructions: readonly Instruction[]): OwnStage[] | undefined {
  const stages: OwnStage[] = []
  for (const one of instructions) {
    const { section, name, text, own } = one
    if (section === undefined) return undefined
    const last = stages.at(-1)
    if (name === section && text.startsWith(`${section}: weigh `))
      stages.push({ name: section, weighs: text, steps: [] })
    else if (!own) return undefined
    else if (last?.name === section) stages[stages.length - 1] = { ...last, steps: [...last.steps, one] }
    else stages.push({ name: section, weighs: '', steps: [one] })
  }
  return stages.some(({ steps }) => steps.length > 0) ? stages : undefined
}

const escaped = (text: string): string => text.replace(/[$()*+.?[\\\]^{|}]/g, '\\$&')

/** How much of each earlier stage one of ours takes, as its weighing says: `210 g Levain`. */
const takenBy = ({ weighs }: OwnStage, earlier: readonly OwnStage[]): string[] =>
  earlier.flatMap(({ name }) => {
    const [taken] =
      new RegExp(`(?<=[ ,])\\d+(?:\\.\\d+)? g ${escaped(name)}(?=,| and | \\(|\\.$)`).exec(weighs) ?? []
    return name && taken ? [taken] : []
  })

/** The rows of ours: each stage with its lines, then each with its steps. */
function putOwn(rows: Rows, stages: readonly OwnStage[], ingredients: readonly string[]): void {
  const last = stages.at(-1)!
  const ofStage = (line: string) =>
    stages.find(({ name }) => name !== '' && line.endsWith(`, for ${name}`)) ?? last
  for (const [at, stage] of stages.entries()) {
    rows.put('')
    rows.put(stage.name || '–', { is: 'stage', name: stage.name })
    for (const line of ingredients)
      if (ofStage(line) === stage)
        rows.put(stage === last ? line : line.slice(0, -`, for ${stage.name}`.length))
    for (const line of takenBy(stage, stages.slice(0, at))) rows.put(line)
  }
  rows.put('')
  rows.put('Method', { is: 'method' })
  for (const { name, steps } of stages)
    for (const { text, own } of steps)
      rows.put(own?.text ?? text, { is: 'step', stage: name, ...(own && { step: own.step }) })
}

const mostWords = 5 // of a step's name that says what is done, and does not begin its text

/** A step's name before its text, where that does not say it. */
const withName = ({ name, text }: Instruction): string =>
  name === '' ||
  /^(?:step|étape|schritt)\s*\d+\W*$/i.test(name) ||
  name.split(/\s+/).length > mostWords ||
  text.toLowerCase().includes(name.toLowerCase().replace(/\W+$/, ''))
    ? text
    : `${name.replace(/[\s:.]+$/, '')}: ${text}`

function putMethod(rows: Rows, instructions: readonly Instruction[]): void {
  if (instructions.length === 0) return
  rows.put('')
  rows.put('Method', { is: 'method' })
  let section: string | undefined
  for (const one of instructions) {
    if (one.section !== section && one.section)
      rows.put(`## ${one.section.replace(/\n/g, ' ')}`, { is: 'method' })
    section = one.section
    const [first = '', ...others] = withName(one).split('\n')
    const isTimed = one.minutes !== undefined && others.length === 0
    rows.put(first, one.isTip ? { is: 'note' } : { is: 'step', ...(isTimed && { minutes: one.minutes }) })
    for (const row of others) rows.put(row, { is: one.isTip ? 'note' : 'step' })
  }
}

function putFacts(rows: Rows, makes: string, { prep, baking, total }: RecipeData['times']): void {
  if (makes) rows.put(`Yield: ${makes.replace(/\n/g, ', ')}`, { is: 'fact' })
  for (const [words, minutes, told] of [
    ['Prep time', prep, false],
    ['Baking time', baking, baking !== undefined && { baking }],
    ['Total time', total, false],
  ] as const)
    if (minutes !== undefined)
      rows.put(`${words}: ${lengthWritten({ least: minutes, most: minutes }, 'english')}`, {
        is: 'fact',
        ...told,
      })
}

/** A recipe's data as a text to be read: its name, what it says of itself, what goes in, what is done. */
export function recipeRows({
  name,
  description,
  makes,
  times,
  ingredients,
  instructions,
}: RecipeData): ToldText {
  const rows = new Rows()
  const title = name.replace(/\n/g, ' ')
  rows.put(title, { is: 'title', name: title })
  if (description) rows.put(description, { is: 'note' })
  const own = ownStages(instructions)
  if (own) putOwn(rows, own, ingredients)
  else {
    putFacts(rows, makes, times)
    rows.put('')
    rows.put('Ingredients', { is: 'list' })
    for (const line of ingredients) rows.put(line)
    putMethod(rows, instructions)
  }
  return rows.text
}
