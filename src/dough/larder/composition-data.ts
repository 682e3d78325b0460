/**
 * What 100 g of the usual ingredients hold, as the USDA National Nutrient Database for Standard Reference, release 26 (public
 * domain), gives it, under the numbers that stand in `larder-notes.ts`; `composition.ts` reads it. Labels alone want it.
 *
 * name | grams of fat, carbohydrate (by difference: fibre is in it), fibre, sugars and protein, milligrams of sodium. `-` is what that
 * database does not report.
 */
export const compositionTable = `
All-purpose flour|.98 76.31 2.7 .27 10.33 2
Bread flour|1.66 72.53 2.4 .31 11.98 2
Bread flour 13%|1.38 72.2 2.4 1.1 13.07 2
High-gluten flour|1.41 69.88 2.4 .92 15.33 2
Cake flour|.86 78.03 1.7 .31 8.2 2
Whole wheat flour|2.5 71.97 10.7 .41 13.21 2
Soft whole wheat flour|1.95 74.48 13.1 1.02 9.61 3
Dark rye flour|2.22 68.63 23.8 2.31 15.91 2
Medium rye flour|1.52 75.43 11.8 1.1 10.88 2
Light rye flour|1.33 76.68 8 .93 9.82 2
Wholemeal spelt|2.43 70.19 10.7 6.82 14.57 8
Khorasan flour|2.13 70.58 11.1 7.84 14.54 5
Durum flour|2.47 71.13 - - 13.68 2
Semolina|1.05 72.83 3.9 - 12.68 1
Triticale flour|1.81 73.14 14.6 - 13.18 2
Rice flour|1.42 80.13 2.4 .12 5.95 0
Brown rice flour|2.78 76.48 4.6 .85 7.23 8
Corn flour|3.86 76.85 7.3 .64 6.93 5
Cornmeal|3.59 76.89 7.3 .64 8.12 35
Buckwheat flour|3.1 70.59 10 2.6 12.62 11
Oat flour|9.12 65.7 6.5 .8 14.66 19
Barley flour|1.6 74.52 10.1 .8 10.5 4
Millet flour|4.25 73.05 3.5 1.66 10.75 4
Sorghum flour|3.29 77.47 6.6 1.87 7.87 4
Chickpea flour|6.69 57.82 10.8 10.85 22.39 64
Soy flour|20.65 35.19 9.6 7.5 34.54 13
Potato flour|.34 83.1 5.9 3.52 6.9 55
Lupin flour|9.74 40.37 18.9 - 36.17 15
Rye grain|1.63 75.86 15.1 .98 10.34 2
Rolled oats|6.52 67.7 10.1 .99 13.15 6
Bulgur|1.33 75.87 18.3 .41 12.29 17
Corn starch|.05 91.27 .9 0 .26 9
Wheat bran|4.25 64.51 42.8 .41 15.55 2
Oat bran|7.03 66.22 15.4 1.45 17.3 4
Wheat germ|9.72 51.8 13.2 - 23.15 12
Vital wheat gluten|1.85 13.79 .6 0 75.16 29
Malt flour|1.84 78.3 7.1 .8 10.28 11
Water|0 0 0 0 0 4
Ice|0 0 0 0 0 4
Whole milk|3.25 4.8 0 5.05 3.15 43
Semi-skimmed milk|1.98 4.8 0 5.06 3.3 47
Skimmed milk|.08 4.96 0 5.09 3.37 42
Skimmed milk powder|.77 51.98 0 51.98 36.16 535
Whole milk powder|26.71 38.42 0 38.42 26.32 371
Buttermilk|.88 4.79 0 4.79 3.31 190
Yoghurt|3.25 4.66 0 4.66 3.47 46
Greek yoghurt|.39 3.6 0 3.24 10.19 36
Whipping cream|37 2.79 0 2.79 2.05 38
Single cream|19.31 3.66 0 3.66 2.7 40
Sour cream|19.73 2.88 0 2.88 2.07 47
Butter|81.11 .06 0 .06 .85 11
Salted butter|81.11 .06 0 .06 .85 643
Margarine|80.71 .7 0 0 .16 751
Olive oil|100 0 0 0 0 2
Sunflower oil|100 0 0 0 0 0
Rapeseed oil|100 0 0 0 0 0
Soybean oil|100 0 0 0 0 0
Lard|100 0 0 0 0 0
Shortening|100 0 0 - 0 0
Egg|9.51 .72 0 .37 12.56 142
Egg yolk|26.54 3.59 0 .56 15.86 48
Egg white|.17 .73 0 .71 10.9 166
Sugar|0 99.98 0 99.8 0 1
Brown sugar|0 98.09 0 97.02 .12 28
Icing sugar|0 99.77 0 97.81 0 2
Honey|0 82.4 .2 82.12 .3 4
Molasses|.1 74.73 0 74.72 0 37
Maple syrup|.06 67.04 0 67.9 .04 12
Malt syrup|0 71.3 0 71.3 6.2 35
Corn syrup|.2 76.79 0 76.77 0 62
Salt|0 0 0 0 0 38758
Sea salt|0 0 0 0 0 38758
Coarse salt|0 0 0 0 0 38758
Fresh yeast|1.9 18.1 8.1 0 8.4 30
Dry yeast|7.61 41.22 26.9 0 40.44 51
Instant yeast|7.61 41.22 26.9 0 40.44 51
Baking soda|0 0 0 0 0 27360
Sesame seeds|49.67 23.45 11.8 .3 17.73 11
Sunflower seeds|51.46 20 8.6 2.62 20.78 9
Pumpkin seeds|49.05 10.71 6 1.4 30.23 7
Flaxseed|42.16 28.88 27.3 1.55 18.29 30
Poppy seeds|41.56 28.13 19.5 2.99 17.99 26
Chia seeds|30.74 42.12 34.4 - 16.54 16
Caraway seeds|14.59 49.9 38 .64 19.77 17
Walnuts|65.21 13.71 6.7 2.61 15.23 2
Hazelnuts|60.75 16.7 9.7 4.34 14.95 0
Pecans|71.97 13.86 9.6 3.97 9.17 0
Almonds|49.93 21.55 12.5 4.2 21.15 1
Pistachios|45.39 27.51 10.3 7.66 20.27 1
Pine nuts|68.37 13.08 3.7 3.59 13.69 2
Peanuts|49.24 16.13 8.5 3.97 25.8 18
Desiccated coconut|64.53 23.65 16.3 7.35 6.88 37
Chestnuts|2.2 52.96 5.1 10.6 3.17 2
Raisins|.46 79.18 3.7 59.19 3.07 11
Sultanas|.46 79.52 4 59.19 3.39 12
Currants|.27 74.08 6.8 67.28 4.08 8
Dried cranberries|1.37 82.36 5.7 65 .07 3
Dried apricots|.51 62.64 7.3 53.44 3.39 10
Dried figs|.93 63.87 9.8 47.92 3.3 10
Dates|.39 75.03 8 63.35 2.45 2
Prunes|.38 63.88 7.1 38.13 2.18 2
Candied fruit|.07 82.74 1.6 80.68 .34 98
Cheddar|33.14 1.28 0 .52 24.9 621
Parmesan|25.83 3.22 0 .8 35.75 1376
Ricotta|12.98 3.04 0 .27 11.26 84
Boiled potato|.1 20.01 1.8 .85 1.71 5
Onion|.1 9.34 1.7 4.24 1.1 4
Garlic|.5 33.06 2.1 1 6.36 17
Pumpkin puree|.28 8.09 2.9 3.3 1.1 5
Black olives|10.68 6.26 3.2 0 .84 735
Green olives|15.32 3.84 3.3 .54 1.03 1556
Sun-dried tomatoes|2.97 55.76 12.3 37.59 14.11 247
Cocoa powder|13.7 57.9 33.2 1.75 19.6 21
Dark chocolate|38.31 52.42 8 36.71 6.12 10
Beer|0 3.55 0 0 .46 4
Soy milk|1.61 1.74 .5 .41 2.86 37
Orange juice|.2 10.4 .2 8.4 .7 1
`
