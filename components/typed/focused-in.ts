/** The element within that has the focus, through all shadow roots. */
export function focusedIn(element: HTMLElement): HTMLElement | undefined {
  let at = element.shadowRoot?.activeElement
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement
  return at instanceof HTMLElement ? at : undefined
}
