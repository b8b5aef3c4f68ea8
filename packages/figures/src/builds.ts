import { buildFromAttributes, notationName, readBuild } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import { around, attributeOf, elementsIn, isElement, type Element, type Node } from "./source.js";

/** A build of a page and where it stands. */
export interface PageBuild {
  readonly element: Element;
  readonly id: string;
  readonly build: Build | undefined;
  readonly findings: readonly Finding[];
}

/** Reads a file that `src` names; undefined where it is not to be had. */
export type Load = (src: string) => string | undefined;

const offsetOf = (element: Element): number => element.sourceCodeLocation?.startOffset ?? 0;

function dataOf(element: Element, load: Load): { build?: Build; findings: readonly Finding[] } {
  const json = attributeOf(element, "json");
  const script = [...elementsIn(element)].find(
    (one) => one.tagName === "script" && (attributeOf(one, "type") ?? "").endsWith("json"),
  );
  if (json !== undefined || script)
    return readBuild(json ?? script!.childNodes.map((node) => ("value" in node ? node.value : "")).join(""));
  const src = attributeOf(element, "src");
  if (src === undefined)
    return buildFromAttributes(
      Object.fromEntries(
        element.attrs.filter(({ name }) => notationName(name)).map(({ name, value }) => [name, value]),
      ),
    );
  const text = load(src);
  if (text !== undefined) return readBuild(text);
  return {
    findings: [errorOf("shape", "load-failed", "", { address: src, found: "no such file" })],
  };
}

/** The builds of a page, in the order of the document. */
export const buildsIn = (page: Node, load: Load): readonly PageBuild[] =>
  [...elementsIn(page)]
    .filter((element) => element.tagName === "mw-build")
    .map((element) => ({ element, id: attributeOf(element, "id") ?? "", build: undefined, ...dataOf(element, load) }));

/**
 * The build that an element belongs to, by the same rule as in the page: in the smallest ancestor that holds a matching one,
 * the last before the element, else the first after it.
 */
export function buildFor(element: Element, builds: readonly PageBuild[]): PageBuild | undefined {
  const id = attributeOf(element, "build");
  const matching = builds.filter((one) => !id || one.id === id);
  for (const node of around(element)) {
    const inside = matching.filter((one) => one.element === node || [...around(one.element)].includes(node));
    if (inside.length) return inside.findLast((one) => offsetOf(one.element) < offsetOf(element)) ?? inside[0];
  }
  return undefined;
}

/** The language that an element stands in. */
export function localeOf(element: Element): string {
  for (const node of [element, ...around(element)]) {
    const tag = isElement(node) ? attributeOf(node, "lang") : undefined;
    if (tag) {
      try {
        return Intl.getCanonicalLocales(tag)[0]!;
      } catch {
        return "en";
      }
    }
  }
  return "en";
}
