import { css } from 'lit'
import { slim } from '../styles/breakpoints.js'

/** The list by the clock: times to the right of their column, a mark for hands, waits and the oven. */
export const clockStyles = css`
  :host {
    display: block;
  }
  .hint {
    margin: 0 0 4px;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  h3 {
    margin: 0;
    padding: 18px 0 4px;
    font-size: var(--size-text);
    font-weight: 640;
    border-bottom: 1px solid var(--rule-strong);
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    display: grid;
    grid-template-columns: 4.6rem 12px minmax(0, 1fr) auto;
    column-gap: 12px;
    align-items: baseline;
    padding: 3px 0;
    border-bottom: 1px solid var(--rule);
  }
  .when {
    text-align: right;
  }
  .time,
  .when input {
    width: 100%;
    min-width: 0;
    padding: 4px 6px;
    font-size: var(--size-lead);
    text-align: right;
  }
  .time[disabled] {
    color: var(--ink);
    opacity: 1;
  }
  .time:hover:not([disabled]) {
    background: none;
    border-color: var(--rule-strong);
  }
  .typed .time {
    font-weight: 680;
    text-decoration: underline;
    text-decoration-thickness: 2px;
    text-underline-offset: 4px;
  }
  .when input {
    font-weight: 620;
    background: var(--board);
  }
  [aria-invalid] {
    border: 2px solid var(--warn);
  }
  .mark {
    align-self: start;
    width: 12px;
    height: 12px;
    margin-top: calc(var(--target) / 2 - 6px);
    border: 1px solid var(--ink);
    border-radius: 3px;
    background: var(--ink);
  }
  .mark.wait {
    background: var(--board);
    border-color: var(--rule-strong);
  }
  .mark.bake {
    background: var(--warn);
    border-color: var(--warn);
  }
  .mark.heat {
    background: none;
    border: 1px dashed var(--warn);
  }
  .what {
    padding: 5px 0;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .of {
    margin-left: 6px;
    color: var(--ink-soft);
  }
  small {
    display: block;
    color: var(--ink-soft);
    font-size: var(--size-small);
    line-height: 1.35;
  }
  .weigh {
    color: var(--ink);
  }
  .wrong,
  .fault {
    color: var(--warn);
  }
  .fault {
    grid-column: 1 / -1;
    margin: 0 0 6px;
    font-size: var(--size-small);
  }
  .how,
  .long {
    padding: 4px 6px;
    color: var(--ink-soft);
    font-size: var(--size-small);
    text-align: right;
  }
  .how {
    text-decoration: underline;
    text-decoration-style: dotted;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 4px;
  }
  .how:hover,
  .how[aria-expanded='true'] {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .follow {
    margin-left: -8px;
    padding: 2px 8px;
    color: var(--accent);
    font-size: var(--size-small);
  }
  tb-time-working {
    grid-column: 1 / -1;
  }
  :host([old]) li {
    color: var(--ink-soft);
  }
  @media ${slim} {
    li {
      grid-template-columns: 3.9rem 12px minmax(0, 1fr);
      column-gap: 10px;
    }
    .how,
    .long {
      grid-column: 3;
      justify-self: start;
      margin: -6px 0 0 -6px;
    }
  }
  @media (forced-colors: active) {
    .mark.hands {
      background: CanvasText;
    }
    .mark.bake {
      background: Highlight;
    }
  }
  @media print {
    .hint,
    .follow {
      display: none;
    }
    button.time,
    button.how {
      display: inline;
      border: 0;
    }
    li {
      break-inside: avoid;
    }
  }
`
