import { afterPaint } from '../base/after-paint.js'
import { isNarrow } from '../styles/breakpoints.js'
import { focusedIn } from '../typed/focused-in.js'
import { keepFocusNear } from '../typed/near-focus.js'

/** What the page as a whole hears, wherever the baker is on it. */
export interface PageGestures {
  readonly undo: () => void
  readonly redo: () => void
  readonly file: (file: File) => void
  readonly text: (text: string) => void
  readonly dragging: (over: boolean) => void // a file is held over the page
  readonly typing: () => void // a field is gone into where one place is shown at a time
  readonly lost: () => void // what lay over the page or above it is gone, and nothing has the focus
}

const textFields =
  'input:not([type=checkbox], [type=radio], [type=file]), textarea, select, [contenteditable], dialog'
const ownsText = (target: EventTarget): boolean => target instanceof HTMLElement && target.matches(textFields)

/** Whether an event happens where text is being edited, or in a dialog: there the page keeps out. */
const inText = (event: Event): boolean => event.composedPath().some(ownsText)

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false

/** A table, a recipe or a link that carries a formula: at least two lines, or one with amounts; not a stray word. */
const looksLikeFormula = (text: string): boolean =>
  /\S[^\n]*\n\s*\S/.test(text) || /#formula=|\d\s*\p{L}[^\n]*,/u.test(text)

/** Listens to undo and redo keys, dropped files and pasted tables until the signal ends it. */
export function listenToPage(gestures: PageGestures, signal: AbortSignal): void {
  const onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || event.altKey || !(event.ctrlKey || event.metaKey) || inText(event)) return
    const key = event.key.toLowerCase()
    const redo = (key === 'z' && event.shiftKey) || (key === 'y' && !event.shiftKey)
    if (!redo && key !== 'z') return
    event.preventDefault()
    if (redo) gestures.redo()
    else gestures.undo()
  }

  const onPaste = (event: ClipboardEvent): void => {
    if (event.defaultPrevented || inText(event)) return
    if (event.composedPath().some(at => at instanceof Element && at.localName === 'tb-grid')) return
    const [text, html] = ['text/plain', 'text/html'].map(type => event.clipboardData?.getData(type) ?? '')
    if (!looksLikeFormula(text!)) return
    event.preventDefault()
    gestures.text(/<(?:li|h\d)\b/i.test(html!) ? html! : text!) // of a page its lists and headings
  }

  const onDragOver = (event: DragEvent): void => {
    if (!hasFiles(event)) return
    event.preventDefault()
    gestures.dragging(true)
  }

  const onDragLeave = (event: DragEvent): void => {
    if (!event.relatedTarget) gestures.dragging(false) // out of the window
  }

  const onDrop = (event: DragEvent): void => {
    gestures.dragging(false)
    if (event.defaultPrevented || !hasFiles(event)) return
    event.preventDefault()
    const file = event.dataTransfer?.files[0]
    if (file) gestures.file(file)
  }

  // What lies over the foot of the page would cover the field, or what is offered for it. No event of the focus is heard
  // outside the element within which it goes on; what brought it there, or is typed there, is.
  const onField = (): void => {
    const at = document.activeElement
    const field = at instanceof HTMLElement ? (focusedIn(at) ?? at) : at
    if (field?.matches('input, textarea') && matchMedia(isNarrow).matches) gestures.typing()
  }

  // A dialog that no press of a button opened has nothing that it could give the focus back to.
  const onOver = async (event: Event): Promise<void> => {
    if ((event as CustomEvent).detail) return
    await afterPaint()
    if (document.activeElement === document.body) gestures.lost()
  }

  keepFocusNear(gestures.lost, signal)
  for (const name of ['focusin', 'click', 'keyup', 'input'])
    window.addEventListener(name, onField, { signal })
  onField() // gone into before anything listened
  window.addEventListener('tb-over', onOver, { signal })
  window.addEventListener('keydown', onKey, { signal })
  window.addEventListener('paste', onPaste, { signal })
  window.addEventListener('dragover', onDragOver, { signal })
  window.addEventListener('dragleave', onDragLeave, { signal })
  window.addEventListener('drop', onDrop, { signal })
}
