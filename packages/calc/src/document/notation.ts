import { checkBuild } from "./check.js";
import { stageShape } from "../drivetrain/index.js";
import { errorOf, notations, type Finding, type StageKind } from "../stages/index.js";
import { refused, type Reading } from "./reading.js";

type Data = Record<string, unknown>;

/** Ten thousand stages with labels. */
const longestText = 300_000;
const longestPiece = 1000;

/** Editors make typographic what was typed plain. */
const plain = (text: string): string =>
  text
    .replace(/[‐-―−]/g, "-")
    .replace(/[“”„"]/g, "")
    .replace(/\s+/g, " ")
    .trim();

/** The words that say something other than stages: how each is written, an example, and what it stands for. */
const words: Readonly<Record<string, readonly [RegExp, string, (found: readonly string[]) => unknown]>> = {
  target: [
    /^(\S+) to (\S+?)(?: at (\S+))?$/,
    "38 to 46",
    ([, from, to, output]) => ({ from, to, ...(output && { output }) }),
  ],
  compare: [/^(\S+) with (\S+)$/, "front with rear", ([, of, other]) => ({ of, with: other })],
  centre: [/^\S+$/, "spool", ([kind]) => ({ kind })],
  motor: [/^(\S+?) ?kv$/i, "1850 kv", ([, kv]) => ({ kv })],
  battery: [/^(\d+) cells?$/, "3 cells", ([, cells]) => ({ cells })],
  wheel: [/^.+$/, "124 mm", ([diameter]) => ({ diameter })],
  title: [/^.*$/, "", ([text]) => text],
  wheelbase: [/^.*$/, "", ([text]) => text],
  headline: [/^.*$/, "", ([text]) => text],
};

const slug = (label: string): string =>
  label
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^[^a-z]+|-$/g, "")
    .slice(0, 60);

/** A stage as it is written: counts, then further fields by name: `15 to 62, module 0.8, set`. */
function stageIn(text: string): Data | undefined {
  const [counts = "", ...more] = text.split(/ ?, ?/);
  for (const kind of Object.keys(notations) as StageKind[]) {
    const fields = notations[kind]?.parse(counts.toLowerCase().replace(" x ", " × "));
    if (!fields) continue;
    const stage: Data = { kind, ...fields };
    for (const one of more) {
      const [, key = "", value] = /^(\w+)(?: (.+))?$/.exec(one) ?? [];
      if (!Object.hasOwn(stageShape(kind), key)) return undefined;
      stage[key] = value ?? true;
    }
    return stage;
  }
  return undefined;
}

/**
 * Reads a build from attributes: `stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38"
 * front-wheel="124 mm" target="38 to 46"`. Stages stand in the order of drive, with a semicolon between them; the label
 * before the colon makes the id. Words: `stages`, `target`, `compare`, `centre`, `motor`, `battery`, `title`, `wheelbase`,
 * `headline`, and for an output `<output>-wheel` and `<output>-motor`; any other name is an output's. Typographic dashes,
 * quotes and spaces do no harm. Never throws.
 *
 * @param attributes those of an element that speak of the build, by name
 * @returns findings, each pointing to its attribute by name where one is to blame: `/front-wheel`
 *
 * @example
 * import { buildFromAttributes } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ stages: "Spur and pinion: 15 to 62", rear: "Ring: 12 to 35, set; Hub: printed 1.5" });
 * build.stages[0]; // => { id: "spur-and-pinion", label: "Spur and pinion", kind: "pair", driver: 15, driven: 62 }
 * build.outputs[0].stages[1].value; // => "1.5"
 * buildFromAttributes({ rear: "Ring: 12/35" }).findings[0].at; // => "/rear"
 */
export function buildFromAttributes(attributes: Readonly<Record<string, string>>): Reading {
  const findings: Finding[] = [];
  const wrong = (name: string, text: string, example: string) =>
    findings.push(
      errorOf("shape", "not-understood", `/${name}`, { found: JSON.stringify(text.slice(0, 40)), example }),
    );
  const document: Data = { format: "meshwright-build/1", stages: [] };
  const outputs = new Map<string, Data>();
  const output = (id: string): Data => {
    const known = outputs.get(id);
    if (known) return known;
    const made = { id, stages: [] };
    outputs.set(id, made);
    return made;
  };
  const lists: [string, string, Data][] = [];

  for (const [name, value] of Object.entries(attributes)) {
    if (String(value).length > longestText) {
      findings.push(errorOf("shape", "too-long", `/${name}`, { found: value.length, most: longestText }));
      continue;
    }
    const text = plain(String(value));
    const [, owner, what] = /^(.+)-(wheel|motor)$/.exec(name) ?? [];
    const key = what ?? name;
    if (owner ? true : key !== "wheel" && Object.hasOwn(words, key)) {
      const [pattern, example, meaning] = words[key]!;
      const found = pattern.exec(text);
      if (found) (owner ? output(owner) : document)[key] = meaning(found);
      else wrong(name, text, example);
    } else lists.push([name, text, name === "stages" ? document : output(name)]);
  }

  const taken = new Set(outputs.keys());
  for (const [name, text, owner] of lists)
    owner.stages = text.split(";").flatMap((untrimmed, n) => {
      const piece = untrimmed.trim();
      if (!piece) return [];
      // A label may hold a colon, and so may a printed ratio: the first place counts at which the rest makes sense.
      const short = piece.length < longestPiece;
      let [label, stage] = ["", short ? stageIn(piece) : undefined];
      for (let at = piece.indexOf(":"); short && !stage && at >= 0; at = piece.indexOf(":", at + 1))
        [label, stage] = [piece.slice(0, at).trim(), stageIn(piece.slice(at + 1).trim())];
      if (!stage) {
        wrong(name, piece, "Ring: 13 to 38");
        return [];
      }
      const prefix = owner === document ? "" : `${name}-`;
      const base = slug(label) ? prefix + slug(label) : `${prefix || "stage-"}${n + 1}`;
      let id = base;
      for (let again = 2; taken.has(id); again++) id = `${base}-${again}`;
      taken.add(id);
      return [{ id, ...(label && { label }), ...stage }];
    });
  document.outputs = [...outputs.values()];
  if (findings.length) return refused(...findings);
  const names = [...outputs.keys()];
  const reading = checkBuild(document);
  return {
    ...reading,
    findings: reading.findings.map((finding) => ({
      ...finding,
      at: finding.at.replace(
        /^\/outputs\/(\d+)(?:\/(wheel|motor)\b)?/,
        (_, n: string, what?: string) => `/${names[+n]}${what ? `-${what}` : ""}`,
      ),
    })),
  };
}
