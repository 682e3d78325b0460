/** What is printed, as heights of what is not to be broken; formulas begin a page unless all of a page is whole. */
export interface Part {
  readonly heights: readonly number[] // of its blocks, one after the other
  readonly isFormula: boolean
}

/** A block by its part and its place in it. */
export type BlockAt = readonly [part: number, block: number]

interface Page {
  readonly blocks: BlockAt[]
  room: number
  isWhole: boolean // no part of it goes on, or went on, on another page
}

/**
 * The blocks page by page. A part stands where all of it fits, a formula only where what is there before it is whole as well; one that fits
 * nowhere begins a page and goes on from block to block. `again` is the height of what then stands over it.
 */
export function paged(
  parts: readonly Part[],
  height: number,
  again: number,
): readonly (readonly BlockAt[])[] {
  const pages: Page[] = []
  const begin = (isWhole: boolean): Page => {
    const page = { blocks: [], room: height - (isWhole ? 0 : again), isWhole }
    pages.push(page)
    return page
  }
  for (const [part, { heights, isFormula }] of parts.entries()) {
    const total = heights.reduce((sum, h) => sum + h, 0)
    let page = pages.at(-1) ?? begin(true)
    const fits = total <= page.room && (page.isWhole || !isFormula)
    if (!fits && page.blocks.length > 0) page = begin(true)
    for (const [block, h] of heights.entries()) {
      if (h > page.room && page.blocks.length > 0) {
        page.isWhole = false
        page = begin(false)
      }
      page.blocks.push([part, block])
      page.room -= h
    }
  }
  return pages.map(({ blocks }) => blocks)
}

/**
 * The blocks page by page in the fewest pages: what closes it comes last, or next to what opens it, where breads then have their pages to
 * themselves.
 */
export function bestPaged(
  parts: readonly Part[],
  height: number,
  again: number,
): readonly (readonly BlockAt[])[] {
  const last = parts.length - 1
  const inOrder = paged(parts, height, again)
  if (last < 3 || parts[0]!.isFormula || parts[last]!.isFormula) return inOrder
  const order = [0, last, ...parts.keys()].filter((part, at) => at < 2 || (part > 0 && part < last))
  const closedFirst = paged(
    order.map(part => parts[part]!),
    height,
    again,
  )
  if (closedFirst.length > inOrder.length) return inOrder
  return closedFirst.map(page => page.map(([at, block]) => [order[at]!, block] as const))
}
