import { css } from 'lit'

/**
 * On the screen every row is laid out by itself: a table's own layout goes through all its cells at every key. On
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
    tbody tr > * {
      height: auto;
      min-height: var(--row);
    }
    /* A key's layout, paint and hit test go through the groups and into one of them, not through all the rows. */
    tbody {
      contain: layout paint style;
    }
    tbody.open {
      contain: layout style; /* an editor's list and the mark of a lit line reach beyond their group */
    }
    tbody:focus-within {
      position: relative;
      z-index: 1; /* an open editor's list lies over the groups below */
    }
    tbody.waiting {
      /* the place of rows that are still to come */
      block-size: calc(var(--rows) * (var(--row) + 1px) + var(--more) * 1.5rem);
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
  }
`
