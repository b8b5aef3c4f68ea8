import { css } from "../../shared/element/index.js";

export const styles = css`
  th:first-child {
    white-space: normal;
    width: 100%;
  }
  .teeth,
  .subtotal > * {
    color: var(--_second);
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 1em;
  }
  svg {
    margin: 0 0 0.6em;
  }
  .span {
    stroke-width: 3;
    opacity: 0.45;
  }
  details {
    margin-top: 0.4em;
    font-size: 0.86em;
    color: var(--_second);
  }
  p {
    margin: 0.3em 0;
    overflow-wrap: anywhere;
  }
  @media print {
    details:not([open]) {
      display: none;
    }
  }
`;
