import { css } from 'lit'

/** The grid on a phone; on paper and in forced colours it is as `further-styles.ts` says. */
export const variantStyles = css`
  /* Phone */
  :host([narrow]) {
    --pad: 5px;
    --percent: 5.25rem;
    --weight: 5.25rem;
    --actions: var(--target);
  }
  :host([narrow]) thead th.percent,
  :host([narrow]) thead th.weight,
  :host([narrow]) thead th.batch {
    padding-inline-end: var(--pad);
  }
  :host([narrow]) tr > td.actions {
    padding: 2px 0;
  }
  :host([narrow]) .with-batch {
    --pad: 5px;
    --percent: 5rem;
    --weight: 5rem;
    --batch: 6.2rem;
  }
  :host([narrow]) .figure.weighed {
    font-size: 1.12rem;
    line-height: 1;
  }
  :host([narrow]) .heavy :is([data-column='weight'], .batch) .rest,
  :host([narrow]) .many + .rest {
    display: none; /* no room for the place of decimals behind five digits and more */
  }
  :host([narrow]) .many {
    font-size: 0.82em;
  }
  :host([narrow]) tr.lit > th::before {
    inset-inline-start: -7px;
  }
  :host([narrow]) small.hydration {
    display: block;
  }
  :host([narrow]) button.define {
    margin-inline-start: -8px;
  }
  :host([narrow]) tbody:first-of-type tr.stage > * {
    padding-top: 14px;
  }
  :host([narrow]) tr.stage small {
    display: block;
    margin-top: 2px;
  }
  @media (max-width: 350px) {
    :host([narrow]),
    :host([narrow]) .with-batch {
      --percent: 4.6rem;
      --weight: 4.6rem;
      --batch: 5.4rem;
    }
    :host([narrow]) .many {
      font-size: 0.7em;
    }
    .rest {
      display: none; /* no room to hold the place of decimals that are not there */
    }
  }
`
