const idle = 400 // milliseconds after the last change
const longest = 1000 // milliseconds after the first: who types without a pause is saved too
const late = 1500 // milliseconds that a save may take until the storage is taken to be slow

/** Soon, but not before what is on the screen has followed: what a change closes is closed by then, and no key press waits. */
const afterPaint = (run: () => void): void => {
  if (typeof requestAnimationFrame === 'undefined') setTimeout(run, 0)
  else requestAnimationFrame(() => setTimeout(run))
}

/** When to save: at once after a while of quiet, else a moment after the last change, and never long after the first. */
export class Pace {
  readonly #save: () => void
  #timer: ReturnType<typeof setTimeout> | undefined
  #first: number | undefined // when the first change was made that no save has begun for
  #last: number | undefined // when the last change was made
  #began: number | undefined // when the first save began that has not ended well

  constructor(save: () => void) {
    this.#save = save
  }

  /** Whether a save has been under way for longer than one should take. */
  get isLate(): boolean {
    return this.#began !== undefined && Date.now() - this.#began > late
  }

  /** To be called at every change. */
  soon(): void {
    const now = Date.now()
    const isQuiet = this.#first === undefined && !(Math.abs(now - (this.#last ?? 0)) < idle)
    this.#last = now
    this.#first ??= now
    clearTimeout(this.#timer)
    // A clock that was put back makes no wait longer.
    const left = Math.max(0, Math.min(longest, this.#first + longest - now))
    this.#timer = setTimeout(this.#save, Math.min(idle, left))
    if (isQuiet) afterPaint(() => this.#first !== undefined && this.#save())
  }

  /** To be called when a save begins. */
  begun(): void {
    clearTimeout(this.#timer)
    this.#first = undefined
    this.#began ??= Date.now()
  }

  /** To be called when a save has ended well. */
  ended(): void {
    this.#began = undefined
  }
}
