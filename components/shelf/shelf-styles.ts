import { css } from 'lit'

export const shelfStyles = css`
  :host {
    display: block;
  }
  h2 {
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
    margin: 0;
  }
  .head,
  .tools {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 4px;
    min-height: var(--target);
    margin-bottom: 8px;
  }
  input {
    width: 100%;
  }
  input[type='search'] {
    margin-bottom: 8px;
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
  [data-waits] {
    visibility: hidden;
  }
  .rename {
    margin: 6px 0;
  }
  p {
    margin: 0 0 12px;
  }
  @media (forced-colors: active) {
    a[aria-current] {
      border-left-color: Highlight;
    }
  }
`
