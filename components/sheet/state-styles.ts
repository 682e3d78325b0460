import { css } from 'lit'

/** The states of a formula: a line to keep this one, and a line each. */
export const stateStyles = css`
  form {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 10px;
  }
  form input {
    flex: 1 1 220px;
    max-width: 340px;
  }
  .refusal {
    margin: 6px 0 0;
  }
  ul {
    list-style: none;
    margin: 12px 0 0;
    padding: 0;
  }
  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 2px 16px;
    padding: 8px 0;
    border-top: 1px solid var(--rule);
  }
  li:last-child {
    padding-bottom: 0;
  }
  .state {
    flex: 1 1 300px;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  b {
    font-weight: 620;
  }
  .state .quiet {
    display: block;
    font-size: var(--size-small);
  }
  .do {
    display: flex;
    margin-left: -10px;
  }
  .do button {
    padding: 4px 10px;
    font-size: var(--size-small);
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  .do button:hover {
    text-decoration-color: currentColor;
  }
`
