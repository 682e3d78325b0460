import type { Room } from './tb-head.js'

const wide = matchMedia('(min-width: 1100px)')
const middle = matchMedia('(min-width: 720px)')

/** How much room the window gives the page: three columns, two with a drawer, or one place at a time. */
export const roomNow = (): Room => (wide.matches ? 'wide' : middle.matches ? 'middle' : 'narrow')

/** Calls back when the room becomes another, until the returned function is called. */
export function watchRoom(changed: (room: Room) => void): () => void {
  const measure = () => changed(roomNow())
  for (const query of [wide, middle]) query.addEventListener('change', measure)
  return () => {
    for (const query of [wide, middle]) query.removeEventListener('change', measure)
  }
}

/** What sticks below the header has to know its height, which follows the name of the workbook and zoomed text. */
export function tellHeadHeight(head: HTMLElement, page: HTMLElement): void {
  const measured = new ResizeObserver(() => {
    for (const told of [page, document.documentElement])
      told.style.setProperty('--head', `${head.offsetHeight}px`)
  })
  measured.observe(head)
}
