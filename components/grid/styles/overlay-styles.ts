import { css } from 'lit'

/** What lies over the rows: the editor with its list and its refusal. */
export const overlayStyles = css`
  /* The editor lies over its cell; what it covers keeps its place */
  .editing > :not(.editor) {
    visibility: hidden;
  }
  .editing {
    z-index: 3;
  }
  .editor {
    position: absolute;
    inset-block-start: 2px;
    inset-inline-start: 0;
    width: max(100%, min(17rem, 72vw));
    scroll-margin-block: 80px 160px;
  }
  .editor.percent,
  .editor.weight,
  .editor.wholeDough,
  .editor.note {
    inset-inline: auto 0;
    width: max(100%, min(12rem, 60vw));
  }
  .editor.note {
    width: max(100%, min(16rem, 72vw));
  }
  :host([narrow]) .editor.percent,
  :host([narrow]) .editor.weight,
  :host([narrow]) .editor.wholeDough {
    width: max(100%, 8.5rem);
  }
  :host([narrow]) .editor.note {
    inset-inline: 0 auto;
  }
  .field {
    display: block;
    width: 100%;
    min-height: calc(var(--row) - 4px);
    padding: 4px calc(var(--pad) - 2px);
    border: 0;
    border-radius: 3px;
    outline: 2px solid var(--accent);
    outline-offset: -1px;
    color: var(--ink);
    background: var(--board);
    box-shadow: 0 3px 14px rgb(30 20 10 / 0.14);
    font-weight: 600;
  }
  textarea.field {
    overflow: hidden;
    resize: none;
    font-weight: 400;
    line-height: 1.4;
    padding-block: 9px;
  }
  .percent .field,
  .weight .field,
  .wholeDough .field {
    text-align: end;
  }
  .field[aria-invalid] {
    outline: 2px dashed var(--warn);
  }
  tr.stage .field {
    font-size: 1.15rem;
  }
  .editor > ul,
  .refusal {
    position: absolute;
    inset-block-start: calc(100% + 2px);
    inset-inline: 0;
    z-index: 4;
    margin: 0;
    background: var(--board);
    border: 1px solid var(--rule-strong);
    border-radius: var(--radius);
    box-shadow: 0 8px 24px rgb(30 20 10 / 0.16);
  }
  .up > ul,
  .up .refusal {
    inset-block: auto calc(100% + 2px);
  }
  .refusal {
    min-width: 14rem;
    white-space: normal;
    padding: 8px 12px;
    border-color: var(--warn);
    color: var(--ink);
    font-size: 0.9rem;
    font-weight: 400;
    text-align: start;
  }
  .percent .refusal,
  .weight .refusal,
  .wholeDough .refusal {
    inset-inline: auto 0;
  }
  .percent > ul,
  .weight > ul {
    inset-inline: auto var(--list-shift, 0px);
    width: min(16rem, calc(100vw - 16px));
    text-align: start;
  }
  .editor > ul {
    max-height: 320px;
    padding: 4px;
    overflow-y: auto;
    list-style: none;
    color: var(--ink);
    font-weight: 400;
    font-size: 1rem;
  }
  [role='option'] {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: 10px;
    min-height: 32px;
    padding: 5px 10px;
    border-radius: 4px;
    cursor: pointer;
  }
  @media (pointer: coarse) {
    [role='option'] {
      min-height: 44px;
      align-items: center;
    }
  }
  [role='option']:hover {
    background: var(--accent-wash);
  }
  [role='option'][aria-selected='true'] {
    background: var(--accent-wash);
    outline: 2px solid var(--accent);
    outline-offset: -2px;
  }
`
