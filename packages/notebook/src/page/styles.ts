import { css } from "lit";

/** The notebook's paper: the whole page is its sheet. */
export const paper = css`
  :host {
    --paper: #fbfaf6;
    --ink: #1c2430;
    --second: #55606b;
    --accent: #0b5c6b;
    --fault: #9c2f1b;
    --hair: color-mix(in srgb, var(--ink) 20%, transparent);
    --mw-accent: var(--accent);
    --mw-fault: var(--fault);
    --mw-second: var(--second);
    --mw-paper: var(--paper);
    --mw-line: var(--hair);
    display: block;
    color-scheme: light dark;
    background: var(--paper);
    color: var(--ink);
    font-family: Charter, "Bitstream Charter", "Iowan Old Style", "Palatino Linotype", Palatino, Georgia, serif;
    font-size: 1.0625rem;
    line-height: 1.5;
    font-variant-numeric: lining-nums tabular-nums;
    min-height: 100vh;
  }
  @media (prefers-color-scheme: dark) {
    :host {
      --paper: #14191d;
      --ink: #e8e6df;
      --second: #a9b0b6;
      --accent: #7cc7d4;
      --fault: #f0a08c;
    }
  }
  @media print {
    :host {
      --paper: #fff;
      --ink: #000;
      --second: #333;
      --accent: #000;
    }
  }
  .book {
    max-width: 76rem;
    margin: 0 auto;
    padding: 0.9rem 1.5rem 6rem;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.1rem 1.2rem;
    border-bottom: 3px double var(--hair);
    padding-bottom: 0.45rem;
  }
  h1 {
    margin: 0;
    font-weight: 500;
    line-height: 1.2;
    flex: 0 1 auto;
    min-width: 0;
  }
  h1 input {
    font-size: 1.75rem !important;
    color: inherit !important;
    border-bottom-color: transparent !important;
    width: min(100%, 20em);
    padding: 0 !important;
    field-sizing: content;
  }
  h1 input:hover,
  h1 input:focus {
    border-bottom-color: var(--accent) !important;
  }
  header .does {
    margin-inline-start: auto;
    display: flex;
    flex-wrap: wrap;
  }
  .keeping {
    margin: 0.3rem 0 0;
    flex-basis: 100%;
    max-width: none;
    color: var(--second);
    font-size: 0.88rem;
  }
  .keeping.lost {
    color: var(--fault);
  }
  .strip {
    position: sticky;
    top: 0;
    z-index: 2;
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 0 1.4rem;
    min-height: 40px;
    max-height: 56px;
    background: var(--paper);
    border-bottom: 1px solid var(--hair);
    font-size: 0.95rem;
    overflow: hidden;
  }
  .strip nav {
    display: flex;
    gap: 0 1.1rem;
    white-space: nowrap;
  }
  .strip nav a {
    padding: 0.5em 0;
    text-decoration: none;
    border-bottom: 1px solid transparent;
  }
  .strip nav a:hover {
    border-bottom-color: currentColor;
  }
  .strip select {
    display: none;
  }
  .totals {
    margin: 0;
    max-width: none;
    text-align: end;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .totals b {
    font-weight: 600;
  }
  section {
    display: grid;
    grid-template-columns: 7.5rem minmax(0, 1fr);
    gap: 0 1.4rem;
    border-top: 1px solid var(--hair);
    padding: 1.3rem 0 1rem;
    scroll-margin-top: 46px;
  }
  section:first-of-type {
    border-top: 0;
  }
  section > h2 {
    font-size: 0.9rem;
    font-weight: 400;
    font-style: italic;
    color: var(--second);
    text-align: end;
    padding-top: 0.35rem;
    margin: 0;
  }
  section > div {
    border-inline-start: 1px solid color-mix(in srgb, var(--accent) 40%, transparent);
    padding-inline-start: 1.4rem;
    min-width: 0;
    max-width: 64rem;
  }
  /* A page that grows moves the others as they are. What lies over the whole window belongs to the one that is being worked on. */
  @media screen {
    section > div:not(:focus-within) {
      contain: layout paint;
      overflow-clip-margin: 2rem;
    }
  }
  .panel {
    border: 1px solid var(--hair);
    border-radius: 3px;
    padding: 0.9rem 1rem 0.5rem;
    margin: 0.8rem 0;
  }
  .dropping {
    outline: 2px dashed var(--accent);
    outline-offset: -6px;
  }
  @media (max-width: 760px) {
    .book {
      padding: 0.6rem 0.9rem 5rem;
    }
    section {
      grid-template-columns: minmax(0, 1fr);
      padding: 0.9rem 0 0.5rem;
    }
    section > h2 {
      text-align: start;
      padding: 0 0 0.3rem;
    }
    section > div {
      border: 0;
      padding: 0;
    }
    header .does {
      margin-inline-start: 0;
    }
    h1 input {
      font-size: 1.4rem !important;
    }
    .strip nav {
      display: none;
    }
    .strip select {
      display: block;
      flex: none;
      max-width: 8.5em;
    }
    .totals {
      order: -1;
      text-align: start;
      white-space: normal;
      font-size: 0.9rem;
      line-height: 1.25;
    }
  }
  @media print {
    .strip,
    .does,
    .keeping button {
      display: none;
    }
  }
`;
