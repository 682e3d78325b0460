import { type CopyFile, databaseNotes } from '../../src/storage/outside/copy-notes.js'
import { OutsideCopy } from '../../src/storage/outside/outside-copy.js'
import type { KeptDesk } from './kept-desk.js'

/** Asks for the copy outside the browser that is kept with the page's desk; whoever keeps it fills it in. */
export interface CopyRequest {
  copy?: OutsideCopy
}

export const copyOutside = (): OutsideCopy | undefined => {
  const request: CopyRequest = {}
  dispatchEvent(new CustomEvent('tb-copy', { detail: request }))
  return request.copy
}

/** Tells that a workbook file was sent out by hand. */
export const tellTaken = (): void => copyOutside()?.tookFile()

interface PickerWindow {
  showSaveFilePicker?(options: object): Promise<CopyFile>
}

/** Whether this browser can keep a file up to date. Chromium has it, on secure pages. */
export const canKeepFile = (): boolean => 'showSaveFilePicker' in window

/** Has the baker name a file, at a click; undefined where that was left. */
export async function nameFile(suggestedName: string): Promise<CopyFile | undefined> {
  try {
    return await (window as unknown as PickerWindow).showSaveFilePicker?.({
      suggestedName,
      types: [{ accept: { 'application/json': ['.json'] } }],
    })
  } catch {
    return undefined
  }
}

/** Keeps the copy outside the browser in step with the desk. `changed` is called when there is something else to show. */
export class OutsideDesk {
  readonly copy: OutsideCopy
  readonly #kept: KeptDesk
  #isRead = false
  readonly #begun = new Date() // stands for the save of examples, which are not stored before something is done to them

  constructor(kept: KeptDesk, changed: () => void, signal: AbortSignal) {
    this.#kept = kept
    this.copy = new OutsideCopy({
      notes: databaseNotes(kept.database),
      write: async (workbook, saved) => {
        const { writeWorkbookFile } = await import('../../src/exchange/data/workbook-file.js')
        return writeWorkbookFile(workbook, saved)
      },
      onChange: () => {
        changed()
        dispatchEvent(new CustomEvent('tb-copy-changed'))
      },
    })
    addEventListener(
      'tb-copy',
      event => {
        ;(event as CustomEvent<CopyRequest>).detail.copy = this.copy
      },
      { signal },
    )
    document.addEventListener('visibilitychange', () => document.hidden && void this.copy.flush(), { signal })
    void this.copy.open().then(() => {
      this.#isRead = true
      this.follow()
    })
  }

  /** To be called whenever what is kept may be other than before. */
  follow(): void {
    const { state, desk } = this.#kept
    if (this.#isRead && state.status === 'saved' && desk)
      this.copy.saved({ workbook: desk.workbook, saved: (state.at ?? this.#begun).toISOString() })
  }
}
