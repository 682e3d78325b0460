import { css } from 'lit'
import { belowWide } from '../styles/breakpoints.js'

/**
 * A page black on white; on the screen it lies on the ground of the app, and where a sheet of paper is wider than the screen it is
 * set to be read there.
 */
export const paperStyles = css`
  :host {
    display: block;
  }
  .bar {
    position: sticky;
    top: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    gap: 8px 20px;
    align-items: center;
    padding: 10px 24px;
    background: var(--board);
    border-bottom: 1px solid var(--rule-strong);
  }
  .bar .choice {
    display: flex;
    gap: 8px;
    align-items: center;
    min-height: var(--target);
    color: var(--ink);
    font-size: var(--size-text);
    cursor: pointer;
  }
  .choice input {
    width: 20px;
    height: 20px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  .pages {
    margin: 0;
    font-size: var(--size-small);
    color: var(--ink-soft);
  }
  .bar .main {
    margin-left: auto;
    padding-inline: 20px;
  }
  main {
    position: relative; /* what is out of sight within it stays there */
  }
  .paper {
    color-scheme: light;
    --ink: #000;
    --ink-soft: #000;
    --apart: 0.75em;
    width: calc(var(--width) * 1mm);
    min-height: calc(var(--height) * 1mm);
    margin: 28px auto 48px;
    padding: calc(var(--margin) * 1mm);
    color: #000;
    background: #fff;
    box-shadow: 0 0 0 1px var(--rule-strong);
    font-size: 14pt;
    line-height: 1.3;
  }
  .paper.fitted {
    position: absolute;
    visibility: hidden;
    width: calc((var(--width) - 2 * var(--margin)) * 1mm - 1px); /* a printer's is rounded, and may break a line earlier */
    min-height: 0;
    margin: 0;
    padding: 0;
  }
  .paper p {
    margin: 0;
  }
  .paper header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 2em;
    padding-bottom: 0.35em;
    border-bottom: 3px solid #000;
  }
  h1 {
    margin: 0;
    font-size: 2.5em;
    font-weight: 700;
    line-height: 1.1;
    letter-spacing: -0.015em;
    overflow-wrap: anywhere;
  }
  @media print {
    .bar {
      display: none;
    }
    .paper + .paper {
      break-before: page;
    }
    .paper {
      width: auto;
      min-height: 0;
      margin: 0;
      padding: 0;
      box-shadow: none;
    }
  }
  @media screen and ${belowWide} {
    .paper:not(.fitted) {
      width: auto;
      min-height: 0;
      margin: 0;
      padding: 18px 16px 40px;
      box-shadow: none;
      font-size: 16px;
      & footer {
        font-size: 0.9em;
      }
    }
    .bar {
      position: static;
      padding: 8px 16px;
    }
  }
`
