import { readStep, together } from './step-text.js'

const inText = new RegExp(String.raw`[\s,;]*(?<![\p{L}\d.,])${together.source.slice(1)}`, 'iu')

/** A step without how many go in at once, which is a matter of whose oven it is: `45 min, at 240 °C` of `45 min, at 240 °C, 12 at once`. */
export const withoutLoad = (text: string): string =>
  readStep(text).atOnce === undefined ? text : text.replace(inText, '').replace(/^[\s,;]+/, '')
