import { css } from 'lit'
import { broader } from '../styles/breakpoints.js'

/** What it counts as in rows, what it contains in columns. */
export const ingredientStyles = css`
  .kinds small {
    display: block;
    color: var(--ink-soft);
    font-size: var(--size-small);
    line-height: 1.35;
  }
  @media ${broader} {
    .kinds .choice span {
      display: grid;
      grid-template-columns: 72px 1fr;
      align-items: baseline;
    }
  }
  .guess:not(:empty),
  .unsaid {
    color: var(--ink);
  }
  .brings {
    align-self: end;
    grid-column: 2 / -1;
    padding-bottom: 10px;
  }
  .contains {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(190px, 1fr));
    column-gap: 16px;
  }
  .lists {
    margin: 10px 0 0;
    font-size: var(--size-small);
  }
  .lists div {
    display: flex;
    flex-wrap: wrap;
    gap: 0 12px;
    padding: 5px 0;
    border-top: 1px solid var(--rule);
  }
  dt {
    color: var(--ink-soft);
    flex: 0 0 120px;
  }
  dd {
    margin: 0;
    flex: 1 1 200px;
  }
  .bought {
    margin: 0 0 18px;
    padding: 8px 0 0;
    border-top: 1px solid var(--rule);
  }
  summary {
    min-height: var(--target);
    padding: 6px 0;
    font-weight: 640;
    cursor: pointer;
  }
  .bought[open] {
    padding-bottom: 4px;
  }
  .bought .numbers {
    grid-template-columns: repeat(auto-fill, minmax(150px, 1fr));
  }
  .bought .number input {
    width: 100%;
    text-align: right;
  }
  #supplier {
    text-align: left;
  }
  .each {
    margin-top: -4px;
  }
  .currency {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 10px;
    margin-bottom: 10px;
  }
  .currency > label {
    margin: 0;
  }
`
