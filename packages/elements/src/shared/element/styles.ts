import { css } from "./reactive.js";

/**
 * The public properties, each mapped once to a private one. Every element's styles begin with this.
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
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  .heard {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
`;
