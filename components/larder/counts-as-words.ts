import type { CountsAs } from '../../src/dough/document/formula.js'

/** What an ingredient may count as, and what a gram of it then does to the readings. */
export const countsAsWords: Readonly<
  Record<CountsAs['kind'], { readonly name: string; readonly group: string; readonly brings: string }>
> = {
  flour: { name: 'Flour', group: 'Flours', brings: 'is part of the 100 %' },
  water: { name: 'Water', group: 'Water', brings: 'counts in true hydration' },
  salt: { name: 'Salt', group: 'Salts', brings: 'counts in the salt' },
  starter: {
    name: 'Starter',
    group: 'Starters',
    brings: 'brings flour and water by its hydration; the flour is prefermented',
  },
  other: {
    name: 'Other',
    group: 'Everything else',
    brings: 'brings its weight only: milk, egg, butter, seeds',
  },
}
