import { css } from 'lit'

/** The sentences in which a day is told. */
export const factStyles = css`
  :host {
    display: block;
  }
  .lead {
    font-size: var(--size-lead);
  }
  .lead select {
    margin-left: -8px;
    border-color: transparent;
    background: none;
  }
  .lead select:hover {
    border-color: var(--rule-strong);
  }
  ul {
    list-style: none;
    margin: 2px 0;
    padding: 0;
  }
  li {
    border-top: 1px solid var(--rule);
  }
  li:last-child {
    border-bottom: 1px solid var(--rule);
  }
  li .line {
    min-height: calc(var(--target) + 8px);
  }
  li .line {
    position: relative;
    padding-right: 48px;
  }
  li tb-menu {
    position: absolute;
    top: 3px;
    right: -8px;
  }
  .bread {
    flex: 0 1 auto;
    padding: 6px 0;
    color: var(--ink);
    font-weight: 640;
    text-decoration: none;
    overflow-wrap: anywhere;
  }
  .bread:hover {
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .total {
    font-size: var(--size-small);
  }
  .made b {
    color: var(--ink);
    font-weight: 640;
  }
  .pair {
    white-space: nowrap;
  }
  .line {
    column-gap: 8px;
  }
  .line:has(> .pair + .pair) {
    column-gap: 20px;
  }
  .typed input {
    width: 3.8em;
    text-align: center;
  }
  .typed input.short {
    width: 2.8em;
  }
  .date .typed input {
    width: 11.5em;
    text-align: left;
  }
  .name .typed:first-child input {
    width: 6em;
    text-align: left;
  }
  .seldom {
    font-size: var(--size-small);
    white-space: normal;
  }
  .follows .typed input {
    font-weight: 400;
    color: var(--ink-soft);
    border-bottom: 1px dashed var(--rule-strong);
  }
  .out {
    min-width: 28px;
    padding: 4px;
    color: var(--ink-soft);
  }
  .add > tb-menu {
    margin-left: -9px;
    color: var(--accent);
  }
  .line > button.add {
    margin-left: auto;
    font-size: var(--size-small);
  }
  .form {
    margin: 0 0 10px;
    padding: 4px 0 8px 14px;
    border-left: 3px solid var(--accent);
  }
  @media (pointer: coarse) {
    .out {
      min-width: 44px;
    }
  }
`
