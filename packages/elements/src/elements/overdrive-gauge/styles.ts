import { css } from "../../shared/element/index.js";

export const styles = css`
  p {
    margin: 0.35em 0 0;
    font-size: 0.86em;
    color: var(--_second);
  }
  .gap {
    margin: 0.2em 0 0;
    color: inherit;
    font-weight: 600;
    text-align: end;
  }
  p.fault {
    color: var(--_fault);
    font-size: 1em;
    font-weight: 600;
  }
  select {
    padding-block: 0;
    field-sizing: content;
  }
  option {
    color: CanvasText;
    background: Canvas;
  }
  @media print {
    select {
      color: inherit;
      border: 0;
      background: none;
      padding-inline-end: 0;
    }
  }
`;
