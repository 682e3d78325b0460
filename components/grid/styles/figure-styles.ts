import { css } from 'lit'

/** Numbers: typed, computed, given way, weighed, and the way to their workings. */
export const figureStyles = css`
  /* Figures stand under each other by their decimal marks. */
  td.number {
    text-align: end;
  }
  .figure {
    white-space: nowrap;
  }
  .rest::after {
    content: attr(data-rest);
    content: attr(data-rest) / ' grams';
    color: transparent;
    forced-color-adjust: none;
    text-decoration: none;
  }
  /* Digits in bold are wider: the room of decimals is that of plain ones, so what bold ones take beyond it is taken back. */
  .rest {
    display: inline-block; /* takes no line of what it stands in */
    margin-inline-start: calc(-1ch * var(--decimals, 0));
  }
  .rest::after {
    padding-inline-start: calc(1ch * var(--decimals, 0));
    font-weight: 400;
  }
  .rest[data-rest='0'] {
    --decimals: 1.5; /* a mark is about half a digit wide */
  }
  .rest[data-rest=''] {
    --decimals: 2.5;
  }
  [data-column='percent'] .rest::after,
  [data-column='wholeDough'] .rest::after {
    content: attr(data-rest) / ' per cent';
  }
  .written .rest::after {
    content: attr(data-rest) / '';
  }
  .figure.computed,
  .figure.missing,
  .figure.stale {
    color: var(--ink-soft);
  }
  .figure.gives {
    color: var(--accent);
    font-style: italic;
  }
  /* What is said of a figure, beneath its whole part. */
  small.word {
    display: block;
    color: var(--ink-soft);
    font-size: 0.8rem;
    line-height: 1.2;
  }
  td.number small.word {
    padding-inline-end: 1.72rem; /* what the decimals take */
  }
  td.number .stale + small.word {
    padding-inline-end: 0;
    white-space: nowrap;
  }
  .figure.gives + small.word {
    color: var(--accent);
  }

  /* Weighed: what the hand does, so in full ink */
  .figure.weighed {
    color: var(--ink);
  }
  small.written {
    display: block;
    color: var(--ink-soft);
    font-size: 0.82rem;
    line-height: 1.25;
  }
  .struck {
    text-decoration: line-through;
  }

  /* The way to a number's working */
  button.how {
    display: none;
    position: absolute;
    inset-block-start: 2px;
    inset-inline-start: -8px; /* into the room between the columns */
    min-width: 24px;
    height: calc(var(--row) - 4px);
    min-height: 24px;
    padding: 0 1px;
    border: 0;
    color: var(--accent);
    font-size: 0.7rem;
    font-weight: 400;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  button.how.behind {
    inset-inline: auto 2px;
  }
  [data-column]:focus > button.how,
  [data-column]:focus-within > button.how {
    display: block;
  }
  .figure.typed,
  small.typed,
  .raw {
    /* In longhands, here and elsewhere: WebKit (WebKitGTK 2.50) drops a text-decoration that says more than its line. */
    text-decoration: underline;
    text-decoration-color: color-mix(in srgb, currentColor 50%, transparent);
    text-decoration-thickness: 2px;
    text-underline-offset: 5px;
  }
  /* In the room between the columns too: a name is broken only where the cell is narrower than it. */
  .raw,
  small.expression {
    display: block;
    margin-inline-start: calc(-1 * var(--pad));
    font-size: 0.8rem;
    font-weight: 620;
  }
  small.expression {
    margin-block: 2px 3px;
    line-height: 1.25;
    text-underline-offset: 4px;
  }
  .figure.typed {
    font-weight: 660;
  }
  .raw {
    text-decoration-style: wavy;
    text-decoration-thickness: 1px;
  }
`
