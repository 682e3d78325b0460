import { css } from 'lit'

/** A day on paper: times to be read from where one stands, nothing broken within a step. */
export const dayPageStyles = css`
  .paper[data-type='1'] {
    font-size: 12.4pt;
  }
  .paper[data-type='2'] {
    font-size: 11pt;
  }
  .paper[data-type='3'] {
    font-size: 9.6pt;
    --apart: 0.5em;
  }
  h1 {
    font-size: 2em;
  }
  h2,
  caption {
    margin: var(--apart) 0 0;
    padding-bottom: 0.1em;
    font-size: 1.15em;
    font-weight: 700;
    text-align: left;
    border-bottom: 1.5px solid #000;
    break-after: avoid;
  }
  caption {
    padding-top: var(--apart);
    margin: 0;
  }
  caption small {
    float: right;
    font-weight: 400;
  }
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  li {
    display: grid;
    grid-template-columns: 4em minmax(0, 1fr);
    gap: 0 0.8em;
    align-items: baseline;
    padding: 0.12em 0;
    break-inside: avoid;
    overflow-wrap: anywhere;
  }
  li + li {
    border-top: 0.75px solid #aaa;
  }
  li > b {
    font-size: 1.2em;
    text-align: right;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }
  li strong {
    font-weight: 650;
  }
  li.wait strong {
    font-weight: 400;
  }
  li.wait > b {
    font-weight: 400;
  }
  li.held > b {
    text-decoration: underline;
  }
  li small {
    display: block;
    font-size: 0.86em;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    break-inside: avoid;
  }
  tr > * {
    padding: 0.1em 0.4em 0.1em 0;
    text-align: left;
    font-weight: 400;
    vertical-align: baseline;
  }
  tbody tr > * {
    border-top: 0.75px solid #aaa;
  }
  tbody th {
    font-weight: 650;
  }
  thead {
    font-size: 0.86em;
  }
  .figure {
    text-align: right;
    white-space: nowrap;
  }
  dl {
    columns: 3;
    column-gap: 2em;
    margin: 0;
  }
  dl div {
    display: flex;
    justify-content: space-between;
    gap: 0.8em;
    break-inside: avoid;
    border-top: 0.75px solid #aaa;
  }
  dd {
    margin: 0;
    font-weight: 700;
    white-space: nowrap;
  }
  @media print {
    .dated .date + .date,
    .apart .end {
      break-before: page;
    }
  }
  @media screen and (max-width: 479px) {
    dl {
      columns: 1;
    }
  }
`
