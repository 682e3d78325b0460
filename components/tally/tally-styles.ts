import { css } from 'lit'

/** Three readings large, the others as a ledger; under each what it is held at and how it came about. */
export const tallyStyles = css`
  :host {
    display: block;
  }
  h2 {
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
    margin: 0 0 10px;
  }
  dl,
  dt,
  dd,
  p {
    margin: 0;
  }
  dt {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .lead {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
  }
  .pair {
    display: grid;
    grid-template-columns: repeat(2, minmax(0, 1fr));
    column-gap: 16px;
    margin-top: 10px;
  }
  .reading {
    min-width: 0;
  }
  .lead .reading {
    display: contents;
  }
  .lead .reading .words {
    grid-column: 1 / -1;
  }
  .lead .reading .value {
    align-self: start;
  }
  .lead .reading dt,
  .lead .reading .value {
    grid-column: 1;
  }
  .listed {
    grid-column: 2;
    grid-row: 1 / span 2;
    max-width: 96px;
    text-align: right;
  }
  /* What a number is typed in, with the line that gives, is wider than the number. */
  .lead:has(.listed tb-hold) {
    grid-template-columns: minmax(0, 1fr);
  }
  .listed:has(tb-hold) {
    grid-column: 1;
    grid-row: auto;
    max-width: none;
    margin-top: 8px;
    text-align: left;
  }
  .listed dd + dt {
    margin-top: 8px;
  }
  .listed .weighed {
    white-space: normal;
  }
  .pair .reading {
    display: grid;
    grid-row: span 3;
    grid-template: subgrid / minmax(0, 1fr);
    padding: 12px 0 8px;
    border-top: 1px solid var(--rule);
  }
  .pair dt {
    align-self: end;
  }

  .value {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 2px;
  }
  .how {
    min-width: 0;
    min-height: 24px;
    margin-inline: -6px 0;
    padding: 0 6px;
    white-space: nowrap;
  }
  .figure {
    font-size: var(--size-title);
    font-weight: 300;
    letter-spacing: -0.02em;
    line-height: 1.15;
    text-decoration: underline;
    text-decoration-style: dotted;
    text-decoration-color: var(--rule-strong);
    text-decoration-thickness: 1.5px;
    text-underline-offset: 0.18em;
  }
  .how:hover .figure,
  .how[aria-expanded='true'] .figure {
    text-decoration-style: solid;
    text-decoration-color: var(--accent);
    text-decoration-thickness: 2px;
  }
  .how:focus-visible {
    outline-offset: 0;
  }
  .pair .figure {
    font-size: var(--size-title);
  }
  .pair :is(.hold, .held) {
    padding-inline: 4px;
  }
  .lead .reading .figure {
    font-size: var(--size-reading);
    letter-spacing: -0.035em;
    line-height: 1.05;
    text-underline-offset: 0.1em;
  }
  .listed .figure {
    font-size: var(--size-lead);
    font-weight: 400;
  }
  .listed .value {
    flex-direction: column;
    align-items: flex-end;
  }
  .listed:has(tb-hold) .value {
    align-items: flex-start;
  }
  .listed .value:has(tb-hold) {
    display: block;
  }
  .listed .how,
  .listed .hold {
    margin-right: -6px;
  }
  .ledger .reading:has(tb-hold) .value {
    grid-column: 1 / -1;
  }
  .unit,
  .none {
    color: var(--ink-soft);
  }
  .none {
    text-decoration: none;
  }
  .hold {
    min-width: 0;
    min-height: 28px;
    padding: 0 6px;
    font-size: var(--size-fine);
    color: var(--ink-soft);
  }
  .hold:hover {
    color: var(--accent);
  }
  .held {
    padding-inline: 6px;
    font-size: var(--size-fine);
    font-weight: 600;
    color: var(--accent);
  }
  .listed .held {
    padding-inline: 0;
  }
  .words {
    font-size: var(--size-fine);
    color: var(--ink-soft);
  }
  .outside span:first-of-type {
    color: var(--warn);
    font-weight: 600;
  }
  .weighed {
    white-space: nowrap;
  }
  .lead .reading .weighed::before {
    content: '· ';
  }
  .pair .weighed {
    display: block;
  }
  .why {
    line-height: 1.35;
  }

  .kept {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 10px;
    margin: 6px 0 8px;
    padding: 2px 0 2px 12px;
    border-left: 3px solid var(--accent);
    font-size: var(--size-small);
    line-height: 1.35;
    text-wrap: balance;
  }
  .kept .do {
    margin-left: -8px;
    white-space: nowrap;
  }
  .kept button {
    min-width: 0;
    min-height: 28px;
    padding: 2px 8px;
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 3px;
  }

  .ledger {
    border-top: 1px solid var(--rule-strong);
    margin-top: 8px;
  }
  .ledger .reading {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    padding: 3px 0;
    border-bottom: 1px solid var(--rule);
  }
  .ledger .value {
    flex-direction: row-reverse;
    align-items: center;
  }
  .ledger .how {
    min-height: 30px;
    margin: 0 -6px 0 0;
  }
  .ledger .figure {
    font-size: var(--size-text);
    font-weight: 400;
    letter-spacing: 0;
  }
  .ledger .unit {
    display: inline-block;
    width: 1.4em;
    text-align: left;
  }
  .ledger .words {
    grid-column: 1 / -1;
    padding-bottom: 4px;
  }
  .ledger .words:not(.why) {
    text-align: right;
  }
  .ledger .under {
    grid-column: 1 / -1;
  }
  .under:empty {
    display: none;
  }

  .strip {
    display: grid;
    grid-template-columns: repeat(3, auto);
    justify-content: space-between;
    gap: 12px;
  }
  .strip > div {
    position: relative;
  }
  .strip dt {
    font-size: var(--size-fine);
    line-height: 1.2;
  }
  .strip .how {
    position: static;
    margin: 0;
    padding: 0;
    background: none;
  }
  .strip .how::after {
    content: '';
    position: absolute;
    inset: -6px -6px -4px; /* name and number are one target */
    border-radius: var(--radius);
  }
  .strip .figure {
    font-size: var(--size-figure);
    font-weight: 350;
  }
  .strip .unit {
    font-size: var(--size-small);
  }
  .strip .held {
    padding-inline: 3px 0;
    font-size: var(--size-fine);
  }

  @media (pointer: coarse) {
    .hold,
    .kept button,
    .ledger .how {
      min-height: 44px;
      padding-inline: 8px;
    }
    .ledger .reading {
      padding: 0;
    }
  }
  @media (forced-colors: active) {
    .how,
    .hold {
      border-color: transparent;
    }
    .hold,
    .held {
      color: CanvasText;
    }
    .hold {
      text-decoration: underline;
    }
  }
`
