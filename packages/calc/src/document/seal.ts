import { speaksOfBuild } from "./notation-names.js";

/** Editors make typographic what was typed plain, and put in what nobody sees. */
export const plain = (text: string): string =>
  text
    .replace(/[\u00ad\u200b-\u200f\u2060\ufeff]/g, "")
    .replace(/[‐-―−]/g, "-")
    .replace(/[“”„"]/g, "")
    .replace(/\s+/g, " ")
    .trim();

const letters = "abcdefghijkmnpqrstuvwxyz";

/**
 * A short hash over a notation, as our tools write it into `seal`: whatever is lost on the way, an attribute or a word of one,
 * no longer fits it. Five letters that no editor changes (FNV-1a over names and texts in the order of the names).
 *
 * @param attributes those of the element, by name; what is not the notation's is passed over
 *
 * @example
 * sealOf({ stages: "15 to 62", rear: "12 to 35" }) === sealOf({ rear: "12  to 35", stages: "15 to 62", class: "wide" }); // => true
 * sealOf({ stages: "15 to 62", rear: "12 to 35" }) === sealOf({ rear: "12 to 35" }); // => false
 */
export function sealOf(attributes: Readonly<Record<string, string>>): string {
  let hash = 0x811c9dc5;
  const take = (text: string) => {
    for (let n = 0; n < text.length; n++) hash = Math.imul(hash ^ text.charCodeAt(n), 0x01000193);
    hash = Math.imul(hash ^ 0x1f, 0x01000193);
  };
  for (const name of Object.keys(attributes).sort())
    if (speaksOfBuild(name)) {
      take(name);
      take(plain(String(attributes[name])));
    }
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d) >>> 0;
  let seal = "";
  for (let n = 0; n < 5; n++) {
    seal += letters[hash % letters.length];
    hash = Math.floor(hash / letters.length);
  }
  return seal;
}
