import { css } from 'lit'
import { entriesStyles } from '../styles/entries-styles.js'

/** The water of each mixing: its temperature large, beneath it the numbers that it is worked out from, typed ones marked as on the sheet. */
export const waterStyles = [
  entriesStyles,
  css`
  section {
    max-width: 34rem;
  }
  .none,
  .ice,
  .remark,
  .limits {
    max-width: 62ch;
    font-size: var(--size-small);
  }
  .none,
  .limits {
    color: var(--ink-soft);
  }
  h3 button {
    align-items: baseline;
    justify-content: space-between;
    gap: 0 12px;
  }
  .short {
    flex: none;
    white-space: nowrap;
    font-weight: 400;
  }
  [aria-expanded='true'] .short {
    display: none; /* it stands large beneath */
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 22px;
    padding-bottom: 6px;
  }
  .big {
    font-size: var(--size-title);
    font-weight: 300;
    letter-spacing: -0.02em;
    line-height: 1.15;
  }
  .other {
    font-size: var(--size-lead);
  }
  .way {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .ice {
    padding: 6px 0 8px;
  }
  .remark {
    margin: 4px 0 8px;
    padding-left: 10px;
    border-left: 3px solid var(--warn);
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto auto;
    align-items: baseline;
    gap: 0 6px;
  }
  .learnt {
    grid-column: 1 / -1;
  }
  .what {
    overflow-wrap: anywhere;
    color: var(--ink-soft);
  }
  .grams {
    margin-left: 4px;
    font-size: var(--size-small);
    white-space: nowrap;
  }
  .typed {
    grid-column: 3;
    white-space: nowrap;
    color: var(--ink-soft);
  }
  .typed input {
    width: 4em;
    padding: calc(var(--target) - 30px) 4px 0;
    text-align: right;
    color: var(--ink);
    background: none;
    border: 0;
    border-bottom: 2px solid transparent;
    border-radius: 0;
  }
  .typed input:not([readonly]):hover {
    border-bottom-color: var(--rule-strong);
  }
  .empty .typed input {
    border-bottom-color: var(--rule-strong);
  }
  .typed input:focus-visible {
    background: var(--board);
  }
  .said .typed input {
    font-weight: 680;
    border-bottom-color: var(--ink);
  }
  .typed input[aria-invalid] {
    border-bottom: 3px double var(--warn);
  }
  .release {
    grid-column: 2;
    padding: 2px 8px;
    color: var(--accent);
    font-size: var(--size-small);
  }
  .fault {
    grid-column: 1 / -1;
    margin: 0 0 6px;
    color: var(--warn);
    font-size: var(--size-small);
    text-align: right;
  }
  .dough {
    padding: 6px 0 2px;
    text-align: right;
  }
  .dough b {
    font-weight: 640;
  }
  details {
    margin: 4px 0 12px;
    font-size: var(--size-small);
  }
  details p {
    max-width: 62ch;
    padding: 4px 0;
  }
  summary {
    min-height: var(--target);
    align-content: center;
    color: var(--ink-soft);
    cursor: pointer;
  }
  .scroll {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
  }
  th,
  td {
    padding: 3px 0 3px 8px;
    text-align: right;
    font-weight: 400;
    border-bottom: 1px solid var(--rule);
  }
  td {
    white-space: nowrap;
  }
  th:first-child {
    padding-left: 0;
    text-align: left;
  }
  thead th {
    color: var(--ink-soft);
    vertical-align: bottom;
  }
  @media print {
    .release,
    details:not([open]) {
      display: none;
    }
  }
`,
]
