import { type StepPlan, stepsOf } from '../../day/method/stage-steps.js'
import type { Formula } from '../../dough/document/formula.js'
import type { FigureSheet } from '../../dough/sheet/figures.js'
import { listed } from '../../engine/index.js'
import { gramsSaid, type Printed, type PrintedLine, type PrintedStage, printedOf } from '../text/printed.js'
import { markupStep, tidyText } from './markup-steps.js'
import { methodTimes, stepDuration } from './method-times.js'
import { isoDuration, minutesOfStep, type RecipeTimes, statedTimes } from './stated-times.js'

interface Direction {
  readonly '@type': 'HowToDirection'
  readonly text: string
  readonly performTime?: string // ISO 8601 duration, as a step itself has none
}

interface Step {
  readonly '@type': 'HowToStep'
  readonly name?: string
  readonly text: string
  readonly additionalType?: string | undefined // `hands`, `wait` or `bake`, where its words do not give it
  readonly itemListElement?: readonly Direction[] // where its words state a time
}

/** A stage of a recipe with a method. */
interface Section {
  readonly '@type': 'HowToSection'
  readonly name: string
  readonly itemListElement: readonly Step[]
}

/** A recipe as schema.org knows it, with the properties that a formula can tell for certain. */
export interface RecipeMarkup extends RecipeTimes {
  readonly '@context': 'https://schema.org'
  readonly '@type': 'Recipe'
  readonly name: string
  readonly description?: string // the note, where a method says what is done
  readonly recipeYield: string
  readonly recipeIngredient: readonly string[]
  readonly recipeInstructions: readonly Step[] | readonly Section[]
}

const weightOf = (line: PrintedLine): string => {
  const weight = line.batch ?? line.grams
  return weight === undefined ? tidyText(line.typed) : gramsSaid(weight)
}

const withNote = (text: string, note: string): string =>
  tidyText(note) ? `${text} (${tidyText(note)})` : text

/** `70 g wholemeal spelt, fresh milled`; a line without a name says nothing. */
const ingredientText = (line: PrintedLine): string =>
  withNote([weightOf(line), tidyText(line.ingredient)].filter(Boolean).join(' '), line.note)

/** A direction with the time its words state, if they state one. */
function direction(text: string, words = text): Direction {
  const minutes = minutesOfStep(words)
  return {
    '@type': 'HowToDirection',
    text,
    ...(minutes !== undefined && { performTime: isoDuration(minutes) }),
  }
}

const timed = (directions: readonly Direction[]): Pick<Step, 'itemListElement'> =>
  directions.some(({ performTime }) => performTime) ? { itemListElement: directions } : {}

/** A step of a method, its time in a direction. */
function methodStep(plan: StepPlan, formula: Formula): Step {
  const { name, text, additionalType } = markupStep(plan.step)
  const performTime = stepDuration(plan, formula)
  return {
    '@type': 'HowToStep',
    ...(name && { name }),
    text,
    ...(additionalType && { additionalType }),
    ...(performTime && { itemListElement: [{ '@type': 'HowToDirection', text, performTime }] }),
  }
}

/** A stage with its method: what is weighed, then its steps. */
function section({ stage, lines }: Said, formula: Formula): Section[] {
  const name = tidyText(stage.name)
  const weighed = lines.length > 0 ? [making(name, 'weigh', lines)] : []
  const steps = stepsOf(stage.stage, 0).map(plan => methodStep(plan, formula))
  const itemListElement = [...weighed, ...steps]
  return itemListElement.length > 0 ? [{ '@type': 'HowToSection', name, itemListElement }] : []
}

/** A stage and those of its lines that say something. */
interface Said {
  readonly stage: PrintedStage
  readonly lines: readonly PrintedLine[]
}

/** What a stage is made of, to weigh or to mix; what the notes of its lines say of time is a direction each. */
function making(name: string, verb: 'weigh' | 'mix', lines: readonly PrintedLine[]): Step {
  const text = `${name}: ${verb} ${listed(lines.map(ingredientText))}.`
  const noted = lines
    .map(({ ingredient, note }) => direction(`${tidyText(ingredient)}: ${tidyText(note)}`, note))
    .filter(({ performTime }) => performTime)
  return { '@type': 'HowToStep', name, text, ...timed([{ '@type': 'HowToDirection', text }, ...noted]) }
}

