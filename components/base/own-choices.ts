/**
 * Small choices of one browser, such as the paper in its printer. They are no part of the workbook; where
 * a browser keeps nothing, they last as long as the page.
 */
const here = new Map<string, string>()
const nameOf = (key: string): string => `tarebook ${key}`

function kept(key: string): string | null | undefined {
  try {
    return localStorage.getItem(nameOf(key))
  } catch {
    return here.get(key)
  }
}

/** The choice kept under a key, when it is still one of those there are. */
export function ownChoice<T extends string>(key: string, among: readonly T[], otherwise: T): T {
  const choice = kept(key)
  return among.find(one => one === choice) ?? otherwise
}

export function keepOwnChoice(key: string, choice: string): void {
  try {
    localStorage.setItem(nameOf(key), choice)
  } catch {
    here.set(key, choice)
  }
}
