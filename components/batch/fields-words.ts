import type { Batch } from '../../src/dough/document/batch.js'

/** The ways to say how much to make, to follow `Make`. */
export const wayWords: Readonly<Record<Batch['make'], string>> = {
  'as written': 'as written',
  pieces: 'pieces of a dough weight',
  'baked pieces': 'pieces of a baked weight',
  dough: 'an amount of dough',
  flour: 'from an amount of flour',
  'all of': 'all of one ingredient',
  factor: 'a multiple of what is written',
}

const ofShape = (shape: number | undefined): string => (shape === undefined ? '' : `, shape ${shape}`)

/** Of the fields that say how much to make, and around them. A shape is told by its number where there are several. */
export const fieldWords = {
  make: 'Make',
  unfinished: 'Something is still missing here. Until you fill it in, nothing changes.',
  weightOfDough: 'Weight of dough, grams',
  weightOfFlour: 'Weight of all flour, grams',
  weightOfIngredient: 'Weight of the ingredient, grams',
  of: 'of',
  ingredient: 'Ingredient',
  timesWritten: 'Times what is written',
  times: 'times',
  count: (shape: number | undefined): string => `Number of pieces${ofShape(shape)}`,
  piecesOf: 'pieces of',
  weightOfPiece: (shape: number | undefined): string => `Weight of a piece, grams${ofShape(shape)}`,
  nameOfShape: (shape: number | undefined): string => `Name of the shape or the tin${ofShape(shape)}`,
  shapeHint: 'round tin',
  whenBaked: 'when baked',
  leaveOut: 'Leave out',
  leaveOutShape: (shape: number): string => `Leave out shape ${shape}`,
  addShape: 'Add a shape',
  bakeLoss: 'Lost in baking',
  loss: 'Lost in mixing and shaping',
  order: 'What to weigh and order',
  perCent: (what: string): string => `${what}, per cent`,
} as const

/** Why what was typed is not taken. */
export const notTakenWords = {
  factor: 'Write a number above 0, like 2.',
  count: 'Write how many pieces, like 6.',
  weight: (kilograms: string): string => `Write a weight above 0, like 900 or ${kilograms}.`,
  loss: 'A loss is a percentage from 0 to below 100.',
  keepBack: 'Write a number of grams, or nothing.',
  step: 'Write a number of grams.',
} as const

/** Of what is kept back and lost of stages, and of the scale. */
export const keepBackWords = {
  more: (hasStages: boolean): string => (hasStages ? 'More: losses of stages, the scale' : 'More: the scale'),
  keepBack: 'Keep back',
  gramsOf: (stage: string): string => `Keep back of ${stage}, grams`,
  of: (stage: string): string => `of ${stage}`,
  asItsSeed: (stage: string): string => `as much ${stage} as its seed`,
  asSeed: 'as much as the seed',
  seedOf: (stage: string): string => ` of ${stage}`,
  lossOf: (stage: string): string => `Of ${stage}`,
  lostOf: (stage: string): string => `Lost of ${stage}, per cent`,
  isLost: 'is lost on the way',
} as const

/** `The scale weighs in steps of 1 g and of 0.1 g below 10 g`, around its fields, and what they are called. */
export const scaleWords = {
  inSteps: 'The scale weighs in steps of',
  andOf: 'and of',
  below: 'below',
  step: 'Step of the scale, grams',
  fineStep: 'Fine step of the scale, grams',
  fineBelow: 'Weight below which the step is fine, grams',
} as const

/** `Make for 11 in place of 8`, around its fields, and what became of it. */
export const howManyWords = {
  makeFor: 'Make for',
  inPlaceOf: 'in place of',
  to: 'For how many it is to be made',
  from: 'For how many it is made now',
  change: 'Change all',
  notTaken: 'Write two numbers above 0, such as 11 in place of 8.',
  done: (count: string): string => `Made for ${count}. Pieces are rounded up to whole ones.`,
} as const
