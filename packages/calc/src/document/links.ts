import {
  finderIn,
  labelAt,
  oneIn,
  stagesOf,
  unitsOf,
  type Build,
  type Change,
  type ChangeSet,
  type Finder,
} from "../drivetrain/index.js";
import { MeshwrightError } from "../exact/index.js";
import type { Finding, FindingCode, FindingValues, Stage } from "../stages/index.js";
import { layOver } from "./lay-over.js";
import { mostStructure, Stale, StagePacker, StageUnpacker, Tampered } from "./link-stages.js";
import { counted, digits, fromLetters, hashOf, inLetters, linkFault, opened, sealed, Taker } from "./link-text.js";
import { checksIn, idsIn, isObject, numbersOf, shapeAt } from "./link-values.js";
import { addressPattern } from "./scalars.js";
import { sameValue } from "./same.js";

// What a link for changes holds: how many counts are others, then each: three characters for its address, four for what it
// belongs to as the author has it, and the new count. Anything else follows as JSON: changes of structure, then values.

const longest = 250_000;
const mostFindings = 20;
const countsBelow = 32 ** 4;

/** A value in JSON: the check of what it belongs to, its address, and what it is to be. */
type PackedValue = readonly [check: string, address: string, to: unknown];

const isCount = (value: unknown): value is number =>
  typeof value === "number" && Number.isInteger(value) && value >= 0 && value < countsBelow;

/** Every count of an author's build that a link carries in short, by what stands for it there. */
function countsOf(build: Build, find: Finder, checkAt: (address: string) => string): Map<string, string[]> {
  const counts = new Map<string, string[]>();
  const add = (address: string) => {
    const key = digits(hashOf(address) >> 6, 3) + checkAt(address);
    const alike = counts.get(key);
    if (alike) alike.push(address);
    else counts.set(key, [address]);
  };
  const visit = (address: string, value: unknown, depth: number): void => {
    if (isCount(value)) {
      if (shapeAt(find, address)) add(address);
    } else if (typeof value === "object" && value && depth < 2)
      for (const [key, one] of Object.entries(value)) visit(`${address}.${key}`, one, depth + 1);
  };
  for (const { stage } of stagesOf(build)) visit(stage.id, { ...stage, positions: undefined }, 0);
  for (const { id, wheels } of build.outputs) visit(`${id}.wheels`, wheels, 1);
  visit("battery", build.battery, 0);
  return counts;
}

/** Ids that a value at an address may be: a position of its stage, or anything of the author's. */
function idsFor(find: Finder, address: string, ids: ReadonlySet<string>): ReadonlySet<string> {
  const [id, field] = address.split(".") as [string, string?];
  const stage = find(id)?.stage;
  if (field !== "selected" || !stage || !("positions" in stage)) return ids;
  return new Set(stage.positions.map((one) => one.id));
}

/**
 * Whether a link carries what stands at an address: numbers, lengths, flags, words of closed lists and whole stages do;
 * names, titles, rounding, notes and whatever else says something in words do not.
 */
export const linkCarries = (build: Build, address: string): boolean => shapeAt(oneIn(build), address) !== undefined;

/**
 * A short link for changes: letters, digits, - and _, a letter last. Three changed counts take at most 40 characters. It
 * carries kinds, places, numbers and the author's ids, never words; whoever opens it names new stages. Each change has a
 * check of what it replaces.
 *
 * @param changes new values by address; what changes nothing is left out
 * @param structure changes of structure, in their order
 * @throws MeshwrightError `missing-address` where the build has no such address, `link-words` where it holds words,
 * `too-long` where a link would be longer than is read
 *
 * @example
 * import { buildFromAttributes, changesFrom, linkOf } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ stages: "Spur and pinion: 15 to 62", rear: "Ring: 12 to 35" });
 * const link = linkOf(build!, { "spur-and-pinion.driver": 17, "rear-ring.driver": 11 });
 * link.length <= 40; // => true
 * changesFrom(link, build!).changes; // => { "spur-and-pinion.driver": 17, "rear-ring.driver": 11 }
 * linkOf(build!, { title: "Mine" }); // throws link-words
 */
