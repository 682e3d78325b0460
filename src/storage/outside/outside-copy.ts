import type { Workbook } from '../../dough/document/workbook.js'
import type { Worded } from '../../engine/index.js'
import { type CopyFile, type CopyNotes, type NotesStore, notesIn, type Reminder } from './copy-notes.js'
import { type CopyDiagnostic, copyProblem } from './words.js'

const day = 864e5 // milliseconds
const periods: Readonly<Record<Reminder, number>> = { never: Infinity, week: 7 * day, month: 30 * day }
const headLength = 300 // characters in which a workbook file says of which save it is

/** A workbook as it was saved. */
export interface SavedWorkbook {
  readonly workbook: Workbook
  readonly saved: string // ISO 8601, UTC
}

export interface OutsideOptions {
  readonly notes: NotesStore
  readonly write: (workbook: Workbook, saved: string) => string | Promise<string> // the text of a workbook file
  readonly onChange: () => void // something below is other than before
  // Usual unless given, as tests do.
  readonly after?: number // milliseconds from a save to the file
  readonly between?: number // and from one writing to the next, at least
  readonly now?: () => number // milliseconds since 1970
}

/**
 * Keeps the workbook file up to date in a file that the baker named, some seconds after each save. A file that something
 * else has written meanwhile is never written over unless that is asked for. Where there is no such file, it says when it is
 * time to send one out.
 */
export class OutsideCopy {
  notes: CopyNotes = {}
  problem: Worded<CopyDiagnostic> | undefined // why the file is not up to date; tried again at the next save
  readonly #of: OutsideOptions
  #latest: SavedWorkbook | undefined
  #timer: ReturnType<typeof setTimeout> | undefined
  #turn: Promise<unknown> = Promise.resolve()
  #lastTry = -Infinity

  constructor(of: OutsideOptions) {
    this.#of = of
  }

  /** Reads what is remembered; where that cannot be read, nothing is. */
  async open(): Promise<void> {
    this.notes = notesIn(await this.#of.notes.read().catch(() => undefined))
    this.#of.onChange()
  }

  get #now(): number {
    return this.#of.now?.() ?? Date.now()
  }

  get isUpToDate(): boolean {
    return this.notes.wrote !== undefined && this.notes.wrote.saved === this.#latest?.saved
  }

  /** To be called with each state of the workbook that is on disk. */
  saved(latest: SavedWorkbook): void {
    if (latest.saved === this.#latest?.saved) return
    this.#latest = latest
    if (!this.notes.since) this.#note({ since: new Date(this.#now).toISOString() })
    if (!this.notes.file || this.isUpToDate) return
    const { after = 2000, between = 20_000 } = this.#of
    clearTimeout(this.#timer)
    const wait = Math.max(after, this.#lastTry + between - this.#now)
    this.#timer = setTimeout(() => void this.flush(), wait)
  }

  /** Has the copy kept in this file from now on, beginning at once. */
  async keepIn(file: CopyFile): Promise<void> {
    const { wrote: _before, ...others } = this.notes
    this.notes = others
    this.#note({ file })
    await this.flush()
  }

  /** Writes what is saved and not in the file yet. To be called by a click where the browser has to ask: `ask`. */
  async flush({ ask = false, over = false }: { ask?: boolean; over?: boolean } = {}): Promise<void> {
    clearTimeout(this.#timer)
    const { file } = this.notes
    // At once, while the click counts.
    const allowed = ask ? file?.requestPermission?.({ mode: 'readwrite' }) : undefined
    this.#turn = this.#turn.then(() => this.#write(allowed, over))
    await this.#turn
  }

  /** Keeps no copy any more; the file stays as it is. */
  stop(): void {
    const { file: _file, wrote: _wrote, ...others } = this.notes
    this.notes = others
    this.problem = undefined
    clearTimeout(this.#timer)
    this.#note({})
  }

  /** A workbook file was sent out by hand. */
  tookFile = (): void => this.#note({ taken: new Date(this.#now).toISOString() })

  /** Says how often to be reminded. */
  remind(every: Reminder): void {
    this.#note({ every })
  }

  /** The reminder has been seen; it comes again after as long. */
  putOff(): void {
    this.#note({ quiet: new Date(this.#now).toISOString() })
  }

  /** Since when no file has been taken, where it is time to be reminded of that; ISO 8601. */
  get due(): string | undefined {
    const { file, since, taken, quiet = '', every = 'month' } = this.notes
    const last = taken ?? since
    if (file || last === undefined) return undefined
    const counted = Math.max(Date.parse(last), Date.parse(quiet) || 0)
    return this.#now - counted > periods[every] ? last : undefined
  }

  async #write(allowed: Promise<PermissionState> | undefined, over: boolean): Promise<void> {
    const { file, wrote } = this.notes
    const latest = this.#latest
    if (!file || !latest || (this.isUpToDate && !over)) return
    this.#lastTry = this.#now
    try {
      const permission = (await allowed) ?? (await file.queryPermission?.({ mode: 'readwrite' })) ?? 'granted'
      if (permission !== 'granted') return this.#failed('copyNotAllowed', file)
      if (wrote && !over && !(await isOf(file, wrote.saved))) return this.#failed('copyFileOther', file)
      const text = await this.#of.write(latest.workbook, latest.saved)
      const writing = await file.createWritable()
      await writing.write(text)
      await writing.close()
    } catch (error) {
      const name = error instanceof Error ? error.name : ''
      if (name === 'NotFoundError') return this.#failed('copyFileGone', file)
      return this.#failed(name === 'NotAllowedError' ? 'copyNotAllowed' : 'copyNotWritten', file)
    }
    if (this.notes.file !== file) return // another one by now, or none
    this.problem = undefined
    this.#note({ wrote: { at: new Date(this.#now).toISOString(), saved: latest.saved } })
  }

  #failed(code: CopyDiagnostic['code'], { name }: CopyFile): void {
    this.problem = copyProblem({ code, file: name })
    this.#of.onChange()
  }

  /** Where it cannot be stored, it holds for as long as the page is there. */
  #note(change: Partial<CopyNotes>): void {
    this.notes = { ...this.notes, ...change }
    this.#of.notes.put(this.notes).catch(() => {})
    this.#of.onChange()
  }
}

/** Whether a file is still the one that was written of a save. */
async function isOf(file: CopyFile, saved: string): Promise<boolean> {
  const head = await (await file.getFile()).slice(0, headLength).text()
  return head.includes(JSON.stringify(saved))
}
