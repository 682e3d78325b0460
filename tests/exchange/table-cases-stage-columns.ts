import { text } from './notation'
import { type ForeignCase, rows, tabbed } from './table-cases'

/** Tables with a column of amounts for each stage. */
export const stageColumnTables: readonly ForeignCase[] = [
  {
    title: 'a column for each of two stages, and one for both together',
    table: rows(
      'Ingredient,Levain,Final dough,Total',
      'Ripe starter,20,,20',
      'Bread flour,100,820,920',
      'Wholemeal spelt,,180,180',
      'Water,80,690,770',
      'Salt,,21,21',
      'Levain,,200,200',
    ),
    reads: text`
      Untitled formula
      Levain:
        Ripe starter 20 g
        Bread flour 100 g
        Water 80 g
      Final dough:
        Bread flour 820 g
        Wholemeal spelt 180 g
        Water 690 g
        Salt 21 g
        Levain 200 g`,
    asks: ['stages'],
  },
  {
    title: 'German, the final dough first, tabs, decimal commas, noughts and dashes for nothing, sums below',
    table: tabbed(
      'Bauernbrot||',
      'Zutat|Hauptteig (kg)|Sauerteig (kg)',
      'Roggenmehl|0,4|0,25',
      'Wasser|0,35|0,25',
      'Anstellgut|0|0,025',
      'Sauerteig|0,525|–',
      'Salz|0,0125|–',
      'Summe|1,2875|0,525',
    ),
    reads: text`
      Bauernbrot
      Sauerteig:
        Roggenmehl 0.25 kg
        Wasser 0.25 kg
        Anstellgut 0.025 kg
      Hauptteig:
        Roggenmehl 0.4 kg
        Wasser 0.35 kg
        Sauerteig 0.525 kg
        Salz 0.0125 kg`,
    totals: [
      'The file says Hauptteig 1,287.5 g, and its lines add to that.',
      'The file says Sauerteig 525 g, and its lines add to that.',
    ],
    asks: ['stages'],
  },
  {
    title: 'an empty corner, percentages, notes, and a stage that no line takes',
    table: rows(
      ';Soaker (%);Final dough (%);Remark',
      'Rolled oats;100;;toasted',
      'Bread flour;;100;',
      'Water;200;65;',
      'Salt;;2;',
      'Mix by hand.;;;',
    ),
    reads: text`
      Untitled formula
      note: Mix by hand.
      Soaker:
        Rolled oats 100% (toasted)
        Water 200%
      Final dough:
        Bread flour 100%
        Water 65%
        Salt 2%`,
    asks: ['stages'],
    told: [[2, /No line takes Soaker\./]],
  },
  {
    title:
      'two breads in a column of their own, each with its stages, and a known ingredient without any amount',
    table: rows(
      'Bread;Ingredient;Poolish;Dough',
      'Ring;Bread flour;100;400',
      ';Water;100;240',
      ';Dry yeast;0,2;',
      ';Poolish;;200,2',
      'Stick;Bread flour;50;450',
      ';Water;50;280',
      ';Poolish;;100',
      ';Salt;;',
    ),
    reads: `${text`
      Ring
      Poolish:
        Bread flour 100 g
        Water 100 g
        Dry yeast 0.2 g
      Dough:
        Bread flour 400 g
        Water 240 g
        Poolish 200.2 g

      Stick
      Poolish:
        Bread flour 50 g
        Water 50 g
      Dough:
        Bread flour 450 g
        Water 280 g
        Poolish 100 g
        Salt`} `,
    asks: ['stages'],
    told: [[9, /gives no amount for Salt/]],
  },
]
