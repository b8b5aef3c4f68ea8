import { css } from "lit";

/** Paper, ink and what every part of the notebook is written in. */
export const sheet = css`
  :host {
    display: block;
    min-width: 0;
  }
  * {
    box-sizing: border-box;
  }
  h2 {
    font-size: 1.2em;
    font-weight: 600;
    line-height: 1.3;
    margin: 0 0 0.45em;
  }
  h3 {
    font-size: 1.02em;
    font-weight: 600;
    margin: 1.3em 0 0.3em;
  }
  h2:focus,
  h3:focus {
    outline: none;
  }
  p {
    margin: 0 0 0.7em;
    max-width: 66ch;
  }
  ul,
  ol {
    margin: 0 0 0.7em;
    padding-inline-start: 1.2em;
  }
  .quiet {
    color: var(--second);
    font-size: 0.9em;
  }
  .fault {
    color: var(--fault);
  }
  /* What can be pressed: a hairline frame. */
  button,
  .press {
    font: inherit;
    font-size: 0.92em;
    line-height: 1.3;
    color: var(--accent);
    background: none;
    border: 1px solid var(--hair);
    border-radius: 3px;
    padding: 0.22em 0.6em;
    min-height: 30px;
    margin: 0.12em 0.3em 0.12em 0;
    cursor: pointer;
    text-align: start;
    touch-action: manipulation;
  }
  a.press,
  label.press {
    display: inline-flex;
    align-items: center;
    text-decoration: none;
  }
  h2 {
    scroll-margin-block: 4em 1em;
  }
  button:hover {
    border-color: currentColor;
  }
  button:disabled {
    color: var(--second);
    cursor: default;
    border-style: dotted;
  }
  button[aria-pressed="true"],
  button[aria-current="true"] {
    border-color: currentColor;
    box-shadow: inset 0 -2px 0 currentColor;
  }
  /* What can be changed: a dotted underline. */
  input:not([type]),
  input[type="text"],
  input[type="date"],
  textarea {
    font: inherit;
    color: var(--accent);
    background: none;
    border: 0;
    border-bottom: 2px dotted currentColor;
    border-radius: 0;
    padding: 0.05em 0.15em;
    min-height: 26px;
    min-width: 2.2em;
    max-width: 100%;
  }
  input.count {
    width: 3.2em;
    text-align: center;
    font-weight: 600;
  }
  input.wide {
    width: min(100%, 26em);
  }
  input.short {
    width: 6.2em;
  }
  input::placeholder,
  textarea::placeholder {
    color: var(--second);
    opacity: 1;
    font-weight: 400;
  }
  input[aria-invalid="true"] {
    color: var(--fault);
  }
  textarea {
    width: 100%;
    border: 1px solid var(--hair);
    border-bottom: 2px dotted currentColor;
    color: inherit;
    padding: 0.4em 0.5em;
  }
  /* What can be chosen: a hairline under it, and the mark that opens. */
  select {
    font: inherit;
    color: var(--accent);
    background: var(--paper);
    border: 0;
    border-bottom: 1px solid currentColor;
    border-radius: 0;
    padding: 0.05em 0;
    min-height: 26px;
    max-width: 100%;
  }
  :focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
  table {
    border-collapse: collapse;
    width: 100%;
    font-size: 0.93em;
    line-height: 1.35;
  }
  th,
  td {
    text-align: start;
    font-weight: 400;
    vertical-align: top;
    padding: 0.3em 0.8em 0.3em 0;
    border-bottom: 1px solid var(--hair);
  }
  thead th {
    color: var(--second);
  }
  /* What only ears get is placed absolutely, and must not stick out either. */
  .scroll {
    position: relative;
    overflow-x: auto;
    margin: 0 0 0.8em;
  }
  .number {
    text-align: end;
  }
  a {
    color: var(--accent);
    text-underline-offset: 0.2em;
  }
  .heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .choices {
    display: flex;
    flex-wrap: wrap;
    gap: 0.1em 0;
    margin: 0.2em 0 0.8em;
  }
  label {
    cursor: pointer;
  }
  @media (pointer: coarse) {
    button,
    select,
    .press {
      min-height: 44px;
    }
    input:not([type]),
    input[type="text"] {
      min-height: 40px;
      font-size: max(16px, 1em);
    }
    textarea {
      font-size: max(16px, 1em);
    }
  }
  @media print {
    button,
    .choices {
      display: none;
    }
  }
`;
