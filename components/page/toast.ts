import type { ReactiveControllerHost } from 'lit'

const shownFor = 6000 // milliseconds

/** A sentence in sight for a moment. */
export class Toast {
  sentence = ''
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(private readonly page: Pick<ReactiveControllerHost, 'requestUpdate'>) {}

  show(sentence: string): void {
    clearTimeout(this.#timer)
    this.#put(sentence)
    this.#timer = setTimeout(() => this.#put(''), shownFor)
  }

  #put(sentence: string): void {
    this.sentence = sentence
    this.page.requestUpdate()
  }
}
