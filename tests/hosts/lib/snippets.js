// The markup that the documentation offers, and what it should come to.
import { readFileSync } from "node:fs";
import { at } from "../../../scripts/lib/paths.js";

export const limpet = JSON.parse(readFileSync(at("seeds", "limpet.json"), "utf8"));

/** Everything in attributes. */
export const attributes =
  'stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38; Hub: 15 to 22" rear="Ring: 12 to 35; Hub: 16 to 23" front-wheel="124 mm" rear-wheel="120 mm" target="38 to 46"';

/** A build in attributes, in the form that lives through the strictest editors. */
export const attributeBuild = `<mw-build id="limpet" ${attributes}></mw-build>`;

/** A small build as JSON on one line. */
export const small = JSON.stringify({
  format: "meshwright-build/1",
  title: "Limpet",
  stages: [
    { id: "spur-and-pinion", label: "Spur and pinion", kind: "pair", driver: 15, driven: 62 },
    { id: "gear-row", label: "Gear row", kind: "train", teeth: [18, 31, 45] },
  ],
  outputs: [
    {
      id: "front",
      label: "Front",
      stages: [
        { id: "front-ring", kind: "pair", driver: 13, driven: 38 },
        { id: "front-hub", kind: "pair", driver: 15, driven: 22 },
      ],
    },
    {
      id: "rear",
      label: "Rear",
      stages: [
        { id: "rear-ring", kind: "pair", driver: 12, driven: 35 },
        { id: "rear-hub", kind: "pair", driver: 16, driven: 23 },
      ],
    },
  ],
});

/** A build as a JSON script on one line, wrapped as Markdown wants it. */
export const jsonBuild = `<div><mw-build id="limpet"><script type="application/json">${small}</script></mw-build></div>`;

/** An inline value with a fallback. */
export const value = '<mw-value of="front">44.30</mw-value>';

/** A changeable count with a fallback. */
export const teeth = '<mw-teeth of="spur-and-pinion.driver">15</mw-teeth>';

/** A sentence with both. */
export const sentence = `<p class="sentence">With ${teeth} teeth the front turns once for every ${value} turns of the motor.</p>`;

/** What the sentence says without scripts, and with them. */
export const plainSentence = "With 15 teeth the front turns once for every 44.30 turns of the motor.";

/** A whole page. */
export const page = (body, { head = "", lang = "en", library = "meshwright.js", doctype = "<!doctype html>" } = {}) =>
  `${doctype}<html lang="${lang}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Limpet</title><script src="/probe.js"></script>${head}</head><body>${body}${
    library ? `<script src="/${library}"></script>` : ""
  }</body></html>`;

/** An article of one sentence. */
export const article = attributeBuild + sentence;
