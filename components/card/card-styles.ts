import { css } from 'lit'

/** A card's figures, to be read at arm's length. */
export const cardStyles = css`
  .paper {
    --figure: 1.75; /* times the size of the page's type */
  }
  .bar tb-measures {
    flex: 1 1 100%;
    padding-bottom: 4px;
  }
  .paper[data-type='1'] {
    font-size: 11.8pt;
  }
  .paper[data-type='2'] {
    font-size: 10.4pt;
  }
  .paper[data-type='3'] {
    font-size: 9.2pt;
    --figure: 1.7;
    --apart: 0.45em;
  }
  /* The smallest type with less air, before a second page comes: the figures stay for arm's length. */
  .paper.tight {
    --figure: 1.65;
    --apart: 0.3em;
    & h1 {
      font-size: 2em;
    }
    & h2 {
      font-size: 1.1em;
    }
    & tbody :is(td, th) {
      padding: 0.015em 0;
    }
    & .method {
      margin: 0;
      font-size: 0.88em;
    }
    & dd {
      font-size: 1.6em;
    }
    & .prose {
      font-size: 0.95em;
      line-height: 1.2;
    }
  }
  .batch {
    font-size: 1.15em;
  }
  .stage {
    break-inside: avoid;
  }
  h2 {
    display: flex;
    gap: 0.8em;
    align-items: baseline;
    margin: var(--apart) 0 0;
    padding-bottom: 0.1em;
    font-size: 1.2em;
    font-weight: 700;
    border-bottom: 1.5px solid #000;
    break-after: avoid;
    overflow-wrap: anywhere;
  }
  .facts {
    font-size: 0.84em;
    font-weight: 400;
  }
  .sum {
    margin-left: auto;
    font-weight: 600;
    white-space: nowrap;
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  tr {
    break-inside: avoid;
  }
  tr + tr > * {
    border-top: 0.75px solid #aaa;
  }
  tbody :is(td, th) {
    padding: 0.06em 0;
    vertical-align: top;
    text-align: left;
  }
  /* Chromium sets no cells on one baseline where a page may break; a sign of no width as large as the figures does. */
  tbody :is(td:not(.grams), th)::before {
    content: '\\200b';
    font-size: calc(1em * var(--figure) / var(--text));
    line-height: 1.2;
  }
  tbody th {
    --text: 1.3;
  }
  .measure {
    --text: 1;
  }
  td.percent {
    --text: 1.15;
  }
  td.grams {
    width: 4.4em;
    padding-right: 0.5em;
    font-size: calc(var(--figure) * 1em);
    font-weight: 700;
    line-height: 1.2;
    text-align: right;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }
  .unit {
    font-size: 0.6em;
    font-weight: 400;
  }
  [data-room]::after {
    content: attr(data-room);
    visibility: hidden;
  }
  .count {
    white-space: nowrap;
  }
  tbody th {
    font-size: calc(var(--text) * 1em);
    font-weight: 500;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  .note {
    margin-left: 0.5em;
    font-size: 0.7em;
    font-weight: 400;
  }
  .measure {
    width: 30%;
    padding-left: 0.6em;
    font-size: calc(var(--text) * 1em);
  }
  .measure small {
    font-size: 0.85em;
  }
  td.percent {
    width: 5em;
    font-size: calc(var(--text) * 1em);
    text-align: right;
    white-space: nowrap;
    font-variant-numeric: tabular-nums;
  }
  .method {
    margin: 0.15em 0 0;
    padding: 0;
    font-size: 0.92em;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  .method li {
    display: inline;
  }
  .method li + li::before {
    content: '→ ';
  }
  .method small {
    font-size: 0.88em;
  }
  .method small::before {
    content: '(';
  }
  .method small::after {
    content: ')';
  }
  .leads {
    display: grid;
    grid-template-columns: repeat(4, auto);
    justify-content: space-between;
    gap: 0 1.2em;
    margin: var(--apart) 0 0;
    padding-top: 0.4em;
    border-top: 3px solid #000;
  }
  dt {
    font-size: 0.92em;
  }
  dd {
    margin: 0;
    font-size: 1.9em;
    font-weight: 700;
    line-height: 1.15;
    white-space: nowrap;
  }
  dd small {
    display: block;
    font-size: 0.5em;
    font-weight: 400;
    white-space: normal;
  }
  .others {
    margin-top: 0.2em !important;
    font-size: 0.92em;
  }
  .others span {
    margin-right: 1.2em;
    white-space: nowrap;
  }
  .paper .prose {
    margin-top: var(--apart);
    font-size: 1.05em;
    overflow-wrap: anywhere;
  }
  .paper footer {
    margin-top: var(--apart);
    padding-top: 0.45em;
    border-top: 1px solid #000;
    font-size: calc(var(--foot) * 1pt);
  }
  .paper footer p + p,
  .paper footer section + section,
  .paper footer p + section {
    margin-top: 0.35em;
  }
`
