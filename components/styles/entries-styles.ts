import { css } from 'lit'

/** Entries between rules beneath a small heading, each with a title that may be a button which opens it. */
export const entriesStyles = css`
  :host {
    display: block;
  }
  h2 {
    margin: 0 0 6px;
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
  }
  h3,
  p,
  ol,
  ul {
    margin: 0;
  }
  ol,
  ul {
    padding: 0;
    list-style: none;
  }
  .entry {
    border-top: 1px solid var(--rule);
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 600;
  }
  h3 button {
    display: flex;
    width: 100%;
    padding: 7px 0;
    text-align: left;
    font-weight: inherit;
  }
`
