import type { Uneven } from '../../src/day/trade/uneven.js'
import { listed } from '../../src/engine/index.js'

/** Of the page as a whole. */
export const orderPlaceWords = {
  title: (of: string): string => `What to weigh and order: ${of} · Tarebook`,
  heading: 'What to weigh and order',
  gone: 'That day or formula is no longer there.',
  allDays: 'All days',
  howMuch: 'How much is baked',
  none: 'Nothing is baked on this day yet.',
  doesNotFit:
    'This day does not fit as it is, so it has no times yet. The amounts below are those of what is typed now.',
  toDay: 'See what stands in the way',
  nothingToWeigh: 'There is nothing to weigh in it yet.',
  missing: (count: number): string =>
    count === 1
      ? 'The formula of one bread is no longer on the shelf: what that bread needs is not in these totals.'
      : `The formulas of ${count} breads are no longer on the shelf: what those breads need is not in these totals.`,
  toKnow: 'What does not come out even',
} as const

/** What does not fill a load, a piece or a tin. Weights come with their unit. */
export function unevenWords(uneven: Uneven, weigh: (grams: number) => string): string {
  switch (uneven.code) {
    case 'loadNotFull':
      return `${uneven.name}: ${uneven.isOnly ? 'one load of the oven, with' : 'the last load of the oven has'} ${uneven.last} of the ${uneven.atOnce} it holds.`
    case 'pieceNotWhole':
      return `${uneven.name}: ${Number(uneven.count.toFixed(2))} is no whole number of pieces.`
    case 'doughLeftOver':
      return `${uneven.name}: ${weigh(uneven.dough)} of dough makes ${uneven.pieces} of ${weigh(uneven.weight)}, and ${weigh(uneven.left)} is left over, too little for another.`
  }
}

/** Of the totals. Weights come with their unit, costs with their currency. */
export const needWords = {
  heading: 'To buy',
  ingredient: 'Ingredient',
  weight: 'Needed',
  kitchen: 'In cups, spoons, pieces',
  costs: 'Costs',
  used: 'All that is used',
  madeHere: 'Made here, not bought',
  toBuy: 'What is to be bought',
  say: (name: string): string => `${name}: pack, price and stock`,
  own: 'your own',
  notKnown: 'not in the larder yet',
  some: 'Some of its weight is not known yet.',
  kilograms: (number: string): string => `${number}\u00a0kg`,
  grams: (number: string): string => `${number}\u00a0g`,
  atLeast: (what: string): string => `at least ${what}`,
  each: (count: string): string => (count === '1' ? '1 piece' : `${count} pieces`),
  eachUsed: (pieces: string, used: string): string => `${pieces}, ${used} used`,
  packs: (count: number, pack: string): string =>
    count === 1 ? `1 pack of ${pack}` : `${count} packs of ${pack}`,
  usedOf: (packs: string, used: string): string => `${packs}, ${used} used`,
  inStock: (stock: string): string => `${stock} in stock`,
  enough: (stock: string, left: string): string => `${stock} in stock: enough, ${left} is left`,
  short: (stock: string, short: string, packs: string): string =>
    `${stock} in stock, ${short} short${packs ? `: ${packs}` : ''}`,
  noPrice: 'no price',
  free: '–',
  unpriced: (names: readonly string[]): string =>
    `${listed(names)} ${names.length === 1 ? 'has' : 'have'} no price: the sum is without ${names.length === 1 ? 'it' : 'them'}, and too low.`,
  unweighed: (names: readonly string[]): string =>
    `Not all of ${listed(names)} could be weighed: the sum is without the rest, and too low.`,
  isFree: (names: readonly string[]): string =>
    `${listed(names)} ${names.length === 1 ? 'has' : 'have'} no price, and ${names.length === 1 ? 'is' : 'are'} taken to cost nothing.`,
  noPrices: 'Choose an ingredient to say what a pack of it holds and costs, and what is in stock.',
} as const

/** Of what each dough costs. */
export const costWords = {
  heading: 'What it costs',
  ofDough: (weight: string): string => `${weight} of dough`,
  aKiloOfDough: (cost: string): string => `${cost} a kilogram of dough`,
  aKiloOfBread: (cost: string): string => `${cost} a kilogram of bread`,
  aPiece: (cost: string, piece: string): string => `${cost} a piece of ${piece}`,
  baked: (dough: string, baked: string): string => `${dough}, ${baked} baked`,
  named: (piece: string, name: string): string => `${piece}, ${name}`,
  without: (names: readonly string[]): string => `without ${listed(names)}`,
  noBakeLoss: 'By kilogram of bread it is said where the batch has its bake loss.',
  how: 'All that goes into a dough and its builds, with what is kept back of them, at the price of a pack over what it holds.',
} as const

/** Of the lists to weigh by. */
export const weighWords = {
  heading: 'To weigh, dough by dough',
  order: 'In the order in which they are mixed.',
  written: 'In the order in which they are written.',
  unfit: 'In the order in which they are written: the day does not fit as it is, so it has no times.',
  noTimes: 'In the order in which they are written: the day has no times yet.',
  for: (breads: readonly string[]): string => `for ${listed(breads)}`,
  of: (bread: string): string => bread,
  total: 'Total',
  unknown: '–',
  notesOfOwn: 'Notes are as written for each formula’s own batch.',
  notesOf: (weight: string): string => `Notes are as written for the formula’s own batch of ${weight}.`,
  ticked: (count: number, of: number): string => `${count} of ${of} weighed`,
  clear: 'Untick all',
} as const

/** Of what leaves of it. */
export const tradeOutWords = {
  heading: 'Take it along',
  file: 'File for an office program',
  fileName: (of: string): string => `${of} to order`,
  copy: 'Copy as text',
  copied: 'What to weigh and order is on the clipboard.',
  notCopied: 'The browser does not allow copying here. Select the text and copy it.',
  text: 'What to weigh and order, as text',
  print: 'Print',
  handout: 'Handout',
  downloaded: (file: string): string => `${file} is among your downloads.`,
} as const
