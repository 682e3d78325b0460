import { css } from 'lit'

/**
 * On the screen every row is laid out and painted by itself: a table's own layout goes through all its cells at every key. On
 * paper the table stays one, whose head stands on each page. What is no table to the eye is one to screen readers
 * by the roles of its parts.
 */
export const screenStyles = css`
  @media screen {
    table,
    thead,
    tbody,
    tr > * {
      display: block;
    }
    table {
      --ingredient: minmax(0, 1fr);
    }
    colgroup {
      display: none;
    }
    tr {
      display: grid;
      grid-template-columns: var(--columns);
    }
    tbody tr {
      contain: layout;
    }
    tbody tr > * {
      height: auto;
      min-height: var(--row);
    }
    /* Of many rows those out of sight are neither laid out nor painted; found, read out and gone to they are. */
    .long tbody {
      content-visibility: auto;
      contain-intrinsic-block-size: auto calc(var(--rows) * (var(--row) + 1px) + var(--more) * 1.5rem);
    }
    .long tbody.open {
      content-visibility: visible; /* an editor's list, the mark of a lit line reach beyond their group */
    }
    tbody.waiting {
      content-visibility: hidden; /* its rows are still to come: it keeps their place */
    }
    thead tr,
    tr.stage {
      align-items: end;
    }
    tr.stage > *,
    tr.problem > * {
      min-height: 0;
    }
    tr.stage > th {
      grid-column: 1 / -2;
    }
    tr.stage > :only-child,
    tr.problem > * {
      grid-column: 1 / -1;
    }
    tbody tr:focus-within {
      z-index: 1; /* an open editor's list lies over the rows below */
    }
  }
`
