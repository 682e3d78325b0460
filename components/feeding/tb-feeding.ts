import { html, nothing, type TemplateResult } from 'lit'
import { clockText, readClock } from '../../src/day/course/clock.js'
import { Learning } from '../../src/day/learning/learning.js'
import {
  chainTo,
  feedStage,
  hoursInChain,
  ripeningStep,
  ripeRange,
  stageOf,
} from '../../src/day/mixing/fed-build.js'
import { partsOfBuild } from '../../src/day/mixing/feeding.js'
import { type FedBuild, feedBuilds } from '../../src/day/mixing/feeding-edit.js'
import type { FeedingProblem } from '../../src/day/mixing/feeding-words.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { together } from '../../src/dough/edits/edits.js'
import { workbookOf } from '../base/asked-of-page.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say } from '../base/events.js'
import { showPercent } from '../base/numbers.js'
import { TypedFields } from '../controls/typed-fields.js'
import { readDegrees, sayCelsius, showCelsius } from '../typed/typed-degrees.js'
import { type BuildOf, doneTo, weightsOf } from './feeding-answer.js'
import { learntSpeed } from './feeding-learnt.js'
import { feedingStyles } from './feeding-styles.js'
import { Clock, type TypedClocks, timesOf } from './feeding-times.js'
import { workingOfFeeding } from './feeding-working.js'
import { feedingWords } from './words.js'

/** What follows from a day: when each build of a chain is fed and the last is taken, instants; in which zone. */
export interface FeedingDay {
  readonly id: string
  readonly zone: string
  readonly times: ReadonlyMap<string, { readonly fed: number; readonly ripe: number }> // by the stage's id
  /** Keeps what was typed as times of the day: when builds are fed, by their stages' ids, and when the last is ripe; instants. */
  hold(fed: ReadonlyMap<string, number>, ripe: number | undefined): Edit
}

const usualPlace = 22 // °C

/**
 * A build fed for a time: from when it is fed, when it has to be ripe and how warm it stands, the seed that it wants, with its
 * working and what that does, before it is done. With a day the times follow from its plan; without one they are typed.
 */
export class TbFeeding extends BaseElement {
  static override properties = {
    builds: { attribute: false },
    version: { type: Number },
    day: { attribute: false },
    place: { type: Number },
    seed: { attribute: false },
    kind: {},
    typed: { state: true },
    celsius: { state: true },
    count: { state: true },
  }

  declare builds: readonly BuildOf[] // the first is shown, the others share it and are fed alike
  declare version: number // goes up when the sheets' figures changed
  declare day: FeedingDay | undefined
  declare place: number | undefined // °C where it stands on a day, which has to say it; undefined: typed, or as its step is written
  declare seed: number | undefined // grams that a day takes of it; undefined: weights are shown as the formula is written
  declare kind: string // begins the names of its fields
  declare typed: TypedClocks
  declare celsius: number | undefined // typed
  declare count: number // of builds it goes through

  readonly #fields = new TypedFields(this, () => this.kind)
  #shown = ''
  #baked: { readonly of: Workbook | undefined; readonly learning: Learning | undefined } | undefined

  constructor() {
    super()
    this.version = 0
    this.kind = 'feed'
    this.typed = new Map()
    this.count = 1
  }

  protected override willUpdate(): void {
    const shown = this.builds.map(({ sheet, stage }) => `${sheet.formula.id} ${stage}`).join()
    if (shown === this.#shown) return
    this.#shown = shown
    this.typed = new Map()
    this.celsius = undefined
    this.count = 1
    this.#fields.forget()
  }

  /** What bakes have told, where there are any. */
  get #learning(): Learning | undefined {
    const of = workbookOf(this)
    if (this.#baked?.of !== of)
      this.#baked = { of, learning: of?.bakes && new Learning(of, this.#main.sheet.larder) }
    return this.#baked?.learning
  }

  get #main(): BuildOf {
    return this.builds[0]!
  }

