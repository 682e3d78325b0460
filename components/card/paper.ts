import { keepOwnChoice, ownChoice } from '../base/own-choices.js'

export type PaperName = 'a4' | 'letter'

/** A sheet of paper, in millimetres. */
export interface Paper {
  readonly size: string // as @page calls it
  readonly width: number
  readonly height: number
}

export const papers: Readonly<Record<PaperName, Paper>> = {
  a4: { size: 'A4', width: 210, height: 297 },
  letter: { size: 'letter', width: 215.9, height: 279.4 },
}

/** Millimetres on each side that no printer reaches, or that a pin goes through. */
export const paperMargin = 11

/** The paper last chosen in this browser; Letter where the language is one of North America's. */
export const ownPaper = (language: string): PaperName =>
  ownChoice('paper', ['a4', 'letter'], /-(?:us|ca|mx|ph)$/i.test(language) ? 'letter' : 'a4')

export const keepOwnPaper = (paper: PaperName): void => keepOwnChoice('paper', paper)

const sheet = new CSSStyleSheet()

/** A text as style sheets have it. */
const quoted = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} .,:·’()&-]/gu, mark => `\\${mark.codePointAt(0)!.toString(16)} `)}"`

const footStyle = 'font: 9pt system-ui, sans-serif'

/**
 * Has the page printed on that paper until it is called with none; with `foot`, that and its number are at the foot of each page. Rules
 * for pages have no effect within an element.
 */
export function printOn(paper: PaperName | undefined, foot?: string): void {
  if (paper) {
    const left = foot === undefined ? 'none' : quoted(foot)
    const right = foot === undefined ? 'none' : "counter(page) ' / ' counter(pages)"
    sheet.replaceSync(
      `@page { size: ${papers[paper].size}; margin: ${paperMargin}mm; @bottom-left { content: ${left}; ${footStyle} } @bottom-right { content: ${right}; ${footStyle} } }`,
    )
  }
  const others = document.adoptedStyleSheets.filter(other => other !== sheet)
  document.adoptedStyleSheets = paper ? [...others, sheet] : others
}
