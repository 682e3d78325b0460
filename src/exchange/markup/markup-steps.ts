import { readStep } from '../../day/method/step-text.js'
import { stepName, stepWords } from '../../day/method/words.js'
import { isSameStep, type Said, stepInQuotes, stepOfWords } from '../text/page-cells.js'

/** A text on one line. */
export const tidyText = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\u2028\u2029\s]+/gu, ' ').trim()

/** What a HowToStep says of a step of ours: `additionalType` is its kind, where its words do not give it. */
export interface MarkupStep {
  readonly name: string // '' where it has none
  readonly text: string
  readonly additionalType?: Said['kind'] | undefined
}

const isKind = (type: unknown): type is Said['kind'] => type === 'hands' || type === 'wait' || type === 'bake'

/**
 * The step of a HowToStep that Tarebook wrote; undefined of any other. It is ours where it says its kind, and without
 * that where it begins with its name and all that follows is what a step is typed with.
 */
export function stepOfMarkup(name: string, text: string, type?: unknown): Said | undefined {
  const said = stepOfWords(text)
  if (!said || text === stepInQuotes(said)) return said
  const kind = isKind(type) ? type : said.kind
  const does = name === '' && said.does === stepName({ does: '', kind }) ? '' : said.does
  const step = { ...said, kind, does }
  const isOurs = isKind(type) || (does !== '' && readStep(said.text).notRead.length === 0)
  return isOurs && does === name && stepWords(step) === text ? step : undefined
}

/** A step as a HowToStep says it: in its own words where `stepOfMarkup` gives it back, or each of them between quotation marks. */
export function markupStep(step: Said): MarkupStep {
  const [name, text] = [tidyText(step.does), stepWords(step)]
  const type = [undefined, step.kind].find(kind => isSameStep(stepOfMarkup(name, text, kind), step))
  const isPlain = isSameStep(stepOfMarkup(name, text, type), step) && tidyText(text) === text
  if (!isPlain) return { name, text: stepInQuotes(step) }
  return type ? { name, text, additionalType: type } : { name, text }
}
