import { type CSSResultGroup, type CSSResultOrNative, LitElement, type PropertyDeclarations } from 'lit'
import type { FigureSheet } from '../../src/dough/sheet/figures.js'
import { sharedStyles } from '../styles/shared-styles.js'
import type { NumberStyle } from './numbers.js'

/** What all elements of the page have: the shared styles before their own, and how this baker writes numbers. */
export class BaseElement extends LitElement {
  static override properties: PropertyDeclarations = {
    numbers: { attribute: false },
    readOnly: { type: Boolean },
  }

  declare numbers: NumberStyle
  declare readOnly: boolean // another tab has the workbook: everything can be looked at, nothing changed

  constructor() {
    super()
    this.numbers = { language: 'en', decimal: '.' }
    this.readOnly = false
  }

  protected static override finalizeStyles(own: CSSResultGroup = []): CSSResultOrNative[] {
    return LitElement.finalizeStyles([sharedStyles, own])
  }
}

/** An element that shows something of the open formula's sheet. */
export class SheetElement extends BaseElement {
  static override properties: PropertyDeclarations = {
    sheet: { attribute: false },
    version: { type: Number },
  }

  declare sheet: FigureSheet | undefined // the same object while a formula is open
  declare version: number // goes up when the sheet's figures changed

  constructor() {
    super()
    this.version = 0
  }
}
