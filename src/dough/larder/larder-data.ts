/**
 * The usual larder as a table; `usual-larder.ts` reads it.
 *
 * Composition and household weights: USDA National Nutrient Database for Standard Reference, release 26
 * (public domain); the NDB numbers there are in `larder-notes.ts`. Salted foods count the salt made in
 * them, as sodium × 2.5. Not from there: teaspoons of sea salt, coarse salt and instant yeast, which are
 * figures printed in the trade (an ounce is 6, 7 and 9 teaspoons); water at 1 g a millilitre; the
 * starters, which are arithmetic on their hydration.
 *
 * `=kind` opens a kind; `=starter 100%` one of that hydration. A row is
 * name | other names | allergens, a letter of `allergensOf` | grams in 100 g of moisture, fat, sugar,
 * protein, salt | grams a cup `c`, tablespoon `b`, teaspoon `t`, each `e`, millilitre `d`.
 * German and French names are those that mean one thing: no Sauerteig or Levain, whose flour and hydration they leave open, no
 * Öl. Type numbers stand with the flour whose ash, in dry flour, is nearest to theirs.
 * Numbers that would end a list as 0 are left out. A name, once published, stays: formulas refer to it.
 */
export const larderTable = `
=flour
All-purpose flour|Plain flour, AP flour, Farine T55, T55, T45, Mehl, Weizenmehl, Weizenmehl 405, Weizenmehl 550, Weizenmehl Type 550, Type 405, Type 550|w|0 .98 .27 10.33|c125
Bread flour|Strong white flour, Strong flour, White bread flour, Strong white bread flour, Strong bread flour, Farine T65, T65|w|0 1.66 .31 11.98|c137
Bread flour 13%|Extra strong flour|w|0 1.38 1.1 13.07
High-gluten flour|Very strong flour, Very strong white flour, Farine de gruau|w|0 1.41 .92 15.33
Cake flour||w|0 .86 .31 8.2|c137
Whole wheat flour|Wholemeal flour, Wholemeal wheat, Wholemeal, Wholemeal wheat flour, Wholewheat flour, Whole-wheat flour, Whole wheat, Strong wholemeal flour, Farine complète, Farine T150, T150, Vollkornmehl, Weizenvollkornmehl|w|0 2.5 .41 13.21|c120
High-extraction flour|T80, T110, Type 812, Type 1050|w||c120
Soft whole wheat flour|Whole wheat pastry flour, Soft wholemeal flour|w|0 1.95 1.02 9.61
Dark rye flour|Wholemeal rye, Whole rye flour, Wholemeal rye flour, Dark rye, Whole rye, Farine T170, T170, Farine de seigle T170, Farine de seigle complète, Roggenvollkornmehl|r|0 2.22 2.31 15.91|c128
Medium rye flour|Medium rye, Farine T130, T130, Farine de seigle T130, Roggenmehl, Roggenmehl 1150, Roggenmehl Type 1150|r|0 1.52 1.1 10.88|c102
Light rye flour|White rye flour, Light rye, Farine T85, T85, Farine de seigle T85, Roggenmehl 997, Roggenmehl Type 997|r|0 1.33 .93 9.82|c102
Wholemeal spelt|Wholemeal spelt flour, Whole spelt flour, Whole grain spelt flour, Spelt flour, Farine de grand épeautre, Dinkelvollkornmehl|w|0 2.43 6.82 14.57|c120
White spelt flour|White spelt, Dinkelmehl|w||c120
Einkorn flour|Einkorn, Petit épeautre|w||c120
Emmer flour|Emmer|w||c120
Khorasan flour|Khorasan, Wholemeal khorasan, Whole khorasan flour|w|0 2.13 7.84 14.54|c120
Durum flour|Durum, Whole durum flour, Wholemeal durum, Durum wheat flour|w|0 2.47 0 13.68|c120
Semolina|Durum semolina, Semolina flour, Semoule, Hartweizengrieß|w|0 1.05 0 12.68|c167
Triticale flour||t|0 1.81 0 13.18|c130
Rice flour|White rice flour, Farine de riz, Reismehl||0 1.42 .12 5.95|c158
Brown rice flour|||0 2.78 .85 7.23|c158
Corn flour|Maize flour, Whole corn flour, Farine de maïs, Maismehl||0 3.86 .64 6.93|c117
Cornmeal|Polenta, Maize meal||0 3.59 .64 8.12|c122
Buckwheat flour|Farine de sarrasin, Buchweizenmehl||0 3.1 2.6 12.62|c120
Oat flour|Hafermehl|o|0 9.12 .8 14.66|c104
Barley flour|Barley meal, Farine d’orge, Gerstenmehl|b|0 1.6 .8 10.5|c148
Millet flour|||0 4.25 1.66 10.75|c119
Sorghum flour|Jowar flour||0 3.29 1.87 7.87|c121
Chickpea flour|Gram flour, Besan, Garbanzo flour||0 6.69 10.85 22.39|c92
Soy flour|Soya flour|y|0 20.65 7.5 34.54|c84 b5.2
Potato flour|||0 .34 3.52 6.9|c160
Lupin flour|Lupine flour, Farine de lupin|l|0 9.74 0 36.17
=grain
Rye grain|Rye berries, Rye chops, Cracked rye, Chopped rye, Roggenkörner, Roggenschrot|r|10.6 1.63 .98 10.34|c169
Rolled oats|Oats, Porridge oats, Oat flakes, Rolled oat flakes, Flocons d’avoine, Haferflocken|o|10.84 6.52 .99 13.15|c81
Bulgur|Bulgur wheat, Bulgar wheat, Boulgour|w|9 1.33 .41 12.29|c140
=starch
Corn starch|Cornstarch, Cornflour, Maize starch, Fécule de maïs||8.32 .05 0 .26|c128
=bran
Wheat bran|Bran, Son de blé, Weizenkleie|w|9.89 4.25 .41 15.55|c58
Oat bran|Son d’avoine|o|6.55 7.03 1.45 17.3|c94
=germ
Wheat germ|Wheatgerm, Germe de blé|w|11.12 9.72 0 23.15|c115
=gluten
Vital wheat gluten|Wheat gluten, Gluten|w|8.2 1.85 0 75.16
=malt
Malt flour|Barley malt flour, Malted barley flour, Diastatic malt, Diastatic malt powder|b|8.21 1.84 .8 10.28|c162
=water
Water|Tap water, Filtered water, Cold water, Warm water, Hot water, Boiling water, Eau, Wasser, Kaltes Wasser, Warmes Wasser||100|d1
Ice|Crushed ice, Ice cubes||100
=dairy
Whole milk|Milk, Full-fat milk, Lait, Lait entier, Milch, Vollmilch|m|88.13 3.25 5.05 3.15|c244 b15
Semi-skimmed milk|2% milk, Reduced-fat milk, Lait demi-écrémé|m|89.21 1.98 5.06 3.3|c244
Skimmed milk|Skim milk, Non-fat milk, Lait écrémé, Magermilch|m|90.84 .08 5.09 3.37|c245
Skimmed milk powder|Non-fat milk powder, Nonfat dry milk, Non-fat dry milk, Milk powder, Dried skimmed milk|m|3.16 .77 51.98 36.16|c120
Whole milk powder|Dried whole milk, Full-fat milk powder|m|2.47 26.71 38.42 26.32|c128
Buttermilk|Lait ribot, Buttermilch|m|90.13 .88 4.79 3.31|c245
Yoghurt|Yogurt, Plain yogurt, Plain yoghurt, Natural yoghurt, Yaourt, Joghurt|m|87.9 3.25 4.66 3.47|c245
Greek yoghurt|Greek yogurt|m|85.1 .39 3.24 10.19
Whipping cream|Heavy cream, Heavy whipping cream|m|57.71 37 2.79 2.05|c238 b15
Single cream|Light cream|m|73.75 19.31 3.66 2.7|c240 b15
Sour cream|Soured cream|m|74.46 19.73 2.88 2.07|c230 b12
=fat
Butter|Unsalted butter, Sweet butter, Beurre, Beurre doux|m|17.94 81.11 .06 .85|c227 b14.2
Salted butter|Beurre salé|m|15.87 81.11 .06 .85 1.607|c227 b14.2
Margarine||x|16.52 80.71 0 .16 1.877|c227 b14 t4.7
Olive oil|Extra virgin olive oil, Huile d’olive, Olivenöl||0 100|c216 b13.5 t4.5
Sunflower oil|Huile de tournesol, Sonnenblumenöl||0 100|c218 b13.6 t4.5
Rapeseed oil|Canola oil, Huile de colza, Rapsöl||0 100|c218 b14 t4.5
Soybean oil|Soya oil, Soy oil|z|0 100|c218 b13.6 t4.5
Lard|Saindoux, Schmalz||0 100|c205 b12.8
Shortening|Vegetable shortening||0 100|c205 b12.8
=egg
Egg|Eggs, Whole egg, Large egg, Œuf, Œufs, Oeuf, Ei, Eier|e|76.15 9.51 .37 12.56|c243 e50
Egg yolk|Egg yolks, Yolk, Yolks, Jaune d’œuf, Eigelb|e|52.31 26.54 .56 15.86|c243 e17
Egg white|Egg whites, Blanc d’œuf, Eiweiß|e|87.57 .17 .71 10.9|c243 e33
=sugar
Sugar|Granulated sugar, White sugar, Caster sugar, Sucre, Zucker||.02 0 99.8|c200 t4.2
Brown sugar|Soft brown sugar, Light brown sugar, Cassonade, Brauner Zucker||1.34 0 97.02 .12|c220 t4.6
Icing sugar|Powdered sugar, Confectioners’ sugar, Confectioners sugar, Sucre glace, Puderzucker||.23 0 97.81|c120 b8 t2.5
Honey|Miel, Honig||17.1 0 82.12 .3|c339 b21
Molasses|Treacle, Black treacle, Mélasse||21.87 .1 74.72|c337 b20
Maple syrup|Sirop d’érable||32.39 .06 67.9 .04|c315 b20
Malt syrup|Barley malt syrup, Malt extract, Barley malt extract|b|21.1 0 71.3 6.2|c332 b21
Corn syrup|Light corn syrup||22.81 .2 76.77|c341 b22
=salt
Salt|Table salt, Fine salt, Sel, Sel fin, Salz||0 0 0 0 100|c292 b18 t6
Sea salt|Fine sea salt, Sel de mer, Meersalz||0 0 0 0 100|t5
Coarse salt|Kosher salt, Coarse sea salt, Gros sel||0 0 0 0 100|t4
=yeast
Fresh yeast|Compressed yeast, Cake yeast, Levure fraîche, Levure de boulanger, Hefe, Frischhefe||69 1.9 0 8.4
Dry yeast|Active dry yeast, Dried active yeast, Levure sèche active||5.08 7.61 0 40.44|b12 t4
Instant yeast|Instant dry yeast, Easy-bake yeast, Fast-action yeast, Levure sèche instantanée, Trockenhefe||5.08 7.61 0 40.44|t3.15
=raising agent
Baking soda|Bicarbonate of soda, Bicarbonate, Sodium bicarbonate, Natron||.2|t4.6
=seed
Sesame seeds|Sesame seed, Sesame, Graines de sésame, Sesam|s|4.69 49.67 .3 17.73|c144 b9
Sunflower seeds|Sunflower seed, Graines de tournesol, Sonnenblumenkerne||4.73 51.46 2.62 20.78|c140
Pumpkin seeds|Pumpkin seed, Pepitas, Graines de courge, Kürbiskerne||5.23 49.05 1.4 30.23|c129
Flaxseed|Flaxseeds, Flax seeds, Linseed, Linseeds, Graines de lin, Leinsamen||6.96 42.16 1.55 18.29|c168 b10.3 t3.4
Poppy seeds|Poppy seed, Graines de pavot, Mohn||5.95 41.56 2.99 17.99|b8.8 t2.8
Chia seeds|Chia seed, Chia, Graines de chia||5.8 30.74 0 16.54
=spice
Caraway seeds|Caraway seed, Caraway, Carvi, Kümmel||9.87 14.59 .64 19.77|b6.7 t2.1
=nut
Walnuts|Walnut, Noix, Walnüsse|W|4.07 65.21 2.61 15.23|c117
Hazelnuts|Hazelnut, Noisettes, Haselnüsse|H|5.31 60.75 4.34 14.95|c135 e1.4
Pecans|Pecan|C|3.52 71.97 3.97 9.17|c109
Almonds|Almond, Whole almonds, Amandes, Mandeln|A|4.41 49.93 4.2 21.15|c143 e1.2
Pistachios|Pistachio, Pistaches|P|3.91 45.39 7.66 20.27|c123 e.7
Pine nuts|Pine nut, Pignons|N|2.28 68.37 3.59 13.69|c135
Peanuts|Peanut, Cacahuètes|p|6.5 49.24 3.97 25.8|c146
Desiccated coconut|Coconut flakes||3 64.53 7.35 6.88
Chestnuts|Chestnut, Roast chestnuts, Châtaignes||40.48 2.2 10.6 3.17|c143 e8.4
=dried fruit
Raisins|Raisin, Raisins secs, Rosinen||15.43 .46 59.19 3.07|c165
Sultanas|Sultana, Golden raisins, Raisins blonds|u|14.97 .46 59.19 3.39|c165
Currants|Zante currants, Dried currants, Raisins de Corinthe||19.21 .27 67.28 4.08|c144
Dried cranberries|Dried cranberry||16 1.37 65 .07|c121
Dried apricots|Dried apricot, Abricots secs|u|30.89 .51 53.44 3.39|c130
Dried figs|Dried fig, Figues sèches||30.05 .93 47.92 3.3|c149 e8.4
Dates|Date, Dattes||20.53 .39 63.35 2.45|c147 e7.1
Prunes|Prune, Dried plums, Pruneaux||30.92 .38 38.13 2.18|c174 e9.5
Candied fruit|Candied peel, Mixed peel, Fruits confits|u|16.7 .07 80.68 .34
=cheese
Cheddar|Cheddar cheese|m|36.75 33.14 .52 24.9 1.552|c113
Parmesan|Parmesan cheese|m|29.16 25.83 .8 35.75 3.44
Ricotta|Ricotta cheese|m|71.7 12.98 .27 11.26|c246
=vegetable
Boiled potato|Boiled potatoes, Cooked potato, Potato, Potatoes||77.46 .1 .85 1.71|c156 e167
Onion|Onions, Oignon||89.11 .1 4.24 1.1|c160 b10 e110
Garlic|Garlic cloves, Garlic clove, Ail||58.58 .5 1 6.36|c136 t2.8 e3
Pumpkin puree|Pumpkin purée, Canned pumpkin||89.97 .28 3.3 1.1|c245
Black olives|Ripe olives, Olives noires||79.99 10.68 0 .84 1.837|b8.4 e4.4
Green olives|Olives vertes||75.28 15.32 .54 1.03 3.89|e2.7
Sun-dried tomatoes|Sundried tomatoes, Tomates séchées||14.56 2.97 37.59 14.11|c54 e2
=cocoa
Cocoa powder|Cocoa, Cacao||3 13.7 1.75 19.6|c86 b5.4
=chocolate
Dark chocolate|Chocolat noir|x|1.25 38.31 36.71 6.12
=liquid
Beer|Bière|b|91.96 0 0 .46|d1.004
Soy milk|Soya milk|y|93.14 1.61 .41 2.86|c243
Orange juice|Jus d’orange||88.3 .2 8.4 .7|c248
=starter 100%
Ripe starter|Starter, Sourdough starter, Ripe sourdough starter, White starter, Wheat starter, Weizensauerteig|w
Whole wheat starter|Wholemeal starter|w
Rye starter|Rye sourdough starter, Roggensauerteig|r
=starter 50%
Stiff starter|Firm starter, Stiff sourdough starter|w
=starter 125%
Liquid starter|Liquid sourdough starter, Wet starter|w
`
