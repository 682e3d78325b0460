import { css } from 'lit'
import { belowWide } from '../styles/breakpoints.js'

/** The bench: one thing at a time in large letters; beside it, where there is room, what goes on and what comes then. */
export const benchStyles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: calc(100vh - var(--head));
    background: var(--board);
  }
  main {
    flex: 1;
    width: 100%;
    display: grid;
    grid-template-columns: minmax(0, 620px) minmax(260px, 340px);
    align-items: start;
    gap: 0 56px;
    justify-content: center;
    padding: 14px var(--edge) 60px;
  }
  .one,
  aside {
    min-width: 0;
  }
  aside > :first-child {
    margin-top: 14px;
  }
  header {
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 12px;
  }
  .back {
    display: inline-flex;
    align-items: center;
    min-height: 56px;
    color: var(--accent);
    text-decoration: none;
    overflow-wrap: anywhere;
  }
  .back::before {
    content: '‹';
    padding-right: 8px;
  }
  time {
    font-size: var(--size-figure);
  }
  p {
    margin: 0;
  }
  .of,
  .about,
  .when {
    color: var(--ink-soft);
  }
  h1 {
    margin: 2px 0 4px;
    font-size: 2.4rem;
    font-weight: 650;
    line-height: 1.08;
    letter-spacing: -0.018em;
    overflow-wrap: anywhere;
  }
  .when {
    font-size: var(--size-lead);
    color: var(--ink);
  }
  .hint {
    margin-top: 6px;
  }
  .about {
    margin-bottom: 10px;
  }
  .status p,
  .note {
    margin: 0 0 10px;
    padding: 8px 12px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .status details {
    margin: 0 0 10px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .status summary {
    min-height: 56px;
    padding: 8px 12px;
    cursor: pointer;
  }
  .status summary small {
    color: var(--ink-soft);
    font-size: var(--size-small);
    white-space: nowrap;
  }
  .status details p {
    margin: 0;
    border: 0;
  }
  .status :is(p, details).warn {
    background: var(--warn-wash);
    border-color: var(--warn);
  }
  .go {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 12px;
    margin-top: 20px;
  }
  .go > :is(button, a),
  .undo {
    display: grid;
    place-items: center;
    min-height: 62px;
    padding: 6px 12px;
    border: 2px solid var(--accent);
    border-radius: 14px;
    font-size: var(--size-lead);
    line-height: 1.2;
    text-align: center;
    text-decoration: none;
    color: var(--accent);
  }
  .go > .main {
    color: var(--accent-ink);
    min-height: 72px;
    font-size: var(--size-figure);
  }
  .go > .wide {
    grid-column: 1 / -1;
  }
  .undo {
    width: 100%;
    margin-top: 12px;
    border-width: 1px;
    border-color: var(--rule-strong);
    color: var(--ink-soft);
    font-size: var(--size-text);
  }
  .list {
    margin-top: 26px;
  }
  h2 {
    margin: 0;
    font-size: var(--size-fine);
    font-weight: 600;
    color: var(--ink-soft);
  }
  ol {
    list-style: none;
    margin: 4px 0 0;
    padding: 0;
  }
  .list button {
    display: grid;
    grid-template-columns: 58px minmax(0, 1fr);
    gap: 12px;
    align-items: center;
    width: 100%;
    min-height: 56px;
    padding: 4px 0;
    border: 0;
    border-bottom: 1px solid var(--rule);
    border-radius: 0;
    text-align: left;
  }
  .list .at {
    text-align: right;
  }
  .list.done button,
  .list small {
    color: var(--ink-soft);
  }
  .list small {
    display: block;
    font-size: var(--size-small);
  }
  [aria-current] {
    font-weight: 640;
  }
  .status.old {
    visibility: hidden; /* its place is kept, so that what is weighed does not move */
  }
  .answer p {
    margin: 12px 0 0;
    padding: 8px 12px;
    background: var(--accent-wash);
    border-left: 3px solid var(--accent);
    border-radius: 0 var(--radius) var(--radius) 0;
  }
  .answer .warn {
    background: var(--warn-wash);
    border-color: var(--warn);
  }
  .by {
    color: var(--accent);
    font-weight: 640;
  }
  /* A phone lying on its side: what to do to the left, what to weigh to the right. */
  @media (max-height: 480px) and (min-width: 640px) {
    main {
      padding-top: 0;
    }
    .todo {
      display: contents;
    }
    .status :is(p, summary) {
      min-height: 0;
      padding: 4px 10px;
      font-size: var(--size-small);
    }
    .one {
      display: grid;
      grid-template-columns: minmax(0, 5fr) minmax(0, 7fr);
      grid-template-rows: repeat(12, auto) 1fr;
      align-content: start;
      gap: 0 28px;
    }
    .one > *,
    .todo > * {
      grid-column: 1;
    }
    .todo > tb-bench-weighing {
      grid-column: 2;
      grid-row: 1 / span 13;
      padding-top: 8px;
    }
    h1 {
      font-size: 1.7rem;
    }
    .go {
      grid-template-columns: 1fr;
      margin-top: 12px;
    }
  }
  @media (max-height: 480px) and (min-width: 640px) and ${belowWide} {
    main {
      grid-template-columns: minmax(0, 1fr) !important;
    }
  }
  @media ${belowWide} {
    main {
      grid-template-columns: minmax(0, 620px);
      padding-top: 6px;
    }
    aside > :first-child {
      margin-top: 26px;
    }
  }
`
