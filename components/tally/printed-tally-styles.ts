import { css } from 'lit'

/** The tally on paper: as wide as the sheet, so that it takes a third of the height. */
export const printedTallyStyles = css`
  @media print {
    :host {
      display: grid;
      grid-template-columns: repeat(2, minmax(0, 1fr));
      grid-auto-flow: dense;
      gap: 0 32px;
    }
    :host > * {
      grid-column: 1 / -1;
    }
    .lead {
      grid-column: 1;
    }
    .listed {
      display: grid;
      grid-template-columns: auto auto;
      gap: 0 12px;
      max-width: none;
      place-content: start end;
    }
    .listed dd + dt {
      margin: 0;
    }
    .listed .words {
      grid-column: 1 / -1;
    }
    .pair {
      grid-column: 2;
      margin: 0;
    }
    .pair .reading {
      padding: 0;
      border: 0;
    }
    .lead .reading .figure {
      font-size: var(--size-title);
    }
    .ledger {
      columns: 2;
      column-gap: 32px;
      padding: 0;
    }
    .ledger .reading {
      break-inside: avoid;
      padding: 1px 0;
    }
    tb-remarks {
      margin-top: 10px;
    }
    .ledger .how {
      min-height: 0;
    }
    .scale {
      display: none;
    }
    .how {
      display: inline;
    }
    .figure {
      text-decoration: none;
    }
  }
`
