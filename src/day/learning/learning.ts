import type { Larder } from '../../dough/document/larder.js'
import type { Workbook } from '../../dough/document/workbook.js'
import type { Bake } from '../bench/bake.js'
import { bakesIn } from '../bench/bake-data.js'
import { type Learnt, learntFrom } from './inner-range.js'
import { type Lessons, lessonsOf } from './lessons.js'

/** What a bake has told, for as long as nothing it was read with is another. */
interface Known {
  readonly larder: Larder
  readonly day: unknown
  readonly together: readonly Bake[]
  readonly lessons: Lessons
}

const known = new WeakMap<Bake, Known>()

const apartOf = (name: string): number => (name.startsWith('rise ') ? thermometer : 0)
const thermometer = 0.5 // °C that a thermometer of the kitchen may be off: a rise is two of its figures apart

/** What the bakes of a workbook that are finished have told. */
export class Learning {
  readonly #bakes: readonly Bake[]
  readonly #of: Workbook
  readonly #larder: Larder

  constructor(workbook: Workbook, larder: Larder) {
    this.#of = workbook
    this.#larder = larder
    this.#bakes = bakesIn(workbook).filter(({ finished }) => finished !== undefined)
  }

  /** What one bake tells. */
  lessons(bake: Bake): Lessons {
    const day = this.#of.days?.find(({ id }) => id === bake.day)
    const together = bake.day === undefined ? [] : this.#bakes.filter(one => one.day === bake.day)
    const before = known.get(bake)
    const isSame =
      before?.larder === this.#larder &&
      before.day === day &&
      before.together.length === together.length &&
      before.together.every((one, i) => one === together[i])
    if (isSame) return before.lessons
    const lessons = lessonsOf(bake, this.#of, this.#larder, together)
    known.set(bake, { larder: this.#larder, day, together, lessons })
    return lessons
  }

  /** The values of a lesson with the bakes that told them, the earliest first. */
  told(name: string): { readonly bake: Bake; readonly value: number }[] {
    return this.#bakes.flatMap(bake => {
      const value = this.lessons(bake).get(name)
      return value === undefined ? [] : [{ bake, value }]
    })
  }

  /** What is learnt of it; undefined where no bake tells. */
  learnt(name: string | undefined): Learnt | undefined {
    return name === undefined
      ? undefined
      : learntFrom(
          this.told(name).map(({ value }) => value),
          apartOf(name),
        )
  }
}
