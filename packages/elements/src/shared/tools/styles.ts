import { css } from "../element/index.js";
import { table } from "../drawn/index.js";

/** Tables, and the notes below them. */
export const tables = css`
  ${table}
  /* What only ears get is placed absolutely, and must not stick out either. */
  .scroll {
    position: relative;
  }
  th {
    white-space: normal;
  }
  caption {
    text-align: start;
    font-weight: 600;
    padding: 0.2em 0;
  }
  .words {
    text-align: start;
    white-space: normal;
  }
  .quiet {
    color: var(--_second);
  }
  /* A frame that scrolls cuts off what stands out of it. */
  .scroll :focus-visible {
    outline-offset: -2px;
  }
  .scroll button {
    padding-inline: 4px;
  }
  .note button {
    margin-inline-end: 1em;
  }
  .under {
    display: block;
  }
  .note {
    color: var(--_second);
    font-size: 0.86em;
    margin: 0.5em 0 0;
  }
  .note + .scroll {
    margin-top: 1.2em;
  }
  ul.note {
    padding-inline-start: 1.2em;
  }
  .fault {
    color: var(--_fault);
  }
  /* Where a column has no room, what it says stands under another one. */
  .narrow {
    display: none;
  }
  @media screen and (max-width: 480px) {
    .wide {
      display: none;
    }
    .narrow {
      display: block;
    }
    th,
    td {
      padding-inline-start: 0.7em;
    }
  }
  @media (pointer: coarse) {
    .scroll button {
      min-height: 36px;
    }
  }
  @media print {
    tr,
    .kept {
      break-inside: avoid;
    }
    button {
      display: none;
    }
  }
`;
