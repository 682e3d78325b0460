import { css } from 'lit'

/** Groups of the shelf, and what a long one offers beneath the field to look for a formula. */
export const shelfMoreStyles = css`
  .tools select {
    flex: 1;
    min-width: 0;
    padding-inline: 6px 2px;
    font-size: var(--size-small);
  }
  .tools button {
    flex: none;
    padding-inline: 8px;
    color: var(--accent);
    font-size: var(--size-small);
  }
  details {
    margin: 0 0 14px;
  }
  details ul {
    margin: 0;
  }
  summary {
    display: flex;
    align-items: baseline;
    gap: 8px;
    min-height: var(--target);
    padding: 8px 4px 2px 0;
    cursor: pointer;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::before {
    content: '';
    align-self: center;
    border: 4px solid transparent;
    border-left-color: currentColor;
    border-right-width: 0;
    forced-color-adjust: none; /* what is transparent of it stays so */
  }
  [open] > summary::before {
    transform: rotate(90deg);
  }
  summary:hover {
    background: var(--accent-wash);
  }
  summary:focus-visible {
    outline-offset: -2px;
  }
  h3 {
    flex: 1;
    min-width: 0;
    margin: 0;
    font-size: var(--size-small);
    font-weight: 640;
    overflow-wrap: anywhere;
  }
  summary span {
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
`
