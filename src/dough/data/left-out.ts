/** What is a list in the data of a formula, a day or a bake. */
export type Listed =
  | 'line'
  | 'stage'
  | 'meaning'
  | 'setting'
  | 'hold'
  | 'jotting'
  | 'step'
  | 'kept state'
  | 'bread'
  | 'oven'
  | 'night'
  | 'mixing'
  | 'moment'
  | 'weight'
  | 'figure'
  | 'timer'

/** What was left out of a formula, an ingredient, a day or a bake. */
export type LeftOut =
  | { readonly code: 'fieldNotUnderstood'; readonly field: string }
  | { readonly code: 'itemsUnreadable'; readonly listed: Listed; readonly count: number }
  | { readonly code: 'idsRepeated' }
