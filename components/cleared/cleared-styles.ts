import { css } from 'lit'

/** What was deleted, in rows. */
export const clearedStyles = css`
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
    gap: 4px 16px;
    padding: 10px 0;
    border-top: 1px solid var(--rule);
  }
  li:last-child {
    border-bottom: 1px solid var(--rule);
  }
  .thing {
    flex: 1 1 300px;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  b {
    font-weight: 620;
  }
  small {
    display: block;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .do {
    display: flex;
    gap: 4px;
    margin-right: -12px;
  }
`
