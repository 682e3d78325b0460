import { css } from 'lit'
import { namesStyles } from '../styles/names-styles.js'

/** As the shelf is. */
export const dayListStyles = [
  namesStyles,
  css`
    .removed {
      font-size: var(--size-small);
    }
    .removed button {
      color: var(--accent);
      font-weight: 600;
    }
  `,
]
