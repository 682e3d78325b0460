/** What leaves of a day. */
export const outWords = {
  heat: (oven: string) => `Heat up ${oven || 'the oven'}`,
} as const
