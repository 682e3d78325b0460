import type { Order } from './arranged.js'

/** Of what a long shelf offers beside its list. */
export const arrangeWords = {
  order: 'Order',
  choose: 'Choose',
} as const

export const orderWords: Readonly<Record<Order, string>> = {
  added: 'As added',
  name: 'By name',
  opened: 'Last opened',
  changed: 'Last changed',
}

/** Entries of a formula’s menu. */
export const moreActions = {
  order: 'What to weigh and order',
  group: 'Group…',
  choose: 'Choose several…',
} as const

/** While several are chosen. */
export const chooserWords = {
  name: 'Several formulas',
  chosen: (count: number): string =>
    count === 0 ? 'None chosen' : count === 1 ? 'One chosen' : `${count} chosen`,
  all: 'All',
  none: 'None',
  done: 'Done',
  sendOut: 'Send out',
  print: 'Print cards',
  labels: 'Labels',
  handout: 'Handout',
  group: 'Group',
  howMany: 'How many',
  delete: 'Delete',
  allOf: (group: string): string => `All of ${group}`,
  groupName: 'Name of the group',
  groupHint: 'A new name, or one there is. Without a name they are in no group.',
  putIn: 'Put into it',
  deleted: (count: number): string => `Deleted ${count} formulas. Undo takes them back.`,
} as const
