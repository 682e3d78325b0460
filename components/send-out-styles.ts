import { css } from 'lit'

/** The file as text, and what its columns hold. */
export const sendOutStyles = css`
  select {
    width: 100%;
  }
  .file-name {
    color: var(--ink);
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  textarea {
    width: 100%;
    min-height: 120px;
    font: 0.85rem/1.55 ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', Menlo, monospace;
    tab-size: 4;
    background: var(--ground);
  }
  .field .hint {
    margin: 6px 0 0;
  }
  details {
    border-top: 1px solid var(--rule);
  }
  details:last-of-type {
    border-bottom: 1px solid var(--rule);
  }
  summary {
    min-height: max(40px, var(--target));
    display: flex;
    align-items: center;
    gap: 8px;
    cursor: pointer;
  }
  summary::before {
    content: '▸';
    width: 1em;
    color: var(--ink-soft);
  }
  [open] > summary::before {
    content: '▾';
  }
  summary::-webkit-details-marker {
    display: none;
  }
  dl {
    margin: 0 0 12px;
  }
  dl div {
    display: flex;
    flex-wrap: wrap;
    gap: 0 20px;
    padding: 6px 0;
  }
  dt {
    flex: 0 0 180px;
    font-weight: 600;
  }
  dd {
    flex: 1 1 280px;
    margin: 0;
    color: var(--ink-soft);
  }
  a.main {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    padding: 4px 16px;
    border: 1px solid transparent;
    border-radius: var(--radius);
    background: var(--accent);
    color: var(--accent-ink);
    font-weight: 600;
    text-decoration: none;
  }
  a.main:hover {
    background: color-mix(in srgb, var(--accent) 88%, var(--ink));
  }
  @media (forced-colors: active) {
    a.main {
      border-color: LinkText;
    }
  }
`
