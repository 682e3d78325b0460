import { type Sentences, type Worded, wording } from '../../engine/index.js'

/** Why a stage or a name in an amount stands for nothing. Stages, lines and names go by what they are called. */
export type OutlineDiagnostic =
  | { readonly code: 'stageCircle'; readonly path: readonly string[] } // each takes the next, the last is the first
  | { readonly code: 'nearName'; readonly written: string; readonly name: string }
  | { readonly code: 'unknownName' | 'unknownStage'; readonly name: string }
  | { readonly code: 'unknownInAmount' | 'unknownInStage'; readonly name: string; readonly stage: string }
  | { readonly code: 'unitOfNothing'; readonly unit: string }
  | { readonly code: 'tooMuch'; readonly what: Countable; readonly count: number; readonly most: number }
  | {
      readonly code: 'stageInUnits' | 'unitNotInLarder' | 'ingredientNotInLarder'
      readonly unit: string
      readonly ingredient: string
    }

/** What a formula may have too much of. `namings`: lines that are named in amounts. */
export type Countable = 'lines' | 'stages' | 'jottings' | 'holds' | 'namings'

const measureWords = (unit: string, ingredient: string): string =>
  unit === 'each' ? `one ${ingredient} weighs` : `a ${unit} of ${ingredient} weighs`

export const outlineSentences: Sentences<OutlineDiagnostic> = {
  stageCircle: ({ path: [first, ...rest] }) =>
    `${first} takes ${rest.join(', which takes ')}: a stage cannot be made of itself.`,
  nearName: ({ written, name }) => `Nothing here is called ${written}. Did you mean ${name}?`,
  unknownName: ({ name }) => `Nothing here is called ${name}.`,
  unknownStage: ({ name }) => `No stage is called ${name}.`,
  unknownInAmount: ({ name, stage }) =>
    `Nothing in ${stage} is called ${name}. Write a weight such as 90 g, a percentage such as 20 %, or the name of a line.`,
  unknownInStage: ({ name, stage }) => `Nothing in ${stage} is called ${name}.`,
  unitOfNothing: ({ unit }) => `A ${unit} of what? Write it in grams.`,
  tooMuch: ({ what, count, most }) =>
    `${count} ${what === 'namings' ? 'times a line is named in an amount' : what}: a formula is worked out with up to ${most}. Take some out, or make two formulas of it.`,
  stageInUnits: ({ unit, ingredient }) =>
    `What a ${unit} of ${ingredient || 'this line'} weighs is not known. Write it in grams or per cent.`,
  unitNotInLarder: ({ unit, ingredient }) =>
    `The larder does not say what ${measureWords(unit, ingredient || 'this line')}; set it there, or write the amount in grams.`,
  ingredientNotInLarder: ({ unit, ingredient }) => {
    const name = ingredient || 'this line'
    return `${name} is not in the larder, so what ${measureWords(unit, name)} is not known. Define it there, or write the amount in grams.`
  },
}

/** A diagnostic of stages and names with its sentence. */
export const outlineProblem: (diagnostic: OutlineDiagnostic) => Worded<OutlineDiagnostic> =
  wording(outlineSentences)
