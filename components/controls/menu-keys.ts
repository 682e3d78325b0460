/** The entry of a menu to which an arrow key, Home, End or a first letter leads from the one with the focus. */
export function entryBy(event: KeyboardEvent, entries: readonly HTMLElement[]): HTMLElement | undefined {
  if (event.ctrlKey || event.metaKey || event.altKey) return undefined
  const at = entries.findIndex(entry => entry.matches(':focus'))
  const places: Readonly<Record<string, number>> = {
    ArrowDown: (at + 1) % entries.length,
    ArrowUp: (at - 1 + entries.length) % entries.length,
    Home: 0,
    End: entries.length - 1,
  }
  const place = places[event.key]
  if (place !== undefined) return entries[place]
  const letter = event.key.toLowerCase()
  if ([...letter].length !== 1 || letter === ' ') return undefined
  const inOrder = [...entries.slice(at + 1), ...entries.slice(0, at + 1)]
  return inOrder.find(entry => entry.textContent?.trim().toLowerCase().startsWith(letter))
}

/** Opens a menu at what it is of, one side in line with it; above where there is no room beneath. */
export function openBy(menu: HTMLElement, opener: HTMLElement, side: 'left' | 'right'): void {
  menu.showPopover()
  const near = opener.getBoundingClientRect()
  const { offsetWidth, offsetHeight, style } = menu
  const left = side === 'left' ? near.left : near.right - offsetWidth
  const isBelow = near.bottom + offsetHeight + 8 < innerHeight
  style.left = `${Math.max(8, Math.min(left, innerWidth - offsetWidth - 8))}px`
  style.top = `${isBelow ? near.bottom + 4 : Math.max(8, near.top - offsetHeight - 4)}px`
}
