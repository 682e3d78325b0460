import type { TimeProblem } from '../../src/times/index'
import { timesOf } from './text'

/** One bread, out at 9:00 of the third day; minutes from midnight before the first. */
const steps = `
  levain 10 levain-mixed
  levain-mixed 480-600 mix
  mix 10 mixed
  mixed 30-60 salt
  salt 5 salted
  salted 210-270 divide
  salted 25.5-34.5 fold-1
  fold-1 5 folded-1
  folded-1 25.5-34.5 fold-2
  fold-2 5 folded-2
  divide 20 shaped
  shaped 720-900 bake
  bake 45 out
`
const hands = `levain..levain-mixed, mix..mixed, salt..salted, fold-1..folded-1, fold-2..folded-2, divide..shaped`

/** `ready` is a hold of `out`, as text. */
export const oneBread = (ready = 'out at 3420'): TimeProblem => timesOf(`${steps}\n${ready}`)

/** The same with the hands in bed from 22:30 to 6:00. */
export const oneBreadByDay = (ready = 'out at 3420'): TimeProblem =>
  timesOf(`${steps}\n${ready}\nhands closed 1350-1800 closed 2790-3240: ${hands}`)
