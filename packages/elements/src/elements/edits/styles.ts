import { css } from "../../shared/element/index.js";

export const styles = css`
  .root,
  .actions {
    display: flex;
    flex-wrap: wrap;
    gap: 0.3em 0.7em;
    align-items: baseline;
  }
  .now {
    flex: 1 1 16em;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .effect {
    font-weight: 600;
  }
  .note {
    color: var(--_second);
    font-style: italic;
    font-size: 0.88em;
  }
  input {
    font: inherit;
    font-size: max(16px, 0.88em);
    color: inherit;
    background: none;
    border: 1px solid var(--_line);
    padding: 0.2em 0.4em;
    width: 100%;
    box-sizing: border-box;
  }
  .hand {
    display: inline-flex;
    align-items: baseline;
    gap: 0.4em;
  }
  .hand button,
  .close {
    min-width: max(32px, 1.8em);
    min-height: max(32px, 1.8em);
  }
  /* A strip at the bottom of the window: above the page, its bars and the keyboard. */
  .strip {
    all: initial;
    position: fixed;
    z-index: 9;
    inset: auto 0 var(--_lift, 0);
    box-sizing: border-box;
    display: flex;
    flex-wrap: wrap;
    gap: 0.3em 1.1em;
    align-items: baseline;
    justify-content: center;
    width: auto;
    max-width: none;
    max-height: 50vh;
    overflow: auto;
    margin: 0;
    padding: 0.45em max(1em, env(safe-area-inset-right)) max(0.45em, env(safe-area-inset-bottom))
      max(1em, env(safe-area-inset-left));
    border: 0;
    border-top: 1px solid var(--_accent);
    font: inherit;
    font-size: 0.92em;
    font-variant-numeric: lining-nums tabular-nums;
    line-height: 1.4;
    direction: inherit;
    color: inherit;
    background: var(--_paper, Canvas);
  }
  .strip .now {
    flex: 0 1 38em;
    padding-inline-end: 2em;
  }
  .close {
    position: absolute;
    inset-block-start: 0.3em;
    inset-inline-end: 0.5em;
    border-color: transparent;
  }
  .strip .changes {
    display: none;
  }
  .space {
    height: var(--_high, 0);
  }
  @media (pointer: coarse) {
    .hand button {
      min-width: 56px;
      min-height: 48px;
      font-size: 1.2em;
    }
  }
  a {
    color: inherit;
  }
  @media not print {
    .paper {
      display: none;
    }
  }
  @media print {
    .strip {
      position: static;
      display: block;
      max-height: none;
      border: 0;
      padding: 0;
    }
    .strip .changes {
      display: inline;
    }
    .space {
      display: none;
    }
    .hand,
    button,
    a {
      display: none;
    }
  }
`;
