import { css } from 'lit'
import { belowWide } from '../styles/breakpoints.js'

/** Labels beneath each other, each in its border, with what is to be settled beside it. */
export const labelStyles = css`
  .paper {
    font-size: 10.5pt;
    line-height: 1.35;
  }
  .bar .losses {
    display: flex;
    flex: 1 1 100%;
    flex-wrap: wrap;
    gap: 4px 28px;
    align-items: center;
    font-size: var(--size-text);
  }
  .losses label {
    display: flex;
    gap: 8px;
    align-items: center;
    min-height: var(--target);
  }
  .losses input {
    width: 4.5em;
    text-align: right;
  }
  .losses .fault {
    flex: 1 1 100%;
    margin: 0;
    color: var(--warn);
    font-size: var(--size-small);
  }
  .told {
    margin: 0;
    font-size: var(--size-small);
  }
  .one {
    display: grid;
    grid-template-columns: minmax(0, 92mm) minmax(0, 1fr);
    gap: 0 7mm;
    align-items: start;
    break-inside: avoid;
  }
  .one + .one {
    margin-top: 7mm;
  }
  .label {
    padding: 4mm 5mm 4.5mm;
    border: 1px solid #000;
    overflow-wrap: anywhere;
  }
  h1 {
    margin-bottom: 0.4em;
    font-size: 1.55em;
  }
  .paper .label p {
    margin-top: 0.55em;
  }
  .label table {
    width: 100%;
    margin-top: 0.9em;
    border-collapse: collapse;
    border-bottom: 1px solid #000;
    font-variant-numeric: tabular-nums;
  }
  caption {
    padding-bottom: 0.15em;
    font-weight: 700;
    text-align: left;
    border-bottom: 2px solid #000;
  }
  .label :is(th, td) {
    padding: 0.12em 0;
    font-weight: 400;
    text-align: left;
    border-top: 0.75px solid #aaa;
  }
  .label tr:first-child > * {
    border-top: 0;
  }
  .label td {
    text-align: right;
    white-space: nowrap;
  }
  .label .part th {
    padding-left: 1.1em;
  }
  .paper .label .calculated {
    font-size: 0.82em;
  }
  .sentences {
    font-size: 0.92em;
  }
  h2 {
    margin: 0 0 0.3em;
    font-size: 1.05em;
    font-weight: 700;
    break-after: avoid;
  }
  .sentences ul {
    margin: 0;
    padding-left: 1.1em;
  }
  .sentences li + li {
    margin-top: 0.35em;
  }
  .rules {
    margin-top: 7mm;
    padding-top: 3mm;
    border-top: 1px solid #000;
    break-inside: avoid;
  }
  @media screen and ${belowWide} {
    .paper:not(.fitted) .one {
      grid-template-columns: minmax(0, 1fr);
      gap: 16px;
    }
  }
`
