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
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .kind {
    color: var(--_second);
    font-size: 0.86em;
  }
  label {
    display: inline-flex;
    flex-wrap: wrap;
    max-width: 100%;
    gap: 0.1em 0.35em;
    align-items: baseline;
    font-size: 0.93em;
  }
  label span {
    color: var(--_second);
    font-size: 0.88em;
  }
  input,
  textarea {
    font: inherit;
    font-size: max(1em, 16px);
    color: var(--_accent);
    background: none;
    border: 0;
    border-bottom: 1.5px dotted currentColor;
    border-radius: 0;
    padding: 0.1em 0;
    min-height: 24px;
    box-sizing: content-box;
    max-width: 100%;
    min-width: 0;
    text-align: center;
    font-variant-numeric: lining-nums tabular-nums;
    touch-action: manipulation;
  }
  input.text,
  textarea {
    text-align: start;
  }
  textarea {
    overflow: hidden;
    resize: none;
  }
  input[type="checkbox"] {
    box-sizing: border-box;
    width: 24px;
    height: 24px;
    margin: 0;
    align-self: center;
    accent-color: var(--_accent);
  }
  select {
    font-size: max(1em, 16px);
  }
  fieldset {
    min-width: 0;
    margin: 0.4em 0 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-weight: 600;
    font-size: 0.88em;
  }
  .gear {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0.2em;
    align-items: baseline;
  }
  option {
    color: CanvasText;
    background: Canvas;
  }
  .keys {
    display: inline-flex;
    gap: 6px;
  }
  .line > .keys {
    margin-inline-start: auto;
  }
  .keys button {
    min-width: max(24px, 1.4em);
    padding: 0;
  }
  .gear button {
    border-color: color-mix(in srgb, currentColor 22%, transparent);
  }
  button:disabled {
    opacity: 0.3;
    cursor: default;
  }
  /* In a line of its own, open or not: nothing jumps. */
  details {
    flex-basis: 100%;
    font-size: 0.88em;
  }
  .message {
    color: var(--_fault);
    margin: 0.2em 0 0;
  }
  .changed {
    text-decoration-line: underline;
    text-decoration-style: double;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.22em;
  }
  @media print {
    .keys,
    details,
    .add {
      display: none;
    }
    input,
    textarea {
      border: 0;
      color: inherit;
    }
  }
`;
