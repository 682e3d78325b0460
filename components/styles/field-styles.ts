import { css } from 'lit'

/** Fields with their labels, hints and faults; choices as rows. */
export const fieldStyles = css`
  :host {
    display: block;
  }
  .field {
    margin: 0 0 18px;
  }
  .field > label {
    display: block;
    margin-bottom: 4px;
  }
  .field > input,
  .field > textarea {
    width: 100%;
  }
  textarea {
    display: block;
    padding: 8px 10px;
    resize: vertical;
  }
  fieldset {
    margin: 0 0 18px;
    padding: 18px 0 0;
    border: 0;
    border-top: 1px solid var(--rule);
    min-width: 0;
  }
  legend {
    float: left; /* beside a legend nothing flows, unless it floats */
    width: 100%;
    padding: 0;
    margin-bottom: 8px;
    font-weight: 640;
  }
  fieldset > :not(legend) {
    clear: both;
  }
  .choice {
    display: flex;
    gap: 10px;
    align-items: flex-start;
    min-height: var(--target);
    padding: 6px 0;
    color: var(--ink);
    font-size: var(--size-text);
    cursor: pointer;
  }
  .choice input {
    flex: none;
    width: 20px;
    height: 20px;
    min-height: 0;
    margin: 2px;
    accent-color: var(--accent);
  }
  .numbers {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(124px, 1fr));
    gap: 12px 20px;
    margin-bottom: 12px;
  }
  .number {
    margin: 0;
    min-width: 0;
  }
  .with-unit {
    display: flex;
    align-items: baseline;
    gap: 6px;
    color: var(--ink-soft);
  }
  .with-unit input {
    color: var(--ink);
    width: 100%;
    min-width: 0;
    text-align: right;
  }
  ::placeholder {
    color: var(--ink-soft);
    opacity: 0.85;
  }
  [aria-invalid='true'] {
    border: 2px solid var(--warn);
  }
  .error {
    margin: 4px 0 0;
    color: var(--warn);
    font-size: var(--size-small);
  }
  .error:empty,
  .hint:empty {
    display: none;
  }
  .number:has(.error:not(:empty)) {
    grid-column: span 2;
  }
  .hint {
    margin: 0 0 10px;
    max-width: 66ch;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .field > .hint {
    margin: 6px 0 0;
  }
  input[readonly],
  textarea[readonly] {
    border-style: dashed;
  }
`
