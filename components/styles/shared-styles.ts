import { css } from 'lit'

/** Controls, fields, rings and hidden words that every element shares. Colours are the page's tokens. */
export const sharedStyles = css`
  :host {
    color: var(--ink);
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  [hidden] {
    display: none !important;
  }
  ::selection {
    background: var(--accent);
    color: var(--accent-ink);
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  button {
    min-height: var(--target);
    min-width: var(--target);
    padding: 4px 12px;
    background: none;
    border: 1px solid transparent;
    border-radius: var(--radius);
    cursor: pointer;
    touch-action: manipulation;
  }
  button:hover:not([disabled]) {
    background: var(--accent-wash);
  }
  button[disabled] {
    color: var(--ink-soft);
    opacity: 0.6;
    cursor: default;
  }
  button.main {
    background: var(--accent);
    color: var(--accent-ink);
    font-weight: 600;
  }
  button.main:hover:not([disabled]) {
    background: color-mix(in srgb, var(--accent) 88%, var(--ink));
  }
  button.lined {
    border-color: var(--rule-strong);
  }
  input,
  select,
  textarea {
    min-height: var(--target);
    padding: 4px 10px;
    background: var(--board);
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    max-width: 100%;
  }
  label {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  :focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
  .quiet {
    color: var(--ink-soft);
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  @media (forced-colors: active) {
    button,
    .main {
      border-color: ButtonText;
    }
  }
  @media print {
    button {
      display: none;
    }
  }
`
