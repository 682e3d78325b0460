import { css } from 'lit'

/** What comes up over the foot of the bench: a number pad, a few things to choose from. */
export const padStyles = css`
  dialog {
    width: min(100vw, 420px);
    max-width: none;
    margin: auto auto 0;
    padding: 16px 16px calc(16px + env(safe-area-inset-bottom));
    background: var(--ground);
    color: var(--ink);
    border: 1px solid var(--rule-strong);
    border-radius: 14px 14px 0 0;
  }
  dialog::backdrop {
    background: rgb(20 14 8 / 0.45);
  }
`
