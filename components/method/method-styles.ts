import { css } from 'lit'
import { narrow } from '../styles/breakpoints.js'

/** A method as numbered lines: what is done, how it passes, its time; beneath, quietly, what is understood. */
export const methodStyles = css`
  :host {
    --grip: 24px; /* what a step is dragged by */
  }
  @media (pointer: coarse) {
    :host {
      --grip: 44px;
    }
  }
  h3 {
    scroll-margin-block: 64px; /* beneath the head of the page */
    margin: 10px 0 0;
    padding-bottom: 4px;
    font-size: var(--size-text);
    font-weight: 640;
    border-bottom: 1px solid var(--rule-strong);
  }
  ol {
    margin: 0 0 12px;
    padding: 0;
    list-style: none;
    counter-reset: step;
  }
  .bench {
    margin: 2px 0 4px;
  }
  .bench a {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    color: var(--accent);
  }
  @media print {
    .bench {
      display: none;
    }
  }
  .feeding {
    display: flex;
    flex-wrap: wrap;
    margin: -6px 0 12px;
  }
  .step {
    display: grid;
    grid-template:
      'number does kind text menu' auto
      '. read read note .' auto / calc(1.2em + var(--grip)) minmax(96px, 32%) 6.6rem minmax(0, 1fr) var(--target);
    align-items: center;
    padding: 2px 0;
    border-bottom: 1px solid var(--rule);
    counter-increment: step;
  }
  .step::before {
    grid-area: number;
    content: counter(step);
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .handle {
    grid-area: number;
    justify-self: end;
    display: grid;
    place-items: center;
    min-width: var(--grip);
    min-height: var(--target);
    color: var(--ink-soft);
    cursor: grab;
    touch-action: none;
  }
  .handle:active {
    cursor: grabbing;
  }
  .dragged {
    background: var(--accent-wash);
  }
  .mark {
    box-shadow: 0 -3px 0 var(--accent);
  }
  .new::before {
    content: '';
  }
  input,
  textarea {
    min-height: max(36px, var(--target));
  }
  .does {
    grid-area: does;
    position: relative;
    min-width: 0;
    font-weight: 600;
  }
  .new .does,
  .names {
    font-weight: 400;
  }
  .kind {
    grid-area: kind;
    width: 100%;
    color: var(--ink-soft);
    font-size: var(--size-small);
    background: none;
    border-color: transparent;
  }
  select.kind:hover {
    border-color: var(--rule-strong);
  }
  .text {
    grid-area: text;
  }
  .grow {
    display: grid;
    min-width: 0;
  }
  .grow::after {
    content: attr(data-text);
    visibility: hidden;
    padding: 6px 8px;
    border: 1px solid transparent;
    white-space: pre-wrap;
  }
  .grow::after,
  textarea {
    grid-area: 1 / 1;
    overflow-wrap: anywhere;
  }
  textarea {
    padding: 6px 8px;
    resize: none;
    overflow: hidden;
  }
  .new .text {
    grid-column: kind / menu;
  }
  tb-menu {
    grid-area: menu;
    color: var(--ink-soft);
  }
  .read {
    grid-area: read;
    align-self: start;
    margin: 0;
    padding: 0 8px 4px;
    font-size: var(--size-small);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .read:empty {
    padding: 0;
  }
  .wrong {
    color: var(--warn);
  }
  .note {
    grid-area: note;
    align-self: start;
    min-height: var(--target);
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  .step:not(:focus-within) .note:has(:placeholder-shown) {
    display: none; /* there for who is in the step */
  }
  @media ${narrow} {
    .step {
      grid-template:
        'number does kind menu' auto
        '. text text text' auto
        '. read read read' auto
        '. note note note' auto / calc(1.2em + var(--grip)) minmax(0, 1fr) 6.6rem var(--target);
    }
    .new .text {
      grid-column: 2 / -1;
    }
  }
  @media print {
    .new,
    .handle,
    tb-menu {
      display: none;
    }
    select.kind {
      appearance: none;
    }
  }
`
