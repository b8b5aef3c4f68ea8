import { readBuild, type Reading } from "../document/index.js";

const entities: Readonly<Record<string, string>> = {
  quot: '"',
  ldquo: '"',
  rdquo: '"',
  bdquo: '"',
  amp: "&",
  lt: "<",
  gt: ">",
  nbsp: " ",
};

/** A character reference as the character that it stands for; one that is not known stays. */
function decoded(whole: string, name: string): string {
  if (name[0] !== "#") return entities[name] ?? whole;
  const code = /^#x/i.test(name) ? parseInt(name.slice(2), 16) : Number(name.slice(1));
  return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
}

/** Quotation marks of all kinds made straight, white space of all kinds plain, and line ends inside texts blanks. */
const straightened = (text: string): string =>
  text
    .replace(/[\u201c-\u201f\u2033\u301d\u301e\uff02]/g, '"')
    .replace(/"(?:[^"\\]|\\[\s\S])*"|[\s\ufeff]+/g, (piece) =>
      piece[0] === '"' ? piece.replace(/[^\S\n\r]*[\n\r]\s*/g, " ").replace(/\t/g, " ") : " ",
    );

const versionAt = /^\/(alternatives|measurements|revisions)(?:\/(\d+))?(?:\/|$)/;

/**
 * Reads a build whose faults may all lie in versions of it: these are told, and left out.
 *
 * @param json text, or the data that it stands for
 */
function sparing(json: unknown): Reading {
  const reading = readBuild(json);
  const errors = reading.findings.filter(({ severity }) => severity === "error");
  if (reading.ok || !errors.every(({ at }) => versionAt.test(at))) return reading;
  const data = { ...((typeof json === "string" ? JSON.parse(json) : json) as Record<string, unknown>) };
  for (const [key, list] of Object.entries(data)) {
    const broken = errors.flatMap(({ at }) => {
      const [, name, place] = versionAt.exec(at)!;
      return name === key ? (place ?? "") : [];
    });
    if (!broken.length) continue;
    // Each revision leads on to an earlier one.
    if (key === "revisions" || broken.includes("") || !Array.isArray(list)) delete data[key];
    else data[key] = list.filter((_, n) => !broken.includes(String(n)));
  }
  const again = readBuild(data);
  return again.ok ? { ...again, findings: reading.findings } : reading;
}

/**
 * Reads a build that stands as JSON inside a page. Typographers, Markdown and editors take it for prose: curled quotation
 * marks, character references, hard blanks and line ends within texts are put right where it cannot be read as it is. An
 * alternative, a measurement or earlier revisions that cannot be made are told and left out; the rest is a build.
 *
 * @param json text, or the data that it stands for
 *
 * @example
 * const json = '{ “format”: “meshwright-build/1”, &quot;outputs&quot;: [{ "id": "rear", "label": "Rear\naxle", "stages": [] }] }';
 * const reading = readEmbedded(json);
 * reading.ok && reading.build.outputs[0]!.label; // => "Rear axle"
 */
export function readEmbedded(json: unknown): Reading {
  const reading = sparing(json);
  if (reading.ok || typeof json !== "string") return reading;
  const mended = straightened(json.replace(/&(#x[\da-f]{1,6}|#\d{1,7}|[a-z]+);/gi, decoded));
  const again = mended === json ? reading : sparing(mended);
  // What is told of a text that cannot be mended is told of the text as it stands.
  return again.ok ? again : reading;
}
