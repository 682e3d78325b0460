import { html, type TemplateResult } from 'lit'

export const helpWords = {
  help: 'Help',
  sections: 'Sections of the help',
  written: 'Written',
  is: 'Is',
  press: 'Press',
  to: 'To',
  licences: 'Licences of Tarebook and of what is built into it',
} as const

/** Headings, in order. */
export const sectionWords = {
  write: 'Writing a formula',
  amounts: 'Amounts',
  true: 'True hydration',
  keys: 'Keys of the sheet',
  days: 'Days',
  ways: 'Making, sending, keeping',
  kept: 'Where it is kept',
  cautions: 'Cautions',
} as const

export const howToWrite = (): TemplateResult => html`<p>
    In baker's percentages the flour is 100&nbsp;% and everything else is its weight over the flour's. A plain loaf is
    bread flour 100&nbsp;%, water 70&nbsp;%, salt 2&nbsp;%, levain 20&nbsp;%.
  </p>
  <ol>
    <li>Make a new formula and give it a name. Its last stage is the final dough.</li>
    <li>Write the levain as a stage of its own, before the final dough: starter, flour, water.</li>
    <li>
      In the final dough write <b>Levain</b> as an ingredient. A line with the name of an earlier stage is that
      stage, with all the flour and water in it.
    </li>
    <li>
      Type each amount in the column you think in: per cent, or grams. What you typed stays as you typed it; the
      other column follows.
    </li>
    <li>
      Flours in per cent should add to 100. While all of them are in per cent, set the flour weight to say how
      much dough it is.
    </li>
  </ol>
  <p>
    An ingredient Tarebook does not know is kept, and brings its weight only until you say in the larder what it
    counts as.
  </p>`

/** `decimal` is the baker's own sign. */
export const howAmountsAreRead = (decimal: string): TemplateResult => html`<p>
    A number alone is per cent in the per cent column and grams in the weight column. A unit or a&nbsp;% sign wins over
    the column. Write <code>2${decimal}5</code> or <code>2 1/2</code> or <code>2½</code>.
  </p>`

/** Figures of the example, as they are shown: grams and per cent without their units. */
export interface ExampleFigures {
  readonly flour: string // that 210 g of the levain bring
  readonly water: string
  readonly listed: string
  readonly hydration: string
  readonly salt: string
}

export const whatTrueHydrationIs = (figures: ExampleFigures): TemplateResult => html`<p>
    The water you see in the final dough is not all of it: the levain brings water too, and flour.
    <b>Listed hydration</b> is the water line over the flour lines of the final dough. <b>True hydration</b> is all
    the water over all the flour, through every stage and starter.
  </p>
  <p>An example. The levain is 40 g ripe starter, 100 g flour and 80 g water:</p>
  <ul>
    <li>The starter is half flour, half water, so the levain's 220 g hold 120 g flour and 100 g water.</li>
    <li>
      The dough takes 210 g of it: ${figures.flour}&nbsp;g flour and ${figures.water}&nbsp;g water. Beside it come 1000 g flour,
      690 g water and 21 g salt.
    </li>
  </ul>
  <dl class="sums">
    <div>
      <dt>Listed hydration</dt>
      <dd>690 ÷ 1000 <b>${figures.listed}&nbsp;%</b></dd>
    </div>
    <div>
      <dt>True hydration</dt>
      <dd>
        (690 + ${figures.water}) ÷ (1000 +
        ${figures.flour}) <b>${figures.hydration}&nbsp;%</b>
      </dd>
    </div>
    <div>
      <dt>Salt</dt>
      <dd>
        21 ÷ (1000 + ${figures.flour})
        <b>${figures.salt}&nbsp;%</b>
      </dd>
    </div>
  </dl>
  <p>
    Water means water, as the trade counts it. What milk, eggs, butter and honey hold is their moisture; moisture
    hydration counts it, and is shown apart.
  </p>`

export const aboutKeys = (): TemplateResult =>
  html`<p><b>Escape, then Tab, leaves the grid.</b> On a Mac use ⌘ where Ctrl is written.</p>`

export const aboutDays = (): TemplateResult => html`<p>
    Under <b>Days</b>, say which formulas are baked on a day, how much of each, and when they are to be ready or when you
    begin. From the steps of their methods follows when each begins, around the hours you sleep, your hands and the oven.
  </p>
  <p>
    Type a time in its place and it is held, the rest follows; Delete lets it follow again. The length beside a step
    shows how its time came about. What cannot be together is said, with the nearest time that would do.
  </p>
  <p>
    Beside the list stands how warm the water has to be for each mixing, and how much seed each levain wants for its
    time. Every temperature there follows from the day until it is typed; emptied, it follows again. Times that come from
    temperature are ranges: trust what you see more than the clock.
  </p>
  <p>
    <b>To the bench</b> shows one thing to do at a time, what to weigh for it, and what comes then. Press a line to tick
    it off, and Done when a step is done; the rest is planned anew around it. What is done there is kept as a bake, under
    Bakes, with what you measured, how it was, and photographs. What your bakes tell of the rise in mixing, of losses, levains
    and waits stands where it is used; nothing is taken over until you press Take.
  </p>
  <p>
    <b>What to weigh and order</b> adds up every ingredient through all stages, says what is short and what it costs, and has
    the weighing lists to tick off. Orders, such as 12 mill wheat, 8 rye, are typed or pasted there. Packs, prices and stock
    are said in the larder, of each ingredient.
  </p>`

export const whereItIsKept = (): TemplateResult => html`<p>
    Everything is kept in this browser, on this device, and goes nowhere else. Every edit is saved by itself.
  </p>
  <p>
    A browser may clear what it keeps: when the disk is full, or when somebody deletes site data. Safari removes it
    after 7 days of use in which you did not come back here; putting Tarebook on the home screen avoids that. A
    private window forgets everything when it closes.
  </p>
  <p>
    <b>Keep a copy.</b> Send out the workbook file now and then, and put it where your other papers are. Bring it in
    again on any device. It holds everything. A CSV file holds the formulas and what each ingredient in them counts as;
    what you set in the larder beyond that, and the kept states, stay here.
  </p>`

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
    'Groups',
    'Group…, in a formula’s menu on the shelf, puts it into a group that you name. Choose several… there lets you send out, print, group or delete many at once.',
  ],
  [
    'Print a card',
    'One formula on one page, for the wall or a student: what to weigh in the order of mixing, its readings, allergens and cautions.',
  ],
  [
    'Handout',
    'Formulas chosen on the shelf, the breads of a day, or one formula under Send out, in one print for a class: what each weighs beside what all weigh, method, readings, cautions.',
  ],
  [
    'Label',
    'In the menu of a formula, or under Send out: ingredients by weight, allergens set apart, nutrition where all is recorded. Suppliers’ labels and local food law decide.',
  ],
  [
    'Link',
    'One whole formula in an address, under Send out. Whoever opens it sees first what to weigh, and adds the formula or leaves it. No server sees it.',
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
    says: 'Do not taste raw flour, raw dough or raw starter: flour is not treated to kill germs, and heating it at home does not reliably do so. Wash hands and bench after it.',
  },
  {
    about: 'Starter',
    says: 'Throw away all of a starter that is mouldy, pink or orange. Do not use the discard of a starter in its first days.',
  },
  {
    about: 'Egg and milk',
    says: 'A dough that contains egg or milk is perishable. The usual public rule is no more than 2 hours between 4 and 60\u00a0°C, 1 hour above 32\u00a0°C; kept cold, at 5\u00a0°C or below. Long warm proofs of such doughs need care.',
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
