import { html, nothing, type TemplateResult } from 'lit'
import type { Todo } from '../../src/day/bench/todos.js'
import { todoName } from '../../src/day/bench/words.js'
import { atBenchWords } from './words.js'

/** What the buttons of a thing to do are for. */
export interface Pressed {
  readonly done: () => void
  readonly notDone: () => void
  readonly later: () => void
  readonly earlier: () => void
  readonly next: (() => void) | undefined // undefined where it is next itself
}

/** The buttons beneath a thing to do; `then` begins when it is done. */
export function benchButtons(todo: Todo, then: string, pressed: Pressed): TemplateResult {
  const { act, begun, done } = todo
  const toNext = pressed.next
    ? html`<button class="lined" @click=${pressed.next}>${atBenchWords.back2}</button>`
    : nothing
  if (done !== undefined)
    return html`<div class="go">
      <button class="lined wide" @click=${pressed.notDone}>${atBenchWords.notDone(todoName(todo))}</button>
      ${toNext}
    </div>`
  return html`<div class="go">
    <button class="main wide" @click=${pressed.done}>
      ${act === 'do' ? atBenchWords.done(then) : atBenchWords.act[act]}
    </button>
    <button class="lined" @click=${pressed.later}>${begun === undefined ? atBenchWords.putOff : atBenchWords.longer}</button>
    <button class="lined" @click=${pressed.earlier}>${atBenchWords.at}</button>
    ${toNext}
  </div>`
}
