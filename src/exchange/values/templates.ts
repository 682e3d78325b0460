import type { Sentences } from '../../engine/index.js'

/**
 * Sentences as templates. Figures stand in braces, each with how it is said: `{weight:grams}`. Of `{rows:gives|give}` the
 * first is said of a single row and of what is true, the second of several and of what is not.
 */
export type Templates = Readonly<Record<string, string>>

/** How figures are said, by the names that templates give. */
type Sayings = Readonly<Record<string, (figure: never) => string>>

type FigureSaid<How, S extends Sayings> = How extends keyof S
  ? Parameters<S[How]>[0]
  : How extends `${string}|${string}`
    ? boolean | readonly number[]
    : number | string
/** The figures that a sentence needs. */
type Figures<T, S extends Sayings> = T extends `${string}{${infer Braced}}${infer Rest}`
  ? (Braced extends `${infer Name}:${infer How}`
      ? { readonly [N in Name]: FigureSaid<How, S> }
      : { readonly [N in Braced]: N extends 'row' ? number : number | string }) &
      Figures<Rest, S>
  : unknown

/** A code of the templates with the figures that its sentence needs. */
export type ReasonOf<T extends Templates, S extends Sayings> = {
  [C in keyof T & string]: { readonly code: C } & Figures<T[C], S>
}[keyof T & string]

function filled(template: string, figures: object, said: Sayings): string {
  return template.replace(/\{(\w+)(?::([^}]*))?\}/g, (_, name: string, how = '') => {
    const figure: unknown = figures[name as keyof typeof figures]
    const [one, other] = how.split('|')
    if (other !== undefined) return (Array.isArray(figure) ? figure.length === 1 : figure) ? one : other
    return Object.hasOwn(said, how) ? said[how]!(figure as never) : String(figure)
  })
}

/** The sentences of templates. */
export const sentencesOf = <T extends Templates, S extends Sayings>(templates: T, said: S) =>
  // each template says by itself which figures it needs, which is what `Figures` reads off it
  Object.fromEntries(
    Object.entries(templates).map(([code, template]) => [code, (of: object) => filled(template, of, said)]),
  ) as unknown as Sentences<ReasonOf<T, S>>
