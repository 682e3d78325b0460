import { css } from 'lit'

export const gridStyles = css`
  :host {
    display: block;
    --pad: clamp(9px, 1.3vw, 12px);
    --row: 38px;
    --above: 7px; /* a line's text stands in the middle of a row of one line */
    --ingredient: auto;
    --percent: 14%;
    --weight: 14%;
    --wholeDough: 13%;
    --batch: 13%;
    --note: 24%;
    --actions: calc(var(--target) + 8px);
    line-height: 1.5;
  }
  @media (pointer: coarse) {
    :host {
      --row: 48px;
      --above: 12px;
    }
  }
  table {
    width: 100%;
    table-layout: fixed;
    border-collapse: separate; /* collapsed borders do not stay with a sticky head */
    border-spacing: 0;
  }

  .with-batch {
    --percent: 12.5%;
    --weight: 12.5%;
    --wholeDough: 12.5%;
    --batch: 12.5%;
    --note: 17%;
    --pad: 9px;
  }

  /* Head */
  thead {
    position: sticky;
    top: var(--sheet-top, 0px); /* where the page keeps a bar of its own above */
    z-index: 2;
    background: var(--sheet-ground, var(--board));
  }
  thead th {
    padding: 6px var(--pad) 5px;
    border-bottom: 2px solid var(--ink);
    color: var(--ink-soft);
    font-size: 0.82rem;
    font-weight: 600;
    line-height: 1.2;
    text-align: start;
    vertical-align: bottom;
  }
  thead th.percent,
  thead th.weight,
  thead th.wholeDough,
  thead th.batch {
    text-align: end;
    padding-inline: 0 calc(var(--pad) + 1ch);
  }

  thead th small {
    display: block;
    font-size: 0.95em;
    font-weight: 400;
  }
  thead th.wholeDough {
    padding-inline-end: calc(var(--pad) + 0.5ch);
  }
  :host([narrow]) small.above,
  :host(:not([narrow])) small.beneath {
    display: none;
  }

  /* Rows: rules, no boxes */
  tbody th,
  tbody td {
    height: var(--row); /* of a table cell: at least */
    padding: var(--above) var(--pad);
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
    text-align: start;
    vertical-align: baseline;
    overflow-wrap: anywhere;
    scroll-margin-block: 64px 24px;
  }
  tr > :first-child {
    padding-inline-start: 2px;
  }
  tr.troubled > * {
    border-bottom-width: 0;
  }
  tr > td.actions {
    padding: 0 4px;
    text-align: end;
    vertical-align: top;
  }
  td.actions button {
    padding: 0;
    color: var(--ink-soft);
    font-size: 0.8rem;
    letter-spacing: 0.1em;
  }
  td.actions button:hover,
  td.actions button:focus-visible {
    color: var(--ink);
  }
  td.actions button:focus-visible {
    outline-offset: -2px;
  }

  /* Stages */
  tr.stage > * {
    height: auto;
    padding-block: 14px 3px;
    border-bottom: 1px solid var(--rule-strong);
    vertical-align: bottom;
  }
  tbody:first-of-type tr.stage > * {
    padding-top: 6px;
  }
  tr.stage > td.actions {
    vertical-align: bottom;
  }
  tr.stage .name {
    margin-inline-end: 12px;
    font-size: 1.22rem;
    font-weight: 640;
    letter-spacing: -0.01em;
    line-height: 1.2;
  }
  tr.stage small {
    display: inline-block;
    color: var(--ink-soft);
    font-size: 0.88rem;
  }

  /* What is said beside an ingredient, and of a row */
  th small {
    color: var(--ink-soft);
    font-size: 0.84rem;
  }
  .line .name {
    margin-inline-end: 6px;
  }
  small.note {
    display: block;
    margin-top: -2px;
    line-height: 1.2;
  }
  td.note {
    color: var(--ink-soft);
  }
  td.note .held {
    font-size: 0.92rem;
  }
  small.note,
  td.note .held {
    white-space: pre-line;
  }
  small.tag {
    display: inline-block;
    margin: 0 2px 0 0;
    padding: 0 7px;
    border: 1px solid var(--rule-strong);
    border-radius: 99px;
  }
  small.unknown {
    border-color: var(--warn);
    border-style: dashed;
    color: var(--warn);
  }
  button.define {
    min-width: 24px;
    min-height: 28px;
    margin-block: -4px; /* the line stays as high as the numbers' beside it */
    padding: 0 8px;
    color: var(--accent);
    font-size: 0.88rem;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  @media (pointer: coarse) {
    button.define {
      min-height: 44px;
      margin-block: -12px;
    }
  }
  tr.problem td {
    height: auto;
    padding-block: 0 10px;
  }
  /* What is offered for a line comes later, and for most lines there is nothing: until then it takes no room. */
  tr.offers td {
    padding: 0 0 0 2px;
    border-bottom: 0;
  }
  tr.stage + tr.problem td {
    padding-top: 6px;
  }
  small.waits {
    display: block;
  }
  small.hydration {
    display: inline-block;
  }
  small.for {
    display: block;
    color: var(--accent);
    font-size: 0.84rem;
    line-height: 1.3;
  }
  tr.problem p {
    max-width: 60ch;
    margin: 0;
    padding-inline-start: 10px;
    border-inline-start: 3px solid var(--warn);
    font-size: 0.9rem;
    line-height: 1.35;
  }
  tr.problem b {
    color: var(--warn);
    font-weight: 650;
  }

  /* The row for another ingredient, and the sum as under a bill */
  tr.add th {
    color: var(--ink-soft);
    white-space: nowrap; /* the cells beside it are empty */
  }
  .plus {
    display: inline-block;
    width: 1.1em;
    color: var(--accent);
    font-weight: 600;
  }
  tr.add > * {
    border-bottom-color: var(--rule-strong);
  }
  /* Under a pointer it says so only where the pointer or the focus is; a stage without lines says so at once. */
  @media (hover: hover) and (pointer: fine) {
    tr.add > * {
      --row: 32px;
      --above: 4px;
    }
    tr.line ~ tr.add .held {
      opacity: 0;
    }
    tbody:is(:hover, :focus-within) tr.add .held {
      opacity: 1;
    }
  }
  tr.sum > * {
    border-bottom: 0;
    color: var(--ink-soft);
  }
  tr.sum.final > * {
    color: var(--ink);
    font-weight: 640;
  }
  tr.sum.final .figure {
    color: inherit;
  }
  tr.sum.final .figure {
    text-decoration: underline;
    text-decoration-style: double;
    text-decoration-color: var(--rule-strong);
    text-decoration-thickness: 1px;
    text-underline-offset: 5px;
  }

  /* What is done, in two lines at most */
  tr.method td {
    padding-block: 0;
    border: 0;
  }
  tr.method button {
    min-height: calc(var(--target) - 8px);
    padding: 0;
    color: var(--ink-soft);
    font-size: 0.86rem;
    text-align: start;
  }
  tr.method button > span {
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow: hidden;
  }

  /* After the sheet */
  .after {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 10px 20px;
    padding: 22px 0 8px;
  }
  .by-touch {
    display: none;
  }
  @media (pointer: coarse) {
    .by-keys {
      display: none;
    }
    .by-touch {
      display: inline;
    }
  }
  #help b {
    font-weight: 500;
  }
  #help {
    margin: 0;
    color: var(--ink-soft);
    font-size: 0.86rem;
  }
`