export function linkOf(build: Build, changes: ChangeSet, structure: readonly Change[] = []): string {
  const find = finderIn(build);
  const ids = idsIn(build);
  const checkAt = checksIn(build, find);
  const table = countsOf(build, find, checkAt);
  const packer = new StagePacker(build, find);
  const refuse = (address: string, code: string, why: string): never => {
    throw new MeshwrightError(code, address, why);
  };
  const rest: unknown[] = structure.map(
    (change) =>
      packer.change(change) ?? refuse("", "link-words", "Expected changes of structure, found a value among them."),
  );
  const most = Math.max(rest.length, packer.size);
  if (most > mostStructure)
    refuse("", "too-long", `Found ${most} changes of structure, expected ${mostStructure} at the most.`);
  const short: string[] = [];
  const isSame = ([address, to]: [string, unknown]) => {
    if (!find(address)) refuse(address, "missing-address", `Nothing is at ${address}.`);
    return sameValue(find.value(address), to);
  };
  for (const { sets } of unitsOf(build, changes)) {
    if (Object.entries(sets).every(isSame)) continue;
    for (const [address, to] of Object.entries(sets)) {
      const shape = shapeAt(find, address);
      if (!shape) refuse(address, "link-words", `A link carries numbers and no words, so not ${address}.`);
      const key = digits(hashOf(address) >> 6, 3) + checkAt(address);
      if (isCount(to) && table.get(key)?.length === 1 && table.get(key)![0] === address) short.push(key + counted(to));
      else {
        const value =
          to === null
            ? null
            : shape === "stage"
              ? packer.stage(to as Stage)
              : numbersOf(shape!, to, idsFor(find, address, ids));
        if (value === undefined)
          refuse(address, "link-words", `A link carries numbers; found ${JSON.stringify(to)?.slice(0, 40)}.`);
        rest.push([checkAt(address), address, value] satisfies PackedValue);
      }
    }
  }
  const link = sealed(
    "changes",
    counted(short.length) + short.join("") + (rest.length ? inLetters(JSON.stringify(rest)) : ""),
  );
  return link.length <= longest
    ? link
    : refuse("", "too-long", `Found ${link.length} characters, expected ${longest} at the most.`);
}

/** What a link comes to for a build. */
export interface LinkedChanges {
  /** New values by address. */
  readonly changes: ChangeSet;
  /** Changes of structure, in their order; they come first. */
  readonly structure: readonly Change[];
  /** What could not be taken, and why. */
  readonly findings: readonly Finding[];
}

/**
 * The changes that a link carries, for a build as its author has it now. A change of something that the author has changed
 * since, or that the build cannot take, becomes a finding; the others are returned. Never throws. The work grows with the
 * link and the build; a link of more than 250,000 characters is not read.
 *
 * @returns changes that can be laid over the build
 *
 * @example
 * import { buildFromAttributes, changesFrom, linkOf } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ stages: "", rear: "Ring: 12 to 35; Hub: 16 to 23" });
 * const { build: later } = buildFromAttributes({ stages: "", rear: "Ring: 13 to 35; Hub: 16 to 23" });
 * const { changes, findings } = changesFrom(linkOf(build!, { "rear-ring.driver": 11, "rear-hub.driven": 24 }), later!);
 * changes; // => { "rear-hub.driven": 24 }
 * findings[0]?.message; // => "Ring: the author has changed this since the link was made."
 */
