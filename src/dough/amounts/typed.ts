/** What was typed of an amount or a calculation, without the “=” with which other programs begin one. Alone or doubled it stays. */
export const typedText = (typed: string): string => typed.trim().replace(/^[=＝]\s*(?=[^=＝\s])/, '')
