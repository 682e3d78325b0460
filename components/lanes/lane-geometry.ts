import type { Lane, LaneDay, LanePart } from './lane-layout.js'

/** A part with its place in the drawing, px. */
export interface PlacedPart {
  readonly key: string
  readonly part: LanePart
  readonly lane: number
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A lane with its place, px; its name stands at the top of it. */
export interface PlacedLane {
  readonly lane: Lane
  readonly y: number
}

const leastHour = 14 // px
const leastApart = 42 // px between two hours that are marked
const dates = 20 // px
const hours = 18
const nameHeight = 20
const rowHeight = 20
const waitHeight = 12
const betweenRows = 4
const afterLane = 10
const leastHands = 3 // px wide: five minutes are still seen
const target = 24 // px: how wide a part is for a finger
const reach = 16 // px beside a part that still belong to it

/** Where everything stands in the drawing of a day that is at least so many pixels wide. */
export class Geometry {
  readonly width: number
  readonly height: number
  readonly marks = dates + hours // px: where the lines of the hours begin
  readonly hours: number // from one marked hour to the next
  readonly lanes: readonly PlacedLane[]
  readonly parts: readonly PlacedPart[] // those above others later
  readonly steps: readonly PlacedPart[] // that have a moment, by the clock
  readonly #from: number
  readonly #minute: number // px

  constructor({ from, until, lanes }: LaneDay, room: number) {
    const long = (until - from) / 60
    this.width = Math.max(Math.floor(room), Math.ceil(long * leastHour))
    this.#from = from
    this.#minute = this.width / (until - from)
    this.hours = [1, 2, 3, 4, 6, 12].find(h => h * 60 * this.#minute >= leastApart) ?? 24
    let y = this.marks + 4
    const placed: PlacedLane[] = []
    const parts: PlacedPart[] = []
    for (const [i, lane] of lanes.entries()) {
      placed.push({ lane, y })
      parts.push(...lane.parts.map((part, n) => this.#placed(part, `${lane.key} ${n}`, i, y + nameHeight)))
      y += nameHeight + lane.rows * (rowHeight + betweenRows) + afterLane
    }
    this.height = y
    this.lanes = placed
    this.parts = parts.toSorted((a, b) => Number(isOver(a)) - Number(isOver(b)))
    this.steps = parts
      .filter(({ part }) => part.moment !== undefined)
      .toSorted((a, b) => a.part.from - b.part.from || a.lane - b.lane)
  }

  /** px from the left of an instant. */
  x = (instant: number): number => (instant - this.#from) * this.#minute

  #placed(part: LanePart, key: string, lane: number, top: number): PlacedPart {
    const x = this.x(part.from)
    const height = part.shows === 'wait' ? waitHeight : rowHeight
    const y = top + part.row * (rowHeight + betweenRows) + (rowHeight - height) / 2
    return { key, part, lane, x, y, height, width: Math.max(leastHands, this.x(part.until) - x) }
  }

  /** The part in which a moment begins; of several the first in the order of the lanes. */
  partOf(moment: string | undefined): PlacedPart | undefined {
    return moment === undefined ? undefined : this.parts.find(({ part }) => part.moment === moment)
  }

  /**
   * The step that a place in the drawing belongs to: the one that is there, unless that is wide and a narrow one is so near that
   * a finger may have meant it; where there is none, the nearest.
   */
  nearest(x: number, y: number): PlacedPart | undefined {
    const near = this.steps
      .map(step => ({ step, far: distance(step, x, y) }))
      .filter(({ far }) => far <= reach)
      .sort((a, b) => a.far - b.far || a.step.width - b.step.width)
    const [first] = near
    if (first?.far === 0 && first.step.width < 2 * target) return first.step
    const narrow = near.find(({ step, far }) => step.width < target && far <= target / 2)
    return (narrow ?? first)?.step
  }

  /** Where a key leads to from a step; undefined where it is no such key, or there is nothing. */
  after(step: PlacedPart, key: string): PlacedPart | undefined {
    const { steps } = this
    switch (key) {
      case 'ArrowRight':
        return steps[steps.indexOf(step) + 1]
      case 'ArrowLeft':
        return steps[steps.indexOf(step) - 1]
      case 'Home':
        return steps[0]
      case 'End':
        return steps.at(-1)
      case 'ArrowDown':
        return this.#beside(step, 1)
      case 'ArrowUp':
        return this.#beside(step, -1)
      default:
        return undefined
    }
  }

  /** In the next lane, what is nearest in time. */
  #beside({ lane, part }: PlacedPart, by: 1 | -1): PlacedPart | undefined {
    const apart = (other: PlacedPart) => Math.abs(other.part.from - part.from)
    return this.steps.filter(s => s.lane === lane + by).toSorted((a, b) => apart(a) - apart(b))[0]
  }
}

/** px from a place to a part; 0 within it. */
const distance = ({ x, y, width, height }: PlacedPart, left: number, top: number): number =>
  Math.hypot(Math.max(x - left, left - x - width, 0), Math.max(y - top, top - y - height, 0))

/** Hands that come within a wait are drawn over it. */
const isOver = ({ part }: PlacedPart): boolean => part.event?.time !== undefined
