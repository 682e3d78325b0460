import { css } from 'lit'

/** Lines to write on, beneath a small heading: fields that show their edge when they are reached, names offered beneath them, the next line dashed. */
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
  input,
  textarea {
    width: 100%;
    min-width: 0;
    min-height: max(40px, var(--target));
    padding: 4px 8px;
    background: none;
    border: 1px solid transparent;
    border-radius: 3px;
  }
  :is(input, textarea):hover:not([readonly]) {
    border-color: var(--rule-strong);
  }
  :is(input, textarea):focus-visible {
    background: var(--board);
    outline-offset: -1px;
  }
  ::placeholder {
    color: var(--ink-soft);
    opacity: 1;
  }
  .names {
    position: absolute;
    z-index: 3;
    top: calc(100% + 2px);
    left: 0;
    min-width: 180px;
    max-width: 100%;
    max-height: 280px;
    margin: 0;
    overflow-y: auto;
    list-style: none;
    padding: 4px;
    background: var(--board);
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    box-shadow: 0 6px 20px rgb(30 20 10 / 0.14);
  }
  [role='option'] {
    display: flex;
    align-items: center;
    min-height: max(32px, calc(var(--target) - 4px));
    padding: 2px 10px;
    border-radius: 4px;
    cursor: pointer;
    overflow-wrap: anywhere;
  }
  [role='option']:hover,
  [aria-selected='true'] {
    background: var(--accent-wash);
  }
  [aria-selected='true'] {
    box-shadow: inset 3px 0 0 var(--accent);
  }
  @media (forced-colors: active) {
    [aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
  @media print {
    .new,
    .hint {
      display: none;
    }
  }
`
