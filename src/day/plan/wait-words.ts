/** By what to tell that a wait is over. */
export type Look =
  | { readonly of: 'levain' | 'proof' | 'retard' }
  | { readonly of: 'bulk'; readonly rise: number } // part of its volume by which it has grown

/** What to look for: volume, dome, smell. */
export function lookWords(look: Look): string {
  switch (look.of) {
    case 'levain':
      return 'grown to about twice its height, full of bubbles, still domed; it smells fresh and a little sour'
    case 'bulk':
      return `grown by about ${Math.round(look.rise * 20) * 5} % of its volume, domed at the rim, bubbles at the sides; it smells sweet and fresh`
    case 'proof':
      return 'light to the touch and domed; a dent made with a finger comes back slowly and not all the way'
    case 'retard':
      return 'a little grown, domed, firm to the touch'
  }
}
