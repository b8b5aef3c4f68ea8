import type { PageFinding } from "../element/index.js";

const longest = 40;
const short = (text: string): string => (text.length > longest ? `${text.slice(0, longest - 1)}…` : text);

/** Where something is wrong, as its author wrote it: `<mw-value figure="laed">`, `front-wheel`, `/outputs/0/id`. */
export function spotOf({ element, at }: PageFinding): string {
  const name = at.slice(1);
  if (!element) return /^\/[^/]+$/.test(at) ? name : at;
  const value = name && (element.getAttribute(name) ?? (element as unknown as Record<string, unknown>)[name]);
  return `<${element.localName}${name ? ` ${name}="${short(String(value ?? ""))}"` : ""}>`;
}
