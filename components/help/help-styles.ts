import { css } from 'lit'
import { narrow } from '../styles/breakpoints.js'

/** Contents beside the text; tables and sums ruled. */
export const helpStyles = css`
  :host {
    --dialog-width: 920px;
  }
  .body {
    display: grid;
    grid-template-columns: 184px minmax(0, 1fr);
    gap: 0 36px;
    padding-top: 0;
    align-items: start;
  }
  .body:focus-visible {
    outline-offset: -2px;
  }
  nav {
    position: sticky;
    top: 0;
    padding-top: 16px;
  }
  nav ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  nav button {
    width: 100%;
    margin-left: -12px;
    text-align: left;
    color: var(--accent);
  }
  .text > h3 {
    margin: 0 0 8px;
    padding-top: 22px;
    font-size: var(--size-lead);
    scroll-margin-top: 0;
  }
  .text > h3:not(:first-child) {
    margin-top: 30px;
    border-top: 1px solid var(--rule);
  }
  h3:focus-visible {
    outline: none; /* focused by program, so that reading goes on here */
  }
  ol,
  ul {
    margin: 0 0 12px;
    padding-left: 1.3em;
    max-width: 66ch;
  }
  .text li {
    padding: 3px 0;
  }
  code {
    font: 0.9em ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', Menlo, monospace;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    table-layout: fixed;
    margin: 4px 0 12px;
  }
  th,
  td {
    text-align: left;
    vertical-align: baseline;
    padding: 7px 0;
    border-bottom: 1px solid var(--rule);
    overflow-wrap: anywhere;
    font-weight: 400;
  }
  th {
    padding-right: 16px;
  }
  thead th:first-child {
    width: 34%;
  }
  thead th {
    font-size: var(--size-fine);
    font-weight: 600;
    color: var(--ink-soft);
    border-bottom: 1.5px solid var(--rule-strong);
  }
  .sums {
    margin: 4px 0 14px;
  }
  .sums div {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 16px;
    padding: 7px 0;
    border-bottom: 1px solid var(--rule);
  }
  dd {
    margin: 0;
  }
  .sums dd {
    margin-left: auto;
    text-align: right;
    color: var(--ink-soft);
  }
  .sums b {
    display: inline-block;
    min-width: 5.2em;
    text-align: right;
    color: var(--ink);
  }
  .terms {
    margin: 0;
  }
  .terms div {
    padding: 8px 0;
    border-bottom: 1px solid var(--rule);
  }
  .terms div:last-child {
    border: 0;
  }
  .terms dt {
    font-weight: 640;
  }
  .terms dd {
    max-width: 66ch;
  }
  .apart {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
  }
  @media ${narrow} {
    .body {
      display: block;
    }
    nav {
      position: static;
      padding-top: 8px;
      border-bottom: 1px solid var(--rule);
      padding-bottom: 8px;
    }
    nav ul {
      columns: 2;
      column-gap: 8px;
    }
    nav button {
      margin-left: -8px;
      padding-inline: 8px;
    }
  }
`