  /** The stages that it goes through, the earliest first. */
  #chain({ sheet, stage }: BuildOf): string[] {
    return chainTo(sheet, stage)
      .slice(-this.count)
      .map(plan => plan.stage.id)
  }

  /** How warm it stands until that is typed. */
  get #usualPlace(): number {
    const { sheet, stage } = this.#main
    return this.place ?? ripeningStep(stageOf(sheet, stage).stage)?.read.celsius ?? usualPlace
  }

  get #clock(): Clock {
    return new Clock(this.day?.zone)
  }

  #follow(stages: readonly string[]): (number | undefined)[] {
    const times = this.day?.times
    return [...stages.map(stage => times?.get(stage)?.fed), times?.get(stages.at(-1)!)?.ripe]
  }

  /** The times of the chain: those in between, where nobody said them, by how the builds ripen. */
  #times(stages: readonly string[], celsius: number): (number | undefined)[] {
    const times = timesOf(this.#follow(stages), this.typed, this.#clock)
    const [first, last] = [times[0], times.at(-1)]
    if (first === undefined || last === undefined || stages.length < 2) return times
    const hours = hoursInChain(this.#main.sheet, stages, (last - first) / 60, celsius)
    let at = first
    return times.map((time, i) => {
      if (i > 0 && i < stages.length) at += hours[i - 1]! * 60
      return time ?? at
    })
  }

  /** Each build with how it is to be fed, or why it cannot be; undefined where a time is not said. */
  #fed(of: BuildOf, celsius: number): readonly FedBuild[] | FeedingProblem | undefined {
    const stages = this.#chain(of)
    const times = this.#times(this.#chain(this.#main), celsius)
    const builds: FedBuild[] = []
    for (const [i, stage] of stages.entries()) {
      const [from, until] = [times[i], times[i + 1]]
      if (from === undefined || until === undefined) return undefined
      const feeding = feedStage(of.sheet, stage, (until - from) / 60, celsius)
      if ('code' in feeding) return feeding
      builds.push({ stage, feeding })
    }
    return builds
  }

  override render() {
    const { sheet, stage } = this.#main
    const celsius = this.celsius ?? this.#usualPlace
    const fed = this.#fed(this.#main, celsius)
    return html`<section aria-label=${feedingWords.name(stageOf(sheet, stage).stage.name)}>
      ${this.#asked(celsius)}
      ${
        fed === undefined
          ? html`<p class="hint">${feedingWords.ask}</p>`
          : 'code' in fed
            ? html`<p class="remark" role="status">${fed.message}</p>`
            : this.#answer(fed, celsius)
      }
    </section>`
  }

  #nameOf(stage: string): string {
    return stageOf(this.#main.sheet, stage).stage.name
  }

  /** When it is fed, when ripe, and how warm it stands. */
  #asked(celsius: number): TemplateResult {
    const stages = this.#chain(this.#main)
    const longest = chainTo(this.#main.sheet, this.#main.stage).map(plan => plan.stage.name)
    const times = this.#times(stages, celsius)
    const names = [...stages.keys(), stages.length].map(i => `time${i}`)
    return html`${
      longest.length > 1
        ? html`<p class="line">
            <label for="through">${feedingWords.through}</label>
            <select id="through" @change=${this.#through}>
              ${longest.map(
                (_, i) =>
                  html`<option value=${i + 1} .selected=${this.count === i + 1}>${feedingWords.builds(longest.slice(-1 - i))}</option>`,
              )}
            </select>
          </p>`
        : nothing
    }
      <p class="line">
        ${times.map((time, i) => html`<span class="pair">${this.#timeWords(stages, i)} ${this.#time(stages, i, time)}</span>`)}
        <span class="pair">${feedingWords.standsAt}
          ${this.day ? sayCelsius(celsius, this.numbers) : this.#degrees(celsius)}</span>
      </p>
      ${this.#fields.faults(...names, 'celsius')}`
  }

  #timeWords(stages: readonly string[], i: number): string {
    return i < stages.length
      ? feedingWords.fed(this.#nameOf(stages[i]!), stages.length === 1)
      : feedingWords.ripe
  }

  #time(stages: readonly string[], i: number, time: number | undefined): TemplateResult {
    const said = this.typed.has(i)
    const how = said ? feedingWords.typed : time === undefined ? feedingWords.empty : feedingWords.follows
    const name = `time${i}`
    return html`<span class=${said ? 'said' : ''}>${this.#fields.field({
      name,
      label: feedingWords.clockLabel(this.#timeWords(stages, i), how),
      kept: time === undefined ? '' : clockText(this.#clock.of(time)),
      short: true,
      keys: 'text',
      take: text => {
        const clock = readClock(text)
        if (text.trim() !== '' && clock === undefined) return feedingWords.notAClock
        const typed = new Map(this.typed)
        if (clock === undefined) typed.delete(i)
        else typed.set(i, clock)
        this.typed = typed
        return undefined
      },
    })}</span>`
  }

  #degrees(celsius: number): TemplateResult {
    const said = this.celsius !== undefined
    return html`<span class=${said ? 'said' : ''}>${this.#fields.field({
      name: 'celsius',
      label: feedingWords.celsiusLabel(said ? feedingWords.typed : feedingWords.follows),
      kept: showCelsius(celsius, this.numbers),
      unit: '°C',
      short: true,
      take: text => {
        const typed = readDegrees(text, this.numbers)
        if (text.trim() !== '' && typed === undefined) return feedingWords.notCelsius
        this.celsius = typed
        return undefined
      },
    })}</span>`
  }

  #through = (event: Event): void => {
    this.count = Number((event.target as HTMLSelectElement).value)
    this.typed = new Map()
  }

  #answer(fed: readonly FedBuild[], celsius: number): TemplateResult {
    const { sheet } = this.#main
    const { numbers, readOnly } = this
    const isAlone = fed.length === 1
    const isSo = fed.every(({ feeding }) => Math.abs(feeding.before.hours / feeding.hours - 1) < sameTime)
    const percent = (part: number) => `${showPercent(part, numbers)}\u00a0%`
    return html`${fed.map(({ stage, feeding }) => {
      const { seedShare, hours, before, extrapolated, dilution } = feeding
      return html`<p class="seed" role="status">
          <span class="big">${feedingWords.seed(percent(isSo ? before.seedShare : seedShare), isAlone ? undefined : this.#nameOf(stage))}</span>
          <span class="way">${feedingWords.of(hours, sayCelsius(celsius, numbers))}</span>
        </p>
        <p class="hint">
          ${isSo ? feedingWords.isSo(before.hours) : feedingWords.asItIs(before.hours, percent(before.seedShare))}
          ${extrapolated ? feedingWords.guess : nothing} ${isPublished(dilution) ? nothing : feedingWords.beyond}
        </p>
        ${isSo ? nothing : weightsOf(sheet, stage, feeding, numbers, this.#asMuch)}`
    })}
      <p class="look">${this.#range(fed)}</p>
      ${learntSpeed(this, this.#learning, this.builds, fed, celsius)}
      ${isSo ? nothing : doneTo(this.builds, feedBuilds(sheet, fed), numbers)}
      ${
        readOnly || isSo
          ? nothing
          : html`<p class="do"><button class="main" @click=${() => this.#feed(fed, celsius)}>${feedingWords.feed}</button></p>`
      }
      <details>
        <summary>${feedingWords.working}</summary>
        ${fed.map(({ stage, feeding }) => workingOfFeeding(stageOf(sheet, stage).stage, feeding, isAlone, numbers))}
      </details>`
  }

  /** How many times as much as written a day takes. */
  get #asMuch(): number {
    const { sheet, stage } = this.#main
    const written = partsOfBuild(stageOf(sheet, stage)).seed.reduce(
      (sum, { line }) => sum + (sheet.line(line.id).weight ?? Number.NaN),
      0,
    )
    return this.seed === undefined || !(written > 0) ? 1 : this.seed / written
  }

  /** From when to when the last is ripe, and what to look for. */
  #range(fed: readonly FedBuild[]): string {
    const { stage, feeding } = fed.at(-1)!
    const stages = this.#chain(this.#main)
    const from = this.#times(stages, feeding.celsius)[stages.length - 1]!
    const { least, most } = ripeRange(stageOf(this.#main.sheet, stage).stage, feeding)
    const clock = (time: number) => clockText(this.#clock.of(time))
    return feedingWords.lookFirst(clock(from + least), clock(from + most))
  }

  #feed(fed: readonly FedBuild[], celsius: number): void {
    const stages = this.#chain(this.#main)
    const times = this.#times(stages, celsius)
    const held = new Map(stages.flatMap((stage, i) => (this.typed.has(i) ? [[stage, times[i]!]] : [])))
    const ripe = this.typed.has(stages.length) ? times[stages.length] : undefined
    const hold = this.day?.hold(held, ripe)
    const place = this.day && { day: this.day.id }
    const make: Edit = workbook => {
      const parts = this.builds.flatMap((build, i) => {
        const each = i === 0 ? fed : this.#fed(build, celsius)
        return each && !('code' in each) ? [feedBuilds(build.sheet, each)] : []
      })
      const times = hold?.(workbook)
      return together(parts[0]!.label, times ? [...parts, times] : parts)
    }
    say(this, askEdit(this, make, place) ?? feedingWords.fedSo)
  }

  static override styles = feedingStyles
}
customElements.define('tb-feeding', TbFeeding)

const sameTime = 0.01 // a hundredth of the time from when a build counts as fed for it
const isPublished = (dilution: number): boolean => dilution >= 3 && dilution <= 11

declare global {
  interface HTMLElementTagNameMap {
    'tb-feeding': TbFeeding
  }
}
