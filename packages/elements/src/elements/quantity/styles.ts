import { css } from "../../shared/element/index.js";

export const styles = css`
  .root {
    position: relative;
    white-space: nowrap;
    font-variant-numeric: lining-nums tabular-nums;
    text-transform: none;
  }
  .text {
    color: var(--_accent);
    text-decoration: underline dotted max(1.5px, 0.075em);
    text-underline-offset: 0.22em;
  }
  .changed .text {
    text-decoration-style: double;
    text-decoration-thickness: max(1px, 0.06em);
  }
  .root:focus-within > .text {
    outline: 2px solid var(--_ring);
    outline-offset: 2px;
    border-radius: 1px;
  }
  /* Over the text and a little larger: a target for a thumb that takes no room in the line. */
  input {
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
  .note {
    margin-inline-start: 0.2em;
    color: var(--_second);
    font-size: 0.82em;
    font-style: italic;
    white-space: normal;
  }
  .tray {
    all: initial;
    position: absolute;
    z-index: 9;
    bottom: calc(100% + 0.35em);
    inset-inline-start: -0.4em;
    display: flex;
    align-items: center;
    box-sizing: border-box;
    width: max-content;
    max-width: min(18em, 80vw);
    color: inherit;
    font: inherit;
    font-size: 0.88em;
    line-height: 1.3;
    direction: inherit;
    background: var(--_paper);
    border: 1px solid currentColor;
    border-radius: 3px;
  }
  button {
    all: unset;
    box-sizing: border-box;
    min-width: 2em;
    min-height: max(1.9em, 26px);
    font-size: 1.1em;
    text-align: center;
    color: var(--_accent);
    cursor: pointer;
    touch-action: manipulation;
    user-select: none;
    -webkit-user-select: none;
  }
  button + button {
    border-inline-start: 1px solid color-mix(in srgb, currentColor 35%, transparent);
  }
  .message {
    padding: 0.3em 0.6em;
    white-space: normal;
  }
  @media (pointer: coarse) {
    input {
      font-size: max(16px, 1em);
    }
    button {
      min-width: 44px;
      min-height: 44px;
    }
  }
  @media print {
    .tray {
      display: none;
    }
    .text {
      color: inherit;
      text-decoration: none;
      outline: none !important;
    }
    .changed .text {
      text-decoration: underline double;
    }
  }
`;
