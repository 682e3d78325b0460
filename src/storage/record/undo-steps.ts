import type { Change } from '../../dough/document/workbook.js'

/** An edit that was made, and what takes it back. */
export interface Step<P> {
  readonly label: string
  readonly changes: readonly Change[]
  readonly inverse: readonly Change[]
  readonly place: P | undefined // where it was made
}

/** The edits that can be taken back, and those that can be done again; each the latest last. */
export interface Steps<P> {
  readonly done: readonly Step<P>[]
  readonly undone: readonly Step<P>[]
}
