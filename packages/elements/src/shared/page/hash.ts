/**
 * What the address says after `#`: first what is the page's own, an anchor or a router's route; then a part for each build,
 * `#notes.mw-limpet--LINK.mw-plover--LINK`. Without an anchor it begins with the first part. Whole it is a selector that matches
 * nothing, for scroll-spies and scripts that look for what the address names. Behind a route parts stand as `&mw-limpet=LINK`,
 * and are put there in links alone.
 * @module
 */

const part = /(^#?|[.&?])mw-((?:[^=&?.#]|\.\d)+?)(?:--|=)([^&?.]*)/g;
const settled = 400;
const mostTries = 4;

const codeOf = (text: string): string =>
  [...text].map((character) => `_${character.codePointAt(0)!.toString(16)}_`).join("");

/** A build's id as it may stand in a selector: letters, digits and single hyphens, all else as `_hex_`; an ordinal follows. */
export const hashKey = (id: string, ordinal: number): string =>
  (id || "build").replace(/[^a-z\d-]|^-|-(?![a-z\d])/gi, codeOf) + (ordinal > 1 ? `_${ordinal}` : "");

/** A key as addresses had it once: `limpet.2`, with percent signs. */
function keyOfOld(text: string): string {
  const [, id, ordinal] = /^(.*?)(?:\.(\d+))?$/.exec(text)!;
  try {
    return hashKey(decodeURIComponent(id!), Number(ordinal ?? 1));
  } catch {
    return text;
  }
}

const isKey = (text: string, key: string): boolean => text === key || keyOfOld(text) === key;

/** An address after `#`, taken apart. */
function apart(hash: string): { readonly own: string; readonly parts: (readonly [key: string, text: string])[] } {
  const parts: (readonly [string, string])[] = [];
  const own = hash.replace(part, (_, joint: string, key: string, text: string) => {
    parts.push([key, text]);
    return joint === "?" ? joint : "";
  });
  return { own: own.replace(/^#/, "").replace(/\?(&|$)/, (_, next) => (next ? "?" : "")), parts };
}

/** What the address says for a build; nothing where it says nothing or cannot be read. */
export function readHash(key: string): string | undefined {
  try {
    return apart(location.hash).parts.find(([one]) => isKey(one, key))?.[1] || undefined;
  } catch {
    return undefined;
  }
}

/** What an anchor names on this page. */
function named(anchor: string): Element | undefined {
  let id = anchor;
  try {
    id = decodeURIComponent(anchor);
  } catch {
    // As it is, then.
  }
  return document.getElementById(id) ?? document.getElementsByName(id)[0];
}

/** Whether the page's own part is a route, which only its router understands. What names something on the page is an anchor. */
const isRoute = (own: string, isHere: boolean): boolean =>
  /^[/!]|[=?&]/.test(own) || (isHere && !/^(|top|mw-author)$/.test(own) && !named(own));

/** A hash with a build's part put in, replaced or taken out. */
function withPart(hash: string, key: string, text: string | undefined, isHere: boolean): string {
  const { own, parts } = apart(hash);
  const all = parts
    .filter(([one]) => !isKey(one, key))
    .map(([one, link]) => [/[.%]/.test(one) ? keyOfOld(one) : one, link]);
  if (text) all.push([key, text]);
  if (isRoute(own, isHere)) {
    const said = all.map(([one, link]) => `mw-${one}=${link}`);
    return `#${own}${said.length ? (own.includes("?") ? "&" : "?") : ""}${said.join("&")}`;
  }
  const said = [own, ...all.map(([one, link]) => `mw-${one}--${link}`)].filter(Boolean);
  return said.length ? `#${said.join(".")}` : "";
}

/** Where the page stands: another route is another place, another anchor is not. Nothing where it is a router's. */
function place(): string | undefined {
  const { own } = apart(location.hash);
  return isRoute(own, true) ? undefined : location.pathname + location.search;
}

interface Pending {
  readonly place: string;
  readonly text: () => string | undefined;
}

let waiting: ReturnType<typeof setTimeout> | undefined;
let tries = 0;
const pending = new Map<string, Pending>();

/** What the reader does next may lead elsewhere: by then the address is right. What happens in our own elements does not. */
const clicked = ({ target }: Event): void => {
  if (!/^mw-/.test((target as Partial<Element>)?.localName ?? "")) writeNow();
};

const hidden = (): void => {
  if (document.visibilityState === "hidden") writeNow();
};

function listen(how: "addEventListener" | "removeEventListener"): void {
  globalThis[how]("pagehide", writeNow);
  globalThis[how]("click", clicked, true);
  document[how]("visibilitychange", hidden);
}

/** Writes what is waiting: each only where the page still is the place that its change was made in. */
export function writeNow(): void {
  if (!pending.size) return;
  clearTimeout(waiting);
  try {
    let { hash } = location;
    const here = place();
    for (const [key, one] of pending) if (one.place === here) hash = withPart(hash, key, one.text(), true);
    // Whole, because a page's <base> would send a bare hash somewhere else.
    if (hash !== location.hash) history.replaceState(history.state, "", location.href.split("#")[0] + hash);
  } catch {
    // Browsers that count allow it again later. Sandboxed frames never do: the link can still be copied.
    if (tries++ < mostTries) {
      waiting = setTimeout(writeNow, settled * 4 ** tries);
      return;
    }
  }
  tries = 0;
  pending.clear();
  listen("removeEventListener");
}

/**
 * Puts a build's part into the address, once things have settled: only then is it asked for. Where the hash is a router's, the
 * address is left alone.
 */
export function writeHash(key: string, text: () => string | undefined): void {
  let here: string | undefined;
  try {
    here = place();
  } catch {
    return;
  }
  if (here === undefined) return;
  if (!pending.size) listen("addEventListener");
  pending.set(key, { place: here, text });
  clearTimeout(waiting);
  waiting = setTimeout(writeNow, settled);
}

/** A link to a page with a build's part in it. */
export function linkWith(page: string, key: string, text: string): string {
  const at = page.indexOf("#");
  const base = at < 0 ? page : page.slice(0, at);
  return base + withPart(at < 0 ? "" : page.slice(at), key, text, base === location.href.split("#")[0]);
}

let sought: string | undefined;

/** Goes to the anchor before our parts, which the browser does not know for one; not where it has brought the reader back. */
export function seekAnchor(): void {
  let own = "";
  try {
    const found = apart(location.hash);
    if (found.parts.length) ({ own } = found);
  } catch {
    return;
  }
  const isFirst = sought === undefined;
  if (own === sought) return;
  sought = own;
  // Where pages are only imitated there is no record of how one was come to.
  const [entry] = (performance.getEntriesByType?.("navigation") ?? []) as PerformanceNavigationTiming[];
  if (own && !(isFirst && entry && entry.type !== "navigate")) named(own)?.scrollIntoView();
}
