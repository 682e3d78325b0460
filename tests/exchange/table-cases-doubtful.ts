import { text } from './notation'
import { type ForeignCase, rows } from './table-cases'

/** Figures that could be read in more than one way, or not at all. */
export const doubtfulTables: readonly ForeignCase[] = [
  {
    title: 'percentages only, without headings and without signs: flours that add to 100',
    table: rows('Bread flour,82', 'Wholemeal spelt,18', 'Water,69', 'Salt,2.1'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 82%
        Wholemeal spelt 18%
        Water 69%
        Salt 2.1%`,
    asks: ['headings', 'column 2'],
  },
  {
    title: 'percentages with more digits than the weights are kept, with the flour they are of',
    table: rows(
      'Ingredient,Percent,Grams',
      'Bread flour,100.00,730',
      'Water,68.50,500',
      'Salt,1.95,14',
      'Instant yeast,0.40,3',
    ),
    reads: text`
      Untitled formula
      flour weight: 730
      Final dough:
        Bread flour 100.00%
        Water 68.50%
        Salt 1.95%
        Instant yeast 0.40%`,
  },
  {
    title: 'a percentage that disagrees with its weight is told, and the weight is read',
    table: rows('Ingredient,%,g', 'Bread flour,100,1000', 'Water,70,700', 'Salt,2,28'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 1000 g
        Water 700 g
        Salt 28 g`,
    told: [[4, /gives 2 % and 28 g for Salt, but 2 % of 1,000 g is 20 g\. The weight is read\./]],
  },
  {
    title: 'nothing shows what the comma is: thousands, and every such row is told',
    table: rows('Ingredient;Weight g', 'Bread flour;1,000', 'Water;690', 'Salt;21'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 1000 g (Not confirmed: read from “1,000”)
        Water 690 g
        Salt 21 g`,
    asks: ['decimal'],
    told: [[2, /has “1,000” for Bread flour, which is read as 1000/]],
  },
  {
    title: 'another number shows that the comma is decimal, so that a point stands between thousands',
    table: rows('Zutat;Gramm', 'Weizenmehl;1.250', 'Wasser;875', 'Salz;27,5'),
    reads: text`
      Untitled formula
      Final dough:
        Weizenmehl 1250 g
        Wasser 875 g
        Salz 27.5 g`,
  },
  {
    title: 'a table in upright strokes with a pinch, a range and a temperature',
    table: rows(
      '| Ingredient | Amount |',
      '| --- | --- |',
      '| Bread flour | 1 kg |',
      '| Water | 650–680 ml |',
      '| Instant yeast | a pinch |',
      '| Salt | 2 1/4 tsp |',
      '| Dough temperature | 25 °C |',
    ),
    reads: text`
      Untitled formula
      note: Dough temperature 25 °C
      Final dough:
        Bread flour 1 kg
        Water 665 ml (650–680 ml)
        Instant yeast  (a pinch)
        Salt 2 1/4 tsp`,
    told: [[5, /gives “a pinch” for Instant yeast, which cannot be read as an amount/]],
  },
  {
    title: 'shares of 1 under a heading of per cent',
    table: rows('Ingredient,Percent', 'Bread flour,0.82', 'Wholemeal spelt,0.18', 'Water,0.69', 'Salt,0.021'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 82%
        Wholemeal spelt 18%
        Water 69%
        Salt 2.1%`,
    told: [[2, /written as shares of 1/]],
  },
  {
    title: 'percentages of all the flour in two stages are weights for 1000 g of it',
    table: rows(
      'Stage,Ingredient,%',
      'Levain,Bread flour,10',
      'Levain,Water,10',
      'Final dough,Bread flour,90',
      'Final dough,Water,60',
      'Final dough,Salt,2',
      'Final dough,Levain,20',
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
    told: [[2, /are of all the flour, and were read as weights for 1,000 g/]],
  },
  {
    title: 'decimal commas between commas: rows with a cell too many are not taken apart by luck',
    table: rows('Ingredient,Percent', 'Bread flour,100', 'Water,69,5', 'Salt,2'),
    reads: text`
      Untitled formula
      Final dough:
        Bread flour 100%
        Salt 2%`,
    told: [[3, /has 3 cells where the table has 2 columns/]],
  },
  {
    title: 'rows that name nothing, say nothing, or are calculations that went wrong',
    table: rows(
      'Ingredient;g;Notes',
      'Bread flour;1000;',
      ';250;',
      'Water;#REF!;',
      'Salt;;to taste',
      ';;scale it twice',
      'Rye berries;-20;',
    ),
    reads: text`
      Untitled formula
      note: scale it twice
      Final dough:
        Bread flour 1000 g
        Water  (#REF!)
        Salt  (to taste)
        Rye berries  (-20)`,
    told: [
      [3, /gives “250” and names no ingredient/],
      [4, /“#REF!” for Water, which is a calculation or an error/],
      [5, /gives no amount for Salt/],
      [7, /“-20” for Rye berries, which is below zero/],
    ],
  },
]
