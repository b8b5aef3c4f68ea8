import { css } from "../element/index.js";

/** What a page lets down through inheritance is stopped here: on an element inside, because a page's `*` beats `:host`. */
const guard = css`
  .root {
    letter-spacing: normal;
    word-spacing: normal;
    text-transform: none;
    text-indent: 0;
    text-align: start;
    text-shadow: none;
    white-space: normal;
    overflow-wrap: normal;
    word-break: normal;
    hyphens: manual;
    line-height: 1.45;
    font-variant-numeric: lining-nums tabular-nums;
    position: relative;
  }
  /* Without a doctype a table forgets the type it stands in. */
  table {
    font: inherit;
    font-variant: inherit;
    color: inherit;
    white-space: inherit;
    text-align: inherit;
  }
  /* Three things, three looks, in ink alone: what is pressed has a frame, what is chosen a line and a mark that opens; what is
     changed is underlined with dots. */
  button,
  select,
  summary {
    font: inherit;
    line-height: inherit;
    letter-spacing: inherit;
    color: var(--_accent);
    background: none;
    margin: 0;
    min-height: 24px;
    min-width: 24px;
    cursor: pointer;
    touch-action: manipulation;
  }
  button {
    border: 1px solid color-mix(in srgb, currentColor 45%, transparent);
    border-radius: 4px;
    padding: 0.1em 0.5em;
  }
  select,
  summary {
    border: 0;
    border-bottom: 1px solid currentColor;
    border-radius: 0;
    padding: 0.1em 0;
  }
  select {
    appearance: none;
    max-width: 100%;
    padding-inline-end: 1.1em;
    text-overflow: ellipsis;
    background-image:
      linear-gradient(45deg, transparent 50%, currentColor 50%),
      linear-gradient(-45deg, transparent 50%, currentColor 50%);
    background-position:
      right 0.4em center,
      right 0.1em center;
    background-size: 0.3em 0.3em;
    background-repeat: no-repeat;
  }
  select:dir(rtl) {
    background-position:
      left 0.1em center,
      left 0.4em center;
  }
  summary {
    display: inline-block;
    list-style: none;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  summary::after {
    content: " ▾";
    content: " ▾" / "";
  }
  details[open] > summary::after {
    content: " ▴";
    content: " ▴" / "";
  }
  .version {
    position: absolute;
    inset: auto 0 100% auto;
    inset-inline: auto 0;
    color: var(--_accent);
    font-size: 0.75em;
    font-style: italic;
    line-height: 1.2;
    white-space: nowrap;
  }
  :focus-visible {
    outline: 2px solid var(--_ring);
    outline-offset: 2px;
  }
  @media (pointer: coarse) {
    input,
    select {
      font-size: max(16px, 1em);
    }
  }
`;

/** For what stands on its own. Its root is drawn with the class `root`. */
export const block = css`
  :host {
    display: block;
  }
  /* Nobody turns the unit over on paper. */
  @media print {
    .unit {
      display: none;
    }
  }
  ${guard}
`;

/** Tables on the text's own lines: no boxes, numbers in columns. */
export const table = css`
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
    padding: 0.34em 0;
    padding-inline: 1em 0;
    border-bottom: 1px solid var(--_line);
  }
  th:first-child {
    text-align: start;
    padding-inline: 0;
  }
  thead th {
    color: var(--_second);
  }
  .wraps th,
  .wraps td {
    white-space: normal;
  }
  /* A list, where a table has no room: each cell in a line of its own, after what it stands under. */
  .list,
  .list :is(thead, tbody, tfoot, tr, th, td) {
    display: block;
    box-sizing: border-box;
    width: auto;
    min-width: 0;
    position: static;
  }
  .list thead th:not(:first-child),
  .list td:empty,
  .list .narrow {
    display: none;
  }
  .list tr {
    padding: 0.34em 0;
    border-bottom: 1px solid var(--_line);
  }
  .list :is(th, td) {
    border: 0;
    padding: 0;
    text-align: start;
    white-space: normal;
    overflow-wrap: anywhere;
  }
  .list td[data-head] {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 0 0.6em;
  }
  .list td[data-head]::before {
    content: attr(data-head);
    margin-inline-end: auto;
    color: var(--_second);
  }
  @media print {
    .paged td {
      white-space: normal;
    }
    .scroll {
      overflow: visible;
    }
  }
  .total > * {
    font-weight: 600;
    border-bottom: 1.5px solid currentColor;
  }
`;

/** Line drawings: outlines in the text's own ink, lettering in the text's own type. */
export const drawing = css`
  svg {
    display: block;
    overflow: visible;
    font-size: 0.86em;
  }
  path,
  rect {
    fill: none;
    stroke: currentColor;
  }
  .thin,
  rect {
    stroke-width: 0.8;
  }
  .end {
    stroke-width: 0.7;
    stroke-dasharray: 3 2;
  }
  .bar {
    stroke-width: 0.3em;
  }
  .faint {
    opacity: 0.55;
  }
  .ink {
    fill: currentColor;
    stroke: none;
  }
  text {
    fill: currentColor;
  }
  .figure {
    font-weight: 600;
  }
  .few {
    font-size: 0.88em;
    opacity: 0.85;
  }
`;
