import { linkOf } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";

// Links as somebody could make them who knows how they are sealed.

export const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/** The seal of a link, by the rule: FNV-1a, mixed, 24 bits, three of the alphabet and a letter. */
export function withSeal(text: string): string {
  let hash = 0x811c9dc5;
  for (const one of text) hash = Math.imul(hash ^ one.charCodeAt(0), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  const check = (hash ^ (hash >>> 13)) >>> 8;
  const upper = Math.floor(check / 52);
  return text + [upper >> 12, upper >> 6, upper, NaN].map((n, at) => alphabet[at < 3 ? n & 63 : check % 52]).join("");
}
/** A link with a text in it, sealed as if it were ours. */
export const forgedText = (text: string, head = "1cA"): string =>
  withSeal(head + btoa(text).replace(/\+/g, "-").replace(/\//g, "_").replace(/=/g, ""));
/** The same with anything as JSON. */
export const forged = (content: unknown): string => forgedText(JSON.stringify(content));
/** What stands as JSON in a link of ours that changes no counts. */
export const packedIn = (link: string): unknown[][] =>
  JSON.parse(atob(link.slice(3, -4).replace(/-/g, "+").replace(/_/g, "/"))) as unknown[][];
/** The check that a link has of an address, taken from a link of ours. */
export const checkAt = (build: Build, address: string, to: unknown): string =>
  packedIn(linkOf(build, { [address]: to }))[0]![0] as string;
