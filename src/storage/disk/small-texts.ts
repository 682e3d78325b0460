/** Where the browser keeps small texts; stands for `localStorage`. */
export type Texts = Pick<Storage, 'getItem' | 'setItem'>

/** Safari throws on the mere mention of it where site data is switched off. */
export function pageTexts(): Texts | undefined {
  try {
    return localStorage
  } catch {
    return undefined
  }
}

/** One text. Where it cannot be kept, it is not, and nothing is said. */
export class SmallText {
  constructor(
    private readonly name: string,
    private readonly texts: Texts | undefined,
  ) {}

  get text(): string {
    try {
      return this.texts?.getItem(this.name) ?? ''
    } catch {
      return ''
    }
  }

  set text(text: string) {
    try {
      if (text || this.text) this.texts?.setItem(this.name, text)
    } catch {
      // Full.
    }
  }
}
