import { nothing } from "lit/html.js";

/** What a template of SVG holds, as `svg` of lit makes it. */
interface Template {
  readonly strings: readonly string[];
  readonly values: readonly unknown[];
}

const isTemplate = (value: unknown): value is Template =>
  typeof value === "object" && value !== null && "strings" in value;

export const escaped = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");

/** A template of SVG as text: for pictures that are files, and have no page. Templates of the line hold text and attributes only. */
export function svgText(value: unknown): string {
  if (value === nothing || value === undefined || value === null) return "";
  if (Array.isArray(value)) return value.map(svgText).join("");
  if (!isTemplate(value)) return escaped(String(value));
  const { strings, values } = value;
  return values.reduce<string>((text, one, n) => {
    const after = strings[n + 1]!;
    const attribute = / [\w-]+=$/.exec(text);
    if (!attribute) return text + svgText(one) + after;
    const isGone = one === nothing || one === undefined;
    return (isGone ? text.slice(0, attribute.index) : `${text}"${escaped(String(one))}"`) + after;
  }, strings[0]!);
}
