import { css } from 'lit'

/** A weigh slip: a column of figures under one another, the result below the rule. */
export const workingStyles = css`
  :host {
    display: block;
  }
  section {
    margin: 6px 0 14px;
    padding: 10px 14px 6px;
    background: var(--accent-wash);
    border-top: 2px solid var(--accent);
    border-radius: 0 0 var(--radius) var(--radius);
  }
  h3,
  p,
  ul,
  ol {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    width: fit-content;
    margin: 0 0 4px;
    overflow-wrap: anywhere;
  }
  h3:focus-visible {
    outline-offset: 3px;
    border-radius: 2px;
  }
  .top {
    display: flex;
    align-items: flex-start;
    justify-content: space-between;
    gap: 8px;
  }
  .top > div {
    min-width: 0;
    padding-top: 4px;
  }
  .close {
    flex: none;
    min-width: 32px;
    min-height: 32px;
    margin: -2px -10px 0 0;
    padding: 0;
    color: var(--ink-soft);
  }
  .way {
    font-size: var(--size-fine);
    line-height: 1.3;
    color: var(--ink-soft);
    margin-bottom: 4px;
  }
  .way li {
    display: inline;
  }
  .way li::after {
    content: ' › ';
  }
  .way button {
    display: inline;
    min-height: 24px;
    min-width: 0;
    padding: 2px 0;
    text-align: left;
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-underline-offset: 3px;
  }
  .words {
    color: var(--ink-soft);
    font-size: var(--size-small);
    line-height: 1.35;
    overflow-wrap: anywhere;
  }
  .figures {
    padding: 8px 0 6px;
    overflow-wrap: anywhere;
  }
  .left {
    display: block;
    font-size: var(--size-text);
    line-height: 1.35;
  }
  .end {
    display: block;
    font-size: var(--size-figure);
    font-weight: 350;
    letter-spacing: -0.01em;
    line-height: 1.25;
  }
  .problem {
    padding: 6px 0;
    color: var(--warn);
  }
  .sources {
    border-top: 1px solid var(--rule-strong);
  }
  .sources li {
    border-bottom: 1px solid var(--rule);
  }
  .source {
    position: relative;
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    column-gap: 12px;
    align-content: center;
    align-items: baseline;
    width: 100%;
    min-height: var(--target);
    padding: 5px 16px 5px 0;
    text-align: left;
    font-size: var(--size-small);
    line-height: 1.3;
    border: 0;
    border-radius: 0;
  }
  button.source:hover {
    background: none;
  }
  button.source:hover .what {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .what {
    overflow-wrap: anywhere;
  }
  .figure {
    text-align: right;
    font-weight: 560;
  }
  .how {
    grid-column: 1;
    font-size: var(--size-fine);
    color: var(--ink-soft);
  }
  .on {
    position: absolute;
    right: 2px;
    top: 50%;
    translate: 0 -55%;
    font-size: var(--size-lead);
    line-height: 1;
    color: var(--accent);
  }
  .do {
    display: flex;
    gap: 4px;
    margin: 2px -10px 0;
  }
  .do button {
    padding: 4px 10px;
    color: var(--accent);
    font-weight: 560;
  }
  :host([foot]) section {
    max-height: min(52vh, 480px);
    margin: 0;
    padding: 10px 16px 8px;
    overflow-y: auto;
    border-radius: 0;
    box-shadow: 0 -6px 24px rgb(20 16 12 / 0.14);
  }
  @media (pointer: coarse) {
    .close {
      min-width: 44px;
      min-height: 44px;
    }
  }
  @media (forced-colors: active) {
    .source,
    .way button {
      border: 0;
    }
    section {
      border: 1px solid CanvasText;
    }
  }
  @media print {
    .sources button {
      display: grid;
    }
    .close,
    .do,
    .on {
      display: none;
    }
  }
`
