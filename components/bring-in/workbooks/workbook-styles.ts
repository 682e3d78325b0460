import { css } from 'lit'

/** What a workbook file would change: names in running lists, rules between what is to be decided. */
export const workbookStyles = css`
  h3 {
    font-size: var(--size-text);
    font-weight: 640;
    line-height: 1.3;
    margin: 0 0 4px;
  }
  h3 small {
    font-weight: 400;
    color: var(--ink-soft);
  }
  h4 {
    font-size: var(--size-text);
    font-weight: 600;
    margin: 0;
    overflow-wrap: anywhere;
  }
  p {
    margin: 0 0 6px;
    max-width: 66ch;
    overflow-wrap: anywhere;
  }
  .ways {
    margin-bottom: 8px;
  }
  .ways small {
    display: block;
    color: var(--ink-soft);
    font-size: var(--size-small);
  }
  section {
    border-top: 1px solid var(--rule-strong);
    padding: 12px 0 8px;
    margin-top: 8px;
  }
  .grave {
    border-top-color: var(--warn);
  }
  .grave h3 {
    color: var(--warn);
  }
  .one {
    padding: 8px 0;
  }
  .one + .one {
    border-top: 1px solid var(--rule);
  }
  .decision {
    display: flex;
    flex-wrap: wrap;
    gap: 0 24px;
  }
`
