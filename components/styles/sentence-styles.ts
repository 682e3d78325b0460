import { css } from 'lit'

/** Sentences with fields in them: numbers on a line to write on, as on paper. */
export const sentenceStyles = css`
  :host {
    display: block;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 2px 8px;
    margin: 0;
    padding: 3px 0;
    color: var(--ink-soft);
  }
  .line > label {
    font-size: inherit;
  }
  .typed {
    white-space: nowrap;
  }
  .typed input {
    width: 4.6em;
    padding: calc(var(--target) - 28px) 4px 0; /* the number stands on its line, however tall the target */
    text-align: right;
    font-weight: 620;
    color: var(--ink);
    background: none;
    border: 0;
    border-bottom: 2px solid var(--ink);
    border-radius: 0;
  }
  .typed input.short {
    width: 3em;
  }
  .typed input[readonly] {
    border-bottom-color: transparent;
  }
  .typed input[aria-invalid] {
    border-bottom: 3px double var(--warn);
  }
  select {
    color: var(--ink);
    font-weight: 620;
    padding-inline: 8px 4px;
    max-width: min(100%, 24em);
    text-overflow: ellipsis;
  }
  .line button {
    color: var(--accent);
    padding: 4px 8px;
  }
  .line button:first-child {
    margin-left: -8px;
  }
  .fault {
    margin: 0 0 6px;
    color: var(--warn);
    font-size: var(--size-small);
    max-width: 60ch;
  }
  .line > .check {
    display: inline-flex;
    align-items: baseline;
    gap: 8px;
    min-height: var(--target);
    margin-left: 8px;
    padding-top: calc(var(--target) / 2 - 12px);
    cursor: pointer;
  }
  .check input {
    flex: none;
    width: 20px;
    height: 20px;
    min-height: 0;
    margin: 2px;
    position: relative;
    top: 5px;
    accent-color: var(--accent);
  }
`
