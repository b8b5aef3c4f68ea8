import { errorOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";

// A link is a version, the letter for what it holds, its content, and four letters that check the whole, a letter of the
// alphabet last. Its alphabet is that of base64url: no comment system cuts it, no address bar writes it otherwise.

const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const marks = { changes: "1c", build: "1b" } as const;
const sealLength = 4;

/** What a link holds. */
export type Held = keyof typeof marks;

/** A number in so many characters. */
export const digits = (value: number, size: number): string =>
  size ? digits(Math.floor(value / 64), size - 1) + alphabet[value % 64] : "";

/** A number in as many characters as it needs: five bits each, and whether another one follows. */
export const counted = (value: number): string =>
  value < 32 ? alphabet[value]! : alphabet[32 + (value % 32)]! + counted(Math.floor(value / 32));

/** Takes a text apart from its beginning. */
export class Taker {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  get isDone(): boolean {
    return this.#at >= this.#text.length;
  }

  cut(size: number): string {
    return this.#text.slice(this.#at, (this.#at += size));
  }

  rest(): string {
    return this.cut(this.#text.length);
  }

  counted(): number {
    let value = 0;
    for (let place = 1; ; place *= 32) {
      const one = alphabet.indexOf(this.cut(1) || "A");
      value += (one % 32) * place;
      if (one < 32 || place > 2 ** 30) return value;
    }
  }
}

/** 24 bits of a text (FNV-1a, mixed once more at the end so that every character counts everywhere). */
export function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let n = 0; n < text.length; n++) hash = Math.imul(hash ^ text.charCodeAt(n), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return (hash ^ (hash >>> 13)) >>> 8;
}

/** Characters that stand for bytes, in the alphabet of links; and back. */
export const inLetters = (bytes: string): string =>
  btoa(bytes).replace(/\+/g, "-").replace(/\//g, "_").replace(/=/g, "");
export const fromLetters = (text: string): string => atob(text.replace(/-/g, "+").replace(/_/g, "/"));

const withSeal = (text: string): string => {
  const check = hashOf(text);
  return text + digits(Math.floor(check / 52) % 64 ** (sealLength - 1), sealLength - 1) + alphabet[check % 52];
};

/** A link that holds something. */
export const sealed = (held: Held, content: string): string => withSeal(marks[held] + content);

/** What is wrong with a link; nothing of its own words is repeated. */
export const linkFault = (code: FindingCode, values?: FindingValues, address = ""): Finding =>
  errorOf("meaning", code, address, { address, ...values });

/** The content of a link, or why there is none. Never throws. */
export function opened(link: unknown, held: Held, longest: number): string | Finding {
  if (typeof link !== "string" || !/^[\w-]*$/.test(link.slice(0, longest))) return linkFault("link-broken");
  if (link.length > longest) return linkFault("too-long", { found: link.length, most: longest });
  const body = link.slice(0, -sealLength);
  if (body.length < 2 || withSeal(body) !== link) return linkFault("link-broken");
  const head = body.slice(0, 2);
  if (head === marks[held]) return body.slice(2);
  const other = Object.keys(marks).find((one) => marks[one as Held] === head);
  return other
    ? linkFault("link-other", { found: { term: other as Held }, expected: { term: held } })
    : linkFault("newer-link");
}
