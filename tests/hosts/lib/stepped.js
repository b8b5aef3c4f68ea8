// A page whose article is tried by one step of its count.
import { blocks, wholeBuild } from "./elements.js";
import { article, plainSentence } from "./snippets.js";

/** An article with one element of every kind beside it. */
export const live = `<main>${wholeBuild}${blocks}<div>${article}</div></main>`;

/** Steps once; answers what stood before and after, and what went wrong. */
export const stepped = (window) =>
  window.run(async () => {
    await settled();
    const before = reads(".sentence");
    step(1);
    await settled();
    return { before, after: [count(), shown()], wrong };
  });

/** What comes of it where all is well. */
export const good = { before: plainSentence, after: ["16", "41.53"], wrong: [] };
