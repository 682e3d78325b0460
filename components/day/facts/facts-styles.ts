import { css } from 'lit'
import { narrow } from '../../styles/breakpoints.js'

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
  li tb-menu {
    margin-left: auto;
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
  .typed input {
    width: 3.4em;
    text-align: center;
  }
  .typed input.short {
    width: 2.9em;
  }
  .date input {
    width: 9.6em;
    text-align: left;
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
  .named {
    color: var(--ink);
    font-weight: 620;
    margin-left: -8px;
  }
  .add button,
  .add tb-menu {
    margin-left: -8px;
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
  @media ${narrow} {
    li .line {
      padding-right: 48px;
      position: relative;
    }
    li tb-menu {
      position: absolute;
      right: -8px;
      top: 3px;
    }
  }
`
