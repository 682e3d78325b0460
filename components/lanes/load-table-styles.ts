import { css } from 'lit'

/** The loads of an oven on the screen. */
export const loadTableStyles = css`
  table {
    width: 100%;
    border-collapse: collapse;
    margin: 0 0 10px;
    font-size: var(--size-small);
  }
  caption {
    font-size: var(--size-text);
    padding: 0 0 4px;
    text-align: left;
    font-weight: 620;
  }
  caption small {
    color: var(--ink-soft);
    font-size: var(--size-small);
    font-weight: 400;
    margin-left: 8px;
  }
  th,
  td {
    padding: 2px 10px 2px 0;
    text-align: left;
    font-weight: 400;
    white-space: nowrap;
  }
  tbody th {
    width: 100%;
    white-space: normal;
  }
  tbody tr > * {
    border-top: 1px solid var(--rule);
  }
  thead {
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
  .figure {
    text-align: right;
  }
  tr > :last-child {
    padding-right: 0;
  }
  .on {
    padding-top: 8px;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  tr.open td:nth-child(4) {
    color: var(--warn);
    font-weight: 620;
  }
  td button {
    padding: 2px 6px;
    margin-left: -6px;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 3px;
  }
`
