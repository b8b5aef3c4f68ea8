import { css } from "./reactive.js";

/** How a value stands in a sentence that its reader can change: the text, and over it the field or the choice. */
export const inSentence = css`
  .root {
    white-space: nowrap;
    font-variant-numeric: lining-nums tabular-nums;
    text-transform: none;
  }
  /* There is something to lay over the text. */
  .over {
    position: relative;
  }
  .text {
    color: var(--_accent);
    text-decoration-line: underline;
    text-decoration-style: dotted;
    text-decoration-thickness: max(1.5px, 0.075em);
    text-underline-offset: 0.22em;
  }
  .changed .text,
  .changed.text {
    text-decoration-style: double;
    text-decoration-thickness: max(1px, 0.06em);
  }
  .root:focus-within > .text {
    outline: 2px solid var(--_ring);
    outline-offset: 2px;
    border-radius: 1px;
  }
  /* Over the text and a little larger: a target for a thumb that takes no room in the line. */
  input,
  select {
    position: absolute;
    inset: 50% auto auto 50%;
    translate: -50% -50%;
    box-sizing: border-box;
    width: max(100%, 24px);
    height: max(100%, 24px);
    margin: 0;
    padding: 0;
    border: 0;
    background: none;
    font: inherit;
    line-height: normal;
    letter-spacing: inherit;
    font-variant-numeric: inherit;
    text-align: center;
    /* A choice's longest words may reach out of it, and the page would scroll. */
    overflow: hidden;
    color: var(--_accent);
    opacity: 0;
    outline: 0;
    cursor: pointer;
    appearance: none;
    touch-action: manipulation;
  }
  .typing > .text {
    color: transparent;
    text-decoration-color: var(--_accent);
  }
  .typing > input {
    opacity: 1;
    cursor: text;
  }
  select option {
    color: CanvasText;
    background: Canvas;
  }
  @media (pointer: coarse) {
    input,
    select {
      font-size: max(16px, 1em);
    }
  }
  @media print {
    .text {
      color: inherit;
      text-decoration: none;
      outline: none !important;
    }
    .changed .text,
    .changed.text {
      text-decoration-line: underline;
      text-decoration-style: double;
    }
  }
`;
