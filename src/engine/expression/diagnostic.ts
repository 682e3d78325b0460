/** What is to be told: which sentence, by a code of its own in the whole house, with the figures in it. Plain data. */
export interface Diagnostic {
  readonly code: string
}

/** Of several diagnostics the one that a code stands for; one shape may serve several codes. */
type Of<C, D extends Diagnostic> = D extends unknown ? (C extends D['code'] ? D : never) : never

/** The sentences of a room in one language, one for each of its codes: as it is, or made from the figures. */
export type Sentences<D extends Diagnostic> = {
  readonly [C in D['code']]: string | ((figures: Of<C, D>) => string)
}

/** A diagnostic with its sentence. Programs decide by the code; the message is for people. */
export type Worded<D extends Diagnostic = Diagnostic> = D & { readonly message: string }

/** What puts the diagnostics of a room into these sentences. */
export const wording = <D extends Diagnostic>(sentences: Sentences<D>) => {
  // TypeScript cannot see that the sentence at a diagnostic's code takes that diagnostic's figures.
  const byCode = sentences as unknown as Readonly<Record<string, string | ((figures: D) => string)>>
  return (diagnostic: D): Worded<D> => {
    const sentence = byCode[diagnostic.code]!
    return { ...diagnostic, message: typeof sentence === 'string' ? sentence : sentence(diagnostic) }
  }
}

/** `a, b and c` */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
