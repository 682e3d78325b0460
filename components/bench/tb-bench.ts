import { html, nothing, type TemplateResult } from 'lit'
import { alarmsOf, ringing } from '../../src/day/bench/alarms.js'
import { type Bench, benchOf, happenedAt } from '../../src/day/bench/bench-day.js'
import { type AtBench, finishBench, noteDone, noteNotDone, putOff } from '../../src/day/bench/bench-edits.js'
import { breadOf, movedBy, whatDoesNotFit, whatMoved } from '../../src/day/bench/rescheduled.js'
import { type BenchNow, beginningOf, benchNow, type Todo, thenOf } from '../../src/day/bench/todos.js'
import { weighingList } from '../../src/day/bench/weighing-list.js'
import { todoName } from '../../src/day/bench/words.js'
import type { Happened } from '../../src/day/course/around-now.js'
import type { DaySheet } from '../../src/day/plan/open-day.js'
import { eventWords } from '../../src/day/plan/words.js'
import type { Larder } from '../../src/dough/document/larder.js'
import type { Workbook } from '../../src/dough/document/workbook.js'
import { BaseElement } from '../base/base-element.js'
import { askEdit, type Edit, say, wish } from '../base/events.js'
import { goTo } from '../base/hash.js'
import { DayPlanner } from '../day/day-planner.js'
import { benchButtons } from './bench-buttons.js'
import { benchEnd } from './bench-end.js'
import { benchList, weekdayIn } from './bench-list.js'
import { BenchNotices } from './bench-notices.js'
import { hintsOf, isBegunAt, type Question, questionsBefore, questionsBeforeEnd } from './bench-questions.js'
import { benchStyles } from './bench-styles.js'
import { Bell } from './timers/bell.js'
import { aboutSaid, clockIn, isPast, whenSaid } from './todo-said.js'
import './timers/tb-bench-bar.js'
import './timers/tb-bench-care.js'
import './tb-bench-measures.js'
import './timers/tb-bench-timers.js'
import './tb-bench-weighing.js'
import type { Choice } from './pad/tb-bench-choices.js'
import './pad/tb-bench-choices.js'
import './pad/tb-number-pad.js'
import { earlierChoices, laterChoices, type TimesOffered } from './pad/time-choices.js'
import type { AskedOfBench } from './timers/bench-event.js'
import { clockCut } from './timers/timer-text.js'
import { bellWords } from './timers/words.js'
import { atBenchWords } from './words.js'

const minutesNow = (): number => Date.now() / 60_000

/** A bench in use: one thing at a time, what to weigh for it, what is next. */
export class TbBench extends BaseElement {
  static override properties = {
    workbook: { attribute: false },
    larder: { attribute: false },
    undoLabel: { attribute: false },
    key: {},
    chosen: { state: true },
    moved: { state: true },
    tick: { state: true },
  }

  declare workbook: Workbook
  declare larder: Larder
  declare undoLabel: string | undefined
  declare key: string // of the bench
  declare private chosen: string // key of a thing to do that is looked at out of turn
  declare private moved: string // what the last thing done has moved, in a sentence
  declare private tick: number // the second that is shown

  readonly #planner = new DayPlanner(() => this.requestUpdate())
  readonly #plain = new DayPlanner(() => {}) // the day as it was to be, until something is done
  #notices = new BenchNotices()
  #movedBy: ReadonlyMap<string, number> = new Map() // minutes, by keys of things to do
  #isAnswer = false // what moved was asked for with the buttons
  #isOurs = false // the workbook is changed by what was done here
  readonly #bell = new Bell(() => this.requestUpdate())
  #bench: Bench | undefined
  #of: { readonly workbook: Workbook; readonly key: string } | undefined
  #happened: Happened | undefined
  #sheet: DaySheet | undefined
  #now: BenchNow | undefined
  #before: readonly Todo[] | undefined // what was to be done when something was, to tell what it moved
  #heard = minutesNow() // up to when it has rung
  #timer = 0
  #opened = minutesNow() // or when it was begun, where nothing is done yet

  constructor() {
    super()
    this.key = ''
    this.chosen = ''
    this.moved = ''
    this.tick = 0
  }

