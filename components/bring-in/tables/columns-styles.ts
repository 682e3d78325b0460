import { css } from 'lit'

/** A table that scrolls sideways, its columns' uses above, and beneath each row what becomes of it. */
export const columnsStyles = css`
  :host {
    display: block;
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    margin: 24px 0 4px;
  }
  .why,
  .counts {
    margin: 4px 0 0;
    color: var(--ink-soft);
    font-size: var(--size-small);
    font-weight: 400;
  }
  .why:empty {
    display: none;
  }
  .look {
    color: var(--warn);
    font-weight: 640;
  }
  .remembered {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 12px;
    margin: 4px 0 8px;
  }
  .scroller {
    container-type: inline-size;
    overflow-x: auto;
    margin: 10px 0 6px;
    border-top: 1.5px solid var(--rule-strong);
    border-bottom: 1px solid var(--rule-strong);
  }
  table {
    border-collapse: collapse;
    min-width: 100%;
    font-size: var(--size-text);
  }
  th {
    min-width: 9.5rem;
    max-width: 15rem;
    padding: 8px 14px 10px 0;
    text-align: left;
    vertical-align: top;
    overflow-wrap: anywhere;
  }
  th label {
    display: block;
    margin-bottom: 4px;
    font-weight: 640;
    color: var(--ink);
  }
  th select {
    width: 100%;
    font-weight: 400;
  }
  th .why {
    font-size: var(--size-fine);
    line-height: 1.35;
  }
  .source td {
    border-top: 1px solid var(--rule);
    padding: 6px 14px 0 0;
    color: var(--ink-soft);
    max-width: 15rem;
    overflow-wrap: anywhere;
    vertical-align: baseline;
  }
  .source .out {
    text-decoration: line-through;
    text-decoration-color: var(--rule-strong);
  }
  .becomes td {
    padding: 0 0 7px;
  }
  .becomes div {
    position: sticky;
    left: 0;
    max-width: 100cqw;
    overflow-wrap: anywhere;
  }
  .becomes b {
    font-weight: 600;
  }
  .wrong div {
    color: var(--warn);
  }
  .settings {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 15rem), 1fr));
    gap: 4px 28px;
    margin: 18px 0 16px;
  }
  .settings select {
    width: 100%;
  }
`
