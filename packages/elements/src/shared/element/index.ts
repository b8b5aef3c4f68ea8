/**
 * What every element is made from. How to write one:
 *
 * 1. A folder of its own: `<name>/<name>.ts` with the class, `<name>.test.ts` beside it, `index.ts` as its face. Nothing is
 *    registered on import; `article.ts` and `all.ts` call `define`.
 * 2. Extend {@link MeshwrightElement}; say `static override readonly tag = "mw-…"`, `static override properties` (spread the
 *    parent's in is not needed) and `declare` each of them as `T | null`: attributes go away, and frameworks set null.
 * 3. `static override styles = [properties, block, css…]`. Sizes in `em`, ink is `currentColor`, accents are the private
 *    `--_accent`, `--_fault`, `--_second`, `--_line`, `--_ring`, `--_paper`; a new public `--mw-*` is mapped in `styles.ts`, once.
 *    No `style=` in a template, no class, id or part that begins with `mw-`. What stands on its own draws inside
 *    `<div class="root" part="root">`: a page's `*{all:unset}` beats `:host`.
 * 4. In `render`, ask `this.evaluation(at)`, `this.current` (the build), `this.store`, `this.words`, `this.locale`. All of them
 *    are there only while a build is: else `return this.fallback(false)`, the author's content. Draw `this.fallback()` at the
 *    end: it hides the content where that stands for the element, and shows prose that a self-closed tag has swallowed.
 *    What it says comes from calc's article room, `this.says((speaker) => sayThis(speaker, attributes), at)`, and single figures
 *    from `this.textOf(query, at)`: never from arithmetic of one's own.
 * 5. To change something: `this.change(changesOf(stage, { driver: 17 }))`, which asks for all counts of a set together. It goes
 *    to the store, raises `mw-change` where anything is different, and answers with the findings that stand against it: show
 *    them. What cannot be drawn for lack of something in the build: `this.store.complain(this, why)`, which `says` does by
 *    itself. State comes back down through `stateChanged()`, once a turn, before the next
 *    frame; override it where an element can tell cheaply that it would draw the same.
 * 6. Pictures: extend {@link Picture}, which redraws for the width it has; lettering keeps its size.
 * 7. Never read the build from an attribute, keep a number in the element, or touch the light DOM or the host's attributes.
 *
 * @module
 */
export { afterPaint } from "./after-paint.js";
export { composed, outward } from "./composed.js";
export { contentOf, standsForValue } from "./content.js";
export { readCount, writeCount } from "./digits.js";
export {
  contract,
  extend,
  more,
  type CountState,
  type Found,
  type Linking,
  type More,
  type Source,
  type Tray,
} from "./more.js";
export { fetchMore, wantMore, type Later } from "./want.js";
export { isPages, isStrange } from "./oversight.js";
export { authorsText, isWrapped, sameText } from "./own-text.js";
export { InlineElement } from "./inline.js";
export { inSentence } from "./in-sentence.js";
export { paperOf } from "./paper.js";
export { define, version, type ElementClass } from "./define.js";
export { dress, lookAgain, MeshwrightElement } from "./element.js";
export { buildsOf, findBuild } from "./find.js";
export {
  install,
  lack,
  oversight,
  whenOverseen,
  type Overseen,
  type Overseer,
  type PageFinding,
  type Subject,
} from "./oversight.js";
export { nameOf } from "./name.js";
export { hiding, properties } from "./styles.js";
export { css } from "./reactive.js";
export { forgetTexts, textFor } from "./texts.js";