  override connectedCallback(): void {
    super.connectedCallback()
    this.#heard = minutesNow()
    this.#bell.begin()
    this.#timer = window.setInterval(this.#second, 1000)
    document.addEventListener('visibilitychange', this.#second)
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback()
    clearInterval(this.#timer)
    document.removeEventListener('visibilitychange', this.#second)
    this.#bell.end()
    this.#planner.close()
    this.#plain.close()
  }

  #second = (): void => {
    this.tick = Math.floor(Date.now() / 1000)
    if (!this.#bench || !this.#now || !this.#sheet || this.#isFinished) return
    const now = minutesNow()
    for (const { todo, timer } of ringing(alarmsOf(this.#bench, this.#now), this.#heard, now)) {
      const due = this.#now.todos.find(({ key }) => key === todo)
      this.#bell.ring(timer === undefined ? bellWords.due(due ? this.#name(due) : '') : bellWords.over(timer))
    }
    this.#heard = now
  }

  protected override willUpdate(): void {
    const { workbook, key, larder } = this
    const now = minutesNow()
    const isOther = this.#of?.workbook !== workbook || this.#of.key !== key
    if (isOther) {
      if (!this.#isOurs) [this.moved, this.#notices] = ['', new BenchNotices()] // undone, or changed elsewhere
      this.#isOurs = false
      if (this.#of?.key !== key) {
        this.#sheet = undefined
        this.chosen = ''
        this.moved = ''
      }
      const zone = Intl.DateTimeFormat().resolvedOptions().timeZone || 'UTC'
      // One that has not begun begins when it is opened, and not anew with every edit.
      const opened = this.#bench?.bakes.length === 0 && this.#of?.key === key ? this.#opened : now
      this.#opened = opened
      this.#of = { workbook, key }
      this.#bench = benchOf(workbook, key, opened, zone)
    }
    const bench = this.#bench
    if (!bench) return
    const isLate = this.#now?.todos.some(todo => todo.done === undefined && todo.due < now - isPast)
    if (isOther || !this.#happened || (isLate && now - this.#happened.now >= 1))
      this.#happened = happenedAt(bench, now)
    const { day, formulas, leeway } = bench
    const scale = workbook.scale
    const of = { formulas, leeway, ...(scale && { scale }) }
    this.#planner.plan(day, of, larder, this.#happened)
    if (bench.bakes.length < day.breads.length) this.#plain.plan(day, of, larder)
    const { opened, lastGood } = this.#planner.state
    const sheet = opened?.plan ? opened : (lastGood ?? opened)
    this.#sheet = sheet
    this.#now = sheet && benchNow(sheet, this.#happened)
    this.#tellMoved()
  }

  /** Says what moved when something was done, once that is known. */
  #tellMoved(): void {
    const before = this.#before
    const { opened } = this.#planner.state
    if (!before || !opened?.plan || !this.#now) return
    this.#before = undefined
    const { language } = this.numbers
    const after = this.#now.todos
    this.moved = whatMoved(before, after, opened, minutesNow(), language) || atBenchWords.nothingMoved
    this.#movedBy = movedBy(before, after)
    if (this.#isAnswer)
      void this.updateComplete.then(() =>
        this.renderRoot.querySelector('.answer')?.scrollIntoView({ block: 'nearest' }),
      )
  }

  #name({ event, act }: Todo): string {
    return todoName({ event, act }, this.#sheet ? breadOf(this.#sheet, { event }) : '')
  }

  #where(): AtBench {
    const plan = this.#plain.state.opened?.plan ?? this.#sheet?.plan
    return { bench: this.#bench!, now: minutesNow(), planned: plan?.at ?? new Map() }
  }

  /** Makes an edit and goes back to what is next. */
  #do(edit: Edit, stay = false, isAnswer = false): void {
    this.#isAnswer = isAnswer
    this.#isOurs = true
    this.#before = this.#now?.todos
    const refusal = askEdit(this, edit)
    if (refusal) {
      this.#before = undefined
      this.#isOurs = false
      say(this, refusal)
    } else if (!stay) this.chosen = ''
  }

  /** An edit that a part of the bench asks for. */
  #asked = ({ detail: { edit, begins } }: CustomEvent<AskedOfBench>): void => {
    const questions = begins ? this.#questions(begins) : []
    this.#ask(questions, () => {
      this.#do(workbook => edit(workbook, this.#where()), true)
      if (!begins) this.#before = undefined // a timer, a weight more: no work begins with it that could move another
    })
  }

  #questions(todo: Todo, lines?: readonly string[]): Question[] {
    return questionsBefore(this.#sheet!, this.#now!, this.#happened!, todo, minutesNow(), lines)
  }

  /** Does something once every question before it is answered. */
  #ask([first, ...more]: readonly Question[], run: () => void): void {
    if (!first) return run()
    const goOn = { words: first.goOn, run: () => this.#ask(more, run) }
    void this.renderRoot.querySelector('tb-bench-choices')!.ask(first.words, [goOn], atBenchWords.backToBench)
  }

  override render() {
    const bench = this.#bench
    if (!bench) return nothing
    const now = this.#now
    const { numbers, readOnly } = this
    const shown =
      now?.todos.find(({ key }) => key === this.chosen) ?? (this.#isFinished ? undefined : now?.current)
    const notices = this.#sheet && this.#said(shown)
    return html`<main @tb-at-bench=${this.#asked}>
      <div class="one">
      <header>
        <a class="back" href=${bench.isDay ? `#days/${bench.day.id}` : `#${bench.formulas[0]?.id ?? ''}`}>${bench.name}</a>
        <time>${clockCut(minutesNow(), bench.day.zone)}</time>
      </header>
      ${readOnly ? html`<p class="note">${atBenchWords.readOnly}</p>` : nothing}
      ${notices?.above ?? nothing}
      ${
        !this.#sheet
          ? html`<p class="note">${atBenchWords.looking}</p>`
          : shown
            ? this.#todo(shown, notices!.beside)
            : this.#end(bench, now)
      }
      ${
        this.undoLabel && bench.bakes.length && !readOnly
          ? html`<button class="lined undo" @click=${() => wish(this, { want: 'undo' })}>${atBenchWords.undo(this.undoLabel)}</button>`
          : nothing
      }
      </div>
      <aside aria-label=${atBenchWords.beside}>
      ${
        now && this.#sheet
          ? html`<tb-bench-timers
              .bench=${bench}
              .underWay=${now.underWay}
              .tick=${this.tick}
              .numbers=${numbers}
              ?readOnly=${readOnly}
            ></tb-bench-timers>
            ${benchList(now, shown, {
              clock: instant => clockIn(instant, bench.day.zone),
              name: todo => this.#name(todo),
              look: key => this.#look(key),
              moved: this.moved ? this.#movedBy : new Map(),
              day: instant => weekdayIn(instant, minutesNow(), bench.day.zone, numbers.language),
            })}
            ${
              readOnly || !bench.bakes.length || !shown
                ? nothing
                : html`<button class="lined undo" @click=${this.#finish}>${atBenchWords.finishNow}</button>`
            }`
          : nothing
      }
      <tb-bench-care .bell=${this.#bell} .state=${this.#bell.state} .numbers=${numbers}></tb-bench-care>
      </aside>
      <tb-bench-choices .numbers=${numbers}></tb-bench-choices>
      </main>
      <tb-bench-bar
        .bench=${bench}
        .underWay=${now?.underWay ?? []}
        .tick=${this.tick}
        .numbers=${numbers}
        ?readOnly=${readOnly}
        @tb-at-bench=${this.#asked}
      ></tb-bench-bar>`
  }

  /** What moved, and what cannot be in its time any more. */
  #said(todo: Todo | undefined) {
    const { opened } = this.#planner.state
    const late = opened?.plan ? whatDoesNotFit(opened, minutesNow(), this.numbers.language) : []
    const said = opened && !opened.plan && opened.conflict ? [atBenchWords.noTimes] : late
    const isBegun = todo !== undefined && isBegunAt(this.#bench!.bakes, todo)
    return this.#notices.of(todo?.key ?? '', isBegun, this.moved, said, this.#isAnswer)
  }

  #todo(todo: Todo, beside: TemplateResult): TemplateResult {
    const { act, done } = todo
    const sheet = this.#sheet!
    const then = thenOf(sheet, todo)
    const { zone } = this.#bench!.day
    const { of, about } = aboutSaid(sheet, todo, this.numbers, this.#bench!.isDay)
    return html`<section class="todo" aria-labelledby="what" data-key=${todo.key}>
      <p class="of">${of}</p>
      <h1 id="what">${todoName(todo)}</h1>
      <p class="when">${whenSaid(todo, minutesNow(), zone)}</p>
      <p class="about">${about}</p>
      ${hintsOf(sheet, this.#happened!, todo).map(hint => html`<p class="hint">${hint}</p>`)}
      <tb-bench-weighing
        .sheet=${sheet}
        .todo=${todo}
        .bakes=${this.#bench!.bakes}
        .numbers=${this.numbers}
        ?readOnly=${this.readOnly || done !== undefined}
      ></tb-bench-weighing>
      <tb-bench-measures
        .sheet=${sheet}
        .todo=${todo}
        .bakes=${this.#bench!.bakes}
        .numbers=${this.numbers}
        ?readOnly=${this.readOnly}
      ></tb-bench-measures>
      ${this.readOnly ? nothing : this.#buttons(todo, act === 'do' && then ? eventWords(then) : '')}
      ${beside}
    </section>`
  }

  #buttons(todo: Todo, then: string): TemplateResult {
    const name = todoName(todo)
    return benchButtons(todo, then, {
      done: () => this.#done(todo, minutesNow()),
      notDone: () => this.#do(workbook => noteNotDone(workbook, this.#where(), todo, name)),
      later: () => this.#later(todo),
      earlier: () => this.#earlier(todo),
      next: todo === this.#now?.current ? undefined : () => this.#look(''),
    })
  }

  #look(key: string): void {
    this.chosen = key
    this.moved = ''
    scrollTo({ top: 0 })
  }

  #done(todo: Todo, at: number): void {
    const name = todoName(todo)
    const from = beginningOf(todo, at, this.#happened!)
    const { lines } = weighingList(this.#sheet!, todo, this.#bench!.bakes)
    const left = lines.filter(({ weighed }) => !weighed).map(({ ingredient }) => ingredient)
    this.#ask(this.#questions(todo, left), () => {
      this.#do(workbook => noteDone(workbook, this.#where(), todo, { name, at, from }))
      scrollTo({ top: 0 })
    })
  }

  #later(todo: Todo): void {
    const name = todoName(todo)
    const until = (instant: number) =>
      this.#do(workbook => putOff(workbook, this.#where(), todo, name, instant), true, true)
    const from = Math.max(minutesNow(), todo.begun === undefined ? todo.due : todo.event.until)
    const title = todo.begun === undefined ? atBenchWords.putOffTitle : atBenchWords.longerTitle
    this.#choose(title(name), laterChoices(this.#times(from, until)))
  }

  #earlier(todo: Todo): void {
    const now = minutesNow()
    const at = (instant: number) => this.#done(todo, Math.min(instant, minutesNow()))
    this.#choose(atBenchWords.atTitle(todoName(todo)), earlierChoices(this.#times(now, at)))
  }

  #times(near: number, take: (instant: number) => void): TimesOffered {
    return { near, take, zone: this.#bench!.day.zone, pad: () => this.#pad }
  }

  get #pad() {
    return this.renderRoot.querySelector('tb-bench-choices')!.pad
  }

  #choose(title: string, choices: readonly Choice[]): void {
    void this.renderRoot.querySelector('tb-bench-choices')?.ask(title, choices)
  }

  get #isFinished(): boolean {
    const { bakes = [] } = this.#bench ?? {}
    return bakes.length > 0 && bakes.every(({ finished }) => finished)
  }

  #finish = (): void => {
    this.#ask(questionsBeforeEnd(this.#bench!, minutesNow()), () => {
      this.#do(workbook => finishBench(workbook, this.#where()))
      const [only, more] = this.#bench!.bakes
      if (only && !more) goTo(`bench/bake/${only.id}`)
    })
  }

  #end(bench: Bench, now: BenchNow | undefined): TemplateResult {
    if (!now?.todos.length) return html`<p class="note">${atBenchWords.noSteps}</p>`
    return benchEnd(bench, this.#isFinished, this.readOnly ? undefined : this.#finish)
  }

  static override styles = benchStyles
}
customElements.define('tb-bench', TbBench)

declare global {
  interface HTMLElementTagNameMap {
    'tb-bench': TbBench
  }
}
