import assert from 'node:assert/strict'
import { test } from 'node:test'
import { minutesOfStep, statedTimes } from '../../src/exchange/markup/stated-times.js'

const bakes: readonly (readonly [note: string, cookTime: string | undefined])[] = [
  ['Bake 40 min.', 'PT40M'],
  ['bake 40 min', 'PT40M'],
  ['Cook 45 minutes', 'PT45M'],
  ['Cook time: 45 min', 'PT45M'],
  ['Bake at 240 °C for 40 min', 'PT40M'],
  ['Bake at 240 °C, 1 h 10, until brown.', 'PT1H10M'],
  ['Bake about 1 ½ hours in a cool oven', 'PT1H30M'],
  ['Bake 1 1/2 h', 'PT1H30M'],
  ['Bake 1.5 h', 'PT1H30M'],
  ['Bake 1:15 h', 'PT1H15M'],
  ['Baking time 60 min', 'PT1H'],
  ['Baking: 50 mins', 'PT50M'],
  ['Cuire 40 min à 230 °C', 'PT40M'],
  ['Cuisson : 1 h', 'PT1H'],
  ['Backen 45 Minuten', 'PT45M'],
  ['Rest 30 min, then\nbake 40 min', 'PT40M'],
  ['Rest 30 min, then bake 40 min', 'PT40M'],
  ['Then bake 40 min.', 'PT40M'],
  ['Bake 40 min at 230 °C, and then cool for 1 h on a rack.', 'PT40M'],
  ['Bake 20 min, then as long as it takes', undefined],
  ['Proof 2 h 30. Preheat 45 min. Bake 40 min. Cool 1 hour.', 'PT40M'],
  ['Preheat the oven for 45 min, bake 35 min', 'PT35M'],
  ['Bake 40 min. Rest 2 h before cutting.', 'PT40M'],
  ['Bake 40–45 min', undefined],
  ['Bake 40 - 45 min', undefined],
  ['Bake 40 to 45 min', undefined],
  ['Bake 40 min to 45 min', undefined],
  ['Bake 1 h – 1 h 10', undefined],
  ['Bake 40 or 45 minutes', undefined],
  ['Bake at least 40 min', undefined],
  ['Bake up to 50 min', undefined],
  ['Bake 40 min or more', undefined],
  ['Bake 20 min with the lid on, then 20 min without', undefined],
  ['Bake 20 min. Take off the lid and go on until brown.', undefined],
  ['Bake 15 min at 250 °C and 25 min at 210 °C', undefined],
  ['Bake 20 min, turn, bake another 20 min', undefined],
  ['Bake the rolls 15 min. Bake the loaf 45 min.', undefined],
  ['Bake until brown.', undefined],
  ['Rest 30 min before baking', undefined],
  ['30 min after baking, cut it', undefined],
  ['Par-bake 20 min', undefined],
  ['Bake 40 loaves', undefined],
  ['Bake at 240 °C', undefined],
  ['Fold every 30 min', undefined],
  ['', undefined],
]
for (const [note, cookTime] of bakes)
  test(`baking takes ${cookTime ?? 'no certain time'} in “${note}”`, () => {
    assert.equal(statedTimes([note]).cookTime, cookTime)
  })

const others: readonly (readonly [notes: readonly string[], times: object])[] = [
  [['Prep: 30 min. Total time: 18 h'], { prepTime: 'PT30M', totalTime: 'PT18H' }],
  [
    ['Prep time 20 minutes', 'Bake 40 min', 'Total: 26 h 30 min'],
    { prepTime: 'PT20M', cookTime: 'PT40M', totalTime: 'PT26H30M' },
  ],
  [['Bake 40 min. Total time 30 min.'], { cookTime: 'PT40M' }],
  [['Prepare 30 min ahead.'], {}],
  [['Total dough 900 g, proof 2 h'], {}],
  [['Bake 40 min', 'Bake 40 min'], {}],
]
for (const [notes, times] of others)
  test(`the times stated in “${notes.join(' / ')}” are ${Object.keys(times).join(' and ') || 'none'}`, () => {
    assert.deepEqual(statedTimes(notes), times)
  })

const steps: readonly (readonly [step: string, minutes: number | undefined])[] = [
  ['proof 2 h 30', 150],
  ['Proof 2 h 30 at 24 °C.', 150],
  ['Autolyse 1 hour', 60],
  ['Retard 16 hours at 4 °C', 960],
  ['Proof 2h30', 150],
  ['Proof 2 hours and 15 minutes', 135],
  ['Rest 1 h 20 g', 60],
  ['Rest ½ hour', 30],
  ['Repose 45 min', 45],
  ['Fold twice, 30 min apart.', undefined],
  ['Fold every 30 min', undefined],
  ['Then autolyse 1 hour', 60],
  ['Mix, then autolyse 1 hour', undefined],
  ['Shape and proof 2 h', undefined],
  ['Proof 2–3 h', undefined],
  ['Proof 2 h at 24 °C, 16 h at 4 °C', undefined],
  ['30 min', undefined],
  ['Steam for the first 15 min', undefined],
  ['Bake in a hot pot.', undefined],
]
for (const [step, minutes] of steps)
  test(`the step “${step}” takes ${minutes ?? 'no certain number of'} minutes`, () => {
    assert.equal(minutesOfStep(step), minutes)
  })
