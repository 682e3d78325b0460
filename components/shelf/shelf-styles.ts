import { css } from 'lit'
import { namesStyles } from '../styles/names-styles.js'

export const shelfStyles = [
  namesStyles,
  css`
    h2 {
      margin: 0;
    }
    .head,
    .tools {
      display: flex;
      align-items: center;
      justify-content: space-between;
      gap: 4px;
      min-height: var(--target);
      margin-bottom: 8px;
    }
    input {
      width: 100%;
    }
    input[type='search'] {
      margin-bottom: 8px;
    }
    [data-waits] {
      visibility: hidden;
    }
    .rename {
      margin: 6px 0;
    }
  `,
]
