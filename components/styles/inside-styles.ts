import { css } from 'lit'

/** What stands in an open fold: what it is for, in a few words, and why something could not be. */
export const insideStyles = css`
  :host {
    display: block;
  }
  p {
    margin: 0 0 10px;
    max-width: 66ch;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .refusal {
    color: var(--warn);
  }
  .refusal:empty {
    display: none;
  }
`
