import { css } from 'lit'

/** What was understood, what was not, and the choice for each formula. */
export const bringInStyles = css`
  :host([wide]) {
    --dialog-width: 1040px;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 4px 24px;
    margin-bottom: 16px;
  }
  .top .sum {
    flex: 1 1 18rem;
    margin: 0;
  }
  .read-as {
    margin-bottom: 16px;
  }
  .top .read-as {
    margin: 0;
  }
  .read-as label {
    display: block;
    margin-bottom: 4px;
  }
  progress {
    width: min(100%, 24rem);
    height: 10px;
    accent-color: var(--accent);
  }
  .totals li {
    padding: 2px 0;
  }
  .rest {
    border-top: 1px solid var(--rule-strong);
    margin-top: 20px;
    padding-top: 14px;
  }
  .rest h3 {
    margin: 0 0 4px;
  }
  .rest ul,
  details.totals ul {
    margin: 0 0 10px;
    padding-left: 1.2em;
    overflow-wrap: anywhere;
  }
  li small {
    color: var(--ink-soft);
  }
  .body > p {
    margin-bottom: 16px;
  }
  .over {
    background: var(--accent-wash);
    outline: 2px dashed var(--accent);
    outline-offset: -8px;
  }
  code {
    font-size: 0.92em;
  }
  input[type='file'] {
    padding: 6px;
    min-height: 48px;
  }
  ::file-selector-button {
    font: inherit;
    font-weight: 600;
    color: var(--accent-ink);
    background: var(--accent);
    border: 1px solid transparent;
    border-radius: var(--radius);
    min-height: 36px;
    padding: 4px 14px;
    margin-right: 12px;
    cursor: pointer;
  }
  .sum {
    margin: 0 0 16px;
    font-size: var(--size-lead);
  }
  .sum:focus-visible {
    outline: none; /* focused by program, so that reading goes on here */
  }
  .sum small {
    display: block;
    font-weight: 400;
    font-size: var(--size-small);
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  .formula {
    border-top: 1px solid var(--rule-strong);
    padding: 14px 0 10px;
    margin-top: 16px;
  }
  .formula h3 {
    margin: 0;
    overflow-wrap: anywhere;
  }
  .formula p {
    margin-bottom: 6px;
  }
  .problems,
  .remark,
  .refusal {
    margin: 0 0 16px;
    padding: 12px 16px;
    background: var(--warn-wash);
    border-left: 3px solid var(--warn);
    max-width: none;
  }
  .refusal {
    color: var(--ink);
    font-size: var(--size-text);
  }
  .problems h3 {
    margin: 0 0 6px;
  }
  .count {
    color: var(--ink-soft);
    font-weight: 400;
    font-size: var(--size-small);
  }
  .problems ul {
    margin: 0 0 10px;
    padding-left: 1.2em;
    overflow-wrap: anywhere;
  }
  .problems li {
    padding: 2px 0;
  }
  .problems.of-remark {
    margin: 16px 0 0;
    background: none;
    border-left-color: var(--rule-strong);
  }
`
