/**
 * One part of the address after `#` belongs to a build: `mw-limpet=…`. The rest belongs to the page: anchors, routers,
 * scroll-spies.
 * @module
 */

const ours = /(?:^#?|[&?])mw-[^=&?]+=[^&?]*/g;
const settled = 400;

const partOf = (key: string): RegExp => new RegExp(`(?:^#?|[&?])mw-${key.replace(/[^\w-]/g, "\\$&")}=([^&?]*)`);

/** A key as it may stand in an address. */
export const hashKey = (id: string, ordinal: number): string =>
  encodeURIComponent(id || "build") + (ordinal > 1 ? `.${ordinal}` : "");

/** What the address says for a build; nothing where it says nothing or cannot be read. */
export function readHash(key: string): string | undefined {
  try {
    return partOf(key).exec(location.hash)?.[1] || undefined;
  } catch {
    return undefined;
  }
}

/** A hash with a build's part put in, replaced or taken out. An anchor gives way; a router's path stays in front. */
function withPart(hash: string, key: string, text: string | undefined): string {
  const others = (hash.match(ours) ?? []).map((part) => part.slice(1)).filter((part) => !part.startsWith(`mw-${key}=`));
  if (text) others.push(`mw-${key}=${text}`);
  const page = hash.replace(ours, "");
  const route = /^#?[/!]/.test(page) ? page.replace(/^#?/, "#") : "#";
  const joint = route === "#" ? "" : route.includes("?") ? "&" : "?";
  return others.length ? route + joint + others.join("&") : route === "#" ? "" : route;
}

let waiting: ReturnType<typeof setTimeout> | undefined;
const pending = new Map<string, () => string | undefined>();

function write(): void {
  clearTimeout(waiting);
  removeEventListener("pagehide", write);
  try {
    let { hash } = location;
    for (const [key, text] of pending) hash = withPart(hash, key, text());
    // Whole, because a page's <base> would send a bare hash somewhere else.
    if (hash !== location.hash) history.replaceState(history.state, "", location.href.split("#")[0] + hash);
  } catch {
    // Sandboxed frames and browsers that count refuse: the link can still be copied.
  }
  pending.clear();
}

/**
 * Puts a build's part into the address, once things have settled: only then is it asked for. Where the page uses the hash for itself, the address is
 * left alone.
 */
export function writeHash(key: string, text: () => string | undefined): void {
  let page = "#";
  try {
    page = location.hash.replace(ours, "");
  } catch {
    // As if there were none.
  }
  if (page.length > 1) return;
  pending.set(key, text);
  clearTimeout(waiting);
  waiting = setTimeout(write, settled);
  addEventListener("pagehide", write);
}

/** A link to a page with a build's part in it. */
export function linkWith(page: string, key: string, text: string): string {
  const at = page.indexOf("#");
  const base = at < 0 ? page : page.slice(0, at);
  return base + withPart(at < 0 ? "" : page.slice(at), key, text);
}
