/**
 * Small choices of one browser, such as the paper in its printer. They are no part of the workbook; where
 * a browser keeps nothing, they last as long as the page.
 */
const here = new Map<string, string>()
const nameOf = (key: string): string => `tarebook ${key}`

/** The choice kept under a key, when it is still one of those there are. */
export function ownChoice<T extends string>(key: string, among: readonly T[], otherwise: T): T {
  let kept = here.get(key)
  try {
    kept ??= localStorage.getItem(nameOf(key)) ?? undefined
  } catch {
    // a browser told to keep nothing
  }
  return among.find(one => one === kept) ?? otherwise
}

export function keepOwnChoice(key: string, choice: string): void {
  here.set(key, choice)
  try {
    localStorage.setItem(nameOf(key), choice)
  } catch {
    // it lasts as long as the page, then
  }
}
