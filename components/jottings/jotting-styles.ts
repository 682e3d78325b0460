import { css } from 'lit'
import { narrow } from '../styles/breakpoints.js'

/** Jottings as lines of a notebook: name = calculation, and what it comes to at the right. */
export const jottingStyles = css`
  .hint code {
    font: inherit;
    color: var(--ink);
    white-space: nowrap;
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  .jotting {
    display: grid;
    grid-template:
      'name is text value remove' auto
      'error error error error error' auto / minmax(96px, 26%) auto minmax(0, 1fr) minmax(104px, auto) var(--target);
    align-items: center;
    border-bottom: 1px solid var(--rule);
  }
  [aria-invalid='true'] {
    border-color: var(--warn);
    border-style: dashed;
  }
  .name {
    grid-area: name;
    margin-left: -9px;
    font-weight: 600;
  }
  .new .name {
    font-weight: 400;
  }
  .is {
    grid-area: is;
    padding: 0 2px;
    color: var(--ink-soft);
  }
  .calculation {
    grid-area: text;
    position: relative;
    min-width: 0;
  }
  .value {
    grid-area: value;
    justify-self: end;
    min-width: 0;
    padding: 4px 8px;
    text-align: right;
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  .value small {
    margin-left: 5px;
    font-size: var(--size-fine);
    font-weight: 400;
    color: var(--ink-soft);
  }
  button .said {
    text-decoration: underline;
    text-decoration-color: var(--rule-strong);
    text-decoration-thickness: 1px;
    text-underline-offset: 4px;
  }
  .remove {
    grid-area: remove;
    display: grid;
    place-items: center;
    padding: 0;
    color: var(--ink-soft);
  }
  .remove svg {
    width: 12px;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
  }
  .error {
    grid-area: error;
    margin: 0 0 8px;
    max-width: 66ch;
    font-size: var(--size-small);
    color: var(--warn);
  }
  .error:empty {
    display: none;
  }
  @media ${narrow} {
    .jotting {
      grid-template:
        'name value value' auto
        'is text remove' auto
        'error error error' auto / auto minmax(0, 1fr) var(--target);
      padding: 4px 0;
    }
    .name {
      grid-column: 1 / 3;
      grid-row: 1;
      width: calc(60% + 9px);
    }
    .value {
      grid-column: 2 / 4;
      grid-row: 1;
    }
  }
  @media print {
    .remove {
      display: none;
    }
    button.value {
      display: block;
    }
    button .said {
      text-decoration: none;
    }
  }
`
