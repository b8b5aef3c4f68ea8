import { css } from "../shared/element/index.js";

export const trayStyles = css`
  /* A choice: a hairline, and a small mark that opens at its end. It takes no room in the line. */
  [data-choice] > .text {
    position: relative;
    text-decoration-line: underline;
    text-decoration-style: solid;
    text-decoration-thickness: 1px;
  }
  [data-choice] > .text::after {
    content: "";
    position: absolute;
    inset-inline-end: 0;
    bottom: -0.2em;
    border: 0.22em solid transparent;
    border-top-color: currentColor;
    border-bottom: 0;
  }
  .tray {
    all: initial;
    position: absolute;
    z-index: 9;
    /* Over the line that has been read; the one below is read next. */
    bottom: calc(100% + 0.35em);
    left: 50%;
    translate: -50% 0;
    display: flex;
    align-items: center;
    box-sizing: border-box;
    max-width: min(22em, 90vw);
    color: inherit;
    font: inherit;
    font-size: 0.88em;
    line-height: 1.3;
    direction: inherit;
    background: var(--_paper);
    border: 1px solid currentColor;
    border-radius: 3px;
  }
  /* Above the first line of a page nobody sees it. */
  .tray.under {
    top: calc(100% + 0.35em);
    bottom: auto;
  }
  .tray.start {
    left: -0.4em;
    translate: none;
  }
  .tray.end {
    left: auto;
    right: -0.4em;
    translate: none;
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
  button:hover {
    background: color-mix(in srgb, currentColor 12%, transparent);
  }
  button + button {
    border-inline-start: 1px solid color-mix(in srgb, currentColor 35%, transparent);
  }
  button:disabled {
    opacity: 0.4;
    cursor: default;
  }
  .message {
    padding: 0.3em 0.6em;
    white-space: normal;
    min-width: 9em;
  }
  .name,
  .wide {
    display: none;
  }
  .strip {
    position: fixed;
    inset: auto 0 0;
    translate: none;
    width: auto;
    max-width: none;
    flex-wrap: wrap;
    margin: 0;
    padding: 4px max(8px, env(safe-area-inset-right)) max(4px, env(safe-area-inset-bottom))
      max(8px, env(safe-area-inset-left));
    border-width: 1px 0 0;
    border-radius: 0;
    font-size: max(17px, 1em);
    max-height: 45vh;
    overflow-y: auto;
  }
  .strip .name,
  .strip .wide {
    display: block;
  }
  .strip .name {
    flex: 1 1 5em;
    min-width: 0;
    overflow-wrap: anywhere;
    padding: 0 0.6em;
    text-align: center;
    white-space: normal;
  }
  .strip .message {
    order: -1;
    flex: 0 0 100%;
    box-sizing: border-box;
  }
  .strip button {
    min-width: 56px;
    min-height: 56px;
    font-size: 1.3em;
    border: 0;
  }
  .strip button.wide {
    font-size: 1em;
    padding: 0 0.5em;
  }
  @media print {
    [data-choice] > .text {
      text-decoration: none;
    }
    [data-choice] > .text::after {
      display: none;
    }
    .tray {
      display: none;
    }
  }
`;
