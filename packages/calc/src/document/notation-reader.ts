import { shapes, stageShape } from "../drivetrain/index.js";
import { notations, type FindingCode, type FindingValues, type StageKind } from "../stages/index.js";
import { axleAttributeOf, buildWords, type BuildWord } from "./notation-names.js";
import { elementAttributes } from "./attributes.js";
import { nearestTo } from "./nearest.js";
import { plain, sealOf } from "./seal.js";

type Data = Record<string, unknown>;

/** Ten thousand stages with labels. */
const longestText = 300_000;
const longestPiece = 1000;

const quoted = (text: string): string => JSON.stringify(text.slice(0, 60));

const slug = (label: string): string =>
  label
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 60)
    .replace(/^[^a-z]+|-$/g, "");

/** A word, its example, and what it stands for: nothing where it is not understood. */
type Word = readonly [example: string, read: (text: string) => unknown];

const matched =
  (pattern: RegExp, meaning: (found: readonly (string | undefined)[]) => unknown) =>
  (text: string): unknown => {
    const found = pattern.exec(text);
    return found ? meaning(found) : undefined;
  };

const kv = matched(/^(\S+?) ?kv(?:, (\S+?) ?rpm at most)?(?:, (\S+?) ?V at most)?$/i, ([, rate, maxRpm, maxVolts]) => ({
  kv: rate,
  ...(maxRpm && { maxRpm }),
  ...(maxVolts && { maxVolts }),
}));

/** A wheel by its diameter, under the vehicle's weight where that is said, or by the ground that it rolled. */
function wheelIn(text: string): unknown {
  const [, turns, length] = /^(\S+) turns? (.+)$/.exec(text) ?? [];
  if (turns) return { travel: { turns, length } };
  const [, loaded] = /^(.+?),? under weight$/.exec(text) ?? [];
  return loaded ? { loadedDiameter: loaded } : text ? { diameter: text } : undefined;
}

/** `differential`, or with parts of the torque: `differential: front 2, rear 3`. */
const centreIn = matched(/^([a-z]+)(?:: (.+))?$/, ([, kind, parts]) => {
  if (!parts) return { kind };
  const share = parts.split(/ ?, ?/).map((part) => /^(\S+) (\S+)$/.exec(part));
  return share.every((one) => one !== null) && new Set(share.map((one) => one[1])).size === share.length
    ? { kind, share: Object.fromEntries(share.map((one) => [one[1], one[2]])) }
    : undefined;
});

const words: Readonly<Record<Exclude<BuildWord, "stages" | "mount"> | "wheel", Word>> = {
  target: [
    "38 to 46",
    matched(/^(\S+) to (\S+?)(?: at (\S+))?$/, ([, from, to, output]) => ({ from, to, ...(output && { output }) })),
  ],
  compare: ["front with rear", matched(/^(\S+) with (\S+)$/, ([, of, other]) => ({ of, with: other }))],
  centre: ["spool", centreIn],
  motor: ["1850 kv", kv],
  battery: [
    "3 cells lipo",
    matched(/^(\d+) cells?(?: ([a-z][a-z0-9-]*))?(?:, (\d+) parallel)?$/i, ([, cells, chemistry, parallel]) => ({
      cells,
      ...(chemistry && { chemistry: chemistry.toLowerCase() }),
      ...(parallel && { parallel }),
    })),
  ],
  controller: ["12.6 V", matched(/^(\S+?) ?V$/i, ([, maxVolts]) => ({ maxVolts }))],
  wheel: ["124 mm", wheelIn],
  title: ["Limpet", (text) => text],
  wheelbase: ["310 mm", (text) => text || undefined],
  headline: ["rear", (text) => text || undefined],
  lengths: ["mm", (text) => text || undefined],
};

