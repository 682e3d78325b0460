/**
 * Methods of Brackwater Mill's kitchen, as they come in messages and notebooks, and the steps a baker would make of them:
 * `kind does: text`, `@Stage` before it where it is not the final dough, `? codes` where something was guessed or is asked.
 */
export type MethodCase = readonly [words: string, ...steps: string[]]

/** Of a dough of bread flour, wholemeal spelt, water, salt, levain and olive oil. */
export const englishCases: readonly MethodCase[] = [
  // one sentence, one time
  ['Cover and let rest 30 minutes.', 'wait Rest: 30 min'],
  ['Let the dough rest for half an hour.', 'wait Rest: 30 min'],
  ['Knead for 10 minutes.', 'hands Knead: 10 min'],
  ['Knead 8-10 min.', 'hands Knead: 8–10 min'],
  ['Autolyse: 45 minutes', 'wait Autolyse: 45 min'],
  ['Bulk fermentation: 4 hours at 25 °C', 'wait Bulk: 4 h, at 25 °C'],
  ['Bulk ferment for 3.5 to 4.5 hours at 24°C, until risen by half.', 'wait Bulk: 3.5–4.5 h, at 24 °C'],
  ['Retard overnight, 12 to 15 hours.', 'wait Retard: 12–15 h'],
  ['Retard overnight in the fridge.', 'wait Retard: 8–12 h, in the fridge ? overnight'],
  ['Place in the fridge for 12–15 hours.', 'wait Retard: 12–15 h, in the fridge'],
  ['Proof in the refrigerator overnight (10 to 12 hours).', 'wait Proof: 10–12 h, in the fridge'],
  ['Leave to rise for an hour and a half.', 'wait Rise: 1 h 30'],
  ['Let rise until doubled, about two hours.', 'wait Rise: 2 h'],
  ['Let rise until doubled.', 'wait Rise:  ? noTime'],
  ['Rest at least 20 minutes.', 'wait Rest: 20 min ? boundOnly'],
  ['Let it stand for up to 2 hours.', 'wait Rest: 2 h ? boundOnly'],
  ['Final proof between 45 and 60 minutes at 26 °C.', 'wait Proof: 45–60 min, at 26 °C'],
  ['The bulk fermentation takes 4 hours.', 'wait Bulk: 4 h'],
  ['Prove for 1 1/2 hours somewhere warm.', 'wait Proof: 1 h 30'],
  ['Proof 75 min @ 78F', 'wait Proof: 75 min, at 78 °F'],
  ['Rest: 1h30', 'wait Rest: 1 h 30'],
  ['Leave for a few minutes.', 'wait Rest:  ? fewMinutes noTime'],
  ['Let cool on a rack for 2 hours before cutting.', 'wait Cool: 2 h'],
  ['Rest 90 seconds.', 'wait Rest: 90 s'],
  ['Let the dough ferment for 2 days in the fridge.', 'wait Ferment: 2 d, in the fridge'],
  // several in one sentence
  ['Knead 10 minutes, cover and let rise 1 hour.', 'hands Knead: 10 min', 'wait Rise: 1 h'],
  ['Divide and shape, then proof for 1 hour.', 'hands Divide and shape: ', 'wait Proof: 1 h'],
  [
    'Shape into a boule and place in the fridge overnight.',
    'hands Shape: ',
    'wait Retard: 8–12 h, in the fridge ? overnight',
  ],
  [
    'Let rise 1 hour at room temperature, then 12 hours in the fridge.',
    'wait Rise: 1 h',
    'wait Retard: 12 h, in the fridge',
  ],
  ['Preshape, rest 20 min, shape.', 'hands Preshape: ', 'wait Rest: 20 min', 'hands Shape: '],
  ['Score and bake 40 minutes at 230 °C.', 'hands Score: ', 'bake Bake: 40 min, at 230 °C'],
  ['Remove from the fridge and let stand for 1 hour.', 'wait Rest: 1 h'],
  ['Shape, then overnight in the fridge.', 'hands Shape: ', 'wait Retard: 8–12 h, in the fridge ? overnight'],
  // folds
  [
    'Give four sets of folds every half hour.',
    'wait Fold: 2 h, 4 × 5 min every 30 min ? foldMinutes foldsLength',
  ],
  [
    'Bulk ferment 4 hours at 25 °C, with four sets of stretch and folds every 30 minutes.',
    'wait Bulk: 4 h, at 25 °C, 4 × 5 min every 30 min ? foldMinutes',
  ],
  [
    'Bulk for 4 hours, folding every 30 minutes for the first 2 hours.',
    'wait Bulk: 4 h, 4 × 5 min every 30 min ? foldMinutes',
  ],
  [
    'Let ferment 3 hours. During this time, fold three times at 45-minute intervals.',
    'wait Ferment: 3 h, 3 × 5 min every 45 min ? foldMinutes',
  ],
  [
    'Ferment for 3 hours. Fold twice, 30 min apart.',
    'wait Ferment: 3 h, 2 × 5 min every 30 min ? foldMinutes foldsJoined',
  ],
  ['Bulk 3 hours with two folds.', 'wait Bulk: 3 h, 2 × 5 min every 1 h ? foldSpacing foldMinutes'],
  [
    'Rest 30 minutes, then give 3 coil folds every 30 minutes.',
    'wait Rest: 30 min',
    'wait Fold: 1 h 30, 3 × 5 min every 30 min ? foldMinutes foldsLength',
  ],
  [
    'Stretch and fold. Repeat 3 more times, every 30 minutes.',
    'wait Fold: 2 h, 4 × 5 min every 30 min ? foldMinutes foldsLength',
  ],
  ['Fold the dough and leave it 30 minutes.', 'hands Fold: ', 'wait Rest: 30 min'],
  // the oven
  [
    '25 minutes covered at 230 °C, then 20 uncovered.',
    'bake Bake covered: 25 min, at 230 °C ? kindByHeat',
    'bake Bake uncovered: 20 min, at 230 °C ? kindByHeat unitFromBefore heatFromBefore',
  ],
  [
    'Bake covered for 25 minutes at 240 °C. Remove the lid and bake 20 minutes more.',
    'bake Bake covered: 25 min, at 240 °C',
    'bake Bake uncovered: 20 min, at 240 °C ? heatFromBefore',
  ],
  [
    'Bake at 250 °C for 15 minutes, then lower the oven to 220 °C and bake for another 30 minutes.',
    'bake Bake: 15 min, at 250 °C',
    'bake Bake: 30 min, at 220 °C',
  ],
  ['Bake for 35–40 minutes at 230 °C (450 °F, gas mark 8).', 'bake Bake: 35–40 min, at 230 °C'],
  ['Bake at 450°F for 40 minutes', 'bake Bake: 40 min, at 450 °F'],
  ['Bake at gas mark 7 for 40 minutes.', 'bake Bake: 40 min, at 220 °C ? ovenMark'],
  ['Bake for 40 minutes.', 'bake Bake: 40 min ? noOvenHeat'],
  [
    'Preheat the oven to 250 °C at least 45 minutes before. Score the loaf. Bake 40 minutes.',
    'hands Preheat: ',
    'hands Score: ',
    'bake Bake: 40 min, at 250 °C ? heatFromPreheat',
  ],
  ['Bake two at a time for 30 min at 240 °C.', 'bake Bake: 30 min, at 240 °C, 2 at once'],
  ['Bake at 220 to 230 °C for 50 minutes.', 'bake Bake: 50 min, at 225 °C ? heatOfRange'],
  // what goes in
  [
    'Mix the flours, water and levain. Rest 30 minutes. Add the salt and knead 5 minutes.',
    'hands Mix: ',
    'wait Rest: 30 min',
    'hands Add and knead: 5 min, adds Salt',
  ],
  [
    'Mix flour, water and levain. Work in the salt and the olive oil.',
    'hands Mix: ',
    'hands Add: adds Salt, Olive oil',
  ],
  [
    'Mix flour and water. After 30 minutes, add the salt.',
    'hands Mix: ',
    'wait Rest: 30 min ? waitBefore',
    'hands Add salt: adds Salt',
  ],
  [
    'Mix flour and water and leave 1 hour. Add the remaining ingredients.',
    'hands Mix: ',
    'wait Rest: 1 h',
    'hands Add: adds Salt, Levain, Olive oil',
  ],
  ['Combine everything but the oil. Add flour if it is wet.', 'hands Mix: ', 'hands Add: '],
  // lists and headings, clumsy ones
  ['Step 1: Mix 5 min\nStep 2: rest 20 min', 'hands Mix: 5 min', 'wait Rest: 20 min'],
  [
    'Bulk fermentation\n4 hours at 25 °C\nBaking\n45 min, 230 °C',
    'wait Bulk: 4 h, at 25 °C',
    'bake Bake: 45 min, at 230 °C',
  ],
  [
    'mix. rest 30min. shape. proof 1h. bake 230C 40min',
    'hands Mix: ',
    'wait Rest: 30 min',
    'hands Shape: ',
    'wait Proof: 1 h',
    'bake Bake: 40 min, at 230 °C',
  ],
  [
    '• Bulk – 3 h\n• Divide – 10 min\n• Proof – 1 h',
    'wait Bulk: 3 h',
    'hands Divide: 10 min',
    'wait Proof: 1 h',
  ],
  [
    'Bulk: 3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min',
    'wait Bulk: 3.5–4.5 h, at 24 °C, 4 × 5 min every 30 min',
  ],
  ['Shape the loaves. They should be tight. Serve with butter.', 'hands Shape: '],
  ['Knead 5 minutes slowly and 3 minutes fast.', 'hands Knead: 8 min ? timesAdded'],
  [
    'First rise: cover and let rise in a warm place (80 degrees F) for 1 1/2 to 2 hours.',
    'wait Bulk: 1.5–2 h, at 80 °F',
  ],
  [
    '7) bake 500F lid on 20min, 450F lid off 20min',
    'bake Bake covered: 20 min, at 500 °F',
    'bake Bake uncovered: 20 min, at 450 °F',
  ],
  [
    'Bulk 4-5h @ 76F w/ 4 sets S&F every 30 mins',
    'wait Bulk: 4–5 h, at 76 °F, 4 × 5 min every 30 min ? foldMinutes',
  ],
  [
    'Prove for 1½–2 hours at room temperature or overnight in the fridge.',
    'wait Proof: 1.5–2 h ? severalTimes',
  ],
  [
    'Over the next three hours, stretch and fold the dough every 45 minutes.',
    'wait Fold: 3 h, 4 × 5 min every 45 min ? foldMinutes',
  ],
  ['Knead 8 minutes. Keeps for 4 days in a cloth.', 'hands Knead: 8 min'],
  ['Bake at 200 °C until the internal temperature reads 96 °C, 40 min', 'bake Bake: 40 min, at 200 °C'],
  ['If the dough is stiff, add a little water.\nKnead 2 min each', 'hands Knead: 2 min each'],
  ['Fold 3 times in 90 minutes.', 'wait Fold: 1 h 30, 3 × 5 min every 30 min ? foldMinutes'],
  ['Fold twice.', 'hands Fold: '],
  ['Grease two tins.', 'hands Grease two tins: '],
]

