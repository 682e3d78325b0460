import { text } from './notation'
import { type ForeignCase, rows, tabbed } from './table-cases'

/** Layouts that people make for their own eyes. */
export const layoutTables: readonly ForeignCase[] = [
  {
    title: 'prices are neither names nor amounts, and the bread is named beside its label',
    table: rows(
      'Produit :;Navettes;;;',
      'Nb pièces :;40;Poids pièce :;45 g;',
      'Matières premières;Unité;Quantité;P.U. HT;Total HT',
      'Farine T55;kg;1,000;0,82 €;0,82 €',
      'Lait entier;L;0,500;0,90 €;0,45 €',
      'Œufs;pièce;4;0,25 €;1,00 €',
      'Sel;kg;0,020;0,40 €;0,01 €',
      ';;;Coût total;2,28 €',
    ),
    reads: text`
      Navettes
      Final dough:
        Farine T55 1.000 kg
        Lait entier 0.500 l
        Œufs 4 each
        Sel 0.020 kg`,
  },
  {
    title: 'prices without a heading are not read',
    table: rows('Bread flour,2 kg,€1.80', 'Water,1.3 kg,€0.01', 'Salt,40 g,€0.02'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 2 kg
        Water 1.3 kg
        Salt 40 g`,
    asks: ['headings'],
  },
  {
    title: 'measures for two sizes of loaf: the first is read, and both are asked about',
    table: rows(
      ',1 1/2 lb loaf,2 lb loaf',
      'Water,1 1/4 cups,1 2/3 cups',
      'Butter,1 1/2 tbsp,2 tbsp',
      'Salt,1 1/2 tsp,2 tsp',
      'Bread flour,3 cups,4 cups',
    ),
    reads: text`
      Untitled formula
      Final dough:
        Water 1 1/4 cup
        Butter 1 1/2 tbsp
        Salt 1 1/2 tsp
        Bread flour 3 cup`,
    asks: ['batch'],
  },
  {
    title:
      'the bread stands over the ingredients, the per cent sign over theirs, and counts over the batches',
    table: rows(
      'Milk rolls;%;10 rolls;30 rolls',
      'Bread flour;100;500 g;1500 g',
      'Milk;60;300 g;900 g',
      'Salt;2;10 g;30 g',
      'PFF;0%;;',
    ),
    reads: text`
      Untitled formula
      note: PFF 0%
      Final dough:
        Bread flour 500 g
        Milk 300 g
        Salt 10 g`,
    asks: ['batch'],
  },
  {
    title: 'a date over the headings is no date in the dough',
    table: rows('Tin loaf', 'Date,3/14', '', 'Ingredient,g', 'Bread flour,900', 'Water,560', 'Salt,18'),
    reads: text`
      Tin loaf
      Final dough:
        Bread flour 900 g
        Water 560 g
        Salt 18 g`,
  },
  {
    title: 'the same amounts for three sizes of batch: the first is read, and all are asked about',
    table: rows(
      'Ingredient,1 loaf,6 loaves,20 loaves',
      'Bread flour,500,3000,10000',
      'Water,350,2100,7000',
      'Salt,10,60,200',
    ),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 500 g
        Water 350 g
        Salt 10 g`,
    asks: ['batch'],
  },
  {
    title: 'two stages side by side, each under its name',
    table: rows(
      'Levain,,Final dough,',
      'Ingredient,g,Ingredient,g',
      'Ripe starter,20,Bread flour,900',
      'Bread flour,100,Water,600',
      'Water,100,Salt,20',
      ',,Levain,220',
      'Total,220,Total,1740',
    ),
    reads: text`
      Untitled formula
      Levain:
        Ripe starter 20 g
        Bread flour 100 g
        Water 100 g
      Final dough:
        Bread flour 900 g
        Water 600 g
        Salt 20 g
        Levain 220 g`,
    totals: [
      'The file says Levain 220 g, and its lines add to that.',
      'The file says Final dough 1,740 g, and its lines add to that.',
    ],
    asks: ['column 3', 'stages'],
  },
  {
    title: 'two stages side by side that their first rows name',
    table: rows(
      'Poolish;;;Hauptteig;',
      'Weizenmehl;200;;Weizenmehl;800',
      'Wasser;200;;Wasser;480',
      'Hefe;0,2;;Salz;20',
      ';;;Poolish;400,2',
    ),
    reads: text`
      Untitled formula
      Poolish:
        Weizenmehl 200 g
        Wasser 200 g
        Hefe 0.2 g
      Hauptteig:
        Weizenmehl 800 g
        Wasser 480 g
        Salz 20 g
        Poolish 400.2 g`,
    asks: ['column 2', 'column 4', 'stages'],
  },
  {
    title: 'the lines of a first stage over the headings of the second',
    table: rows(
      'Soaker\t',
      'Linseed\t60 g',
      'Water\t90 g',
      '',
      'Dough\t',
      'Ingredient\tWeight',
      'Bread flour\t600 g',
      'Water\t380 g',
      'Soaker\t150 g',
    ),
    reads: text`
      Untitled formula
      Soaker:
        Linseed 60 g
        Water 90 g
      Dough:
        Bread flour 600 g
        Water 380 g
        Soaker 150 g`,
  },
  {
    title: 'fewer headings than the rows have cells',
    table: rows('Ingredient;Grams', 'Bread flour;700;sifted', 'Water;480;cool', 'Salt;14;fine'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 700 g (sifted)
        Water 480 g (cool)
        Salt 14 g (fine)`,
    asks: ['column 3'],
  },
  {
    title: 'headings again over each stage, in other words than at the top',
    table: tabbed(
      'Ingredient|Weight (g)|Percent',
      'Soaker|g|%',
      'Rolled oats|100|100',
      'Water|200|200',
      'Final dough|g|%',
      'Bread flour|500|100',
      'Water|250|50',
      'Soaker|300|60',
    ),
    reads: text`
      Untitled formula
      Soaker:
        Rolled oats 100 g
        Water 200 g
      Final dough:
        Bread flour 500 g
        Water 250 g
        Soaker 300 g`,
  },
  {
    title: 'a total formula over its stages is compared and no stage',
    table: rows(
      'Ingredient,Grams',
      'Total formula,',
      'Bread flour,1000',
      'Water,700',
      'Salt,25',
      ',',
      'Levain,',
      'Bread flour,100',
      'Water,100',
      ',',
      'Final dough,',
      'Bread flour,900',
      'Water,600',
      'Salt,20',
      'Levain,200',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 100 g
        Water 100 g
      Final dough:
        Bread flour 900 g
        Water 600 g
        Salt 20 g
        Levain 200 g`,
    totals: [
      'The file says total flour 1,000 g, and its lines add to that.',
      'The file says total water 700 g, and its lines add to that.',
      'The file says total salt 25 g; its lines add to 20 g.',
    ],
    told: [[5, /says total salt 25 g; its lines add to 20 g/]],
  },
  {
    title: 'totals under a heading of their own',
    table: rows(
      'Item,g',
      'Levain,',
      'Bread flour,50',
      'Water,50',
      'Dough,',
      'Bread flour,450',
      'Water,280',
      'Levain,100',
      'Totals,',
      'Flour,500',
      'Water,330',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 50 g
        Water 50 g
      Dough:
        Bread flour 450 g
        Water 280 g
        Levain 100 g`,
    totals: [
      'The file says total flour 500 g, and its lines add to that.',
      'The file says total water 330 g, and its lines add to that.',
    ],
  },
  {
    title: 'two columns for each stage',
    table: rows(
      'Ingredient,Levain %,Levain g,Final dough %,Final dough g',
      'Bread flour,100,100,100,900',
      'Water,80,80,65,585',
      'Salt,,,2,18',
      'Levain,,,20,180',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 100 g
        Water 80 g
      Final dough:
        Bread flour 900 g
        Water 585 g
        Salt 18 g
        Levain 180 g`,
    asks: ['stages'],
  },
  {
    title: 'two rows of headings, the stages over what their columns hold',
    table: rows(
      ',Levain,,Final dough,',
      'Ingredient,%,g,%,g',
      'Bread flour,100,150,100,850',
      'Water,100,150,60,510',
      'Levain,,,30,255',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 150 g
        Water 150 g
      Final dough:
        Bread flour 850 g
        Water 510 g
        Levain 255 g`,
    asks: ['stages'],
  },
  {
    title: 'footnote marks, bold signs, and units that touch what they belong to',
    table: rows(
      '| Ingredient | Amount |',
      '| --- | --- |',
      '| **Levain** | |',
      '| Bread flour | 335* g |',
      '| Water† | 335g* |',
      '| **Final dough** | |',
      '| Bread flour | 1000g |',
      '| Yeast0.5% | |',
      '| Water | 650 g |',
      '| Levain* | 670 g |',
    ),
    reads: text`
      Untitled formula
      Levain:
        Bread flour 335 g
        Water 335 g
      Final dough:
        Bread flour 1000 g
        Yeast 0.5%
        Water 650 g
        Levain 670 g`,
  },
  {
    title: 'headings of stages with their weights in the same cell',
    table: rows(
      'Ingredient;Amount',
      'Soaker: 1 lb, 8 oz;',
      'Rolled oats;8 oz',
      'Water;1 lb',
      'Dough: 4 lb;',
      'Bread flour;2 lb',
      'Water;8 oz',
      'Soaker;1 lb 8 oz',
    ),
    reads: text`
      Untitled formula
      Soaker:
        Rolled oats 8 oz
        Water 1 lb
      Dough:
        Bread flour 2 lb
        Water 8 oz
        Soaker 1 lb + 8 oz`,
    totals: [
      'The file says Soaker 680.4 g, and its lines add to that.',
      'The file says Dough 1,814.4 g, and its lines add to that.',
    ],
  },
  {
    title: 'each amount in the row below its name',
    table: tabbed('Ingredient|Grams', 'Bread flour|', '|500', 'Water|', '|350', 'Salt|', '|10'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 500 g
        Water 350 g
        Salt 10 g`,
  },
]
