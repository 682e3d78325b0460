import { html, nothing, type TemplateResult } from 'lit'
import { repeat } from 'lit/directives/repeat.js'
import type { BenchNow, Todo } from '../../src/day/bench/todos.js'
import { movedByText } from '../../src/day/bench/words.js'
import { localOf } from '../../src/day/course/clock.js'
import { atBenchWords } from './words.js'

/** How a list of things to do is shown, and what pressing one does. */
export interface ListShown {
  readonly clock: (instant: number) => string
  readonly name: (todo: Todo) => string
  readonly look: (key: string) => void
  readonly moved: ReadonlyMap<string, number> // minutes, by keys
  readonly day: (instant: number) => string // the day of the week, '' for today
}

/** `Tue` of a moment on the calendar of a place, '' where it is that day now. */
export function weekdayIn(instant: number, now: number, zone: string, language: string): string {
  const { date } = localOf(instant, zone)
  if (date === localOf(now, zone).date) return ''
  return new Date(`${date}T00:00Z`).toLocaleDateString(language, { weekday: 'short', timeZone: 'UTC' })
}

/** What comes then, and what is done so far; each can be looked at. */
export function benchList(
  { todos }: BenchNow,
  shown: Todo | undefined,
  { clock, name, look, moved, day }: ListShown,
): TemplateResult {
  const row = (todo: Todo) => html`<li>
    <button aria-current=${todo === shown ? 'step' : nothing} @click=${() => look(todo.key)}>
      <span class="at">${clock(todo.done ?? todo.due)}<small>${day(todo.done ?? todo.due)}</small></span>
      <span
        >${name(todo)}<small
          >${todo.event.stageName}${
            moved.has(todo.key) ? html` · <b class="by">${movedByText(moved.get(todo.key)!)}</b>` : nothing
          }</small>${
            todo.done !== undefined && !todo.noted ? html` <small>${atBenchWords.notNoted}</small>` : nothing
          }</span
      >
    </button>
  </li>`
  const part = (heading: string, which: readonly Todo[], look: string) =>
    which.length
      ? html`<section class=${look}>
          <h2>${heading}</h2>
          <ol>${repeat(which, ({ key }) => key, row)}</ol>
        </section>`
      : nothing
  return html`${part(
    atBenchWords.next,
    todos.filter(todo => todo.done === undefined && todo !== shown),
    'list',
  )}${part(
    atBenchWords.before,
    todos.filter(todo => todo.done !== undefined),
    'list done',
  )}`
}
