/** What is remembered of a workbook beside its database: browsers drop a damaged one whole, and not this. */
export interface WasHere {
  readonly savedAt: string // ISO 8601
  readonly formulas: number
}

const nameOf = (database: string): string => `tarebook was here ${database}`

export function wasHere(database: string): WasHere | undefined {
  try {
    const { savedAt, formulas } = JSON.parse(localStorage.getItem(nameOf(database)) ?? '{}')
    const isSound = !Number.isNaN(Date.parse(savedAt)) && Number.isInteger(formulas)
    return isSound ? { savedAt, formulas } : undefined
  } catch {
    return undefined // site data are switched off, or it is damaged
  }
}

export function rememberHere(database: string, was: WasHere): void {
  try {
    localStorage.setItem(nameOf(database), JSON.stringify(was))
  } catch {
    // Then a workbook that is gone cannot be told from one that never was.
  }
}
