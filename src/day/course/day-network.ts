import type { Step } from '../../dough/document/formula.js'
import type { TimeSpan, TimeUse } from '../../times/index.js'
import type { Length } from '../method/step-time.js'
import type { Scaled } from './waits.js'

/** One load of several. */
export interface Load {
  readonly number: number // from 1
  readonly of: number
  readonly pieces: number | undefined
}

/** A thing of the day: a step, one load of it, or one time that hands come within it. */
export interface DayEvent {
  readonly begins: string // names of moments; the first names the event too
  readonly ends: string | undefined // undefined: it goes on until others take what was made
  readonly kind: Step['kind']
  readonly breads: readonly string[] // ids; several where a stage is made together
  readonly stage: string // id, of the first of them
  readonly stageName: string
  readonly step: Step
  readonly time: number | undefined // which of the times that hands come within a wait, from 1
  readonly load: Load | undefined
  readonly length: Length | undefined // minutes
  readonly scaled: Scaled | undefined // of a wait
}

/** Why a span is there. */
export type Reason =
  | { readonly of: 'event'; readonly event: DayEvent }
  | { readonly of: 'apart'; readonly event: DayEvent } // from one time that hands come to the next
  | { readonly of: 'ripe'; readonly event: DayEvent; readonly taker: string } // the wait of what a later stage takes
  | { readonly of: 'order'; readonly bread: string } // of loads
  | { readonly of: 'ready' | 'begin'; readonly bread: string }

/** The spans, moments and uses of a day, written down one by one. */
export class DayNetwork {
  readonly moments: string[] = []
  readonly spans: TimeSpan[] = []
  readonly reasons: Reason[] = [] // of the spans, in their order
  readonly events: DayEvent[] = []
  readonly hands: { readonly bread: string; readonly use: TimeUse }[] = []
  readonly awake: TimeUse[] = [] // moments at which somebody has to be there, as uses of no length
  readonly oven: { readonly oven: string; readonly use: TimeUse }[] = []
  #known = new Set<string>()

  moment(name: string): string {
    if (!this.#known.has(name)) {
      this.#known.add(name)
      this.moments.push(name)
    }
    return name
  }

  span(
    from: string,
    to: string,
    length: Partial<Length> & Pick<TimeSpan, 'least' | 'most' | 'leeway'>,
    reason: Reason,
  ): void {
    const { least, most, usual, leeway } = length
    this.spans.push({
      from: this.moment(from),
      to: this.moment(to),
      least,
      most,
      ...(usual !== undefined && { usual }),
      ...(leeway !== undefined && { leeway }),
    })
    this.reasons.push(reason)
  }

  /** Someone is there at a moment. */
  attend(moment: string): void {
    this.awake.push({ from: moment, to: moment })
  }

  add(event: DayEvent): DayEvent {
    this.moment(event.begins)
    this.events.push(event)
    const { length, ends } = event
    if (ends !== undefined) {
      const bounds = length ?? { least: 0, most: Number.POSITIVE_INFINITY }
      this.span(event.begins, ends, bounds, { of: 'event', event })
    }
    return event
  }
}
