/** What a key asks of the grid while no editor is open. */
export type Command =
  | { readonly do: 'move'; readonly to: Direction; readonly extend: boolean }
  | { readonly do: 'shift'; readonly by: -1 | 1 } // moves the line or the stage
  | { readonly do: 'select'; readonly what: 'all' | 'row' | 'column' }
  | { readonly do: 'edit' | 'type' | 'clear' | 'undo' | 'redo' | 'addBelow' | 'actions' | 'ask' | 'stay' }

export type Direction =
  | 'left'
  | 'right'
  | 'up'
  | 'down'
  | 'rowStart'
  | 'rowEnd'
  | 'start'
  | 'end'
  | 'pageUp'
  | 'pageDown'

/** Where to go when an edit is kept. */
export type Leave = Direction | 'next' | 'previous' | 'stay'

/**
 * A key that belongs to composed input. Safari ends the composition before it sends the Enter that ended it;
 * the key code is 229 all the same (WebKit bug 165004).
 */
export const isComposing = (event: KeyboardEvent): boolean => event.isComposing || event.keyCode === 229

const isMac = (): boolean => /^(Mac|iP)/.test(navigator.platform)

/** A key that will put a character, or begin to compose one, in a field that has the focus. */
function typesText(event: KeyboardEvent): boolean {
  if (isComposing(event) || event.key === 'Dead' || event.key === 'Process') return true
  if ([...event.key].length !== 1 || event.key === ' ') return false
  if (event.getModifierState('AltGraph')) return true
  if (event.ctrlKey || event.metaKey) return false
  return !event.altKey || isMac()
}

export const isRightToLeft = (element: Element): boolean => getComputedStyle(element).direction === 'rtl'

const arrows: Readonly<Record<string, Direction>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
}
export const mirrored = (to: Direction): Direction => (to === 'left' ? 'right' : to === 'right' ? 'left' : to)

/** The arrow of a key without modifiers, as the reader sees it. */
export function arrowOf(event: KeyboardEvent, rtl: boolean): Direction | undefined {
  if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return undefined
  const to = arrows[event.key]
  return to && rtl ? mirrored(to) : to
}

/** What the key asks for outside an open editor; undefined: it is not the grid's. */
export function commandOf(event: KeyboardEvent, rtl: boolean): Command | undefined {
  const { key, shiftKey, altKey } = event
  const ctrl = event.ctrlKey || event.metaKey
  if (typesText(event)) return { do: 'type' }
  if (altKey) {
    if (!ctrl && (key === 'ArrowUp' || key === 'ArrowDown'))
      return { do: 'shift', by: key === 'ArrowUp' ? -1 : 1 }
    return key === 'Enter' && !ctrl && !shiftKey ? { do: 'ask' } : undefined
  }
  const arrow = arrows[key]
  if (arrow) return { do: 'move', to: rtl ? mirrored(arrow) : arrow, extend: shiftKey }
  switch (key) {
    case 'Home':
      return { do: 'move', to: ctrl ? 'start' : 'rowStart', extend: shiftKey }
    case 'End':
      return { do: 'move', to: ctrl ? 'end' : 'rowEnd', extend: shiftKey }
    case 'PageUp':
    case 'PageDown':
      return ctrl ? undefined : { do: 'move', to: key === 'PageUp' ? 'pageUp' : 'pageDown', extend: shiftKey }
    case 'Enter':
      return { do: ctrl ? 'addBelow' : 'edit' }
    case 'F2':
      return { do: 'edit' }
    case 'Delete':
    case 'Backspace':
      return ctrl ? undefined : { do: 'clear' }
    case ' ':
      if (ctrl) return { do: 'select', what: 'column' }
      return shiftKey ? { do: 'select', what: 'row' } : { do: 'stay' }
    case 'ContextMenu':
      return { do: 'actions' }
    case 'F10':
      return shiftKey ? { do: 'actions' } : undefined
  }
  if (!ctrl) return undefined
  switch (key.toLowerCase()) {
    case 'a':
      return { do: 'select', what: 'all' }
    case 'z':
      return { do: shiftKey ? 'redo' : 'undo' }
    case 'y':
      return { do: 'redo' }
  }
  return undefined
}
