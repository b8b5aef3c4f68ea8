import { css } from "lit";

export const styles = css`
  :host {
    display: contents;
  }
  /* A page's reset would show the data. */
  ::slotted(script) {
    display: none !important;
  }
  details {
    display: inline-block;
    position: relative;
    vertical-align: baseline;
    color: var(--_fault);
  }
  summary {
    display: inline-block;
    min-width: 24px;
    min-height: 24px;
    text-align: center;
    font-weight: 600;
    cursor: pointer;
  }
  summary::-webkit-details-marker {
    display: none;
  }
  ul {
    margin: 0 0 1em;
    padding: 0 0 0 1.2em;
    font-size: 0.88em;
  }
  code {
    font-size: 0.9em;
  }
  @media print {
    details {
      display: none;
    }
  }
`;
