import type { Worded } from '../../engine/index.js'
import type { Count, LinePlan, StagePlan } from './outline.js'

/** What a name in an amount stands for. `lines` are weights of the stage's own lines. */
export type Meant =
  | { readonly kind: 'base' }
  | { readonly kind: 'unit'; readonly grams: number; readonly name: string }
  | { readonly kind: 'lines'; readonly lines: readonly LinePlan[] } // of the stage itself
  | { readonly kind: 'far lines'; readonly lines: readonly LinePlan[]; readonly stage: StagePlan }
  | { readonly kind: 'count'; readonly count: Count; readonly stage: StagePlan }
  | { readonly kind: 'stage weight' | 'stage base'; readonly stage: StagePlan }
  | { readonly kind: 'all'; readonly stage: StagePlan } // that the line's stage makes, but for what others take
  | { readonly kind: 'jotting' | 'reading'; readonly name: string } // a reading by its program's name
  | { readonly kind: 'unknown'; readonly problem: Worded }
