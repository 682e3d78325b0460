import { lengthText } from '../../src/day/course/clock.js'
import type { StepRead } from '../../src/day/method/step-text.js'
import type { Length } from '../../src/day/method/step-time.js'
import { boundsText } from '../../src/day/plan/words.js'
import type { Step } from '../../src/dough/document/formula.js'

/** What is done at each step, with the kind that it usually is: offered while typing. */
export const tradeSteps: Readonly<Record<string, Step['kind']>> = {
  Mix: 'hands',
  Feed: 'hands',
  Ripen: 'wait',
  Soak: 'wait',
  Scald: 'hands',
  Autolyse: 'wait',
  Rest: 'wait',
  'Add salt': 'hands',
  'Work in': 'hands',
  Knead: 'hands',
  Fold: 'hands',
  Bulk: 'wait',
  Divide: 'hands',
  Preshape: 'hands',
  'Bench rest': 'wait',
  Shape: 'hands',
  Proof: 'wait',
  Retard: 'wait',
  Score: 'hands',
  Load: 'hands',
  Bake: 'bake',
  Cool: 'wait',
}

export const kindWords: Readonly<Record<Step['kind'], string>> = {
  hands: 'by hand',
  wait: 'wait',
  bake: 'bake',
}

export const methodWords = {
  heading: 'Method',
  bench: 'At the bench: weigh and time it',
  hint: 'What is done, step by step: Mix, 10 min. Bulk, 3.5–4.5 h at 24 °C. Bake, 45 min at 230 °C.',
  of: (stage: string) => `Method of ${stage}`,
  step: (number: number, does: string) => (does ? `Step ${number}: ${does}` : `Step ${number}`),
  newStep: (stage: string) => `New step of ${stage}`,
  does: 'What is done',
  kind: 'How it passes',
  text: 'Time and what else matters',
  note: 'What to look for',
  doesHint: 'Add a step',
  textHint: '30 min at 24 °C',
  noteHint: 'what to look for',
  actions: (does: string) => `Actions for ${does || 'this step'}`,
  moveUp: 'Move up',
  moveDown: 'Move down',
  remove: 'Remove',
  added: (does: string) => `${does} added.`,
  moveHere: (does: string) => `Drag to move ${does || 'this step'}`,
  wordsToUse: 'Words of the trade',
  /** `after`: what is done before it now; undefined at the beginning. */
  moved: (does: string, number: number, count: number, after: string | undefined) =>
    `Moved ${does || 'the step'} to place ${number} of ${count}${after === undefined ? '' : `, after ${after || 'a step'}`}.`,
  removed: (does: string) => `${does} removed.`,
  withoutName: 'Say what is done, such as Mix or Bulk.',
  noTime: 'No time yet: write one, such as 30 min or 3.5–4.5 h.',
  notRead: (text: string) =>
    `“${text}” is not understood. Write a time (30 min, 3.5–4.5 h, 3 × 5 min every 30 min), a temperature (at 25 °C), or what goes in (adds Salt).`,
  noLine: (name: string, stage: string) => `${name} is not in ${stage}.`,
}

const degrees = (celsius: number): string => `${Number(celsius.toFixed(1))} °C`

/** What was understood of a step, read back: `3 h 30–4 h 30, usually 4 h; at 24 °C; Salt goes in`. */
export function understood(read: StepRead, length: Length | undefined): string {
  const { exact, celsius, inFridge, repeats, each, atOnce, adds } = read
  const said: string[] = []
  if (length) {
    const moves = length.most - length.least >= 0.5
    const time = moves
      ? `${boundsText(length)}, usually ${lengthText(length.usual)}`
      : lengthText(length.usual)
    said.push(`${exact ? 'exactly ' : ''}${time}${each ? ' for each piece' : ''}`)
  }
  if (repeats)
    said.push(
      `${repeats.times} times ${lengthText(repeats.minutes)} by hand, ${lengthText(repeats.every)} apart`,
    )
  if (inFridge) said.push('in the fridge')
  if (celsius !== undefined) said.push(`at ${degrees(celsius)}`)
  if (atOnce !== undefined) said.push(`${atOnce} at once`)
  if (adds.length) said.push(`${adds.join(', ')} ${adds.length === 1 ? 'goes' : 'go'} in`)
  return said.join('; ')
}
