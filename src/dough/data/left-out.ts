/** What is a list in the data of a formula or a day. */
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

/** What was left out of a formula, an ingredient or a day. */
export type LeftOut =
  | { readonly code: 'fieldNotUnderstood'; readonly field: string }
  | { readonly code: 'itemsUnreadable'; readonly listed: Listed; readonly count: number }
  | { readonly code: 'idsRepeated' }
