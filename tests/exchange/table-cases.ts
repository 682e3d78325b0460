import { text } from './notation'

/** A table as somebody might send it, and by hand what must be read of it, what must be asked and told. */
export interface ForeignCase {
  readonly title: string
  readonly table: string
  readonly reads: string // formulas as `shown` writes them, an empty line between two
  readonly totals?: readonly string[]
  readonly asks?: readonly string[] // what the guess is not sure of, columns 1-based: `column 2`
  readonly told?: readonly (readonly [row: number | undefined, says: RegExp])[] // warnings and errors, all of them
}

export const rows = (...lines: string[]): string => lines.join('\n')
export const tabbed = (...lines: string[]): string =>
  lines.map(line => line.replaceAll('|', '\t')).join('\r\n')

/** Layouts. */
export const foreignTables: readonly ForeignCase[] = [
  {
    title:
      'English headings, a stage column with merged cells, grams and percent, a total that is 1000 short',
    table: rows(
      'Stage,Ingredient,%,Weight (g)',
      'Levain,Ripe starter,100,675',
      ',Bread flour,100,675',
      ',Water,100,675',
      ',Total,300,"1,025"',
      'Final dough,Bread flour,100,1000',
      ',Water,68,680',
      ',Salt,2,20',
      ',Levain,20,200',
    ),
    reads: text`
      Untitled formula
      Levain:
        Ripe starter 675 g
        Bread flour 675 g
        Water 675 g
      Final dough:
        Bread flour 1000 g
        Water 680 g
        Salt 20 g
        Levain 200 g`,
    totals: [
      'The file says Levain 300 %, and its lines add to that.',
      'The file says Levain 1,025 g; its lines add to 2,025 g.',
    ],
    asks: ['decimal'],
    told: [[5, /says Levain 1,025 g; its lines add to 2,025 g\./]],
  },
  {
    title: 'German headings, semicolons, decimal commas, stages as heading rows, sums agreeing',
    table: rows(
      '\ufeffZutat;Menge (g);Bäcker-%;Bemerkung',
      'Sauerteig;;;',
      'Anstellgut;20;20,0;aus dem Kühlschrank',
      'Roggenmehl;100;100,0;',
      'Wasser;100;100,0;40 °C',
      'Summe Sauerteig;220;220,0;',
      'Hauptteig;;;',
      'Weizenmehl;800;80,0;',
      'Roggenmehl;200;20,0;',
      'Wasser;650;65,0;',
      'Salz;21,5;2,15;',
      'Sauerteig;200;20,0;',
      'Gesamtmehl;1100;;',
    ),
    reads: text`
      Untitled formula
      Sauerteig:
        Anstellgut 20 g (aus dem Kühlschrank)
        Roggenmehl 100 g
        Wasser 100 g (40 °C)
      Hauptteig:
        Weizenmehl 800 g
        Roggenmehl 200 g
        Wasser 650 g
        Salz 21.5 g
        Sauerteig 200 g`,
    totals: [
      'The file says Sauerteig 220 g, and its lines add to that.',
      'The file says Sauerteig 220 %, and its lines add to that.',
      'The file says total flour 1,100 g, and its lines add to that.',
    ],
  },
  {
    title: 'French headings, tabs, no-break spaces between thousands, kilograms',
    table: tabbed(
      'Ingrédient|Quantité (kg)|Remarques',
      'Levain|| ',
      'Levain chef|0,150|',
      'Farine T65|0,500|',
      'Eau|0,500|tiède',
      'Pâte finale||',
      'Farine T65|4,500|',
      'Eau|3,150|',
      'Sel|0,095|',
      'Levain|1,150|',
      'Total|8,895|',
    ),
    reads: text`
      Untitled formula
      Levain:
        Levain chef 0.150 kg
        Farine T65 0.500 kg
        Eau 0.500 kg (tiède)
      Pâte finale:
        Farine T65 4.500 kg
        Eau 3.150 kg
        Sel 0.095 kg
        Levain 1.150 kg`,
    totals: ['The file says Pâte finale 8,895 g, and its lines add to that.'],
  },
  {
    title:
      'a block pasted without headings, stages parted by blank lines, the levain named by the line that takes it',
    table: tabbed(
      'Bread flour|100 g',
      'Water|80 g',
      'Ripe starter|40 g',
      '',
      'Bread flour|820 g',
      'Wholemeal spelt|180 g',
      'Water|690 g',
      'Salt|21 g',
      'Levain|210 g',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 100 g
        Water 80 g
        Ripe starter 40 g
      Final dough:
        Bread flour 820 g
        Wholemeal spelt 180 g
        Water 690 g
        Salt 21 g
        Levain 210 g`,
    asks: ['headings', 'stages'],
    told: [[1, /have no heading; Final dough takes Levain, so they were taken as Levain/]],
  },
  {
    title: 'a title over the headings, a rule, a total of the dough that rounding explains, a note below',
    table: rows(
      'Brackwater rye,,',
      ',,',
      'Item,Grams,Comment',
      'Dark rye flour,500,',
      'Water,433.4,hot',
      'Salt,10.4,',
      '-----,-----,-----',
      'Dough weight,944,',
      'Rest it for an hour before shaping.,,',
    ),
    reads: text`
      Brackwater rye
      note: Rest it for an hour before shaping.
      Final dough:
        Dark rye flour 500 g
        Water 433.4 g (hot)
        Salt 10.4 g`,
    totals: ['The file says Final dough 944 g, and its lines add to that.'],
  },
  {
    title: 'pounds in one column and the ounces over them in the next',
    table: rows('Ingredient,lb,oz', 'Bread flour,2,3', 'Water,1,8.5', 'Salt,,0.7'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 2 lb + 3 oz
        Water 1 lb + 8.5 oz
        Salt 0.7 oz`,
  },
  {
    title: 'a column of its own for the unit',
    table: rows(
      'Name;Menge;Einheit;%',
      'Weizenmehl;1;kg;100',
      'Wasser;680;g;68',
      'Salz;3;TL;',
      'Eier;2;Stück;',
    ),
    reads: text`
      Untitled formula
      Final dough:
        Weizenmehl 1 kg
        Wasser 680 g
        Salz 3 tsp
        Eier 2 each`,
  },
  {
    title: 'two breads in one table, each with its name and its stages as rows',
    table: tabbed(
      'Ingredient|Amount',
      'Mill wheat|',
      'Levain|',
      'Bread flour|100 g',
      'Water|100 g',
      'Final dough|',
      'Bread flour|900 g',
      'Water|600 g',
      'Levain|200 g',
      'Oven loaf|',
      'Poolish|',
      'Bread flour|300 g',
      'Water|300 g',
      'Instant yeast|0.3 g',
      'Final dough|',
      'Bread flour|700 g',
      'Water|380 g',
      'Salt|20 g',
      'Poolish|600.3 g',
    ),
    reads: rows(
      text`
      Mill wheat
      Levain:
        Bread flour 100 g
        Water 100 g
      Final dough:
        Bread flour 900 g
        Water 600 g
        Levain 200 g`,
      '',
      text`
      Oven loaf
      Poolish:
        Bread flour 300 g
        Water 300 g
        Instant yeast 0.3 g
      Final dough:
        Bread flour 700 g
        Water 380 g
        Salt 20 g
        Poolish 600.3 g`,
    ),
  },
  {
    title: 'headings of stages with their totals beside them, one of which is wrong',
    table: tabbed(
      'Levain:|220 g',
      'Ripe starter|40 g',
      'Bread flour|100 g',
      'Water|80 g',
      '',
      'Final dough:|1721 g',
      'Bread flour|1000 g',
      'Water|690 g',
      'Salt|21 g',
      'Levain|210 g',
    ),
    reads: text`
      Untitled formula
      Levain:
        Ripe starter 40 g
        Bread flour 100 g
        Water 80 g
      Final dough:
        Bread flour 1000 g
        Water 690 g
        Salt 21 g
        Levain 210 g`,
    totals: [
      'The file says Levain 220 g, and its lines add to that.',
      'The file says Final dough 1,721 g; its lines add to 1,921 g.',
    ],
    asks: ['headings'],
    told: [[6, /says Final dough 1,721 g; its lines add to 1,921 g/]],
  },
  {
    title: 'a formula column, the row numbers, prices, and a percentage of the whole dough',
    table: rows(
      'No.,Bread,Phase,Ingredient,Kilograms,% of total dough,Price',
      '1,Mill wheat,Poolish,Bread flour,1.5,20,2.10',
      '2,Mill wheat,Poolish,Water,1.5,20,0',
      '3,Mill wheat,Main dough,Bread flour,3.5,46.7,4.90',
      '4,Mill wheat,Main dough,Poolish,3,40,0',
      '5,Tin loaf,,Dark rye flour,2,50,2',
      '6,Tin loaf,,Water,2,50,0',
    ),
    reads: rows(
      text`
      Mill wheat
      Poolish:
        Bread flour 1.5 kg
        Water 1.5 kg
      Main dough:
        Bread flour 3.5 kg
        Poolish 3 kg`,
      '',
      text`
      Tin loaf
      Final dough:
        Dark rye flour 2 kg
        Water 2 kg`,
    ),
    asks: ['column 6'],
  },
  {
    title: 'columns held apart by blanks, with a title and decimal commas',
    table: rows(
      'Mühlenbrot',
      '',
      'Weizenmehl     100 %    800 g',
      'Wasser          68 %    544 g',
      'Salz           2,2 %   17,6 g',
    ),
    reads: text`
      Mühlenbrot
      Final dough:
        Weizenmehl 800 g
        Wasser 544 g
        Salz 17.6 g`,
    asks: ['delimiter', 'headings'],
  },
  {
    title: 'the final dough first and the levain after it',
    table: rows(
      'Ingredients,Weight g',
      'Final dough,',
      'Bread flour,900',
      'Water,600',
      'Salt,20',
      'Levain (all of it),200',
      'Total dough,1720',
      'Levain (evening before),',
      'Bread flour,100',
      'Water,100',
      'Total levain,210',
    ),
    reads: text`
      Untitled formula
      note: Levain: evening before
      Levain:
        Bread flour 100 g
        Water 100 g
      Final dough:
        Bread flour 900 g
        Water 600 g
        Salt 20 g
        Levain 200 g (all of it)`,
    totals: [
      'The file says Final dough 1,720 g, and its lines add to that.',
      'The file says Levain 210 g; its lines add to 200 g.',
    ],
    told: [[11, /says Levain 210 g; its lines add to 200 g/]],
  },
  {
    title: 'headings again over each block, with the name of the stage in place of “ingredient”',
    table: tabbed(
      'Hauptteig|kg|Kommentar',
      'Weizenmehl|10|',
      'Wasser|7|kalt',
      'Sauerteig|2|',
      '',
      'Sauerteig|kg|Kommentar',
      'Roggenmehl|1|',
      'Wasser|1 l|',
      'Gesamt|2|',
    ),
    reads: text`
      Untitled formula
      Sauerteig:
        Roggenmehl 1 kg
        Wasser 1 l
      Hauptteig:
        Weizenmehl 10 kg
        Wasser 7 kg (kalt)
        Sauerteig 2 kg`,
    totals: ['The file says Sauerteig 2,000 g, and its lines add to that.'],
  },
]
