import type { Step } from '../../dough/document/formula.js'
import { type Sentences, wording } from '../../engine/index.js'

const kindWords = { hands: 'Work', wait: 'Wait', bake: 'Bake' } as const

/** What a step is called: in the baker's words, or by its kind where they are not given. */
export const stepName = ({ does, kind }: Pick<Step, 'does' | 'kind'>): string =>
  does.trim() || kindWords[kind]

/** A step as it is read out: `Bulk: 3.5–4.5 h, at 24 °C (grown by half)`. */
export function stepWords(step: Omit<Step, 'id'>): string {
  const { text, note } = step
  return `${stepName(step)}${text.trim() && `: ${text}`}${note.trim() && ` (${note})`}`
}

/** Something in a method to keep in mind at the bench. */
export type MethodCautionDiagnostic =
  | {
      readonly code: 'starterTooWarm'
      readonly step: Pick<Step, 'does' | 'kind'>
      readonly stage: string
      readonly celsius: number
    }
  | {
      readonly code: 'perishableWarm' | 'perishableHot'
      readonly by: 'method' | 'plan' // where its times are from
      readonly stage: string
      readonly minutes: number
    }

const timesOf = { method: 'By its method', plan: 'As it is planned' } as const

const hours = (minutes: number): string => `${Number((minutes / 60).toFixed(1))} h`

export const methodCautionSentences: Sentences<MethodCautionDiagnostic> = {
  starterTooWarm: ({ step, stage, celsius }) =>
    `${stepName(step)} of ${stage} stands at ${Number(celsius.toFixed(1))} °C. From about 35 °C up the yeasts of a starter no longer grow: let it stand cooler.`,
  perishableWarm: ({ by, stage, minutes }) =>
    `${timesOf[by]}, what is in ${stage} stands ${hours(minutes)} in all between 4 and 60 °C before it is baked, with egg or milk in it; the usual public rule is no more than 2 h. Shorten what is warm, or let more of it pass in the fridge.`,
  perishableHot: ({ by, stage, minutes }) =>
    `${timesOf[by]}, what is in ${stage} stands ${hours(minutes)} above 32 °C with egg or milk in it; the usual public rule is no more than 1 h. Let it stand cooler.`,
}

/** What each caution is about, to stand before its sentence. */
const aboutWords: Readonly<Record<MethodCautionDiagnostic['code'], string>> = {
  starterTooWarm: 'Too warm',
  perishableWarm: 'Egg or milk, warm',
  perishableHot: 'Egg or milk, hot',
}

const worded = wording(methodCautionSentences)

/** A caution of a method with its sentence, and what it is about. */
export const methodCaution = (diagnostic: MethodCautionDiagnostic) => ({
  ...worded(diagnostic),
  about: aboutWords[diagnostic.code],
})
