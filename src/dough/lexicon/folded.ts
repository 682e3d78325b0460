/** Whether a text has nothing but the signs of every keyboard. */
export const isPlain = (text: string): boolean => /^[ -~]*$/.test(text)

/** A word as it is looked up: lower case, without accents. */
export const folded = (text: string): string =>
  isPlain(text)
    ? text.toLowerCase()
    : text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('œ', 'oe').replaceAll('ß', 'ss')
