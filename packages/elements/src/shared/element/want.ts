/** What comes after a page's first file: what a hand needs, and what authors, links and tables need. */
export type Later = "second" | "third";

let fetcher: ((what: Later) => void) | undefined;
const wanted = new Set<Later>();

/** Something on the page needs more than there is. */
export function wantMore(what: Later): void {
  wanted.add(what);
  fetcher?.(what);
}

/** Says how more is fetched. */
export function fetchMore(fetch: (what: Later) => void): void {
  fetcher = fetch;
  for (const what of wanted) fetch(what);
}
