import type { ReadingName } from '../document/reading-names.js'
import { grams, readingWords } from '../document/words.js'
import type { Count } from '../outline/outline.js'

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** The counts in a sentence. */
export const countWords: Readonly<Record<Count, string>> = {
  flour: 'flour',
  water: 'water',
  salt: 'salt',
  prefermented: 'prefermented flour',
  moisture: 'moisture',
  soaked: 'water of soakers',
  fat: 'fat',
  sugar: 'sugar',
  egg: 'egg',
  milk: 'milk',
}

const together = (others: readonly string[]): string =>
  others.length ? `, solved together with ${others.join(', ')}` : ''

/**
 * What workings say beside their figures. Lines go by their ingredients, '' for one without; stages by their names; `base`
 * and holds are in words already.
 */
export const workingWords = {
  // What a working is of.
  lineTitle: (line: string, stage: string) => `${line || 'A line'} in ${stage}`,
  percentTitle: (line: string, base: string) => `${line || 'A line'}, per cent of the ${base}`,
  wholeDoughTitle: (line: string) => `${line} in the whole dough`,
  batchTitle: (name: string) => `${name || 'A line'} in the batch`,
  countTitle: (count: Count, stage: string) => `${capital(countWords[count])} in ${stage}`,
  takenTitle: (stage: string) => `What later stages take of ${stage}`,
  readingTitle: (name: ReadingName) => capital(readingWords[name]),
  // How it comes about.
  nothingTyped: 'nothing typed yet',
  typed: (amount: string, base = '') => `typed: ${amount}${base ? ` of the ${base}` : ''}`,
  typedAndScaled: (amount: string, isScaled: boolean, doughWeight: number | undefined) =>
    `typed: ${amount}${isScaled ? `; all is scaled so that the dough weighs ${grams(doughWeight!)}` : ''}`,
  jotted: (text: string) => `jotted: ${text}`,
  gives: (line: string, hold: string, others: readonly string[]) =>
    `${line} gives, so that ${hold}${together(others)}`,
  restOfFlour: (line: string, others: readonly string[]) =>
    `${line} makes up the rest of the flour weight${together(others)}`,
  weightOverBase: (base: string) => `its weight ÷ the ${base}`,
  weightOverFlour: 'its weight through all stages ÷ all flour',
  weightTimes: (stage: string) => `its weight × the times ${stage} is made`,
  broughtByLines: (stage: string) => `what each line of ${stage} brings`,
  baseOfItsLines: 'so much that the lines that are 100 % add up to it',
  baseOfGrams: 'the lines in grams, since those in percentages are 100 % by themselves',
  baseAsSet: 'the flour weight set for this formula',
  baseAsHeld: (doughWeight: number) => `so much that the dough weighs ${grams(doughWeight)}`,
  baseAsTaken: (stage: string) => `so much that ${stage} is just what later stages take of it`,
  allLines: 'all of its lines together',
  takers: 'the lines that take it',
  takenByBatch: (isLost: boolean, isKept: boolean) =>
    `what the batch takes of it${isLost ? ', ÷ what is not lost' : ''}${isKept ? ', and what is kept back' : ''}`,
  asWritten: 'as written',
  make: (batch: string, isLost: boolean) => `make ${batch}${isLost ? ', through what is lost' : ''}`,
  overFlour: (count: Count) => `all ${countWords[count]} ÷ all flour`,
  withoutSoakers: 'all water but that of soakers ÷ all flour',
  listedHydration: 'water lines ÷ flour lines of the final dough alone',
  levainOnFlour: 'levain and starter lines ÷ flour lines of the final dough',
  doughWeight: 'all lines of the final dough together',
  linesAndCarried: (count: 'flour' | 'water') => `${count} lines, and ${count} carried`,
  // Beside its figures.
  ofAll: (sum: string, weight: string) => `${sum}, of ${weight} in all`,
  baseWithin: (weight: string, base: string) => `${weight} in all, ${base} of it`,
  asMuchAsSeed: ' + as much as the seed',
  inSteps: (step: string, weighed: string) => `; in steps of ${step}: ${weighed}`,
  // What it came from, and how.
  line: (line: string, stage: string) => `${line || 'a line'} in ${stage}`,
  carried: (count: Count, stage: string) => `${countWords[count]} carried by ${stage}`,
  count: (count: Count, of: string) => `${countWords[count]} in ${of}`,
  allOfIts: (part: string) => `all of its ${part}`,
  base: (stage: string, isFlour: boolean) => `${isFlour ? 'flour' : 'base'} of ${stage}`,
  wholeBase: '100 % there',
  part: (weight: string, share: string, stage: string) => `${weight} × ${share} of ${stage}`,
  unit: (unit: string, line: string) => `a ${unit} of ${line}`,
  fromLarder: 'from the larder, an estimate',
  inBatch: (stage: string) => `${stage} in the batch`,
  weightAsWritten: (weight: string) => `${weight} as written`,
} as const
