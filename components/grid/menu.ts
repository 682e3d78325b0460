import { html, nothing, type TemplateResult } from 'lit'
import type { Action } from './actions.js'

/** The menu of a row, in the browser's top layer; one for the whole grid. */
export const menuTemplate = (actions: readonly Action[], label: string): TemplateResult => html`
  <div id="menu" role="menu" popover aria-label=${label || 'Actions'}>
    ${actions.map(
      (action, i) => html`${action.apart && i > 0 ? html`<hr role="separator" />` : nothing}<button
          role=${action.checked === undefined ? 'menuitem' : 'menuitemradio'}
          aria-checked=${action.checked === undefined ? nothing : String(action.checked)}
          tabindex="-1"
          data-action=${i}
        ><span>${action.label}</span>${
          action.keys ? html`<kbd aria-hidden="true">${action.keys}</kbd>` : nothing
        }</button>`,
    )}
  </div>
`

/** Opens the menu by the thing it belongs to, inside the window, with the first entry in focus. */
export function openMenu(menu: HTMLElement, by: HTMLElement): void {
  menu.showPopover()
  const near = by.getBoundingClientRect()
  const { offsetWidth, offsetHeight, style } = menu
  const below = near.bottom + offsetHeight + 8 < innerHeight
  style.left = `${Math.max(8, Math.min(near.right - offsetWidth, innerWidth - offsetWidth - 8))}px`
  style.top = `${below ? near.bottom + 2 : Math.max(8, near.top - offsetHeight - 2)}px`
  menu.querySelector('button')?.focus()
}

/** Moves in the menu by arrow keys, Home, End and first letters. Says whether the key was the menu's. */
export function moveInMenu(menu: HTMLElement, event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false
  const entries = [...menu.querySelectorAll('button')]
  const at = entries.findIndex(e => e.matches(':focus'))
  const places: Readonly<Record<string, number>> = {
    ArrowDown: (at + 1) % entries.length,
    ArrowUp: (at - 1 + entries.length) % entries.length,
    Home: 0,
    End: entries.length - 1,
  }
  const place = places[event.key]
  const letter = event.key.toLowerCase()
  const after = [...entries.slice(at + 1), ...entries.slice(0, at + 1)]
  const next =
    place === undefined
      ? [...letter].length === 1 && letter !== ' '
        ? after.find(e => e.textContent?.trim().toLowerCase().startsWith(letter))
        : undefined
      : entries[place]
  if (!next) return false
  next.focus()
  return true
}
