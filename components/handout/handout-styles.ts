import { css } from 'lit'
import { belowWide } from '../styles/breakpoints.js'

/** Pages to work from at a bench and to take home: tables to be read at arm's length, the method beneath each. */
export const handoutStyles = css`
  .paper {
    font-size: calc(var(--type, 11) * 1pt);
    line-height: 1.32;
  }
  .bar .more {
    display: flex;
    flex: 1 1 100%;
    flex-wrap: wrap;
    gap: 4px 24px;
    align-items: center;
  }
  .bar .fault {
    flex: 1 1 100%;
    margin: 0;
    color: var(--warn);
    font-size: var(--size-small);
  }
  .bar .choice {
    max-width: 100%;
  }
  .bar select {
    min-width: 0;
    max-width: 100%;
  }
  .bar .typed input {
    width: 3.5em;
    height: auto;
    min-height: var(--target);
    text-align: right;
  }
  .bar .typed input:not(.short) {
    width: min(19em, 75vw);
    text-align: left;
  }
  @supports (field-sizing: content) {
    .bar .typed input:not(.short) {
      field-sizing: content;
      width: auto;
      min-width: 10em;
      max-width: min(26em, 75vw);
    }
  }
  .bar .shared {
    display: flex;
    flex: 1 1 100%;
    flex-wrap: wrap;
    gap: 4px 16px;
    align-items: center;
    margin: 0;
    font-size: var(--size-small);
  }
  .block {
    display: flow-root;
    break-inside: avoid;
  }
  .paper h1 {
    font-size: 2.1em;
  }
  h2 {
    margin: 0.9em 0 0;
    padding-bottom: 0.12em;
    font-size: 1.65em;
    font-weight: 700;
    line-height: 1.15;
    border-bottom: 2.5px solid #000;
    overflow-wrap: anywhere;
    break-after: avoid;
  }
  .block:first-child h2 {
    margin-top: 0;
  }
  .block:first-child header + h2 {
    margin-top: 0.5em;
  }
  .paper .again {
    margin: 0 0 0.4em;
    font-size: 0.9em;
    font-weight: 600;
  }
  h3 {
    margin: 0.75em 0 0;
    font-size: 1.18em;
    font-weight: 700;
    break-after: avoid;
    overflow-wrap: anywhere;
  }
  h3 small {
    margin-left: 0.4em;
    font-size: 0.8em;
    font-weight: 400;
  }
  table {
    width: 100%;
    margin-top: 0.25em;
    border-collapse: collapse;
    table-layout: fixed;
    font-variant-numeric: tabular-nums;
  }
  :is(td, th) {
    padding: 0.14em 0.9em 0.14em 0;
    font-weight: 400;
    text-align: left;
    vertical-align: baseline;
    border-top: 0.75px solid #aaa;
    overflow-wrap: anywhere;
  }
  thead th {
    font-size: 0.82em;
    font-weight: 600;
    border-top: 0;
    border-bottom: 1.5px solid #000;
  }
  tbody tr:first-child > * {
    border-top: 0;
  }
  tfoot > tr > * {
    border-top: 1.5px solid #000;
  }
  small {
    font-size: 0.85em;
  }
  .figure {
    text-align: right;
    white-space: nowrap;
  }
  thead .figure {
    width: calc(6.6em / 0.82);
  }
  thead .measure {
    width: calc(11.5em / 0.82);
  }
  thead .percent {
    width: calc(4.2em / 0.82);
  }
  .breads thead th {
    width: 33%;
  }
  tbody .figure {
    font-weight: 650;
  }
  .percent {
    padding-right: 0;
    text-align: right;
    white-space: nowrap;
  }
  .breads {
    margin-top: 0.7em;
  }
  .breads tbody th {
    font-weight: 650;
  }
  [data-room]::after {
    content: attr(data-room);
    visibility: hidden;
  }
  ol {
    margin: 0.35em 0 0;
    padding-left: 1.5em;
  }
  .readings span {
    margin-right: 1.1em;
    white-space: nowrap;
  }
  .readings .how {
    font-size: 0.88em;
    white-space: normal;
  }
  .paper .sizes {
    margin-top: 0.35em;
    font-weight: 650;
  }
  .paper h2 + .fine,
  .paper .sizes + .fine {
    margin-top: 0.35em;
  }
  .paper .readings {
    margin-top: 0.8em;
  }
  .paper p + p {
    margin-top: 0.4em;
  }
  .paper .fine,
  .mind p {
    font-size: 0.88em;
  }
  .mind {
    margin-top: 1.2em;
    padding-top: 0.5em;
    border-top: 1px solid #000;
  }
  .paper .mind .of {
    margin-top: 0.15em;
    padding-left: 1em;
  }
  .mind h2 {
    margin: 0 0 0.3em;
    padding: 0;
    border: 0;
    font-size: 1.1em;
  }
  @media screen and ${belowWide} {
    .paper:not(.fitted) {
      & .figure,
      & thead .figure {
        width: 5.6em;
      }
      & .percent {
        display: none; /* figures to weigh come first where there is little room */
      }
      & :is(td, th) {
        padding-right: 0.5em;
      }
    }
    .paper + .paper:not(.fitted) {
      border-top: 1px dashed #767676;
    }
  }
`
