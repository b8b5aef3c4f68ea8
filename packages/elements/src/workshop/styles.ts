import { css } from "lit";

/** Tables on the article's own lines: no boxes, numbers in columns. */
export const tables = css`
  .scroll {
    /* What only ears get is placed absolutely, and must not stick out either. */
    position: relative;
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.93em;
    margin: 0;
  }
  caption {
    text-align: start;
    font-weight: 600;
    padding: 0.2em 0;
  }
  th,
  td {
    font-weight: inherit;
    text-align: end;
    vertical-align: baseline;
    padding: 0.34em 0;
    padding-inline: 1em 0;
    border-bottom: 1px solid var(--_line);
  }
  td {
    white-space: nowrap;
  }
  th:first-child {
    text-align: start;
    padding-inline: 0;
  }
  .words {
    text-align: start;
    white-space: normal;
  }
  thead th,
  .quiet {
    color: var(--_second);
  }
  .total > * {
    font-weight: 600;
    border-bottom: 1.5px solid currentColor;
  }
  .note {
    color: var(--_second);
    font-size: 0.86em;
    margin: 0.5em 0 0;
  }
  ul.note {
    padding-inline-start: 1.2em;
  }
  .fault {
    color: var(--_fault);
  }
  @media print {
    button {
      display: none;
    }
  }
`;
