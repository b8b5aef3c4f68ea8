import { css } from "lit";

/** The page that the post is written on. */
export const written = css`
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.1em 0.2em;
    border-bottom: 1px solid var(--hair);
    padding-bottom: 0.3em;
  }
  .page {
    display: grid;
    grid-template-columns: minmax(0, 38rem) minmax(9rem, 1fr);
    gap: 0 1.5rem;
  }
  .margin {
    font-size: 0.9em;
    font-style: italic;
    color: var(--second);
    padding-top: 0.9em;
  }
  .ProseMirror {
    position: relative;
    min-height: 9em;
    padding: 0.7em 0.2em;
    font-size: 1.06em;
    line-height: 1.6;
    white-space: pre-wrap;
    overflow-wrap: break-word;
    font-variant-ligatures: none;
  }
  .ProseMirror:focus-visible {
    outline: 2px solid var(--accent);
    outline-offset: 2px;
  }
  .ProseMirror h1 {
    font-size: 1.6em;
    font-weight: 500;
    line-height: 1.2;
    margin: 0.2em 0 0.5em;
  }
  .ProseMirror h2 {
    margin: 1em 0 0.3em;
  }
  .ProseMirror blockquote {
    margin: 0 0 0.8em;
    padding-inline-start: 1em;
    border-inline-start: 2px solid var(--hair);
  }
  .ProseMirror pre {
    white-space: pre-wrap;
    font-size: 0.85em;
  }
  .figure {
    font-weight: 600;
    border-bottom: 2px solid color-mix(in srgb, var(--accent) 45%, transparent);
  }
  .figure.gone {
    color: var(--fault);
    border-bottom-style: dotted;
  }
  .ProseMirror-selectednode {
    outline: 2px solid var(--accent);
    outline-offset: 1px;
  }
  .drawn,
  div.kept {
    margin: 0.8em 0;
  }
  .kept {
    border-inline-start: 2px dotted var(--hair);
    padding-inline-start: 0.4em;
    max-width: 100%;
    overflow-x: auto;
  }
  .match {
    border-inline-start: 2px solid var(--accent);
    padding-inline-start: 1em;
    margin: 0.8em 0;
  }
  .match mark {
    background: none;
    color: inherit;
    font-weight: 600;
    border-bottom: 2px solid var(--accent);
  }
  .match label {
    display: block;
    padding: 0.15em 0;
  }
  textarea.out {
    font:
      0.85rem/1.5 ui-monospace,
      monospace;
    color: var(--second);
  }
  @media (max-width: 760px) {
    .page {
      grid-template-columns: minmax(0, 1fr);
    }
    .margin {
      padding: 0;
    }
  }
`;
