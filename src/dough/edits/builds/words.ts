import { type Sentences, wording } from '../../../engine/index.js'
import { Refusal } from '../words.js'

/** Why a stage cannot be a build, or not be taken as one. */
export type BuildDiagnostic =
  | { readonly code: 'namesOfItsOwn'; readonly stage: string; readonly names: readonly string[] }
  | { readonly code: 'takesItself'; readonly build: string; readonly formula: string }
  | { readonly code: 'nothingInIt'; readonly stage: string }
  | { readonly code: 'takesWhatIsNone'; readonly stage: string; readonly taken: string }

export const buildSentences: Sentences<BuildDiagnostic> = {
  namesOfItsOwn: ({ stage, names }) =>
    `Amounts in ${stage} speak of ${names.join(', ')}, which only this formula has: write them as weights or percentages first.`,
  takesItself: ({ build, formula }) => `${build} takes ${formula} itself: a dough cannot be made of itself.`,
  nothingInIt: ({ stage }) => `${stage} has no ingredients yet.`,
  takesWhatIsNone: ({ stage, taken }) =>
    `${stage} is a build of several formulas, and ${taken} is only in this one: keep ${taken} as a build first.`,
}

const buildProblem = wording(buildSentences)

export const buildProblemOf = (diagnostic: BuildDiagnostic) => buildProblem(diagnostic)

export function refuseBuild(diagnostic: BuildDiagnostic): never {
  throw new Refusal(buildProblem(diagnostic))
}

export const buildLabels = {
  keep: (stage: string) => `Keep ${stage} as a build`,
  letGo: (stage: string) => `Make ${stage} this formula’s own`,
  take: (build: string) => `Take ${build} as a build`,
  /** An edit that reaches other formulas. */
  inOthers: (label: string, formulas: readonly string[]) => `${label}; in ${formulas.join(', ')} too`,
} as const

/** A build's name where another has that one: with the formula's. */
export const buildNameIn = (stage: string, formula: string): string => `${stage} of ${formula}`
