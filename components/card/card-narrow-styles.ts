import { css } from 'lit'
import { slim } from '../styles/breakpoints.js'

/** The card where a sheet of paper is wider than the screen: to be read there, and set for the paper when it is printed. */
export const cardNarrowStyles = css`
  @media screen and ${slim} {
    .paper:not(.fitted) {
      & h1 {
        font-size: 1.9em;
      }
      & .leads {
        grid-template-columns: repeat(2, auto);
      }
      & h2 {
        flex-wrap: wrap;
        row-gap: 0;
        & span:first-child {
          flex: 1 1 50%; /* what is said of a stage goes beneath its name, which keeps its words whole */
        }
        & .facts {
          order: 1;
          flex-basis: 100%;
        }
      }
      --figure: 1.35;
      & tbody th {
        --text: 1.05;
      }
      & .note {
        display: block;
        margin: 0;
        font-size: 0.85em;
      }
      & td.percent {
        --text: 0.95;
        width: 4em;
      }
      & .measured tr {
        display: grid;
        grid-template-columns: auto 1fr auto;
      }
      & .measure {
        grid-area: 2 / 2 / auto / span 2;
        width: auto;
        padding: 0 0 0.3em;
      }
      & .measure.measure {
        border-top: 0;
      }
      & .measure::before {
        content: none;
      }
      & .measure:empty {
        padding: 0;
      }
      & dd {
        font-size: 1.5em;
      }
    }
  }
`
