/** What of an address tells who is looking. */
export type Place = Pick<Location, "protocol" | "hostname" | "hash">;

/**
 * Whether whoever looks at a page there is its author: on the author's own machine, or where the address says so with
 * `#mw-author`.
 */
export const isAuthorsPlace = ({ protocol, hostname, hash }: Place): boolean =>
  protocol === "file:" ||
  /^(localhost|127\.0\.0\.1|\[::1\])$/.test(hostname) ||
  /(?:^#|[#&?.])mw-author(?![\w-])/.test(hash);

let place = (): Place => location;

/** Looks at the page as if it stood at another address; without one at its own again. For tests. */
export const lookFrom = (address?: string): void => {
  place = address === undefined ? () => location : () => new URL(address);
};

/** Whether the author is looking at this page. */
export function isAuthorHere(): boolean {
  try {
    return isAuthorsPlace(place());
  } catch {
    return false;
  }
}
