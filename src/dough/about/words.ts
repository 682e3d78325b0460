import { type Sentences, wording } from '../../engine/index.js'

/** Something to keep in mind at the bench. */
export interface CautionDiagnostic {
  readonly code: 'perishable' | 'rawFlour' | 'heat' | 'inOil'
}

export const cautionSentences: Sentences<CautionDiagnostic> = {
  perishable:
    'This dough contains egg or milk. The usual public rule for perishable food is no more than 2 hours in all between 4 and 60 °C, and no more than 1 hour where it is warmer than 32 °C; keep it cold at 5 °C or below. A long warm proof needs care.',
  rawFlour:
    'Do not taste raw flour, dough or starter: flour is not treated to kill germs, and heating it at home does not reliably do so.',
  heat: 'Hot pots, lids, tins, stones, oven doors and steam burn; water on hot glass or ceramic shatters it.',
  inOil:
    'Garlic or herbs in oil can grow the germ of botulism: never leave them at room temperature, and make them fresh.',
}

/** A caution with its sentence. */
export const caution = wording(cautionSentences)

/** What each caution is about, to stand before its sentence. */
export const cautionWords: Readonly<Record<CautionDiagnostic['code'], string>> = {
  perishable: 'Egg or milk',
  rawFlour: 'Raw flour',
  heat: 'Heat',
  inOil: 'In oil',
}

/** To be said after all cautions. */
export const localCodesSentence =
  'For bread made for others or for sale, follow your local food rules and your licence.'

/** To be said with every list of allergens. */
export const allergenSentence =
  'This is what the larder lists for these ingredients, and nothing more. It does not say that a bread suits anybody with an allergy. A starter carries the flour it is fed with, and flour dust settles everywhere. Your suppliers’ labels and local food law decide.'

/** An ingredient of which nobody has said what it holds; a starter may be one for want of the flour it is fed with. */
export interface NotKnown {
  readonly ingredient: string
  readonly isStarter: boolean
}

const notKnownWords = ({ ingredient, isStarter }: NotKnown): string =>
  isStarter ? `${ingredient}, of which the flour it is fed with is not known` : ingredient

/** `Not known: ground cardamom; lemon zest.`: what nobody has said anything of. */
export const notKnownSentence = (all: readonly NotKnown[]): string =>
  `Not known: ${all.map(notKnownWords).join('; ')}.`

/** That a volume is no weight, to be said wherever cups and spoons are shown. */
export const householdSentence =
  'Cups and spoons are estimates: sources differ by a quarter on what a cup of flour weighs. Weigh where you can, salt and yeast above all.'

/** Why a line has no cups and spoons. */
export type HouseholdDiagnostic =
  | { readonly code: 'weightUnknown' | 'nothingToMeasure' | 'lessThanASpoon' }
  | { readonly code: 'measureUnknown'; readonly ingredient: string }

export const householdSentences: Sentences<HouseholdDiagnostic> = {
  weightUnknown: 'Its weight is not known.',
  nothingToMeasure: 'There is nothing to measure.',
  lessThanASpoon: 'It is less than the smallest spoon holds: weigh it.',
  measureUnknown: ({ ingredient }) =>
    `What a cup of ${ingredient || 'this line'} weighs is not known: weigh it.`,
}

/** Why a line has no cups and spoons, with its sentence. */
export const householdProblem = wording(householdSentences)
