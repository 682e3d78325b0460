import { css } from 'lit'
import { broader } from '../styles/breakpoints.js'

/** The file as text, and what its columns hold. */
export const sendOutStyles = css`
  /* As high whatever the form, so that the choice of it stays where it is. */
  @media ${broader} and (min-height: 421px) {
    dialog:has(.forms) {
      height: min(88vh, 820px);
    }
    .body:has(.forms) {
      display: flex;
      flex-direction: column;
    }
    .written {
      flex: 1 0 auto;
      display: flex;
      flex-direction: column;
    }
    .written :is(textarea, .page) {
      flex: 1 0 200px;
      height: 200px;
      max-height: none;
    }
    .written #link {
      flex-grow: 0;
    }
  }
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
  #link {
    word-break: break-all;
  }
  .field .hint {
    margin: 6px 0 0;
  }
  .label {
    margin: 0 0 4px;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .forms {
    display: flex;
    flex-wrap: wrap;
    margin-inline: -8px;
    padding: 0;
    border: 0;
  }
  .form {
    position: relative;
    display: flex;
    align-items: center;
    min-height: max(40px, var(--target));
    padding: 0 8px;
    color: var(--ink);
    font-size: var(--size-text);
    white-space: nowrap;
    border-bottom: 3px solid transparent;
    cursor: pointer;
  }
  .form:hover {
    background: var(--accent-wash);
  }
  .form:has(:checked) {
    font-weight: 640;
    border-bottom-color: var(--accent);
  }
  .form:has(:focus-visible) {
    outline: 2px solid var(--accent);
    outline-offset: -2px;
  }
  .form input {
    position: absolute;
    inset: 0;
    width: 100%;
    height: 100%;
    min-height: 0;
    margin: 0;
    opacity: 0;
    cursor: pointer;
  }
  .says {
    flex: 1 1 100%;
    max-width: none;
    margin: -1px 0 0 10px;
    padding-top: 10px;
    border-top: 1px solid var(--rule);
  }
  .options {
    margin: -8px 0 16px;
  }
  tb-measures {
    padding: 4px 0 0 32px;
  }
  .problem {
    padding: 10px 14px;
    border-left: 3px solid var(--warn);
    background: var(--warn-wash);
  }
  /* What is pasted lands on white paper, so that is what it is shown on. */
  .page {
    max-height: 360px;
    overflow: auto;
    padding: 14px 18px;
    color: #000;
    background: #fff;
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    font-family: serif;
  }
  .page :is(h2, h3, p) {
    margin: 0 0 8px;
    letter-spacing: 0;
  }
  .page h3:not(:first-of-type) {
    margin-top: 18px;
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
  a.main,
  a.lined {
    display: inline-flex;
    align-items: center;
    min-height: var(--target);
    padding: 4px 16px;
    border: 1px solid transparent;
    border-radius: var(--radius);
    text-decoration: none;
  }
  a.main {
    background: var(--accent);
    color: var(--accent-ink);
    font-weight: 600;
  }
  a.lined {
    border-color: var(--rule-strong);
    color: var(--ink);
  }
  a.lined:hover {
    background: var(--accent-wash);
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
