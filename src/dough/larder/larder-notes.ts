/**
 * Where the figures of the usual larder are from, and what is to be known of them: name | NDB number (see `larder-data.ts`)
 * | note. A page fetches them with what shows them.
 */
export const larderNotes = `
All-purpose flour|20481|A cup is printed as anything from 120 to 150 g
Bread flour|20129|A cup is printed as anything from 120 to 150 g; this is one dipped, of the enriched flour
Bread flour 13%|20641
High-gluten flour|20646
Cake flour|20084|Cup unsifted
Whole wheat flour|20080
High-extraction flour||Between white and whole wheat flour. Counted as flour: what is in it is not recorded; cup as whole wheat flour's
Soft whole wheat flour|20649
Dark rye flour|20063
Medium rye flour|20064
Light rye flour|20065
Wholemeal spelt|20140|Composition of the whole grain, its sugar doubtful; cup as whole wheat flour's
White spelt flour||Counted as flour: what is in it is not recorded; cup as whole wheat flour's
Einkorn flour||Counted as flour: what is in it is not recorded; cup as whole wheat flour's
Emmer flour||Counted as flour: what is in it is not recorded; cup as whole wheat flour's
Khorasan flour|20138|Composition of the whole grain, its sugar doubtful; cup as whole wheat flour's
Durum flour|20076|Composition of the whole grain; cup as whole wheat flour's. Sugar not reported
Semolina|20466|Sugar not reported
Triticale flour|20070|Sugar not reported
Rice flour|20061
Brown rice flour|20090
Corn flour|20016|Not cornflour, which is corn starch
Cornmeal|20020
Buckwheat flour|20011
Oat flour|20132|Check for cross-contact with wheat
Barley flour|20130
Millet flour|20647
Sorghum flour|20648
Chickpea flour|16157
Soy flour|16115|Full fat, raw; cup stirred
Potato flour|11413|Dried and milled potato, not potato starch
Lupin flour|16076|Composition of the raw seed. Sugar not reported
Rye grain|20062|Cup of whole grain
Rolled oats|8120
Bulgur|20012|Dry
Corn starch|20027|Not counted as flour
Wheat bran|20077
Oat bran|20033
Wheat germ|20078|Sugar not reported
Vital wheat gluten|48052
Malt flour|20131|A blend may hold wheat: see its label
Water|14411
Ice|14411
Whole milk|1077
Semi-skimmed milk|1079|With 2 g fat in 100 g
Skimmed milk|1085
Skimmed milk powder|1091
Whole milk powder|1090
Buttermilk|1088|Cultured, low in fat
Yoghurt|1116|Whole milk, unsweetened
Greek yoghurt|1256|Non-fat
Whipping cream|1053|With 37 g fat in 100 g
Single cream|1050|With 19 g fat in 100 g
Sour cream|1056
Butter|1145
Salted butter|1001|Its salt counts
Margarine|4610|80% fat, salted: its salt counts
Olive oil|4053
Sunflower oil|4506
Rapeseed oil|4582
Soybean oil|4044
Lard|4002
Shortening|4559|Soy and palm. Sugar not reported
Egg|1123|A US large egg; medium 44, extra large 56, jumbo 63 g
Egg yolk|1125|Of a US large egg
Egg white|1124|Of a US large egg
Sugar|19335
Brown sugar|19334|Measured packed; loose, a third less
Icing sugar|19336|Cup unsifted
Honey|19296|A tablespoon is printed as 19 to 21 g
Molasses|19304|A tablespoon is printed as 19 to 20 g
Maple syrup|19353
Malt syrup|19352
Corn syrup|19350|A tablespoon is printed as 19 to 22 g
Salt|2047|A teaspoon of fine salt is printed as 6 to 7 g: weigh it
Sea salt|2047|A teaspoon of salt is printed as 4 to 7 g: weigh it
Coarse salt|2047|A teaspoon of salt is printed as 4 to 7 g: weigh it
Fresh yeast|18374
Dry yeast|18375|A teaspoon is printed as 2.8 and as 4 g: weigh it
Instant yeast|18375|Composition of active dry yeast. Teaspoons of dry yeasts are printed from 2.8 to 4 g: weigh it
Baking soda|18372|Its sodium is not counted as salt
Sesame seeds|12023
Sunflower seeds|12036|Hulled
Pumpkin seeds|12014|Hulled
Flaxseed|12220|Whole
Poppy seeds|2033
Chia seeds|12006|Sugar not reported
Caraway seeds|2005
Walnuts|12155|Cup chopped
Hazelnuts|12120|Cup whole
Pecans|12142|Cup chopped
Almonds|12061|Cup whole
Pistachios|12151
Pine nuts|12147
Peanuts|16087|Raw
Desiccated coconut|12108|Unsweetened. Left the US allergen list in 2025
Chestnuts|12167|Roasted. Left the US allergen list in 2025
Raisins|9298|Cup packed
Sultanas|9297|Cup packed. Often sulphited
Currants|9085
Dried cranberries|9079|Sweetened
Dried apricots|9032|Sulphured. Cup of halves
Dried figs|9094
Dates|9087|Cup chopped; each pitted
Prunes|9291|Pitted
Candied fruit|9426|Often sulphited
Cheddar|1009|Its salt counts. Cup grated
Parmesan|1033|Its salt counts
Ricotta|1036
Boiled potato|11367|Peeled; water varies. Each of medium size
Onion|11282|Raw, chopped. Each of medium size
Garlic|11215|Each is a clove. In oil never at room temperature
Pumpkin puree|11424|Water varies widely
Black olives|9193|Its salt counts. Each large
Green olives|9195|Its salt counts
Sun-dried tomatoes|11955
Cocoa powder|19165|Unsweetened
Dark chocolate|19903|With 60 to 69% cocoa
Beer|14003
Soy milk|16222|Unsweetened
Orange juice|9206|Raw
Ripe starter||Fed with wheat flour and as much water
Whole wheat starter||Fed with whole wheat flour and as much water
Rye starter||Fed with rye flour and as much water
Stiff starter||Fed with wheat flour and half its weight of water
Liquid starter||Fed with wheat flour and 1.25 times its weight of water
`
