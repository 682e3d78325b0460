/** What lies over the page: a dialog, something as it is printed. While it does it is a place in the browser's history. */
export interface OverPage {
  readonly leave: () => boolean // as Escape does; false where it is still there, since it asks first or goes back within itself
}

/** Tells that an element lies over the page, or does no more where nothing is given. */
export function tellOver(from: HTMLElement, over?: OverPage): void {
  from.dispatchEvent(new CustomEvent('tb-over', { detail: over, bubbles: true, composed: true }))
}