/** Of a dough of farine T65, farine de seigle, eau, sel and levain. */
export const frenchCases: readonly MethodCase[] = [
  ['Façonnez, puis une nuit au frigo (12 à 15 heures).', 'hands Façonner: ', 'wait Froid: 12–15 h, au frigo'],
  ['Couvrir et laisser reposer 30 minutes.', 'wait Repos: 30 min'],
  ['Laisser lever une heure et demie à 25 °C.', 'wait Levée: 1 h 30, à 25 °C'],
  ['Pétrir 10 minutes, puis laisser reposer une demi-heure.', 'hands Pétrir: 10 min', 'wait Repos: 30 min'],
  ['Pointage : 4 h à 24 °C', 'wait Pointage: 4 h, à 24 °C'],
  [
    'Pointage 3 à 4 heures avec quatre rabats toutes les 30 minutes.',
    'wait Pointage: 3–4 h, 4 × 5 min toutes les 30 min ? foldMinutes',
  ],
  ['Laissez la pâte au frigo toute la nuit.', 'wait Froid: 8–12 h, au frigo ? overnight'],
  ['Mettre au réfrigérateur 12 à 15 h.', 'wait Froid: 12–15 h, au frigo'],
  ['Apprêt : 1 h 30', 'wait Apprêt: 1 h 30'],
  [
    'Diviser et bouler, détente 20 minutes, façonner.',
    'hands Diviser et bouler: ',
    'wait Détente: 20 min',
    'hands Façonner: ',
  ],
  ['Cuire 45 minutes à 240 °C.', 'bake Cuire: 45 min, à 240 °C'],
  ['Enfournez 35 minutes à 220 °C.', 'bake Cuire: 35 min, à 220 °C'],
  [
    'Cuire 25 minutes à couvert à 240 °C, puis 20 minutes à découvert.',
    'bake Cuire couvert: 25 min, à 240 °C',
    'bake Cuire à découvert: 20 min, à 240 °C ? heatFromBefore',
  ],
  [
    'Enfournez 25 minutes à 230 °C à couvert, puis 20 minutes à découvert.',
    'bake Cuire couvert: 25 min, à 230 °C',
    'bake Cuire à découvert: 20 min, à 230 °C ? heatFromBefore',
  ],
  [
    'Préchauffer le four à 250 °C. Grigner et enfourner. Cuire 40 minutes.',
    'hands Préchauffer: ',
    'hands Grigner et enfourner: ',
    'bake Cuire: 40 min, à 250 °C ? heatFromPreheat',
  ],
  ['Cuisson thermostat 8 pendant 40 minutes', 'bake Cuire: 40 min, à 240 °C ? ovenMark'],
  [
    'Mélanger les farines, l’eau et le levain. Repos 30 minutes. Ajouter le sel et pétrir 5 minutes.',
    'hands Mélanger: ',
    'wait Repos: 30 min',
    'hands Ajouter et pétrir: 5 min, ajoute Sel',
  ],
  ['Laisser refroidir 2 heures sur une grille.', 'wait Refroidir: 2 h'],
  [
    'Donner trois tours toutes les 45 minutes.',
    'wait Rabats: 2 h 15, 3 × 5 min toutes les 45 min ? foldMinutes foldsLength',
  ],
  [
    '1. Frasage 5 min\n2. Autolyse 1 h\n3. Pétrissage 10 min',
    'hands Fraser: 5 min',
    'wait Autolyse: 1 h',
    'hands Pétrir: 10 min',
  ],
]

