import { pageTexts, type Texts } from './small-texts.js'

const most = 100 // entries; the oldest goes first

/** Small things that make work easier next time and that nobody misses when they are gone. */
export interface Remembered {
  all(): Readonly<Record<string, unknown>> // as stored: the reader looks at each
  put(key: string, value: unknown): void
  forget(key: string): void
}

/**
 * What is remembered under a name, as JSON in the browser's small storage: read at once, and the same in every tab. Where
 * that is full or switched off, nothing is remembered, and nothing is said.
 */
export function remembered(name: string, texts: Texts | undefined = pageTexts()): Remembered {
  const place = `tarebook ${name}`

  function entries(): (readonly [string, unknown])[] {
    try {
      const kept: unknown = JSON.parse(texts?.getItem(place) ?? '[]')
      return Array.isArray(kept)
        ? kept.filter(
            (one): one is [string, unknown] =>
              Array.isArray(one) && one.length === 2 && typeof one[0] === 'string',
          )
        : []
    } catch {
      return []
    }
  }

  function keep(kept: readonly (readonly [string, unknown])[]): void {
    try {
      texts?.setItem(place, JSON.stringify(kept.slice(-most)))
    } catch {
      // Full: it is asked for again next time.
    }
  }

  const others = (key: string) => entries().filter(([known]) => known !== key)
  return {
    all: () => Object.fromEntries(entries()),
    put: (key, value) => keep([...others(key), [key, value]]),
    forget: key => keep(others(key)),
  }
}
