import { css } from 'lit'
import { belowWide, narrow } from '../styles/breakpoints.js'

/** The open day: its list in the middle, what is to be known of it beside. */
export const dayStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr) clamp(280px, 31%, 356px);
  }
  main {
    padding: 26px 40px 48px;
  }
  aside {
    min-width: 0;
    padding: 30px var(--edge) 40px 24px;
    border-left: 1px solid var(--rule);
    background: var(--ground);
  }
  .all {
    display: none;
    padding: 8px 0;
    color: var(--accent);
    font-size: var(--size-small);
    text-decoration: none;
  }
  .all::before {
    content: '‹ ';
  }
  h1 {
    margin: 0 0 6px -8px;
    font-size: var(--size-title);
    font-weight: 640;
    line-height: 1.15;
    letter-spacing: -0.015em;
  }
  h2 {
    margin: 0 0 6px;
    font-size: var(--size-fine);
    font-weight: 600;
    letter-spacing: 0.02em;
    color: var(--ink-soft);
  }
  .said {
    display: none;
    margin: 0 0 12px;
  }
  .said button,
  .note button:not(.lined) {
    margin: -6px 0 -6px -2px;
    padding: 4px 8px;
    color: var(--accent);
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 3px;
  }
  .note {
    margin: 18px 0;
    padding: 10px 14px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .note.warn {
    background: var(--warn-wash);
    border-color: var(--warn);
  }
  .note p {
    margin: 0;
    max-width: 72ch;
  }
  .note p + p {
    margin-top: 6px;
  }
  .note ul {
    margin: 2px 0 0;
    padding-left: 18px;
  }
  .note .do {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    padding: 4px 0;
  }
  .note .do button {
    background: var(--board);
  }
  .bench {
    display: flex;
    flex-wrap: wrap;
    gap: 8px 12px;
    margin: 18px 0 0;
  }
  .bench a {
    display: inline-flex;
    align-items: center;
    min-height: 48px;
    padding: 4px 22px;
    background: var(--accent);
    color: var(--accent-ink);
    border-radius: var(--radius);
    font-weight: 600;
    text-decoration: none;
  }
  .bench .order {
    background: none;
    color: var(--ink);
    border: 1px solid var(--rule-strong);
  }
  .clock,
  .drawn {
    margin-top: 22px;
  }
  aside ul {
    list-style: none;
    margin: 0 0 18px;
    padding: 0;
  }
  aside li {
    padding: 8px 0;
    border-bottom: 1px solid var(--rule);
    font-size: var(--size-small);
  }
  aside li p {
    margin: 0;
  }
  tb-temperatures {
    display: grid;
    margin-bottom: 22px;
  }
  .own {
    margin: 0 0 8px -8px;
    color: var(--ink-soft);
  }
  @media ${belowWide} {
    :host {
      display: block;
    }
    main {
      padding: 12px var(--edge) 28px;
    }
    aside {
      min-height: 0;
      padding: 22px var(--edge) 40px;
      border: 0;
      border-top: 1px solid var(--rule);
    }
    .all {
      display: inline-block;
    }
  }
  @media ${narrow} {
    main {
      display: flex;
      flex-direction: column;
    }
    .drawn {
      order: 1; /* the list comes first */
    }
    .said {
      display: block;
    }
    #facts:not(.open) {
      display: none;
    }
    #facts {
      padding-bottom: 8px;
      border-bottom: 1px solid var(--rule-strong);
    }
  }
  @media print {
    :host {
      display: block;
    }
    .all,
    .bench,
    .said button {
      display: none;
    }
  }
`
