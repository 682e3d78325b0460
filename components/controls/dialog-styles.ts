import { css } from 'lit'
import { slim } from '../styles/breakpoints.js'

/** The page behind a modal: it stays where it is, and where its scroll bar stood it is as dark as all the rest. */
export const stillPage = new CSSStyleSheet()
stillPage.replaceSync(`
  html[still] {
    overflow: hidden;
    background: light-dark(#908d89, #161310);
  }
  @media (min-width: 900px) {
    html[still] {
      scrollbar-gutter: stable;
    }
  }
`)

/** A modal: heading, a part that scrolls, actions; the whole screen on a phone. */
export const dialogStyles = css`
  dialog {
    flex-direction: column;
    width: min(var(--dialog-width, 760px), calc(100vw - 32px));
    max-height: min(88vh, 900px);
    padding: 0;
    overflow: hidden;
    color: var(--ink);
    background: var(--board);
    border: 1px solid var(--rule-strong);
    border-radius: 10px;
  }
  dialog::backdrop {
    background: rgb(20 16 12 / 0.45);
  }
  dialog[open] {
    display: flex;
  }
  header {
    display: flex;
    align-items: center;
    gap: 12px;
    padding: 16px 16px 12px 28px;
    border-bottom: 1px solid var(--rule);
  }
  h2 {
    flex: 1;
    margin: 0;
    font-size: var(--size-figure);
    font-weight: 640;
    letter-spacing: -0.01em;
    line-height: 1.2;
    overflow-wrap: anywhere;
  }
  h2:focus-visible {
    outline: none; /* focused by program only, so that reading begins here */
  }
  .close {
    padding: 0;
    display: grid;
    place-items: center;
  }
  .close svg {
    width: 16px;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
  }
  .body {
    flex: 1;
    min-height: 0;
    overflow: auto;
    overscroll-behavior: contain;
    padding: 20px 28px 28px;
    scroll-padding: 16px 0;
  }
  footer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 10px;
    padding: 12px 28px 14px;
    border-top: 1px solid var(--rule);
  }
  footer:not(:has(button, a)) {
    padding: 0;
    border: 0;
  }
  footer .apart {
    margin-left: auto;
  }
  .told,
  .question {
    margin: 0;
    flex: 1 1 100%;
    max-width: none;
    font-size: var(--size-small);
  }
  .told {
    order: -1;
  }
  .told:empty {
    flex: 0 0 auto;
    width: 0;
    margin-right: -10px;
  }
  p {
    margin: 0 0 10px;
    max-width: 66ch;
  }
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    margin: 28px 0 8px;
  }
  .error {
    color: var(--warn);
    font-size: var(--size-small);
    margin: 4px 0 0;
  }
  .hint {
    color: var(--ink-soft);
    font-size: var(--size-small);
    margin: 4px 0 0;
  }
  @media ${slim} {
    dialog {
      width: 100vw;
      height: 100dvh;
      max-width: none;
      max-height: none;
      margin: 0;
      border: 0;
      border-radius: 0;
    }
    header {
      padding: 10px 6px 8px 16px;
    }
    .body {
      padding: 16px 16px 24px;
    }
    footer {
      padding: 10px 16px calc(10px + env(safe-area-inset-bottom));
    }
  }
  /* A phone on its side, or text at 200 %: the whole dialog scrolls, so that something of it can be read. */
  @media (max-height: 420px) {
    dialog[open] {
      display: block;
      overflow: auto;
    }
    .body {
      overflow: visible;
    }
  }
`
