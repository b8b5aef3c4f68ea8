import { readEmbedded } from "@meshwright/calc/article";
import { attributeFindings, buildFromAttributes, isPagesOwn, nearestTo, notationName } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { errorOf, type Finding, type FindingCode, type FindingValues } from "@meshwright/calc/stages";

/** What was found where a build was looked for. */
export interface Found {
  readonly build?: Build | undefined;
  readonly findings: readonly Finding[];
}

/** The attributes that speak of the build, or may have been meant to: all but the page's own and those of `mw-build`. */
export function notationOf(element: Element): Record<string, string> {
  const attributes: Record<string, string> = {};
  let speaks = false;
  for (const { name, value } of element.attributes)
    if (!isPagesOwn(name) && !isOwn(name)) {
      attributes[name] = value;
      speaks ||= name !== "seal" && notationName(name);
    }
  return speaks ? attributes : {};
}

const isOwn = (name: string): boolean => /^(src|json|mode|permalink|build)$/.test(name);

/** The script that holds a build as JSON, if one belongs to this element and no other. */
export const scriptOf = (element: Element): HTMLScriptElement | undefined =>
  [...element.querySelectorAll<HTMLScriptElement>('script[type$="json"]')].find(
    (script) => script.closest(element.localName) === element,
  );

const refused = (code: FindingCode, values?: FindingValues): Found => ({
  findings: [errorOf("meaning", code, "", values)],
});

/** A build from a file. */
export async function fetched(address: string, signal: AbortSignal): Promise<Found> {
  try {
    const answer = await fetch(address, { signal });
    if (!answer.ok) return refused("load-failed", { address, found: answer.status });
    return readEmbedded(await answer.text());
  } catch (error) {
    return refused("load-failed", { address, found: (error as Error).message });
  }
}

/** A build written as attributes. */
export const fromNotation = (attributes: Record<string, string>): Found => buildFromAttributes(attributes);

/** A build written as JSON, as it is or as typographers and editors leave it. */
export const fromJson = (json: unknown): Found => readEmbedded(json);

/** What is wrong with attributes that are none of the data: names that nobody knows, and a mode that the build has not. */
export function oddAbout(
  element: Element,
  mode: string | null,
  build: Build | undefined,
  told: readonly Finding[],
): readonly Finding[] {
  const names = element.getAttributeNames().filter((name) => !notationName(name));
  // A notation's reader has looked at the names already.
  const odd = attributeFindings(element.localName, names).filter(
    (one) => !told.some(({ code, at }) => code === one.code && at === one.at),
  );
  const known = build?.modes?.map(({ id }) => id) ?? [];
  const isMissing = build && mode && !known.includes(mode);
  const missing = { id: mode ?? "", known, nearest: nearestTo(mode, known) };
  return isMissing ? [...odd, errorOf("meaning", "missing-reference", "/mode", missing)] : odd;
}

/** Nothing was given at all. */
export const absent = (): Found => refused("no-build");
