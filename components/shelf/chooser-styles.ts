import { css } from 'lit'
import { narrow } from '../styles/breakpoints.js'

/** Boxes before the formulas, and above them what is done with those that are ticked. */
export const chooserStyles = css`
  :host {
    display: block;
  }
  .bar {
    position: sticky;
    top: 0;
    z-index: 1;
    margin: 0 0 6px;
    padding: 4px 0 8px;
    background: var(--ground);
    border-bottom: 2px solid var(--accent);
  }
  @media ${narrow} {
    .bar {
      top: var(--head);
    }
  }
  @media (max-height: 480px) {
    .bar {
      position: static;
    }
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px;
  }
  .row + .row {
    margin-top: 4px;
  }
  p {
    margin: 0;
  }
  [role='status'] {
    flex: 1;
    font-weight: 640;
  }
  button {
    padding-inline: 9px;
    font-size: var(--size-small);
  }
  button:not(.main) {
    border-color: var(--rule-strong);
  }
  form {
    margin-top: 8px;
  }
  form input {
    flex: 1;
    min-width: 8rem;
  }
  .hint {
    margin-top: 4px;
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
  ul {
    margin: 0 0 14px;
    padding: 0;
    list-style: none;
  }
  li {
    border-bottom: 1px solid var(--rule);
  }
  li label {
    display: flex;
    align-items: flex-start;
    gap: 10px;
    min-height: var(--target);
    padding: 8px 0;
    color: var(--ink);
    font-size: var(--size-text);
    line-height: 1.3;
    overflow-wrap: anywhere;
    cursor: pointer;
  }
  li label:hover {
    background: var(--accent-wash);
  }
  li span,
  li b {
    min-width: 0;
  }
  li small {
    display: block;
    margin-top: 1px;
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
  .group label {
    padding-top: 12px;
    font-size: var(--size-small);
  }
  [type='checkbox'] {
    flex: none;
    width: 20px;
    height: 20px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
`
