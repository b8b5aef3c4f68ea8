import { css } from "./reactive.js";

/** What is hidden is, whatever else is said of it. */
export const hiding = css`
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
`;

/**
 * The public properties, each mapped once to a private one. Every element's styles begin with this, but for those that show a text of
 * the page's own colour and nothing else.
 */
export const properties = css`
  :host {
    --_accent: var(--mw-accent, currentColor);
    --_fault: var(--mw-fault, currentColor);
    --_second: var(--mw-second, currentColor);
    --_line: var(--mw-line, color-mix(in srgb, currentColor 18%, transparent));
    --_ring: var(--mw-ring, var(--_accent));
  }
  :host,
  .tray,
  .paged {
    --_paper: var(--mw-paper, var(--_page, Canvas));
  }
  ${hiding}
  .heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
