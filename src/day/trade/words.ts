/** What the edits of orders are called when they are told and when they are undone. */
export const tradeLabels = {
  orders: (day: string): string => `Bake what is ordered on ${day}`,
  forAsMany: (from: number, to: number): string => `Make for ${to} in place of ${from}`,
} as const

/** Headings of what to weigh and order, as text. */
export const tradeTextWords = {
  order: 'To buy',
  costs: 'What it costs',
  weigh: 'To weigh, dough by dough',
} as const
