import { css } from "../../shared/element/index.js";

export const styles = css`
  .question {
    margin: 0 0 0.6em;
  }
  input[type="text"] {
    font: inherit;
    color: inherit;
    background: none;
    border: 0;
    border-bottom: 1.5px dotted var(--_accent);
    border-radius: 0;
    padding: 0.1em 0;
    width: 3em;
    min-height: 24px;
    text-align: center;
  }
  .controls {
    display: flex;
    flex-wrap: wrap;
    gap: 0.2em 1.4em;
    margin: 0 0 0.8em;
    font-size: 0.93em;
  }
  label {
    display: inline-flex;
    align-items: baseline;
    gap: 0.45em;
    min-height: 24px;
    max-width: 100%;
  }
  input[type="checkbox"] {
    accent-color: var(--_accent);
    min-width: 1.1em;
    min-height: 1.1em;
    align-self: center;
  }
  svg {
    display: block;
    overflow: visible;
    font-size: 0.82em;
    margin: 0.4em 0 0;
  }
  svg + .note {
    margin-bottom: 1em;
  }
  text {
    fill: currentColor;
  }
  .point {
    cursor: pointer;
    outline: none;
  }
  .hit {
    fill: transparent;
  }
  .point:focus-visible .hit {
    stroke: var(--_ring);
    stroke-width: 2;
  }
  .faint {
    fill: var(--_second);
  }
  tbody:is(.hit, .miss) tr:first-child > * {
    border-bottom: 0;
    padding-bottom: 0;
  }
  tbody:is(.hit, .miss) tr:last-child > * {
    padding-top: 0;
    padding-inline: 0;
    font-size: 0.9em;
  }
  button[aria-disabled] {
    color: var(--_second);
    text-decoration: none;
    cursor: default;
  }
  .why {
    color: var(--_second);
  }
  .miss .why {
    color: var(--_fault);
  }
  tbody:is(.hit, .miss) th {
    white-space: nowrap;
  }
  .hit th {
    font-weight: 600;
  }
  tbody th {
    white-space: nowrap;
  }
  /* Cards, where the table has no room: the teeth and what takes them on top, the rest below. */
  .list tbody:is(.hit, .miss) {
    border: 1px solid var(--_line);
    border-radius: 4px;
    margin: 0.6em 0;
    padding: 0.5em 0.7em;
  }
  .list tbody tr {
    border: 0;
    padding: 0;
  }
  .list tbody tr:first-child {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 0.1em 0.8em;
  }
  .list tbody tr:first-child :is(th, td:last-child) {
    order: -1;
    width: auto;
  }
  .list tbody tr:first-child td:not(:last-child) {
    flex-basis: 100%;
  }
  /* A button says itself what it does. */
  .list tbody tr:first-child td:last-child::before {
    content: none;
  }
  .list tbody th {
    white-space: normal;
  }
  .list .wide[data-head] {
    display: flex;
  }
  .list .narrow,
  .list thead {
    display: none;
  }
  @media print {
    tbody {
      break-inside: avoid;
    }
    .controls,
    label {
      display: none;
    }
    input[type="text"] {
      border: 0;
    }
  }
`;
