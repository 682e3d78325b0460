import { css } from 'lit'

/** How the page is laid out: three columns, two with a drawer, or one place at a time. */
export const appStyles = css`
    :host {
      display: block;
      --edge: 28px;
      --head: 57px; /* height of tb-head; the app keeps it true */
    }
    .skip {
      position: fixed;
      inset: 8px auto auto 8px;
      z-index: 9;
      background: var(--board);
    }
    .skip:not(:focus) {
      clip-path: inset(50%);
      pointer-events: none;
    }
    tb-head {
      position: sticky;
      top: 0;
      z-index: 5;
    }
    tb-notices {
      display: block;
      position: sticky;
      top: var(--head, 54px);
      z-index: 4;
    }
    .places {
      display: grid;
      grid-template-columns: minmax(0, 1fr) 300px;
      align-items: start;
    }
    :host([layout='wide']) .places {
      grid-template-columns: clamp(232px, 19%, 284px) minmax(0, 1fr) clamp(300px, 25%, 356px);
    }
    main {
      --sheet-top: var(--head);
      min-height: calc(100vh - var(--head));
      padding: 12px 32px 40px;
      background: var(--board);
      border-right: 1px solid var(--rule);
    }
    :host([layout='wide']) main {
      border-left: 1px solid var(--rule);
      padding-inline: 40px;
    }
    tb-shelf {
      padding: 20px 10px 32px var(--edge);
    }
    .aside {
      padding: 20px var(--edge) 32px 28px;
    }
    :host([layout='wide']) :is(tb-shelf, .aside) {
      position: sticky;
      top: var(--head);
      max-height: calc(100vh - var(--head));
      overflow-y: auto;
      scrollbar-width: thin;
      scrollbar-gutter: stable;
    }
    :host([layout='middle']) {
      --edge: 20px;
    }
    :host([layout='middle']) {
      & main {
        padding: 20px 20px 40px;
      }
      & .aside {
        padding: 22px 20px 32px;
        position: sticky;
        top: var(--head);
        max-height: calc(100vh - var(--head));
        overflow-y: auto;
      }
      & tb-shelf {
        position: fixed;
        inset: var(--head) auto 0 0;
        z-index: 4;
        width: 320px;
        padding: 22px 14px 32px 20px;
        overflow-y: auto;
        background: var(--ground);
        border-right: 1px solid var(--rule-strong);
      }
    }
    .shade {
      position: fixed;
      inset: var(--head) 0 0;
      z-index: 3;
      background: rgb(20 16 12 / 0.4);
    }
    :host([layout='narrow']) {
      --edge: 16px;
      & .places {
        display: block;
        padding-bottom: calc(132px + var(--working, 0px));
      }
      & main {
        min-height: 0;
        padding: 14px 16px 28px;
        border: 0;
      }
      & tb-shelf {
        padding: 18px 8px 24px 16px;
      }
      & .aside {
        padding: 18px 16px 24px;
      }
      & .foot {
        position: fixed;
        inset: auto 0 0;
        z-index: 5;
      }
    }
    /* So low that what is fixed would leave no room for the lines */
    @media (max-height: 480px) {
      tb-head,
      tb-notices,
      :host([layout='narrow']) .foot {
        position: static;
      }
      main {
        --sheet-top: auto;
      }
      :host([layout='narrow']) .places {
        padding-bottom: 0;
      }
    }
    /* A dialog that is a page of its own: all else is out of sight, on paper too. */
    :host([alone]) > :not(tb-dialogs) {
      display: none !important;
    }
    .lesson {
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: 0 16px;
      margin: 0 0 8px;
      padding: 0 0 4px;
      border-bottom: 2px solid var(--accent);
      font-size: var(--size-small);
    }
    .typed {
      text-decoration: underline;
      text-underline-offset: 3px;
    }
    .lesson > span {
      flex: 1 1 24ch;
    }
    :host([layout='wide']) .own {
      display: none; /* the button is in sight */
    }
    .lesson button {
      color: var(--accent);
      font-weight: 600;
      margin-inline: -12px;
    }
    .toast,
    .drop {
      position: fixed;
      z-index: 8;
      margin: 0;
      pointer-events: none;
      color: var(--ground);
      background: var(--ink);
      border: 1px solid transparent;
    }
    .toast {
      left: 50%;
      bottom: 28px;
      translate: -50% 0;
      width: max-content;
      max-width: calc(100vw - 32px);
      padding: 9px 18px;
      border-radius: var(--radius);
    }
    :host([layout='narrow']) .toast {
      bottom: 64px;
    }
    :host([layout='narrow'][place^='sh']) .toast {
      bottom: 136px; /* above the readings of shelf and sheet */
    }
    .drop {
      inset: 12px;
      display: grid;
      place-items: center;
      font-size: var(--size-figure);
      border-radius: 12px;
      opacity: 0.92;
    }
    @media print {
      :host([layout]) {
        --edge: 0;
        & .places {
          display: block;
          padding: 0;
          zoom: 0.92; /* to be read at the table, not at arm’s length as the card */
        }
        & tb-shelf,
        & .foot,
        & .shade,
        & .lesson,
        & .toast {
          display: none;
        }
        & main,
        & .aside {
          display: block !important;
          position: static;
          min-height: 0;
          max-height: none;
          overflow: visible;
          padding: 0;
          border: 0;
          background: none;
        }
        & .aside {
          margin-top: 10px;
          break-inside: avoid;
        }
      }
    }
  `
