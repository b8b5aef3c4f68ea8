import { css } from "../../shared/element/index.js";

export const styles = css`
  :host {
    display: contents;
  }
  /* A page's reset would show the data. */
  ::slotted(script) {
    display: none !important;
  }
`;
