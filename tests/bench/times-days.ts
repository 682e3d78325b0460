import type { AloneGroup, TimeHold, TimeProblem, TimeSpan, TimeUse } from '../../src/times/index'

/**
 * A day of the Saturday oven of Brackwater Mill, in minutes from midnight before the day of baking: 9:00 is 1980.
 */
export interface Day {
  readonly breads: number
  readonly loads: number // of each bread
  readonly bake: number // minutes of a load
  readonly ready: (bread: number) => TimeHold // for each of its loads; their moments are filled in
  readonly closed?: readonly (readonly [number, number])[] // to the hands
}

/**
 * Breads of twenty steps each, that share one oven and one pair of hands. Each load of a bread has its own last
 * wait.
 */
export function dayOf({ breads, loads, bake, ready, closed = [] }: Day): TimeProblem {
  const moments: string[] = []
  const spans: TimeSpan[] = []
  const holds: TimeHold[] = []
  const hands: TimeUse[] = []
  const oven: TimeUse[] = []
  const moment = (name: string) => {
    moments.push(name)
    return name
  }
  const hand = (from: string, name: string, minutes: number) => {
    const to = moment(name)
    spans.push({ from, to, least: minutes, most: minutes })
    hands.push({ from, to })
    return to
  }
  const wait = (from: string, name: string, least: number, most: number) => {
    const to = moment(name)
    spans.push({ from, to, least, most, usual: (least + most) / 2 })
    return to
  }
  for (let bread = 0; bread < breads; bread++) {
    const of = (step: string) => `${step} ${bread + 1}`
    const slower = 1 + (bread % 4) / 10
    let at = hand(moment(of('levain')), of('levain mixed'), 10)
    at = wait(at, of('mix'), 480 * slower, 600 * slower)
    at = wait(hand(at, of('mixed'), 10), of('salt'), 30, 60)
    const salted = hand(at, of('salted'), 5)
    at = salted
    for (const fold of [1, 2, 3]) {
      at = wait(at, of(`fold ${fold}`), 25.5, 34.5)
      at = hand(at, of(`folded ${fold}`), 3)
    }
    at = wait(salted, of('divide'), 210 * slower, 270 * slower)
    at = wait(hand(at, of('divided'), 10), of('shape'), 15, 40)
    const shaped = hand(at, of('shaped'), 15)
    const whenReady = ready(bread)
    for (let load = 1; load <= loads; load++) {
      const own = (step: string) => `${of(step)}, load ${load}`
      at = wait(shaped, own('score'), 540, 840)
      at = hand(at, own('bake'), 4)
      const out = moment(own('out'))
      spans.push({ from: at, to: out, least: bake, most: bake })
      oven.push({ from: at, to: out, setting: bread % 3 === 2 ? 'mild' : 'hot' })
      at = wait(hand(out, own('unloaded'), 2), own('cool'), 60, 120)
      holds.push({ ...whenReady, moment: at })
    }
  }
  const alone: AloneGroup[] = [
    { name: 'oven', between: 5, change: 15, uses: oven },
    { name: 'hands', closed, uses: hands },
  ]
  return { moments, spans, holds, alone }
}

const night = [
  [-90, 240],
  [1350, 1680],
  [2790, 3120],
] as const

export const oneBread = (): TimeProblem =>
  dayOf({ breads: 1, loads: 1, bake: 45, ready: () => ({ moment: '', at: 1980 }), closed: night })

export const fiveBreads = (): TimeProblem =>
  dayOf({
    breads: 5,
    loads: 1,
    bake: 45,
    ready: bread => ({ moment: '', at: 1980 + 45 * bread }),
    closed: night,
  })

export const eightBreads = (): TimeProblem =>
  dayOf({
    breads: 8,
    loads: 2,
    bake: 30,
    ready: bread => ({ moment: '', until: 1980 + 75 * bread }),
    closed: night,
  })
