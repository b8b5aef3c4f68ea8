import { css } from "lit";

export const styles = css`
  .scroll {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.93em;
    margin: 0;
  }
  th,
  td {
    font-weight: inherit;
    text-align: end;
    vertical-align: baseline;
    white-space: nowrap;
    padding: 0.34em 0 0.34em 1em;
    padding-inline: 1em 0;
    border-bottom: 1px solid var(--_line);
  }
  th:first-child {
    text-align: start;
    white-space: normal;
    padding-inline: 0;
    width: 100%;
  }
  thead th,
  .teeth,
  .subtotal > * {
    color: var(--_second);
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 1em;
  }
  .total > * {
    font-weight: 600;
    border-bottom: 1.5px solid currentColor;
  }
  svg {
    margin: 0 0 0.6em;
  }
  .span {
    stroke-width: 3;
    opacity: 0.45;
  }
  details {
    margin-top: 0.4em;
    font-size: 0.86em;
    color: var(--_second);
  }
  summary {
    display: inline-block;
    min-height: 24px;
    cursor: pointer;
    text-decoration: underline dotted 1.5px;
    text-underline-offset: 0.22em;
  }
  p {
    margin: 0.3em 0;
    overflow-wrap: anywhere;
  }
  @media print {
    details:not([open]) {
      display: none;
    }
  }
`;
