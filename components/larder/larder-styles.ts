import { css } from 'lit'

/** Ingredients in rows. */
export const larderStyles = css`
  .search label {
    display: block;
    margin-bottom: 4px;
  }
  .search input {
    width: 100%;
  }
  .search {
    margin-bottom: 16px;
  }
  h3 {
    margin: 26px 0 4px;
  }
  .count {
    color: var(--ink-soft);
    font-weight: 400;
    font-size: var(--size-small);
    margin-left: 4px;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    border-bottom: 1px solid var(--rule);
  }
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 16px;
    width: calc(100% + 18px);
    margin: 0 -9px;
    padding: 8px;
    text-align: left;
    min-height: max(40px, var(--target));
  }
  .name {
    flex: 1 1 auto;
  }
  .facts {
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .mark {
    color: var(--accent);
    font-weight: 600;
    margin-left: 6px;
  }
  footer .error {
    flex: 1 1 100%;
    max-width: none;
    margin: 0;
  }
`
