import { css } from 'lit'

/** Lines to write on, beneath a small heading: fields that show their edge when they are reached, the next line dashed. */
export const lineStyles = css`
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
  .new {
    border-bottom-style: dashed;
  }
  input {
    width: 100%;
    min-width: 0;
    min-height: max(40px, var(--target));
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
  @media print {
    .new,
    .hint {
      display: none;
    }
  }
`