export function changesFrom(link: string, build: Build): LinkedChanges {
  const content = opened(link, "changes", longest);
  if (typeof content !== "string") return { changes: {}, structure: [], findings: [content] };
  const find = finderIn(build);
  const findings: Finding[] = [];
  const refuse = (code: FindingCode, address = "", values?: FindingValues) => {
    if (findings.length >= mostFindings) return;
    const label = address && labelAt(build, address, find);
    const isTold = findings.some((one) => one.code === code && one.values.address === label);
    if (!isTold) findings.push(linkFault(code, { address: label, ...values }, address));
  };
  const sets = new Map<string, unknown>();
  const structure: Change[] = [];
  const checkAt = checksIn(build, find);
  const text = new Taker(content);
  readCounts(text, countsOf(build, find, checkAt), (address, to) =>
    to === undefined ? refuse("change-stale", stageOf(address)) : sets.set(address, to),
  );
  const rest = restOf(text.rest());
  if (!rest) refuse("link-broken");
  const stages = new StageUnpacker(build, find);
  const ids = idsIn(build);
  for (const one of rest ?? [])
    try {
      if (typeof one[0] === "string" && /^(insert|move|remove)$/.test(one[0])) {
        if (structure.length < mostStructure) structure.push(stages.change(one));
        continue;
      }
      const [check, address, to] = one;
      if (typeof address !== "string" || !addressPattern.test(address)) throw new Tampered();
      const shape = shapeAt(find, address);
      if (!shape) refuse(find(address) ? "link-words" : "change-stale", find(address) && address);
      else if (check !== checkAt(address)) refuse("change-stale", stageOf(address));
      else if (shape === "stage") sets.set(address, stages.stage(to, address));
      else {
        const value = to === null ? null : numbersOf(shape, to, idsFor(find, address, ids));
        if (!sameValue(value, to)) throw new Tampered();
        sets.set(address, withWords(shape, value, find.value(address), ids));
      }
    } catch (error) {
      if (error instanceof Stale) refuse("change-stale", stages.subjectOf(one));
      else refuse("link-broken");
    }
  if (!sets.size && !structure.length) return { changes: {}, structure, findings };
  const laid = layOver(build, { structure, sets: Object.fromEntries(sets) });
  for (const { address, why } of laid.dropped) refuse("change-refused", address, { why });
  return { changes: laid.layer.sets, structure: laid.layer.structure, findings };

  /** What a change is told of by: the stage, where it has one. */
  function stageOf(address: string): string {
    const id = address.split(".", 1)[0]!;
    return find(id)?.stage ? id : address;
  }
}

/** An object as the link has it, with what a link never says as the author has it. */
function withWords(shape: string, value: unknown, authors: unknown, ids: ReadonlySet<string>): unknown {
  if (!isObject(value) || !isObject(authors)) return value;
  const said = (numbersOf(shape, authors, ids) ?? {}) as object;
  const words = Object.entries(authors).filter(([key]) => !Object.hasOwn(said, key));
  return { ...Object.fromEntries(words), ...value };
}

/** Reads the counts of a link: each with its address, or without a new value where the author has changed it since. */
function readCounts(
  text: Taker,
  counts: Map<string, string[]>,
  say: (address: string, to: number | undefined) => void,
) {
  const byAddress = new Map<string, string | undefined>();
  for (const [key, addresses] of counts) {
    const short = key.slice(0, 3);
    byAddress.set(short, byAddress.has(short) || addresses.length > 1 ? undefined : addresses[0]);
  }
  for (let left = text.counted(); left > 0 && !text.isDone; left--) {
    const key = text.cut(7);
    const to = text.counted();
    const found = counts.get(key);
    if (found?.length === 1) say(found[0]!, to);
    else say(byAddress.get(key.slice(0, 3)) ?? "", undefined);
  }
}

/** What stands in JSON behind the counts, a list each; nothing where it cannot be read. */
function restOf(text: string): readonly (readonly unknown[])[] | undefined {
  if (!text) return [];
  try {
    const rest: unknown = JSON.parse(fromLetters(text));
    return Array.isArray(rest) && rest.every((one) => Array.isArray(one)) ? (rest as unknown[][]) : undefined;
  } catch {
    return undefined;
  }
}
