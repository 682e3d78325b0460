import { css } from 'lit'
import { sentenceStyles } from '../styles/sentence-styles.js'

/** A sentence of when and how warm, the seed large, what it does, and the button that does it. */
export const feedingStyles = [
  sentenceStyles,
  css`
    section {
      padding: 2px 0 8px;
    }
    p,
    ul,
    h4 {
      margin: 0;
    }
    .line {
      max-width: 70ch;
    }
    .pair {
      white-space: nowrap;
    }
    .typed input,
    .typed input.short {
      width: 3.7em;
      font-weight: 400;
      border-bottom: 2px solid var(--rule-strong);
    }
    .said .typed input {
      font-weight: 680;
      border-bottom-color: var(--ink);
    }
    .seed {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      gap: 0 12px;
      padding-top: 8px;
    }
    .big {
      font-size: var(--size-figure);
      font-weight: 640;
    }
    .way,
    .hint {
      color: var(--ink-soft);
    }
    .hint,
    ul,
    details,
    .remark {
      max-width: 66ch;
      font-size: var(--size-small);
    }
    .look {
      max-width: 66ch;
      padding: 6px 0;
    }
    .remark {
      margin: 6px 0;
      padding-left: 10px;
      border-left: 3px solid var(--warn);
    }
    h4 {
      padding-top: 4px;
      font-size: var(--size-small);
      font-weight: 600;
    }
    ul {
      padding-left: 18px;
    }
    table {
      border-collapse: collapse;
      margin: 6px 0;
      width: min(100%, 24rem);
    }
    th,
    td {
      padding: 3px 0 3px 16px;
      text-align: right;
      font-weight: 400;
      border-bottom: 1px solid var(--rule);
    }
    thead th {
      color: var(--ink-soft);
      font-size: var(--size-small);
    }
    th:first-child {
      padding-left: 0;
      text-align: left;
      overflow-wrap: anywhere;
    }
    td {
      white-space: nowrap;
    }
    td b {
      font-weight: 640;
    }
    .do {
      padding-top: 8px;
    }
    details p {
      padding: 3px 0;
      color: var(--ink-soft);
    }
    summary {
      min-height: var(--target);
      align-content: center;
      color: var(--ink-soft);
      cursor: pointer;
    }
    @media print {
      :host {
        display: none;
      }
    }
  `,
]
