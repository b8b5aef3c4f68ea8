import { css } from "../../shared/element/index.js";

export const styles = css`
  svg {
    display: block;
    /* Sideways it is turned, up and down the page moves on. */
    touch-action: pan-y;
    direction: ltr;
    overflow: visible;
    font-size: 0.86em;
    fill: none;
    stroke: currentColor;
    stroke-linejoin: round;
    stroke-linecap: round;
  }
  text {
    fill: currentColor;
    stroke: none;
    unicode-bidi: plaintext;
  }
  .edge,
  .axis,
  .turn {
    stroke-width: 1.1;
  }
  .far .edge {
    stroke-width: 0.8;
  }
  .near .edge {
    stroke-width: 1.5;
  }
  .bar {
    stroke-width: 1;
  }
  .fine,
  .hatch {
    stroke-width: 0.7;
  }
  .hatch,
  .shade {
    opacity: 0.6;
  }
  .shade {
    stroke-width: 0.6;
  }
  .pitch {
    stroke-width: 0.6;
    stroke-dasharray: 11 3 1.5 3;
    stroke-linecap: butt;
    opacity: 0.75;
  }
  .article {
    stroke-width: 1;
    stroke-dasharray: 5 3.5;
    stroke-linecap: butt;
  }
  .belt {
    stroke-width: 2.4;
  }
  .chain {
    stroke-width: 2.4;
    stroke-dasharray: 3 2;
  }
  .slot {
    stroke-width: 1.2;
  }
  .solid {
    fill: currentColor;
    stroke: none;
  }
  .held {
    cursor: grabbing;
    user-select: none;
  }
  .wheel {
    fill: transparent;
    stroke: none;
    cursor: grab;
  }
  .held .wheel {
    cursor: grabbing;
  }
  .count {
    font-size: 1.2em;
    pointer-events: none;
  }
  .end {
    font-style: italic;
    opacity: 1;
  }
  .few {
    font-size: 0.88em;
    opacity: 0.85;
  }
  .needed,
  .short {
    font-weight: 600;
  }
  .fault {
    color: var(--_fault);
  }
  text.fault,
  .fault text {
    font-weight: 600;
  }
  p {
    margin: 0.35em 0 0;
    font-size: 0.86em;
    color: var(--_second);
  }
  p.fault {
    color: var(--_fault);
    font-size: 1em;
  }
  .keys,
  .keys span {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4em;
  }
  .keys {
    margin-top: 0.6em;
    font-size: 0.86em;
  }
  @media (forced-colors: active) {
    /* Drawings keep their own colours there, unless told. */
    .fault {
      color: CanvasText;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    .run {
      display: none;
    }
  }
  @media print {
    .keys {
      display: none;
    }
  }
`;
