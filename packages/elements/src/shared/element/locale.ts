import { inherited, rootsOf } from "./composed.js";

const observers = new WeakMap<Node, { count: number; readonly observer: MutationObserver }>();

const canonical = new Map<string, string>();

/** The language that an element stands in, as a tag that `Intl` understands. */
export function localeOf(element: Node): string {
  const tag = inherited(element, "lang") ?? "en";
  let locale = canonical.get(tag);
  if (!locale) {
    try {
      locale = Intl.getCanonicalLocales(tag.replaceAll("_", "-"))[0]!;
    } catch {
      locale = "en";
    }
    canonical.set(tag, locale);
  }
  return locale;
}

/**
 * Follows `lang` and `dir` on everything around an element, with one observer for all elements of a root.
 *
 * @returns the roots followed, to be given back to {@link unfollow}
 */
export function follow(element: Node, changed: () => void): readonly Node[] {
  const roots = rootsOf(element);
  for (const root of roots) {
    const known = observers.get(root);
    if (known) known.count++;
    else {
      const observer = new MutationObserver(changed);
      observer.observe(root, { attributes: true, subtree: true, attributeFilter: ["lang", "dir"] });
      observers.set(root, { count: 1, observer });
    }
  }
  return roots;
}

/** Stops following; the last one of a root takes its observer away. */
export function unfollow(roots: readonly Node[]): void {
  for (const root of roots) {
    const known = observers.get(root);
    if (known && --known.count === 0) {
      known.observer.disconnect();
      observers.delete(root);
    }
  }
}
