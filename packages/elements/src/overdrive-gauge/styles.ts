import { css } from "lit";

export const styles = css`
  svg {
    display: block;
    overflow: visible;
    font-size: 0.86em;
  }
  text {
    fill: currentColor;
  }
  .few {
    font-size: 0.88em;
    opacity: 0.85;
  }
  .cut {
    fill: var(--paper);
  }
  p {
    margin: 0.35em 0 0;
    font-size: 0.86em;
    color: var(--second);
  }
  p.fault {
    color: var(--fault);
    font-size: 1em;
    font-weight: 600;
  }
  select {
    appearance: none;
    padding: 0 0.1em;
    field-sizing: content;
    max-width: 100%;
  }
  option {
    color: CanvasText;
    background: Canvas;
  }
  @media print {
    select {
      color: inherit;
      text-decoration: none;
    }
  }
`;
