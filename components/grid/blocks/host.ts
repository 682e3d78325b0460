import type { Edit } from '../../base/events.js'
import type { Extent } from '../moving/steps.js'
import type { Column, Given, Table } from '../table/table.js'

/** What the blocks ask of the grid around them. */
export interface BlocksHost {
  readonly given: Given
  columns(): readonly Column[]
  table(): Table
  extent(): Extent
  /** Makes the edit and keeps the place; false: it was refused, and the baker has been told. */
  act(edit: Edit): boolean
  say(sentence: string): void
}
