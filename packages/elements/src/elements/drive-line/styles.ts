import { css } from "../../shared/element/index.js";

/** What strokes look like, in the page and in pictures. */
export const ink = css`
  .line {
    stroke-width: 1.9;
  }
  .link {
    stroke-width: 0.9;
    opacity: 0.8;
  }
  .edge {
    stroke-width: 1;
  }
  .guess {
    stroke-width: 0.9;
    stroke-dasharray: 4 2.2;
    stroke-linecap: butt;
  }
  .fine {
    stroke-width: 0.65;
  }
  .shade {
    stroke-width: 0.55;
    opacity: 0.55;
  }
  .hatch {
    stroke-width: 0.6;
    opacity: 0.75;
  }
  .turned {
    stroke-width: 1;
    stroke-dasharray: 7 2.5 1.5 2.5;
    stroke-linecap: butt;
  }
  .pitch {
    stroke-width: 0.55;
    stroke-dasharray: 8 2.2 1.2 2.2;
    stroke-linecap: butt;
    opacity: 0.7;
  }
  .run {
    stroke-width: 1.8;
  }
  .chain {
    stroke-width: 2.4;
    stroke-dasharray: 3.2 1.8;
    stroke-linecap: butt;
  }
  .lane {
    stroke-width: 0.8;
  }
  .solid,
  path.head {
    fill: currentColor;
    stroke: none;
  }
  .sense {
    stroke-width: 0.9;
  }
  path.hollow,
  .unsaid {
    fill: none;
    stroke: currentColor;
    stroke-width: 0.7;
  }
`;

export const styles = css`
  .sheet {
    position: relative;
  }
  svg {
    position: absolute;
    inset: 0 auto auto 0;
    direction: ltr;
    overflow: visible;
    fill: none;
    stroke: currentColor;
    stroke-linejoin: round;
    stroke-linecap: round;
    pointer-events: none;
  }
  .chosen {
    color: var(--_accent);
  }
  ${ink}

  ol {
    list-style: none;
    margin: 0;
    padding: 0;
  }
  li {
    margin: 0;
    padding: 0;
  }
  .head,
  .foot,
  .shaft,
  .label,
  .total {
    position: absolute;
    box-sizing: border-box;
    line-height: 1.3;
  }
  .head,
  .foot {
    display: flex;
    flex-direction: column;
    align-items: center;
    white-space: nowrap;
  }
  .head {
    justify-content: flex-end;
  }
  .head .name,
  .foot .name {
    white-space: normal;
    text-align: center;
  }
  .upright .head .name,
  .upright .foot .name {
    text-align: start;
  }
  .upright .head,
  .upright .foot {
    align-items: flex-start;
    white-space: normal;
  }
  .upright .counts {
    flex-wrap: wrap;
  }
  .upright :is(.name, .note, .lane, .counts span, .total b) {
    overflow-wrap: anywhere;
  }
  .upright .total b {
    white-space: normal;
  }
  .name,
  .label,
  .lane {
    font-size: max(12px, 0.82em);
  }
  .name,
  .label {
    text-wrap: balance;
  }
  .name {
    font-style: italic;
    line-height: 1.4;
  }
  button.name,
  button.lane {
    color: inherit;
    padding: 0;
    white-space: inherit;
    text-align: inherit;
    border: 0;
    border-radius: 0;
    text-decoration: underline 1px;
    text-decoration: underline 1px color-mix(in srgb, currentColor 35%, transparent);
    text-underline-offset: 0.28em;
  }
  button.name:hover,
  button.lane:hover,
  .chosen button.name {
    text-decoration-color: currentColor;
  }
  .chosen .name {
    color: var(--_accent);
  }
  .counts {
    display: flex;
    flex-wrap: nowrap;
    align-items: center;
    gap: 0 0.42em;
    min-height: 1.5em;
    font-size: max(13px, 0.96em);
    line-height: 1.5;
  }
  /* As high as what is touched: counts that go on below stand clear of each other. */
  .counts mw-teeth {
    line-height: max(1.5em, 24px);
  }
  .arrow {
    color: var(--_second);
  }
  .note,
  .shaft,
  .scale {
    font-size: max(12px, 0.72em);
    color: var(--_second);
  }
  .note {
    display: block;
    line-height: 1.35;
  }
  .fault {
    color: var(--_fault);
    stroke-width: 1.2;
  }
  .note.fault {
    font-weight: 600;
    white-space: normal;
    text-align: center;
  }
  .upright .note.fault,
  .total .note.fault {
    text-align: start;
  }
  .shaft {
    padding-inline-start: 16px;
    white-space: nowrap;
    line-height: 1.3;
    pointer-events: none;
  }
  .label {
    font-weight: 600;
    overflow-wrap: anywhere;
    line-height: 1.5;
  }
  .total b {
    display: block;
    white-space: nowrap;
    font-size: max(14px, 1.2em);
    line-height: 1.25;
  }
  .total b.waiting {
    font-size: max(12px, 0.82em);
    font-weight: 400;
    font-style: italic;
    color: var(--_fault);
  }
  .total .name {
    display: block;
    font-style: normal;
    font-weight: 600;
  }
  /* A small circle on the shaft, with a plus once it is meant. */
  button.mark {
    position: absolute;
    padding: 0;
    min-width: 24px;
    border: 0;
    opacity: 0.7;
    background:
      linear-gradient(currentColor, currentColor) 50% 50% / 7px 1px no-repeat,
      linear-gradient(currentColor, currentColor) 50% 50% / 1px 7px no-repeat,
      radial-gradient(circle, var(--_paper) 6px, currentColor 6.2px, currentColor 7px, transparent 7.4px);
  }
  button.mark:hover,
  button.mark:focus-visible {
    opacity: 1;
  }
  .strip {
    display: none;
    position: sticky;
    top: 0;
    z-index: 2;
    height: 0;
  }
  .root:focus-within > .strip {
    display: block;
  }
  .strip p {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1em;
    max-height: 56px;
    overflow: hidden;
    box-sizing: border-box;
    margin: 0;
    padding: 4px 0;
    font-size: max(12px, 0.86em);
    background: var(--_paper);
    border-bottom: 1px solid var(--_line);
  }
  .detail.inside {
    position: absolute;
    box-sizing: border-box;
    z-index: 1;
    background: var(--_paper);
  }
  .lanes {
    display: flex;
    flex-direction: column;
  }
  .lane {
    line-height: 1.5;
    opacity: 0.75;
  }
  .lane.stands {
    opacity: 1;
    font-weight: 600;
  }
  p {
    margin: 0.6em 0 0;
  }
  .paper {
    display: none;
  }
  @media (pointer: coarse) {
    button.name,
    button.lane {
      min-height: 44px;
      min-width: 44px;
    }
    mw-teeth::part(count) {
      display: inline-block;
      min-width: 44px;
      line-height: 44px;
      text-align: center;
    }
  }
  @media (forced-colors: active) {
    svg {
      color: CanvasText;
    }
  }
  @media print {
    .paper {
      display: block;
      margin-top: 0;
    }
    button.mark,
    .root > .strip {
      display: none;
    }
    .chosen,
    .chosen .name {
      color: inherit;
    }
    button.name,
    .chosen button.name {
      background: none;
      text-decoration: none;
    }
  }
`;