const isYield = /^(?:makes|yields?|serves)\b[^.!?]*[.]?$/i // how much a recipe makes is nothing to do

/** The lines of a note that say something of the bread. */
const linesIn = (note: string): string[] =>
  note
    .split(/\r\n?|\n|\u2028|\u2029/)
    .map(line => tidyText(line).replace(/^(?:[-*•]|\d+[.)])\s+/, ''))
    .filter(line => line !== '' && !isYield.test(line))

/** The steps of a note: its lines, or the sentences of its only one. */
function stepsIn(note: string): Step[] {
  const lines = linesIn(note)
  const texts = lines.length === 1 ? lines[0]!.split(/(?<=[.!?…])\s+(?=\p{Lu})/u) : lines
  return texts.map(text => ({ '@type': 'HowToStep', text, ...timed([direction(text)]) }))
}

function yieldOf(sheet: FigureSheet, { stages }: Printed): string {
  const { batch } = sheet.formula
  const dough = stages.at(-1)!.lines.map(line => line.batch ?? line.grams)
  if (batch?.make === 'pieces' || batch?.make === 'baked pieces') {
    const weighed = batch.make === 'pieces' ? 'of dough' : 'baked'
    return listed(
      batch.pieces.map(({ count, weight, name = '' }) =>
        tidyText(
          `${Number(count.toFixed(2))} ${count === 1 ? 'piece' : 'pieces'} of ${gramsSaid(weight)} ${weighed}${name && `, ${name}`}`,
        ),
      ),
    )
  }
  if (dough.some(weight => weight === undefined)) return 'One dough'
  return `${gramsSaid((dough as number[]).reduce((sum, weight) => sum + weight, 0))} of dough`
}

/**
 * A formula as a schema.org Recipe, for a baker's own page: weights of the batch where one is set. Each stage is a step that
 * says what is weighed, or mixed where no note says more; the note's paragraphs follow. Where a stage has a method, each is a section with
 * its steps instead. Times stand where the method gives them (`methodTimes`), or else notes state them outright (`statedTimes`), those of a
 * step in a HowToDirection, since schema.org gives `performTime` to directions and not to steps.
 */
export function recipeMarkup(sheet: FigureSheet): RecipeMarkup {
  const printed = printedOf(sheet)
  const { name, note, stages } = printed
  const said = stages.map(
    (stage): Said => ({
      stage,
      lines: stage.lines.filter(line => `${line.ingredient}${line.typed}`.trim() !== ''),
    }),
  )
  const ingredients = said.flatMap(({ stage, lines }) =>
    lines
      .filter(line => !line.isStage)
      .map(line => `${ingredientText(line)}${stage.isFinal ? '' : `, for ${tidyText(stage.name)}`}`),
  )
  const steps = stepsIn(note)
  const { saysWork, saysBaking, ...times } = methodTimes(sheet.formula)
  const { prepTime, cookTime, totalTime } = statedTimes([
    note,
    ...stages.flatMap(stage => stage.lines.map(line => line.note)),
  ])
  const hasMethod = stages.some(({ method }) => method.length > 0)
  // How a dough is mixed, a note knows better: its salt may come later.
  const verb = steps.length > 0 ? 'weigh' : 'mix'
  const made = said
    .filter(({ lines }) => lines.length > 0)
    .map(({ stage, lines }) => making(tidyText(stage.name), verb, lines))
  return {
    '@context': 'https://schema.org',
    '@type': 'Recipe',
    name: tidyText(name),
    ...(hasMethod && steps.length && { description: linesIn(note).join('\n') }),
    recipeYield: yieldOf(sheet, printed),
    ...(!saysWork && prepTime && { prepTime }),
    ...(!saysBaking && cookTime && { cookTime }),
    ...(totalTime && { totalTime }),
    ...times,
    recipeIngredient: ingredients,
    recipeInstructions: hasMethod ? said.flatMap(one => section(one, sheet.formula)) : [...made, ...steps],
  }
}

/** The same as JSON in a script element that can stand in any HTML page: nothing in it can end the element. */
export function recipeScript(sheet: FigureSheet): string {
  const json = JSON.stringify(recipeMarkup(sheet), null, 2).replace(
    /[<>&\u2028\u2029]/g,
    sign => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )
  return `<script type="application/ld+json">\n${json}\n</script>\n`
}
