import { css } from "../../shared/element/index.js";

export const styles = css`
  section + section {
    margin-top: 1.1em;
  }
  .over {
    margin: 0;
    font-size: 0.86em;
    font-weight: 400;
    color: var(--_second);
  }
  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  ol ol {
    padding-inline-start: 1.4em;
  }
  li {
    border-bottom: 1px solid var(--_line);
    padding: 0.3em 0;
  }
  .line,
  .fields {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.15em 0.6em;
  }
  .name {
    flex: 1 1 9em;
  }
  .kind {
    white-space: nowrap;
    color: var(--_second);
    font-size: 0.86em;
  }
  label {
    display: inline-flex;
    gap: 0.35em;
    align-items: baseline;
    font-size: 0.93em;
  }
  label span {
    color: var(--_second);
    font-size: 0.88em;
  }
  input {
    font: inherit;
    font-size: max(1em, 16px);
    color: var(--_accent);
    background: none;
    border: 0;
    border-bottom: 1.5px dotted currentColor;
    border-radius: 0;
    padding: 0.1em 0;
    min-height: 24px;
    width: 3.4ch;
    text-align: center;
    font-variant-numeric: lining-nums tabular-nums;
    touch-action: manipulation;
  }
  input.text {
    width: 11ch;
    text-align: start;
  }
  input[type="checkbox"] {
    width: 1.1em;
    min-height: 0;
    height: 1.1em;
    align-self: center;
    accent-color: var(--_accent);
  }
  select {
    appearance: none;
    font-size: max(1em, 16px);
  }
  option {
    color: CanvasText;
    background: Canvas;
  }
  .keys {
    display: inline-flex;
  }
  .line > .keys {
    margin-inline-start: auto;
  }
  .keys button {
    text-decoration: none;
    min-width: max(24px, 1.4em);
  }
  button:disabled {
    opacity: 0.3;
    cursor: default;
  }
  details[open] {
    flex-basis: 100%;
    font-size: 0.93em;
  }
  summary {
    display: inline-block;
    min-width: 24px;
    min-height: 24px;
    text-align: center;
    cursor: pointer;
    color: var(--_accent);
  }
  summary::-webkit-details-marker {
    display: none;
  }
  .message {
    color: var(--_fault);
    margin: 0.2em 0 0;
  }
  .changed {
    text-decoration: underline double 1px;
    text-underline-offset: 0.22em;
  }
  @media print {
    .keys,
    details,
    .add {
      display: none;
    }
    input {
      border: 0;
      color: inherit;
    }
  }
`;
