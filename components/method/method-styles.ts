import { css } from 'lit'
import { narrow } from '../styles/breakpoints.js'

/** A method as numbered lines: what is done, how it passes, its time; beneath, quietly, what is understood. */
export const methodStyles = css`
  :host {
    display: block;
  }
  h2 {
    margin: 0 0 2px;
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
  }
  .hint {
    margin: 2px 0 4px;
    max-width: 62ch;
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  h3 {
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
  .feeding {
    display: flex;
    flex-wrap: wrap;
    margin: -6px 0 12px;
  }
  .step {
    display: grid;
    grid-template:
      'number does kind text menu' auto
      '. read read note .' auto / 1.6em minmax(96px, 32%) 6.6rem minmax(0, 1fr) var(--target);
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
  .new {
    border-bottom-style: dashed;
  }
  .new::before {
    content: '';
  }
  input {
    width: 100%;
    min-width: 0;
    min-height: max(36px, var(--target));
    padding: 4px 8px;
    background: none;
    border: 1px solid transparent;
    border-radius: 3px;
  }
  input:hover:not([readonly]) {
    border-color: var(--rule-strong);
  }
  input:focus-visible {
    background: var(--board);
    outline-offset: -1px;
  }
  input::placeholder {
    color: var(--ink-soft);
    opacity: 1;
  }
  .does {
    grid-area: does;
    font-weight: 600;
  }
  .new .does {
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
  .step:not(:focus-within) .note:placeholder-shown {
    display: none; /* there for who is in the step */
  }
  @media ${narrow} {
    .step {
      grid-template:
        'number does kind menu' auto
        '. text text text' auto
        '. read read read' auto
        '. note note note' auto / 1.6em minmax(0, 1fr) 6.6rem var(--target);
    }
    .new .text {
      grid-column: 2 / -1;
    }
  }
  @media print {
    .new,
    .hint,
    tb-menu {
      display: none;
    }
    select.kind {
      appearance: none;
    }
  }
`
