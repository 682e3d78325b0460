import { css } from 'lit'
import { belowWide, narrow } from '../styles/breakpoints.js'

/** The list of days beside the open one; where there is no room for both, one or the other. */
export const daysStyles = css`
  :host {
    display: grid;
    grid-template-columns: clamp(232px, 19%, 284px) minmax(0, 1fr);
    align-items: start;
  }
  tb-day-list {
    position: sticky;
    top: var(--head);
    max-height: calc(100vh - var(--head));
    padding: 28px 10px 32px var(--edge);
    overflow-y: auto;
    scrollbar-width: thin;
  }
  tb-day,
  .empty {
    min-height: calc(100vh - var(--head));
    border-left: 1px solid var(--rule);
    background: var(--board);
  }
  .empty {
    padding: 8vh 40px 40px;
  }
  h1:not(.unseen) {
    margin: 0 0 8px;
    font-size: var(--size-title);
    font-weight: 640;
    line-height: 1.15;
    letter-spacing: -0.015em;
  }
  main > p {
    max-width: 56ch;
    margin: 0 0 22px;
  }
  @media ${belowWide} {
    :host {
      display: block;
    }
    .alone {
      max-width: 620px;
      padding: 28px var(--edge) 40px;
    }
    tb-day-list {
      position: static;
      max-height: none;
      padding: 0;
    }
    tb-day {
      border: 0;
    }
  }
  @media ${narrow} {
    :host {
      padding-bottom: 64px; /* the foot of the page */
    }
    .alone {
      padding-top: 18px;
    }
  }
  @media print {
    :host {
      display: block;
    }
    tb-day-list {
      display: none;
    }
    tb-day {
      border: 0;
    }
  }
`
