import { css } from 'lit'

/** Where the baker is, what is selected, and what a working speaks of. */
export const placeStyles = css`
  /* Over a cell lies something only here; every cell that may be placed would cost the page at each key. */
  [data-column]:focus-within,
  .editing,
  tr.lit > th {
    position: relative;
  }

  /* Lit while a working speaks of it: a wash, and a mark at its start */
  tr.lit > * {
    background: var(--accent-wash);
  }
  tr.lit > th::before {
    content: '';
    position: absolute;
    inset-block: 6px;
    inset-inline-start: -9px;
    border-inline-start: 4px solid var(--accent);
    border-radius: 2px;
  }

  /* Selection, focus */
  [aria-selected='true'] {
    background: var(--accent-wash);
  }
  [data-column]:focus {
    z-index: 1;
    background: var(--accent-wash);
    outline: 2px solid var(--accent);
    outline-offset: -2px;
    border-radius: 3px;
  }
  td[data-column],
  th[data-column] {
    cursor: default;
    touch-action: manipulation;
  }
`
