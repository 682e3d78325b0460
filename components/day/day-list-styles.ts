import { css } from 'lit'
import { namesStyles } from '../styles/names-styles.js'

/** As the shelf is. */
export const dayListStyles = [
  namesStyles,
  css`
    .plain {
      display: inline-block;
      padding: 8px 0;
      border: 0;
      color: var(--accent);
    }
    .removed {
      font-size: var(--size-small);
    }
    .removed button {
      color: var(--accent);
      font-weight: 600;
    }
  `,
]
