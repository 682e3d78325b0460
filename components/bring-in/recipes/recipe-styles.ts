import { css } from 'lit'
import { narrow } from '../../styles/breakpoints.js'

/** Lines of a recipe: the text on the left, what was read on the right; beneath each other on a phone. */
export const recipeStyles = css`
  :host {
    display: block;
  }
  p {
    margin: 0;
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    margin: 22px 0 6px;
    overflow-wrap: anywhere;
  }
  .state {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 8px 20px;
  }
  .state p {
    flex: 1 1 20rem;
    max-width: 60ch;
  }
  .name {
    margin-top: 14px;
    max-width: 26rem;
  }
  .name label {
    display: block;
    margin-bottom: 4px;
  }
  #state:focus-visible {
    outline: none; /* focused by program, so that reading goes on here */
  }
  ul {
    list-style: none;
    margin: 0;
    padding: 0;
    border-top: 1.5px solid var(--rule-strong);
  }
  li {
    display: grid;
    grid-template-columns: minmax(0, 4fr) minmax(0, 4fr) minmax(0, 8.5rem) auto;
    gap: 4px 12px;
    align-items: center;
    padding: 6px 0;
    border-bottom: 1px solid var(--rule);
  }
  .source {
    color: var(--ink-soft);
    overflow-wrap: anywhere;
  }
  small {
    white-space: nowrap;
  }
  input {
    width: 100%;
    min-width: 0;
  }
  li input {
    border-color: transparent;
    border-bottom: 1px dotted var(--rule-strong);
    border-radius: 0;
    background: none;
  }
  li input:hover {
    background: var(--accent-wash);
  }
  input.amount {
    text-align: right;
  }
  ::placeholder {
    color: var(--warn);
    opacity: 1;
  }
  button.out {
    color: var(--accent);
    padding: 4px 8px;
    white-space: nowrap;
  }
  li.out .source,
  li.out input {
    text-decoration: line-through;
  }
  .note,
  .guess,
  .right {
    grid-column: 2 / -1;
    font-size: var(--size-small);
    overflow-wrap: anywhere;
  }
  .note,
  .right {
    color: var(--ink-soft);
  }
  .guess {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 14px;
    padding: 4px 0 4px 12px;
    border-left: 3px solid var(--warn);
  }
  .guess p {
    flex: 1 1 16rem;
  }
  .guess b {
    color: var(--warn);
  }
  @media ${narrow} {
    li {
      grid-template-columns: minmax(0, 1fr) minmax(0, 7rem);
      padding: 10px 0;
    }
    button.out {
      grid-area: 1 / 2;
      justify-self: end;
    }
    .note,
    .guess,
    .right {
      grid-column: 1 / -1;
    }
  }
`

/** Steps of its method: what is done, how it passes, its time. */
export const stepStyles = css`
  h3 {
    margin: 0;
  }
  h3:focus-visible {
    outline: none; /* focused by program, so that reading goes on here */
  }
  section {
    margin-top: 30px;
  }
  h4 {
    margin: 18px 0 6px;
    overflow-wrap: anywhere;
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
    border-top: 1.5px solid var(--rule-strong);
  }
  li {
    grid-template-columns: minmax(0, 5fr) minmax(0, 3fr) 6.4rem minmax(0, 4fr) auto;
  }
  li select {
    width: 100%;
    color: var(--ink-soft);
    font-size: var(--size-small);
    background: none;
    border-color: transparent;
  }
  .wrong {
    color: var(--warn);
  }
  @media ${narrow} {
    li {
      grid-template-columns: minmax(0, 1fr) 6.4rem;
    }
    li .text {
      grid-column: 1 / -1;
    }
  }
`
