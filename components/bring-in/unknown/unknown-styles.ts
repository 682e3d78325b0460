import { css } from 'lit'

/** Names with a choice each, in as many columns as there is room for. */
export const unknownStyles = css`
  :host {
    display: block;
    container-type: inline-size;
    margin: 0 0 16px;
  }
  section {
    padding: 12px 16px;
    border-left: 3px solid var(--rule-strong);
    background: color-mix(in srgb, var(--accent-wash) 40%, var(--board));
  }
  section.open {
    border-left-color: var(--warn);
    background: var(--warn-wash);
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    margin: 0 0 4px;
  }
  .count {
    color: var(--ink-soft);
    font-weight: 400;
    font-size: var(--size-small);
  }
  p {
    margin: 0 0 8px;
    max-width: 66ch;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 18.5rem), 1fr));
    gap: 0 32px;
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 9.5rem;
    gap: 2px 12px;
    align-items: center;
    align-content: start;
    padding: 7px 0;
    border-top: 1px solid var(--rule);
  }
  li > label {
    color: var(--ink);
    font-size: var(--size-text);
    overflow-wrap: anywhere;
  }
  .why {
    grid-column: 1 / -1;
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    align-items: center;
    gap: 2px 10px;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .hydration input {
    width: 4.6em;
    min-height: max(30px, calc(var(--target) - 6px));
    text-align: right;
  }
  @media (pointer: coarse) {
    .hydration input {
      min-height: var(--target);
    }
  }
  [aria-invalid='true'] {
    border: 2px solid var(--warn);
  }
  .error {
    color: var(--warn);
  }
  .rest {
    margin: 10px 0 6px;
  }
`
