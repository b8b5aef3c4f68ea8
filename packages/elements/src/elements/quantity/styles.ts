import { css } from "../../shared/element/index.js";

/** The keys beside a quantity, while it is changed. */
export const styles = css`
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
    button {
      min-width: 44px;
      min-height: 44px;
    }
  }
  @media print {
    .tray {
      display: none;
    }
  }
`;
