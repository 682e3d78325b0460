import { css } from 'lit'
import { narrow, slim } from '../styles/breakpoints.js'

/** Numbers at the foot of what is printed. Rules for pages have no effect within an element. */
export const orderPages = new CSSStyleSheet()
orderPages.replaceSync(
  "@page { @bottom-right { content: counter(page) ' / ' counter(pages); font: 9pt system-ui, sans-serif } }",
)

/** One column to read from above: how much, what to order, what it costs, what to weigh. */
export const orderPlaceStyles = css`
  :host {
    display: block;
    min-height: calc(100vh - var(--head));
    background: var(--board);
  }
  main {
    max-width: 1060px;
    padding: 22px var(--edge) 56px;
    margin: 0 auto;
  }
  .back {
    display: inline-block;
    padding: 8px 0;
    color: var(--accent);
    font-size: var(--size-small);
    text-decoration: none;
  }
  .back::before {
    content: '‹ ';
  }
  .back:hover {
    text-decoration: underline;
  }
  h1 {
    margin: 0 0 6px;
    font-size: var(--size-title);
    font-weight: 640;
    line-height: 1.15;
    letter-spacing: -0.015em;
  }
  h2 {
    margin: 0 0 4px;
    font-size: var(--size-figure);
    font-weight: 640;
    letter-spacing: -0.01em;
  }
  .said {
    margin: 0 0 20px;
    max-width: 72ch;
    color: var(--ink-soft);
  }
  main > section {
    margin-top: 38px;
  }
  main > .much {
    max-width: 640px;
    margin-top: 0;
  }
  .near {
    margin-bottom: 20px;
  }
  tb-how-many {
    margin-top: 10px;
  }
  .hint {
    margin: 0 0 10px;
    max-width: 70ch;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .notes {
    margin: 0 0 10px;
    max-width: 70ch;
    font-size: var(--size-small);
  }
  .remark,
  .uneven {
    margin: 10px 0 0;
    max-width: 72ch;
    font-size: var(--size-small);
  }
  .unfit,
  .uneven {
    list-style: none;
    margin: 22px 0 0;
    padding: 8px 14px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .unfit {
    margin: 14px 0;
    max-width: 72ch;
  }
  .unfit,
  .uneven.wrong {
    background: var(--warn-wash);
    border-color: var(--warn);
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  th,
  td {
    padding: 8px 0 8px 24px;
    text-align: left;
    font-weight: 400;
    vertical-align: baseline;
    border-bottom: 1px solid var(--rule);
  }
  th:first-child {
    padding-left: 0;
  }
  thead th {
    padding-bottom: 4px;
    color: var(--ink-soft);
    font-size: var(--size-small);
    border-color: var(--rule-strong);
  }
  thead th.figure,
  .figure {
    text-align: right;
  }
  td.figure {
    white-space: nowrap;
  }
  .kitchen {
    color: var(--ink-soft);
  }
  tbody button {
    min-width: 0;
    margin: -7px 0 -7px -8px;
    padding: 4px 8px;
    font-weight: 640;
    text-align: left;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  tbody small {
    display: block;
    padding-top: 2px;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  small.kitchen-below {
    display: none;
  }
  .here th[scope='rowgroup'] {
    padding-top: 18px;
    color: var(--ink-soft);
    font-size: var(--size-small);
    border-color: var(--rule-strong);
  }
  small.short {
    color: var(--warn);
    font-weight: 600;
  }
  .missing {
    color: var(--warn);
  }
  tfoot th,
  tfoot td {
    font-weight: 640;
  }
  tfoot tr:first-child > * {
    border-top: 2px solid var(--rule-strong);
  }
  .costs {
    list-style: none;
    margin: 0 0 10px;
    padding: 0;
    columns: 380px 2;
    column-gap: 36px;
  }
  .costs li {
    break-inside: avoid;
    padding: 10px 0;
    border-bottom: 1px solid var(--rule);
  }
  .costs p {
    margin: 0;
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  .costs .lead {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 12px;
    font-size: var(--size-text);
    color: var(--ink);
  }
  .lead b {
    font-weight: 640;
  }
  .lead span {
    font-size: var(--size-small);
  }
  .lead strong {
    margin-left: auto;
    font-weight: 640;
    white-space: nowrap;
  }
  .costs .remark {
    margin: 0;
    color: var(--warn);
  }
  @media ${narrow} {
    main {
      padding-top: 8px;
    }
  }
  @media ${slim} {
    .kitchen {
      display: none;
    }
    tbody small.kitchen-below {
      display: block;
    }
    th,
    td {
      padding-left: 12px;
    }
    td.figure {
      white-space: normal;
    }
  }
  @media print {
    :host {
      background: none;
    }
    main {
      max-width: none;
      padding: 0;
    }
    .back {
      padding: 0;
      color: var(--ink);
      font-weight: 640;
    }
    .back::before {
      content: none;
    }
    .costs {
      columns: 2;
    }
    :focus-visible {
      outline: none;
    }
    .much,
    .out,
    .near,
    .hint {
      display: none;
    }
    main > section {
      margin-top: 18pt;
    }
    tbody button {
      display: inline;
      min-height: 0;
      margin: 0;
      padding: 0;
      border: 0;
      text-decoration: none;
    }
    tr {
      break-inside: avoid;
    }
    th,
    td {
      padding-block: 3pt;
    }
    .uneven {
      margin-top: 6pt;
      padding-block: 0;
    }
    .said {
      margin-bottom: 0;
    }
    .here th[scope='rowgroup'] {
      padding-top: 8pt;
    }
    .here,
    .needs tfoot {
      break-inside: avoid;
    }
    h2,
    .notes {
      break-after: avoid;
    }
  }
`