/** Fields of a shape that one word alone can say: a flag by its name, a choice by its option. */
function fieldIn(text: string, shape: Readonly<Record<string, string>>): readonly [string, unknown] | undefined {
  const [, name = "", value] = /^([\w-]+)(?: (.+))?$/.exec(text) ?? [];
  const kind = Object.hasOwn(shape, name) ? shape[name]!.replace("!", "") : undefined;
  if (kind === "flag") return value === undefined ? [name, true] : value === "not" ? [name, false] : undefined;
  if (kind !== undefined) return value === undefined ? undefined : [name, value];
  const [, pitch] = /^(\S+) ?dp$/i.exec(text) ?? [];
  if (pitch && shape.diametralPitch) return ["diametralPitch", pitch];
  const word = text.toLowerCase();
  const owners = Object.keys(shape).filter(
    (one) => shape[one]!.replace("!", "").split("|").includes(word) && shape[one]!.includes("|"),
  );
  return owners.length === 1 ? [owners[0]!, word] : undefined;
}

/** Puts fields into what they are said of, up to the first that is not understood, or says again what is said before. */
function putFields(
  into: Data,
  texts: readonly string[],
  shape: Readonly<Record<string, string>>,
): { readonly field: string } | { readonly again: string } | undefined {
  for (const one of texts) {
    const said = fieldIn(one, shape);
    if (!said) return { field: one };
    if (Object.hasOwn(into, said[0])) return { again: one };
    [into[said[0]]] = [said[1]];
  }
  return undefined;
}

/** What a line of counts was found to be, or what of it is not understood, or says again what is said before. */
type StageText =
  { readonly stage: Data } | { readonly field: string; readonly known: readonly string[] } | { readonly again: string };

/** Counts of a kind, in the letters of its notation. */
function countsIn(text: string): Data | undefined {
  const bare = text.toLowerCase().replace(" x ", " × ");
  for (const kind of Object.keys(notations) as StageKind[]) {
    const fields = notations[kind]?.parse(bare);
    if (fields) return { kind, ...fields };
  }
  return undefined;
}

/** A stage as it is written: counts, then further fields by name: `15 to 62, module 0.8, set`. */
function stageIn(text: string): StageText | undefined {
  const [counts = "", ...more] = text.split(/ ?, ?/);
  const stage = countsIn(counts);
  if (!stage || !more.length) return stage && { stage };
  const shape = stageShape(stage.kind as StageKind);
  const wrong = putFields(stage, more, shape);
  if (!wrong) return { stage };
  if ("again" in wrong) return wrong;
  return { ...wrong, known: Object.keys(shape).filter((name) => name !== "kind" && name !== "id") };
}

/** Whether a label has swallowed a stage: a comma, or nothing, stood where a semicolon was meant. */
const holdsStage = (label: string): boolean =>
  label.split(/[,;:.]\s|:/).some((piece) => {
    const tokens = piece.trim().split(" ");
    return tokens.some((_, n) => n > 0 && countsIn(tokens.slice(0, n + 1).join(" ")) !== undefined);
  });

/** Whether a text reads like stages, for whom it may have been meant. */
const readsLikeStages = (text: string): boolean =>
  text
    .slice(0, longestPiece)
    .split(";")
    .some((piece) => stageIn(piece.slice(piece.indexOf(":") + 1).trim()) !== undefined);

interface Labelled {
  readonly label: string;
  readonly text: StageText | undefined;
}

/** A label may hold a colon, and so may a printed ratio: the first place counts at which the rest makes sense. */
function labelled(piece: string): Labelled {
  const short = piece.length < longestPiece;
  let [label, text] = ["", short ? stageIn(piece) : undefined];
  for (let at = piece.indexOf(":"); short && !text && at >= 0; at = piece.indexOf(":", at + 1))
    [label, text] = [piece.slice(0, at).trim(), stageIn(piece.slice(at + 1).trim())];
  return { label, text };
}