/** Of a levain (ripe starter, bread flour, water) and the same dough. */
export const englishStageCases: readonly MethodCase[] = [
  [
    'Levain:\nMix all. Rest 8 hours.\nDough:\nMix the flour and the water. Bulk ferment 4 hours.',
    '@Levain hands Mix: ',
    '@Levain wait Rest: 8 h',
    'hands Mix: ',
    'wait Bulk: 4 h',
  ],
  [
    'For the levain, mix the starter, flour and water and leave for 8 hours at 24 °C. Next day mix all the ingredients for the dough and rest 1 hour.',
    '@Levain hands Mix: ',
    '@Levain wait Rest: 8 h, at 24 °C',
    'hands Mix: ',
    'wait Rest: 1 h',
  ],
  [
    'Feed the levain and let it ripen 6 to 8 hours. Mix the levain with the water, then add the flours. Knead 5 min.',
    '@Levain hands Feed: ',
    '@Levain wait Ripen: 6–8 h',
    'hands Mix: ',
    'hands Add: adds Bread flour, Wholemeal spelt',
    'hands Knead: 5 min',
  ],
  ['Let the levain ripen for 10 hours.', '@Levain wait Ripen: 10 h'],
  ['Stir and leave for an hour.', 'hands Mix:  ? stageNotSaid', 'wait Rest: 1 h ? stageNotSaid'],
  ['When the levain is ripe, mix the dough.', 'hands Mix: '],
  [
    'Levain\n- Mix all, leave 10 h\nDough\n1. Mix\n2. Rest 40 min\n3. Shape',
    '@Levain hands Mix: ',
    '@Levain wait Rest: 10 h',
    'hands Mix: ',
    'wait Rest: 40 min',
    'hands Shape: ',
  ],
  ['Step 1: Mix 5 min', 'hands Mix: 5 min ? stageNotSaid'],
]

/** Of a levain (levain chef, farine T80, eau) and the same dough. */
export const frenchStageCases: readonly MethodCase[] = [
  [
    'Pour le levain, mélanger le chef, la farine et l’eau et laisser mûrir 8 heures. Le lendemain, mélanger tous les ingrédients de la pâte.',
    '@Levain hands Mélanger: ',
    '@Levain wait Mûrir: 8 h',
    'hands Mélanger: ',
  ],
  [
    'Rafraîchir le levain. Le laisser doubler, 4 à 6 h à 26 °C. Pétrir la pâte avec le levain. Au bout de 30 minutes, ajouter le sel.',
    '@Levain hands Rafraîchir: ',
    '@Levain wait Levée: 4–6 h, à 26 °C',
    'hands Pétrir: ',
    'wait Repos: 30 min ? waitBefore',
    'hands Ajouter sel: ajoute Sel',
  ],
  [
    'La veille : mélanger la farine et l’eau du levain. Laisser fermenter 12 à 14 h à 19 °C.\nLe jour même : verser les farines et l’eau.',
    '@Levain hands Mélanger: ',
    '@Levain wait Fermenter: 12–14 h, à 19 °C',
    'hands Verser: ',
  ],
]
