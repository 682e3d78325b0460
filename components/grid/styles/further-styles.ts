import { css } from 'lit'

/**
 * What is fetched later: what is offered, the menu and the strip of a touch keyboard, and the grid in forced colours
 * and on paper.
 */
export const furtherStyles = css`
  /* What can be done at once, beneath a line */
  tb-offers:not(:empty) {
    display: block;
    border-bottom: 1px solid var(--rule);
  }
  tb-offers p {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 10px;
    padding-bottom: 6px;
  }
  tb-offers button {
    min-height: max(28px, var(--target));
    padding: 2px 0;
    color: var(--accent);
    text-decoration: underline;
    text-underline-offset: 3px;
  }

  @media (forced-colors: active) {
    [aria-selected='true'] {
      forced-color-adjust: none;
      background: Highlight;
      color: HighlightText;
    }
    [aria-selected='true'] :not(button, button *) {
      color: HighlightText !important;
    }
    [data-column][aria-selected='true']:focus {
      background: Highlight;
      outline: 2px dashed HighlightText;
    }
    [data-column]:focus,
    .field {
      outline-color: Highlight;
    }
  }

  /* Menu */
  #menu {
    inset: auto;
    min-width: 220px;
    max-width: calc(100vw - 16px);
    max-height: calc(100vh - 16px);
    margin: 0;
    padding: 6px;
    overflow: auto;
    color: var(--ink);
    background: var(--board);
    border: 1px solid var(--rule-strong);
    border-radius: 8px;
    box-shadow: 0 8px 28px rgb(30 20 10 / 0.16);
  }
  #menu button {
    display: flex;
    align-items: baseline;
    justify-content: space-between;
    gap: 24px;
    width: 100%;
    text-align: start;
  }
  #menu button:focus-visible {
    outline-offset: -2px;
  }
  #menu kbd {
    color: var(--ink-soft);
    font: inherit;
    font-size: 0.84rem;
  }
  @media (hover: none) {
    #menu kbd {
      display: none;
    }
  }
  #menu hr {
    margin: 5px 10px;
    border: 0;
    border-top: 1px solid var(--rule);
  }
  [role='menuitemradio'] span::before {
    content: '';
    display: inline-block;
    width: 0.6em;
    height: 0.6em;
    margin-inline-end: 0.6em;
    border: 1.5px solid var(--rule-strong);
    border-radius: 50%;
  }
  [role='menuitemradio'][aria-checked='true'] span::before {
    border: 0.32em solid var(--accent);
  }

  /* Signs and units above a touch keyboard */
  .pad:popover-open {
    position: fixed;
    inset: auto 0 var(--pad-bottom, 0px);
    width: auto;
    margin: 0;
    display: grid;
    grid-template-columns: repeat(7, 1fr);
    gap: 4px;
    padding: 6px;
    color: var(--ink);
    background: var(--ground);
    border: 0;
    border-top: 1px solid var(--rule-strong);
  }
  .pad button {
    min-width: 0;
    min-height: 44px;
    padding: 0;
    border: 1px solid var(--rule);
    background: var(--board);
  }
  .pad button.main {
    background: var(--accent);
  }

  /* On paper a stage stands together, and rows are as high as their text. */
  @media print {
    tbody {
      break-inside: avoid;
    }
    tr.method {
      break-before: avoid;
    }
    tr.method button {
      display: block;
      min-height: 0;
      padding: 2px 0;
      color: #000;
    }
    tr.method button > span {
      display: block; /* all of it */
    }
    :host {
      --row: 24px;
      --above: 2px;
      line-height: 1.35;
    }
    small.note {
      display: inline;
      margin: 0 0 0 4px;
    }
    tr.stage > * {
      padding-top: 10px;
    }
    table {
      --actions: 0px;
      color: #000;
    }
    thead {
      position: static;
      background: none;
      break-inside: avoid;
    }
    thead th {
      color: #000;
      border-bottom-color: #000;
    }
    tr {
      break-inside: avoid;
    }
    tr.stage {
      break-after: avoid;
    }
    tr.sum {
      break-before: avoid;
    }
    tr.add,
    td.actions,
    th.actions,
    .after,
    .pad,
    button.how {
      display: none;
    }
    tbody th,
    tbody td,
    small,
    .figure.computed,
    .figure.missing,
    .figure.stale,
    .figure.gives {
      color: #000 !important;
      background: none !important;
      outline: none !important;
    }
  }
`