/** How a pair is mounted: `Spur and pinion: 30.3 mm to 31.3 mm`, or `…: known pair 23 to 53, closer 0.1 mm, farther 0.9 mm`. */
function mountIn(text: string): Data | { readonly again: string } | undefined {
  const [ends = "", ...more] = text.split(/ ?, ?/);
  const mount: Data = {};
  const [, driver, driven] = /^known pair (\d+) to (\d+)$/i.exec(ends) ?? [];
  const [, from, unit, to] = /^(\S+?)( ?[a-z]+)? to (.+)$/i.exec(ends) ?? [];
  if (driver) mount.knownPair = [driver, driven];
  else if (to) {
    const [, own] = /( ?[a-z]+)$/i.exec(to) ?? [];
    Object.assign(mount, { from: `${from}${unit ?? own ?? ""}`, to });
  } else return undefined;
  const wrong = putFields(mount, more, shapes.mount!);
  return !wrong ? mount : "again" in wrong ? wrong : undefined;
}

/** Tells what is wrong with an attribute; where a word is not known, the word and those that are. */
export type TellNotation = (
  code: FindingCode,
  name: string,
  values?: FindingValues,
  word?: { readonly found: string; readonly known: readonly string[] },
) => void;

/** What is done with an attribute that nobody knows: `text` says what it holds, as stages or not. */
export type Stranger = (name: string, looksLikeStages: () => boolean) => void;

/** Reads the notation of one element: what is wrong is told in codes, and others make sentences of them. */
export class NotationReader {
  readonly document: Data = { format: "meshwright-build/1", stages: [] };
  readonly outputs = new Map<string, Data>();
  /** The attribute that says an output's stages, by the output's id. */
  readonly attributes = new Map<string, string>();
  readonly #taken = new Set<string>();
  readonly #again = new Map<string, number>();
  readonly #tell: TellNotation;

  constructor(tell: TellNotation) {
    this.#tell = tell;
  }

