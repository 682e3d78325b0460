import { css } from 'lit'

/** A quiet disclosure that stands in a row with others, and takes the width of the row when it is open. */
export const foldStyles = css`
  :host {
    display: block;
    flex: none;
  }
  :host([open]) {
    flex: 1 1 100%;
    order: 1;
  }
  .fold {
    display: inline-flex;
    align-items: center;
    gap: 7px;
    margin-left: -8px;
    padding: 4px 8px;
    color: var(--ink-soft);
    font-size: 0.92rem;
  }
  .fold::before {
    content: '';
    width: 0;
    height: 0;
    border: 4px solid transparent;
    border-left-color: currentColor;
    border-right-width: 0;
  }
  .fold[aria-expanded='true'] {
    color: var(--ink);
  }
  .fold[aria-expanded='true']::before {
    transform: rotate(90deg);
  }
  .inside {
    padding: 6px 0 14px 15px;
    margin: 0 0 6px;
    border-left: 1px solid var(--rule-strong);
  }
  .inside > p {
    margin: 0 0 10px;
    max-width: 66ch;
    color: var(--ink-soft);
    font-size: 0.92rem;
  }
  .refusal {
    color: var(--warn) !important;
  }
  .refusal:empty {
    display: none;
  }
  @media print {
    :host {
      display: none;
    }
  }
`
