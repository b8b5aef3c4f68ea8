import type { PageFinding } from "../element/index.js";
import { spotOf } from "./spot.js";

const warned = new WeakMap<Element, Set<string>>();

/** Tells a finding in the console, in English as all there: once for the element that it is about, however often that is looked at. */
export function warn(finding: PageFinding, about: Element): void {
  const spot = finding.element
    ? spotOf(finding)
    : `<${about.localName}${about.id ? ` id="${about.id}"` : ""}> ${spotOf(finding)}`;
  const text = `${spot.trim()}: ${finding.message}`;
  let known = warned.get(about);
  if (!known) warned.set(about, (known = new Set()));
  if (known.has(text)) return;
  known.add(text);
  console.warn(text, about);
}