  #wrong(name: string, text: string, example: string): void {
    this.#tell("not-understood", name, { name, found: quoted(text), example });
  }

  #repeated(name: string, text: string, piece: string): void {
    this.#tell("word-repeated", name, { name, found: quoted(text), piece: quoted(piece) });
  }

  #output(id: string): Data {
    let known = this.outputs.get(id);
    if (!known) this.outputs.set(id, (known = { id, stages: [] }));
    return known;
  }

  #word(name: string, text: string, key: keyof typeof words, owner: Data): void {
    const [example, read] = words[key];
    const meaning = read(text);
    if (meaning === undefined) this.#wrong(name, text, example);
    else owner[key] = meaning;
  }

  #stages(name: string, text: string, prefix: string): Data[] {
    return text.split(";").flatMap((untrimmed, n) => {
      const piece = untrimmed.trim();
      if (!piece) return [];
      const { label, text: found } = labelled(piece);
      if (!found) {
        this.#wrong(name, piece, "Ring: 13 to 38");
        return [];
      }
      if (holdsStage(label) || ("field" in found && labelled(found.field).text)) {
        this.#tell("stage-swallowed", name, { name, found: quoted(piece) });
        return [];
      }
      if ("field" in found) {
        const { field, known } = found;
        const word = { found: /^\S*/.exec(field)![0], known };
        this.#tell("unknown-field", name, { name, found: quoted(field), piece: quoted(piece) }, word);
        return [];
      }
      if ("again" in found) {
        this.#repeated(name, found.again, piece);
        return [];
      }
      const base = slug(label) ? prefix + slug(label) : `${prefix || "stage-"}${n + 1}`;
      // Thousands of stages may bear one label: each base remembers how far it has counted.
      let again = this.#again.get(base) ?? 1;
      let id = base;
      while (this.#taken.has(id)) id = `${base}-${++again}`;
      this.#again.set(base, again);
      this.#taken.add(id);
      return [{ id, ...(label && { label }), ...found.stage }];
    });
  }

  /** The stage that a mount names, by id or label; nothing, and told, where several bear the label. */
  #stageNamed(name: string): string | undefined {
    const all = [this.document, ...this.outputs.values()].flatMap(({ stages }) => stages as Data[]);
    const same = (text: unknown) => typeof text === "string" && text.toLowerCase() === name.toLowerCase();
    const known = all.filter(({ id }) => same(id));
    const found = known.length ? known : all.filter(({ label }) => same(label));
    if (found.length < 2) return String(found[0]?.id ?? slug(name));
    this.#tell("label-shared", "mount", {
      name: "mount",
      found: quoted(name),
      known: found.map(({ id }) => String(id)),
    });
    return undefined;
  }

  #mounts(text: string): void {
    this.document.mounts = text.split(";").flatMap((untrimmed) => {
      const piece = untrimmed.trim();
      if (!piece) return [];
      const at = piece.lastIndexOf(":");
      const mount = at > 0 ? mountIn(piece.slice(at + 1).trim()) : undefined;
      if (!mount) this.#wrong("mount", piece, "Spur and pinion: 30.3 mm to 31.3 mm");
      else if (typeof mount.again === "string") this.#repeated("mount", mount.again, piece);
      else {
        const stage = this.#stageNamed(piece.slice(0, at).trim());
        if (stage !== undefined) return [{ stage, ...mount }];
      }
      return [];
    });
  }

  /** Reads all attributes of an element into the document that they stand for, but for those that are the page's. */
  read(attributes: Readonly<Record<string, string>>, stranger: Stranger, isPages: (name: string) => boolean): Data {
    const { document, outputs } = this;
    const lists: [name: string, text: string, axle: string | undefined][] = [];
    const partOnly = new Map<string, string>();
    let mount: string | undefined;
    for (const [name, value] of Object.entries(attributes)) {
      const given = String(value);
      const axle = axleAttributeOf(name);
      if (!axle && !(buildWords as readonly string[]).includes(name)) {
        const own: readonly string[] = elementAttributes["mw-build"];
        if (!own.includes(name) && name !== "build" && !isPages(name))
          stranger(name, () => readsLikeStages(plain(given.slice(0, longestPiece))));
        continue;
      }
      if (given.length > longestText) {
        this.#tell("too-long", name, { found: given.length, most: longestText });
        continue;
      }
      const text = plain(given);
      if (axle?.part) {
        const output = this.#output(axle.axle);
        if (Object.hasOwn(output, axle.part)) this.#tell("id-repeated", name, { id: `${axle.axle}-${axle.part}` });
        this.#word(name, text, axle.part, output);
        partOnly.set(axle.axle, name);
      } else if (axle) {
        this.#output(axle.axle);
        if (this.attributes.has(axle.axle)) this.#tell("id-repeated", name, { id: axle.axle });
        this.attributes.set(axle.axle, name);
        lists.push([name, text, axle.axle]);
      } else if (name === "stages") lists.push([name, text, undefined]);
      else if (name === "mount") mount = text;
      else this.#word(name, text, name as keyof typeof words, document);
    }
    if (!Object.hasOwn(attributes, "stages")) this.#tell("stages-missing", "stages");
    for (const [axle, name] of partOnly) {
      if (this.attributes.has(axle)) continue;
      const [, own = name, part = ""] = /^(.*)(-(?:wheel|motor))$/.exec(name) ?? [];
      const others = [...this.attributes.values()].map((one) => one + part);
      this.#tell("axle-without-stages", name, { name, axle: own, nearest: nearestTo(name, others) });
    }
    const { seal } = attributes;
    if (seal !== undefined && plain(seal) !== sealOf(attributes))
      this.#tell("seal-broken", "seal", { found: quoted(seal) });

    // Ids of outputs are taken before any stage gets one.
    for (const id of outputs.keys()) this.#taken.add(id);
    for (const [name, text, axle] of lists) {
      const owner = axle === undefined ? document : outputs.get(axle)!;
      owner.stages = this.#stages(name, text, axle === undefined ? "" : `${axle}-`);
    }
    if (mount !== undefined) this.#mounts(mount);
    document.outputs = [...outputs.values()];
    return document;
  }
}
