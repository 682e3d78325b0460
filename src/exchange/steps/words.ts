import { type Sentences, wording } from '../../engine/index.js'

/** What was guessed of a step that a recipe's method was read as, or is to be asked about it. */
export type StepReason =
  | {
      readonly code:
        | 'noTime'
        | 'noOvenHeat'
        | 'overnight'
        | 'fewMinutes'
        | 'unitFromBefore'
        | 'heatFromBefore'
        | 'timeBeside'
        | 'bakingBeside'
    }
  | { readonly code: 'kindByTime' | 'kindByHeat' | 'timesAdded' | 'heatOfRange' | 'ovenMark' }
  | { readonly code: 'foldMinutes' | 'foldTimes' | 'foldSpacing' | 'foldsJoined' | 'foldsLength' }
  | { readonly code: 'waitBefore'; readonly said: string }
  | { readonly code: 'heatFromPreheat'; readonly said: string }
  | { readonly code: 'severalTimes' | 'severalHeats'; readonly others: string }
  | { readonly code: 'boundOnly'; readonly bound: 'least' | 'most' }
  | { readonly code: 'stageNotSaid'; readonly stage: string }
  | { readonly code: 'whichLine'; readonly word: string }

export const stepReasonSentences: Sentences<StepReason> = {
  noTime: 'No time is given: write one.',
  noOvenHeat: 'No oven temperature is given: write one.',
  overnight: '“Overnight” is taken as 8 to 12 hours.',
  fewMinutes: 'It says only a few: write how long.',
  unitFromBefore: 'The number has no unit; it has that of the time before it.',
  heatFromBefore: 'No temperature is given here; it has that of the step before it.',
  heatFromPreheat: ({ said }) => `The temperature is the one the oven is heated to: ${said}.`,
  timeBeside: 'The time is stated beside these words, and may be that of more than this step.',
  bakingBeside: 'The time is the baking time of the whole recipe.',
  kindByTime: 'The text does not say what is done; it is taken as a rest.',
  kindByHeat: 'The text does not say what is done; by its heat it is taken as baking.',
  timesAdded: 'It gives more than one time; they are added together.',
  heatOfRange: 'It gives a range of temperatures; the middle is taken.',
  ovenMark: 'The degrees are taken from the mark of the oven’s knob.',
  foldMinutes: 'It does not say how long each fold takes; 5 minutes are taken.',
  foldTimes: 'It does not say how many folds; as many are taken as there is time for.',
  foldSpacing: 'It does not say how far apart the folds are; they are spread evenly.',
  foldsJoined: 'The folds are taken to come during this wait.',
  foldsLength: 'It does not say how long the dough stands; the time of the folds is taken.',
  waitBefore: ({ said }) => `“${said}” is taken as a wait before what follows.`,
  severalTimes: ({ others }) => `It gives another time as well: ${others}.`,
  severalHeats: ({ others }) => `It gives another temperature as well: ${others}.`,
  boundOnly: ({ bound }) =>
    bound === 'least'
      ? 'It says at least this long; it is taken as the usual time.'
      : 'It says at most this long; it is taken as the usual time.',
  stageNotSaid: ({ stage }) => `It does not say which stage it belongs to; ${stage} is taken.`,
  whichLine: ({ word }) =>
    `More than one line could be meant by “${word}”: write which goes in, such as “adds Salt”.`,
}

/** A reason with its sentence. */
export const stepReason = wording(stepReasonSentences)
