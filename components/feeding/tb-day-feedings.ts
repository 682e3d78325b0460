import { css, html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import { clockText, lengthText, localOf, localText } from '../../src/day/course/clock.js'
import { type DayFeeding, feedingsOn } from '../../src/day/mixing/fed-on-day.js'
import { weekdayText } from '../../src/day/out/day-text.js'
import type { PlannedDay } from '../../src/day/plan/planned.js'
import type { Day } from '../../src/dough/document/day.js'
import { sameName } from '../../src/dough/document/formula.js'
import { applyChanges, type Transaction, type Workbook } from '../../src/dough/document/workbook.js'
import { holdMoment } from '../../src/dough/edits/fetched/day-edits.js'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { BaseElement } from '../base/base-element.js'
import { showWeighed } from '../batch/weighed-text.js'
import { entriesStyles } from '../styles/entries-styles.js'
import { sayCelsius } from '../typed/typed-degrees.js'
import type { BuildOf } from './feeding-answer.js'
import type { FeedingDay } from './tb-feeding.js'
import './tb-feeding.js'
import { feedingWords } from './words.js'

/** The builds of a day that are fed from a seed: when, and the seed that their times want. */
export class TbDayFeedings extends BaseElement {
  static override properties = {
    day: { attribute: false },
    plan: { attribute: false },
    sheetOf: { attribute: false },
    weighed: { attribute: false },
    open: { state: true },
  }

  declare day: Day
  declare plan: PlannedDay | undefined
  declare sheetOf: (bread: string) => FigureSheet | undefined // the formula with the day's batch
  declare weighed: (of: DayFeeding) => ReadonlyMap<string, number> // grams that a scale weighs of its lines, by id
  declare open: ReadonlySet<string> // keys of the builds that are open

  #shown = ''

  constructor() {
    super()
    this.open = new Set()
  }

  protected override willUpdate(): void {
    if (this.day.id === this.#shown) return
    this.#shown = this.day.id
    this.open = new Set()
  }

  override render() {
    const feedings = feedingsOn(this.day, this.plan, this.sheetOf)
    return html`<section aria-labelledby="heading">
      <h2 id="heading">${feedingWords.heading}</h2>
      ${feedings.length ? nothing : html`<p>${feedingWords.none}</p>`}
      ${repeat(feedings, keyOf, feeding => this.#feeding(feeding, feedings))}
    </section>`
  }

  #feeding(feeding: DayFeeding, all: readonly DayFeeding[]): TemplateResult {
    const { bread, breads, stageName, fed, ripe, celsius, seed } = feeding
    const key = keyOf(feeding)
    const isOpen = this.open.has(key)
    const name = feedingWords.build(
      stageName,
      breads.map(bread => this.sheetOf(bread)?.formula.name ?? ''),
    )
    const grams = this.#seedOf(feeding)
    const times =
      fed && ripe
        ? html`<span class="times">${feedingWords.fedWith(this.#when(fed.at), grams)}</span>
          <span class="times">${feedingWords.ripeAfter(
            this.#when(ripe.at),
            lengthText(ripe.at - fed.at),
            sayCelsius(celsius, this.numbers),
          )}</span>`
        : html`<span class="times">${feedingWords.withoutTimes(grams, this.plan?.day.breads.some(({ id }) => id === bread) === true)}</span>`
    return html`<div class="entry" data-build=${key}>
      <h3>
        <button aria-expanded=${isOpen} aria-controls=${key} @click=${() => this.#toggle(key)}>
          <span>${name}</span> ${times}
        </button>
      </h3>
      <div id=${key} ?hidden=${!isOpen}>
        ${
          isOpen
            ? html`<tb-feeding
              .builds=${this.#builds(feeding)}
              .day=${this.#dayOf(feeding, all)}
              .place=${celsius}
              .seed=${seed}
              kind=${`day ${this.day.id} feed ${key}`}
              .numbers=${this.numbers}
              ?readOnly=${this.readOnly}
            ></tb-feeding>`
            : nothing
        }
      </div>
    </div>`
  }

  /** `132 g` as a scale weighs it; '' where it is not known. */
  #seedOf(feeding: DayFeeding): string {
    const weighed = this.weighed(feeding)
    const grams = feeding.seedLines.reduce((sum, line) => sum + (weighed.get(line) ?? Number.NaN), 0)
    return Number.isNaN(grams) ? '' : `${showWeighed(grams, this.numbers)}\u00a0g`
  }

  /** `Fri 7:00` */
  #when(instant: number): string {
    const { date, minutes } = localOf(instant, this.day.zone)
    return feedingWords.onWeekday(weekdayText(date, this.numbers.language), clockText(minutes))
  }

  /** The build in each formula that shares it. */
  #builds({ breads, stage, stageName }: DayFeeding): BuildOf[] {
    const builds: BuildOf[] = []
    for (const [i, bread] of breads.entries()) {
      const sheet = this.sheetOf(bread)
      const own = i === 0 ? stage : sheet?.formula.stages.find(({ name }) => sameName(name, stageName))?.id
      const isNew = builds.every(build => build.sheet.formula.id !== sheet?.formula.id)
      if (sheet && own !== undefined && isNew) builds.push({ sheet, stage: own })
    }
    return builds
  }

  #dayOf({ bread, stage, ripe }: DayFeeding, all: readonly DayFeeding[]): FeedingDay {
    const { id, zone } = this.day
    const own = all.filter(feeding => feeding.breads.includes(bread))
    const fedOf = (of: string) => own.find(feeding => feeding.stage === of)?.fed
    const times = new Map(
      own.flatMap(({ stage: of, fed, ripe: taken }) =>
        fed && taken ? [[of, { fed: fed.at, ripe: taken.at }] as const] : [],
      ),
    )
    const hold = (fed: ReadonlyMap<string, number>, until: number | undefined) => (workbook: Workbook) => {
      const wanted = [...fed].map(([of, at]) => ({ moment: fedOf(of)?.moment, at, of }))
      wanted.push({ moment: ripe?.moment, at: until ?? Number.NaN, of: stage })
      const changes: Transaction['changes'][number][] = []
      let now = workbook
      for (const { moment, at } of wanted) {
        if (moment === undefined || Number.isNaN(at)) continue
        const held = holdMoment(now, id, moment, localText(localOf(at, zone)))
        if (!held) continue
        changes.push(...held.changes)
        now = applyChanges(now, held.changes).workbook
      }
      return { label: '', changes }
    }
    return { id, zone, times, hold }
  }

  /** Opens the build of which a field is, by the name that `TypedFields` gave it. */
  openField(day: string, name: string): void {
    const [kind, key] = name.split(' ')
    if (day === this.day.id && kind === 'feed' && !this.open.has(key!))
      this.open = new Set([...this.open, key!])
  }

  #toggle(key: string): void {
    const open = new Set(this.open)
    if (!open.delete(key)) open.add(key)
    this.open = open
  }

  static override styles = [
    entriesStyles,
    css`
      section {
        max-width: 40rem;
      }
      p {
        max-width: 62ch;
        font-size: var(--size-small);
        color: var(--ink-soft);
      }
      h3 button {
        flex-direction: column;
      }
      .times {
        font-size: var(--size-small);
        font-weight: 400;
        color: var(--ink-soft);
      }
    `,
  ]
}
customElements.define('tb-day-feedings', TbDayFeedings)

const keyOf = ({ bread, stage }: DayFeeding): string => `${bread}-${stage}`

declare global {
  interface HTMLElementTagNameMap {
    'tb-day-feedings': TbDayFeedings
  }
}
