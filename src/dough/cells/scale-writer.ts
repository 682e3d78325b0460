import type { Outline } from '../outline/outline.js'
import type { CellWriter } from './cell-writer.js'

/** Writes the cells of a formula that is scaled; `scale-cells.ts` has the one there is. */
export type ScaleWriter = (out: CellWriter, outline: Outline) => void

let writer: ScaleWriter | undefined

/** Gives the writer to all formulas from then on: few hold their dough's weight in proportion, so a page begins without it. */
export const useScale = (write: ScaleWriter): void => {
  writer = write
}

export const writeScale: ScaleWriter = (out, outline) => writer?.(out, outline)
