import { css } from 'lit'
import { namesStyles } from '../styles/names-styles.js'

export const shelfStyles = [
  namesStyles,
  css`
    input {
      width: 100%;
    }
    input[type='search'] {
      margin-bottom: 8px;
    }
    small[data-waits] {
      visibility: hidden;
    }
    .rename {
      margin: 6px 0;
    }
  `,
]
