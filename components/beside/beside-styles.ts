import { css } from 'lit'
import { belowWide, narrow } from '../styles/breakpoints.js'

/** Two formulas beside each other: what is chosen above, and below two tables of figures with their differences. */
export const besideStyles = css`
  :host {
    --dialog-width: 1120px;
  }
  .choose {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto minmax(0, 1fr);
    align-items: end;
    gap: 8px 12px;
  }
  .choose label {
    display: block;
    margin-bottom: 3px;
  }
  .choose select {
    width: 100%;
  }
  .swap {
    display: grid;
    place-items: center;
    padding: 0;
  }
  .swap svg {
    width: 18px;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
    stroke-linejoin: round;
    fill: none;
  }
  .verdict {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 2px 20px;
    margin: 12px 0 0;
    max-width: none;
  }
  .verdict label {
    display: inline-flex;
    align-items: center;
    gap: 8px;
    min-height: var(--target);
    font-size: var(--size-small);
    color: var(--ink);
    cursor: pointer;
  }
  .verdict input {
    width: 18px;
    height: 18px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  table {
    width: 100%;
    border-collapse: collapse;
    table-layout: fixed;
    margin: 10px 0 0;
  }
  caption {
    text-align: left;
    padding: 18px 0 4px;
    font-size: var(--size-text);
    font-weight: 640;
  }
  th,
  td {
    padding: 7px 10px;
    text-align: right;
    font-weight: 400;
    border-bottom: 1px solid var(--rule);
    overflow-wrap: anywhere;
    vertical-align: baseline;
  }
  tr > :first-child {
    padding-left: 0;
    text-align: left;
  }
  tr > :last-child {
    padding-right: 0;
  }
  thead th {
    font-size: var(--size-fine);
    font-weight: 600;
    color: var(--ink-soft);
    vertical-align: bottom;
    border-bottom-color: var(--rule-strong);
  }
  thead .of {
    border-bottom: 0;
    padding-bottom: 0;
    color: var(--ink);
  }
  .stage th {
    padding-top: 20px;
    font-weight: 640;
    text-align: left;
    border-bottom-color: var(--rule-strong);
  }
  td.difference {
    font-weight: 640;
  }
  td.same {
    font-weight: 400;
    color: var(--ink-soft);
  }
  .lines .left-of {
    border-left: 1px solid var(--rule);
  }
  .settings :is(th, td) {
    text-align: left;
    white-space: pre-line;
  }
  .settings tbody th::first-letter {
    text-transform: uppercase;
  }
  .only {
    display: block;
    font-size: var(--size-small);
    color: var(--warn);
  }
  .none {
    color: var(--ink-soft);
  }
  .unit {
    display: none;
  }
  /* Where six columns of figures have no room, grams stand under per cent, each with its unit. */
  @media ${belowWide} {
    thead .of,
    thead tr > :nth-child(n + 5) {
      position: absolute;
      clip-path: inset(50%);
      width: 1px;
      height: 1px;
      overflow: hidden;
    }
    table,
    caption,
    thead,
    tbody {
      display: block;
    }
    tr {
      display: grid;
      grid-template-columns: minmax(0, 1.4fr) repeat(3, minmax(0, 1fr));
      gap: 2px 12px;
      padding: 9px 0;
      border-bottom: 1px solid var(--rule);
    }
    thead tr {
      align-items: end;
      padding: 6px 0 4px;
      border-color: var(--rule-strong);
    }
    thead tr:has(.of) {
      padding: 0;
      border: 0;
    }
    th,
    td,
    .lines .left-of {
      padding: 0;
      border: 0;
    }
    tbody th {
      grid-row: 1 / span 2;
    }
    .stage th {
      grid-column: 1 / -1;
      padding-top: 14px;
    }
    .settings tr {
      grid-template-columns: minmax(0, 1fr) repeat(2, minmax(0, 1.3fr));
    }
    .settings tbody th {
      grid-row: auto;
    }
    .unit {
      display: inline;
    }
  }
  @media ${narrow} {
    .choose {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .choose > :last-child {
      grid-column: 1;
    }
    .choose .swap {
      grid-column: 2;
      grid-row: 1 / 3;
      align-self: center;
    }
    tr {
      grid-template-columns: repeat(3, minmax(0, 1fr));
    }
    .settings tr {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    thead {
      position: sticky;
      top: -16px; /* the padding of what scrolls */
      background: var(--board);
    }
    thead tr > :first-child {
      position: absolute;
      clip-path: inset(50%);
      width: 1px;
      height: 1px;
      overflow: hidden;
    }
    thead th {
      line-height: 1.25;
    }
    th,
    td {
      text-align: left;
    }
    tr > :nth-child(4),
    td.difference {
      text-align: right;
    }
    tbody th {
      grid-column: 1 / -1;
      grid-row: auto;
    }
  }
`
