import { css } from 'lit'

/** Hands dark, waits light, the oven brown; in forced colours told apart by their shapes. */
export const lanesStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  .scroll {
    overflow-x: auto;
    overscroll-behavior-x: contain;
    padding-bottom: 4px;
    touch-action: pan-x pan-y;
  }
  .drawing {
    position: relative;
  }
  svg {
    display: block;
    position: absolute;
    inset: 0;
  }
  .stays {
    position: sticky;
    left: 0;
    width: 0;
    height: 0;
    z-index: 1;
  }
  .name,
  .date span {
    white-space: nowrap;
    background: color-mix(in srgb, var(--board) 78%, transparent);
    border-radius: 3px;
    padding-right: 6px;
  }
  .name {
    position: absolute;
    left: 0;
    font-size: var(--size-small);
    line-height: 20px;
    pointer-events: none;
  }
  .date {
    position: absolute;
    top: 0;
    font-size: var(--size-small);
    font-weight: 620;
    line-height: 20px;
    border-left: 1px solid var(--rule-strong);
    padding-left: 6px;
    overflow: clip;
    pointer-events: none;
  }
  .date:first-of-type {
    border-color: transparent;
    padding-left: 0;
  }
  .date span {
    position: sticky;
    left: 0;
  }
  text {
    fill: var(--ink-soft);
    font-size: var(--size-fine);
  }
  .mark {
    stroke: var(--rule);
  }
  .mark.midnight {
    stroke: var(--rule-strong);
  }
  .night {
    fill: var(--ink);
    opacity: 0.07;
  }
  [data-moment] {
    cursor: pointer;
  }
  .hands {
    fill: var(--ink);
  }
  .wait {
    fill: var(--rule);
    stroke: var(--rule-strong);
  }
  .bake {
    fill: var(--warn);
  }
  .heating {
    fill: none;
    stroke: var(--warn);
    stroke-dasharray: 4 3;
  }
  .held {
    fill: var(--accent);
    stroke: var(--board);
  }
  .now {
    stroke: var(--accent);
    stroke-width: 2;
  }
  text.now {
    fill: var(--accent);
    stroke: none;
    font-weight: 620;
  }
  .cursor {
    position: absolute;
    border-radius: 3px;
    scroll-margin: 8px 32px;
    pointer-events: none;
  }
  .cursor.chosen {
    outline: 2px solid var(--accent);
    outline-offset: 1px;
  }
  .cursor:focus-visible {
    outline: 3px solid var(--accent);
    outline-offset: 2px;
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 18px;
    margin: 6px 0 0;
    padding: 0;
    list-style: none;
    color: var(--ink-soft);
    font-size: var(--size-fine);
  }
  .legend li {
    display: inline-flex;
    align-items: center;
    gap: 6px;
  }
  .legend svg {
    position: static;
    flex: none;
  }
  @media (forced-colors: active) {
    .name,
    .date span {
      background: Canvas;
    }
    text {
      fill: CanvasText;
    }
    .mark {
      stroke: GrayText;
    }
    .mark.midnight {
      stroke: CanvasText;
    }
    .night {
      fill: GrayText;
      opacity: 0.25;
    }
    .hands {
      fill: CanvasText;
    }
    .wait {
      fill: Canvas;
      stroke: CanvasText;
    }
    .bake {
      fill: Highlight;
      stroke: CanvasText;
    }
    .heating {
      stroke: CanvasText;
    }
    .held {
      fill: LinkText;
      stroke: Canvas;
    }
    .now {
      stroke: LinkText;
    }
    text.now {
      fill: LinkText;
    }
    .cursor.chosen,
    .cursor:focus-visible {
      outline-color: Highlight;
    }
  }
  @media print {
    :host {
      display: none; /* the list says the same */
    }
  }
`
