import { leanRead } from "@meshwright/calc/document/lean";
import { isPages, isStrange, type Found, type Source } from "../../shared/element/index.js";

/**
 * The attributes that speak of the build, or may have been meant to: all but the page's own and those of `mw-build`. HTML has a
 * `title` as well: here it is the build's.
 */
export const notationOf = (element: Element): Record<string, string> =>
  Object.fromEntries(
    [...element.attributes].flatMap(({ name, value }) =>
      isOwn(name) || (name !== "title" && isPages(element, name)) ? [] : [[name, value]],
    ),
  );

const isOwn = (name: string): boolean => /^(src|json|mode|permalink|build)$/.test(name);

/** The script that holds a build as JSON, if one belongs to this element and no other. */
export const scriptOf = (element: Element): HTMLScriptElement | undefined =>
  [...element.querySelectorAll<HTMLScriptElement>('script[type$="json"]')].find(
    (script) => script.closest(element.localName) === element,
  );

/** Reads what is plainly right; all else is left to whoever can tell what is wrong. */
export function plainly(source: Source, element: Element & { readonly mode: string | null }): Found {
  const build = source && "json" in source && !isStrange(element) ? leanRead(source.json) : undefined;
  const { mode } = element;
  const isThere = !mode || build?.modes?.some(({ id }) => id === mode);
  return { build: isThere ? build : undefined, findings: [] };
}
