import { isBroader, isWide } from '../styles/breakpoints.js'

/** How the window lays the page out: three columns, two with a drawer, or one place at a time. */
export type Layout = 'wide' | 'middle' | 'narrow'

const wide = matchMedia(isWide)
const middle = matchMedia(isBroader)

export const layoutNow = (): Layout => (wide.matches ? 'wide' : middle.matches ? 'middle' : 'narrow')

/** Calls back when the layout becomes another, until the returned function is called. */
export function watchLayout(changed: (layout: Layout) => void): () => void {
  const measure = () => changed(layoutNow())
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
