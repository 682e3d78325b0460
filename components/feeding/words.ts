import { lengthText } from '../../src/day/course/clock.js'
import { listed } from '../../src/engine/index.js'

/** Of a build that is fed for a time. Figures come as they are shown, with their unit. */
export const feedingWords = {
  heading: 'Feeding',
  none: 'No build of this day is fed from a starter.',
  feedFor: 'Feed for a time',
  build: (stage: string, breads: readonly string[]) => `${stage} of ${listed(breads)}`,
  fedWith: (fed: string, seed: string) => `fed ${fed}${seed && ` with ${seed} of seed`}`,
  withoutTimes: (seed: string, isPlanned: boolean) =>
    `${seed && `with ${seed} of seed; `}${isPlanned ? 'its method gives it no times' : 'when is not known: the day has no times for it yet'}`,
  ripeAfter: (ripe: string, length: string, celsius: string) => `ripe ${ripe}, after ${length} at ${celsius}`,
  onWeekday: (weekday: string, clock: string) => `${weekday} ${clock}`,
  name: (stage: string) => `Feed ${stage} for a time`,
  through: 'Through',
  builds: (names: readonly string[]) => listed(names),
  fed: (stage: string, isAlone: boolean) => (isAlone ? 'Fed at' : `${stage} fed at`),
  ripe: 'ripe at',
  standsAt: 'where it stands at',
  clockLabel: (what: string, how: string) => `${what}, time on the clock, ${how}`,
  celsiusLabel: (how: string) => `Where it stands, °C, ${how}`,
  typed: 'typed',
  follows: 'follows',
  empty: 'not said yet',
  ask: 'Say when it is fed and when it has to be ripe, such as 19:30 and 7:30.',
  notAClock: 'Write a time on the clock, such as 19:30.',
  notCelsius: 'Write a temperature, such as 20 or 68 °F.',
  seed: (share: string, stage: string | undefined) =>
    stage === undefined ? `${share} seed` : `${share} seed in ${stage}`,
  of: (hours: number, celsius: string) => `for ${lengthText(hours * 60)} at ${celsius}`,
  columns: ['goes in', 'now', 'then'],
  weights: (stage: string) => `Weights of ${stage}, now and then`,
  lookFirst: (from: string, until: string) =>
    `Ripe between ${from} and ${until}: grown to about twice its height, still domed, smelling fresh and a little sour. Trust what you see more than the clock.`,
  asItIs: (hours: number, share: string) =>
    `As it is now, with ${share} seed, it would take ${lengthText(hours * 60)}.`,
  isSo: (hours: number) => `It is already fed for that: ripe after ${lengthText(hours * 60)}.`,
  does: 'What it does',
  stays: (name: string, value: string) => `${name} stays ${value}`,
  step: (name: string, before: string, after: string) => `${name}: ${before} becomes ${after}`,
  reading: (name: string, before: string, after: string) => `${name}: ${before} → ${after}`,
  alsoIn: (names: readonly string[]) => `Also in ${listed(names)}, which shares it.`,
  feed: 'Feed it like this',
  fedSo: 'The formula is now fed like this.',
  speedLearnt: (stage: string, step: string) =>
    `How slow your ${stage} is, f; taken over, ${step} says the time that follows as it is fed now.`,
  speedOf: (stage: string) => `the time of ${stage}`,
  working: 'Working',
  guess: 'Outside 14–30 °C this is only a guess: go by what you see.',
  beyond:
    'This dilution is outside 1 : 1 : 1 to 1 : 5 : 5, the range with published ripening times: take it as a guess.',
} as const

/** How the seed came about. Figures as they are shown. */
export const feedingWorking = {
  dilution: (dilution: string) =>
    `Dilution D = (seed + flour + water) ÷ seed; ripe after f × (5.8 × ln D − 1.9) × y(22 °C) ÷ y(T) hours. Now D = ${dilution}.`,
  speedKnown: (speed: string, written: string) =>
    `Its step says ${written}: that makes f = ${speed}, how slow this levain is.`,
  speedUnknown: 'Its method gives no time for it, so f = 1 is taken, give or take 30 %.',
  wants: (hours: string, celsius: string, dilution: string, share: string) =>
    `${hours} at ${celsius} want D = ${dilution}: the seed is ${share} of seed, flour and water. Flour and water make up for the rest, so that weight and hydration stay.`,
} as const
