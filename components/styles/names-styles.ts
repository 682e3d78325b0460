import { css } from 'lit'

/** A list of names between rules beneath a small heading, each a row of its link and its menu; the open one is marked at its edge. */
export const namesStyles = css`
  :host {
    display: block;
  }
  h2 {
    margin: 0 0 10px;
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
  }
  p {
    margin: 0 0 12px;
  }
  ul {
    list-style: none;
    margin: 0 0 14px;
    padding: 0;
  }
  .row {
    display: flex;
    align-items: center;
    gap: 2px;
    border-bottom: 1px solid var(--rule);
    position: relative;
  }
  .row:first-child {
    border-top: 1px solid var(--rule);
  }
  a {
    flex: 1;
    min-width: 0;
    padding: 9px 0 9px 14px;
    color: inherit;
    text-decoration: none;
    line-height: 1.3;
    overflow-wrap: anywhere;
    border-left: 3px solid transparent;
  }
  a:hover {
    background: var(--accent-wash);
  }
  a[aria-current] {
    border-left-color: var(--accent);
    font-weight: 620;
  }
  small {
    display: block;
    margin-top: 1px;
    font-size: var(--size-fine);
    font-weight: 400;
    color: var(--ink-soft);
  }
  @media (forced-colors: active) {
    a {
      border-left-color: Canvas; /* nothing is transparent there */
    }
    a[aria-current] {
      border-left-color: Highlight;
    }
  }
`
