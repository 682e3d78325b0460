import { css } from 'lit'

/** A field to paste into, and what is understood of it beneath. */
export const ordersStyles = css`
  :host {
    display: block;
  }
  label {
    display: block;
  }
  textarea {
    display: block;
    width: 100%;
    margin-top: 4px;
    padding: 8px 10px;
    resize: vertical;
    field-sizing: content;
    max-height: 16em;
  }
  .hint {
    margin: 6px 0 0;
    max-width: 66ch;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .understood {
    margin-top: 12px;
    padding: 10px 14px 14px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .understood p {
    margin: 6px 0;
    font-size: var(--size-small);
  }
  .understood .warn {
    color: var(--warn);
  }
  ul {
    list-style: none;
    margin: 0 0 6px;
    padding: 0;
  }
  li {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 12px;
    align-items: baseline;
    padding: 4px 0;
  }
  li b {
    font-weight: 640;
  }
  small {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .ask label,
  .weight {
    color: var(--ink);
  }
  .ask {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px;
  }
  .ask button {
    background: var(--board);
  }
  .ask select {
    margin-left: 8px;
  }
  .weight input {
    width: 5em;
    text-align: right;
    margin-left: 8px;
  }
  .unit {
    white-space: nowrap;
  }
  .main {
    margin-top: 8px;
  }
  @media print {
    :host {
      display: none;
    }
  }
`
