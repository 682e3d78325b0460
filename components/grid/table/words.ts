/** What a line is called that has no ingredient, where another waits for it. */
export const someLine = 'a line'
export const placeWords = (line: string, stage: string): string => `${line} in ${stage}`

/** Of a stage, beside its name. Weights come with their digits, without the unit. */
export const stageWords = {
  build: 'a build',
  ferments: (does: boolean): string => (does ? 'ferments' : 'does not ferment'),
  hydration: (percent: string): string => `${percent.replace(/[.,]0+$/, '')} % hydration`,
  written: (weight: string): string => `${weight} g as written`,
  waitsFor: (cause: string): string => `waits for ${cause}`,
  notTaken: 'not taken yet',
  taken: (weight: string): string => `${weight} g taken`,
} as const

export const shareOfFlour = (percent: string): string => `${percent} of all flour`
