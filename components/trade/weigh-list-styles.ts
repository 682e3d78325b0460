import { css } from 'lit'

/** Lists side by side, as slips on a bench: a box, what it is, and its weight to the right. */
export const weighListStyles = css`
  :host {
    display: block;
  }
  .how {
    display: flex;
    align-items: baseline;
    gap: 8px;
    margin: 0;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  .how.some {
    min-height: var(--target);
  }
  .how button {
    color: var(--accent);
  }
  .lists {
    columns: 300px 3;
    column-gap: 36px;
  }
  section {
    break-inside: avoid;
    padding-bottom: 26px;
  }
  h3 {
    margin: 0;
    padding: 0 0 4px;
    font-size: var(--size-lead);
    font-weight: 640;
    border-bottom: 1px solid var(--rule-strong);
  }
  .about {
    margin: 0;
    padding: 4px 0;
    color: var(--ink-soft);
    font-size: var(--size-small);
    border-bottom: 1px solid var(--rule);
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    border-bottom: 1px solid var(--rule);
  }
  label {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr) auto;
    gap: 10px;
    align-items: center;
    min-height: max(40px, var(--target));
    color: var(--ink);
    font-size: var(--size-text);
    cursor: pointer;
  }
  label:has(:checked) {
    color: var(--ink-soft);
    text-decoration: line-through;
    text-decoration-thickness: 1px;
  }
  input {
    width: 22px;
    height: 22px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  span {
    overflow-wrap: anywhere;
  }
  small {
    display: block;
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
  b {
    font-weight: 640;
    white-space: nowrap;
  }
  .total {
    display: flex;
    justify-content: space-between;
    margin: 0;
    padding: 8px 0 0 32px;
    color: var(--ink-soft);
  }
  @media print {
    .how {
      display: none;
    }
    .lists {
      columns: 2;
    }
    .lists.many {
      columns: 3;
      column-gap: 18pt;
      line-height: 1.25;
      & label,
      & .total {
        font-size: 10.5pt;
      }
      & :is(small, .about) {
        font-size: 8.5pt;
      }
    }
    label {
      min-height: 0;
      padding: 2px 0;
      gap: 8px;
    }
    input {
      width: 11pt;
      height: 11pt;
    }
    section {
      padding-bottom: 10pt;
    }

    .total {
      padding: 3px 0 0;
    }
    .about {
      padding: 1px 0;
    }
  }
`
