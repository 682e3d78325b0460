/** How an amount may be written, and what it then is. Decimal points; shown with the baker's own sign. */
export const amountWords: readonly (readonly [written: string, is: string])[] = [
  [
    '70%',
    'Per cent of the flour of its stage. In a stage without flour, of its first line, or of the lines marked as base.',
  ],
  ['20 g', 'A weight: g, kg, oz or lb.'],
  [
    '2 1/2 tsp',
    'A measure: tsp, tbsp, cup, fl oz, ml or l, through what the larder says they weigh. An estimate.',
  ],
  ['3 each', 'Things that are counted, such as eggs, through what one weighs.'],
  ['70% + 20 g', 'A sum. Here 20 g more than 70\u00a0% of the flour.'],
  [
    '2*salt',
    'Twice the weight of the salt line of the same stage. A name of two words is joined: bread_flour.',
  ],
  ['levain.water / 2', 'Half the water line of the stage called Levain.'],
  ['min(5%, 40 g)', 'The smaller of the two. There are also max, sum, average and round.'],
]

/** Ways to make a formula, to hand it on and to keep it, by the words on the page. */
export const wayWords: readonly (readonly [way: string, says: string])[] = [
  [
    'Batch',
    'Under the name, say how much to make: pieces of a weight, an amount of dough or of flour, all of one ingredient. The Batch column is what to weigh, and every earlier stage is made large enough.',
  ],
  [
    'Print a card',
    'One formula on one page, for the wall or a student: what to weigh in the order of mixing, its readings, allergens and cautions.',
  ],
  [
    'Link',
    'One whole formula in an address, under Send out. Whoever opens it sees the formula first and adds it or leaves it. No server sees it.',
  ],
  [
    'CSV, text and markup',
    'Under Send out: CSV and plain text that Tarebook reads again, Markdown, a table to paste, recipe markup for a page of your own.',
  ],
  [
    'Workbook file',
    'Everything in one file, under Send out: all formulas with their kept states, your larder, how your scale weighs. It is the copy to keep.',
  ],
  [
    'Bring in',
    'All of these, a table from anywhere or a recipe in words. You see how it was read before anything is added; a workbook file is added to what is here or put in its place.',
  ],
]

export interface Caution {
  readonly about: string
  readonly says: string
}

/** What a baker should keep in mind. Public advice and trade practice; nothing here clears a bread for anybody. */
export const cautions: readonly Caution[] = [
  {
    about: 'Raw flour and dough',
    says: 'Do not taste raw flour, raw dough or raw starter: flour is not treated to kill germs, and heating it at home is no remedy. Wash hands and bench after it.',
  },
  {
    about: 'Starter',
    says: 'Throw away all of a starter that is mouldy, pink or orange. Do not use the discard of a starter in its first days.',
  },
  {
    about: 'Egg and milk',
    says: 'A dough that holds egg or milk is perishable. The usual public rule is no more than 2 hours between 4 and 60\u00a0°C, 1 hour above 32\u00a0°C; kept cold, at 5\u00a0°C or below. Long warm proofs of such doughs need care.',
  },
  {
    about: 'Garlic and herbs in oil',
    says: 'They can carry botulism. Never keep them at room temperature; make them fresh.',
  },
  {
    about: 'Heat',
    says: 'Hot vessels, lids, steam and oven doors burn. Water on hot glass or ceramic shatters it: keep it off oven windows and baking dishes.',
  },
  {
    about: 'Flour dust and mixers',
    says: 'Breathed in day after day, flour dust can bring on asthma. Start mixers slowly; clean up wet or with a vacuum, not with a brush or compressed air. Keep hands, sleeves and hair away from a mixer that runs.',
  },
  {
    about: 'Allergens',
    says: 'Tarebook says what a formula lists, no more. A starter carries the flour it is fed with, and flour dust settles everywhere. The lists of the United States, the European Union and Canada differ. The suppliers’ labels and local food law decide.',
  },
  {
    about: 'Selling',
    says: 'Rules for bread made at home or for sale differ from place to place. Ask your food authority first.',
  },
]
