import { css, unsafeCSS } from 'lit'
import { isWide, slim } from '../styles/breakpoints.js'

/** A bake as a page of a notebook: tables between rules, then how it was. */
export const bakeStyles = css`
  :host {
    display: block;
    min-height: calc(100vh - var(--head));
    background: var(--board);
  }
  main {
    max-width: 820px;
    padding: 14px var(--edge) 150px; /* with room for a phone's foot */
  }
  nav {
    display: flex;
    flex-wrap: wrap;
    gap: 0 22px;
  }
  nav a {
    display: inline-flex;
    align-items: center;
    min-height: 44px;
    color: var(--accent);
    text-decoration: none;
  }
  .all::before {
    content: '‹';
    padding-right: 7px;
  }
  h1 {
    margin: 0;
    font-size: var(--size-title);
    font-weight: 640;
    line-height: 1.15;
    letter-spacing: -0.015em;
  }
  h2 {
    margin: 26px 0 4px;
    font-size: var(--size-lead);
    font-weight: 640;
  }
  p {
    margin: 0 0 8px;
  }
  .soft,
  small {
    color: var(--ink-soft);
  }
  small {
    display: block;
    font-size: var(--size-fine);
    font-weight: 400;
  }
  .pick {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 10px;
    align-items: center;
    margin-top: 12px;
  }
  table {
    width: 100%;
    border-collapse: collapse;
  }
  th,
  td {
    padding: 7px 0 7px 12px;
    border-bottom: 1px solid var(--rule);
    text-align: right;
    vertical-align: baseline;
    font-weight: 400;
  }
  th[scope='row'],
  th:first-child {
    padding-left: 0;
    text-align: left;
  }
  thead th {
    color: var(--ink-soft);
    font-size: var(--size-fine);
    border-bottom-color: var(--rule-strong);
  }
  td {
    white-space: nowrap;
  }
  .afterwards {
    margin: 14px 0 0;
    font-size: var(--size-small);
  }
  .differs {
    font-weight: 680;
  }
  .figures {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(128px, 1fr));
    gap: 10px 18px;
    margin-top: 12px;
  }
  .figures label {
    font-size: var(--size-small);
  }
  .figures span {
    display: flex;
    align-items: baseline;
    gap: 6px;
  }
  .figures input {
    width: 100%;
    min-width: 0;
    text-align: right;
  }
  .said {
    margin: 4px 0 8px -8px;
  }
  fieldset {
    display: flex;
    gap: 4px;
    align-items: center;
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    float: left;
    width: 76px;
    padding: 0;
  }
  fieldset .soft {
    width: 56px;
    font-size: var(--size-small);
  }
  fieldset .soft:first-of-type {
    text-align: right;
  }
  fieldset label {
    display: grid;
    place-items: center;
    width: 44px;
    height: 44px;
    cursor: pointer;
  }
  input[type='radio'] {
    width: 22px;
    height: 22px;
    min-height: 0;
    margin: 0;
    accent-color: var(--accent);
  }
  .do {
    display: flex;
    flex-wrap: wrap;
    gap: 10px;
    align-items: center;
    margin-top: 26px;
  }
  @media ${unsafeCSS(isWide)} {
    .two {
      display: grid;
      grid-template-columns: minmax(0, 760px) minmax(320px, 480px);
      gap: 0 64px;
      max-width: none;
    }
    .two > :not(.left, .right) {
      grid-column: 1 / -1;
    }
  }
  @media ${slim} {
    legend {
      width: 58px;
    }
    fieldset label {
      width: 38px;
    }
    fieldset .soft {
      width: 44px;
    }
  }
`
