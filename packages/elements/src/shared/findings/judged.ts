import { askedFindings } from "@meshwright/calc/article";
import { attributeFindings, elementAttributes, type ElementTag } from "@meshwright/calc/document";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import { holderFault } from "@meshwright/calc/article";
import { composed, type Subject } from "../element/index.js";
import { page } from "../store/index.js";
import { otherIds } from "./others.js";

/** What an element asks for, by the names of its attributes: frameworks set properties instead. */
function askedBy(element: Subject): Record<string, string> {
  const fields = element as unknown as Readonly<Record<string, unknown>>;
  const asked: Record<string, string> = {};
  for (const name of elementAttributes[element.localName as ElementTag] ?? []) {
    const value = fields[name];
    if (typeof value === "string" || typeof value === "number" || typeof value === "boolean") asked[name] = `${value}`;
  }
  return asked;
}

/** No build at all, where one is looked for. */
function homeFault({ build }: Subject): Finding {
  const missing = build ? holderFault(composed, page().holders, build) : undefined;
  return missing ?? errorOf("meaning", "missing-reference", "", { id: "mw-build" });
}

/** Whether one of our elements has drawn it: then it asks of the build as it stands, with what a reader has put in. */
function isDrawn(element: Subject): boolean {
  const { host } = element.getRootNode() as Partial<ShadowRoot>;
  return host !== undefined && host.localName in elementAttributes;
}

/** What is wrong with an element's own words: names of attributes, and what it asks of the build as the author has it. */
export function findingsOf(element: Subject): readonly Finding[] {
  const names = attributeFindings(element.localName, element.getAttributeNames());
  const { home } = element;
  // A build may still be on its way.
  if (!home) return document.readyState === "complete" ? [...names, homeFault(element)] : names;
  const { store } = home;
  const build = isDrawn(element) ? store.build : store.article;
  if (!build) return names;
  const version = (at: string) => store.evaluation(at)?.build;
  const others = () => otherIds(home, build);
  return [...names, ...askedFindings(element.localName, build, askedBy(element), version, others)];
}
