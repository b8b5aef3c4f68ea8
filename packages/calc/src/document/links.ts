import { applyChanges } from "./changes.js";
import { finderIn, placesOf, type Build, type ChangeSet } from "../drivetrain/index.js";
import { MeshwrightError } from "../exact/index.js";
import { errorOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { readPlainly } from "./read-build.js";
import { refused, type Reading } from "./reading.js";

// A link is a version, the letter for what it holds, its content, and two letters that check the whole and let it end in
// letters. Its alphabet is that of base64url: no comment system cuts it, no address bar writes it otherwise.
//
// A changed count, where a count was before, is short: how many digits the new one takes, four characters for the address,
// three for what it was, then the digits. Anything else is long: JSON of the address, a check of what it was, and the new value.
const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";
const changesMark = "1c";
const buildMark = "1b";
const longest = 7e6;
const mostRefused = 20;
const longEntry = 0;
/** A count that three characters hold. */
const countsBelow = 64 ** 3;

const digits = (value: number, size: number): string =>
  size ? digits(Math.floor(value / 64), size - 1) + alphabet[value % 64] : "";

const valueOf = (text: string): number => [...text].reduce((sum, one) => sum * 64 + alphabet.indexOf(one), 0);

/** 24 bits of a text (FNV-1a, mixed once more at the end so that every character counts everywhere). */
function hashOf(text: string, seed = 0): number {
  let hash = 0x811c9dc5 ^ seed;
  for (let n = 0; n < text.length; n++) hash = Math.imul(hash ^ text.charCodeAt(n), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return (hash ^ (hash >>> 13)) >>> 8;
}

/** What a change replaced, in 48 bits. */
const checkOf = (value: unknown): string => {
  const text = String(JSON.stringify(value));
  return digits(hashOf(text), 4) + digits(hashOf(text, 1), 4);
};

const isCount = (value: unknown, below: number): value is number =>
  typeof value === "number" && Number.isInteger(value) && value >= 0 && value < below;

const pack = (value: unknown): string =>
  btoa(JSON.stringify(value).replace(/[^\0-\x7f]/g, (one) => "\\u" + one.charCodeAt(0).toString(16).padStart(4, "0")))
    .replace(/\+/g, "-")
    .replace(/\//g, "_")
    .replace(/=/g, "");

const unpack = (text: string): string => atob(text.replace(/-/g, "+").replace(/_/g, "/"));

const seal = (text: string): string => {
  const check = hashOf(text);
  return text + alphabet[check % 52] + alphabet[(check >> 8) % 52];
};

const finding = (code: FindingCode, address: string, values?: FindingValues): Finding =>
  errorOf("meaning", code, address, { address, ...values });

/** The content of a link, or why there is none. */
function open(link: unknown, mark: string): string | Finding {
  const refuse = (code: FindingCode, values?: FindingValues) => finding(code, "", values);
  if (typeof link !== "string" || link.length > longest || !/^[\w-]{4,}$/.test(link)) return refuse("link-broken");
  const [head, body] = [link.slice(0, 2), link.slice(0, -2)];
  if (seal(body) !== link) return refuse("link-broken");
  if (head === mark) return body.slice(2);
  return head === buildMark || head === changesMark
    ? refuse("link-other", {
        found: head === buildMark ? "@build" : "@changes",
        expected: head === buildMark ? "@changes" : "@build",
      })
    : refuse("newer-link");
}

/** Every address of the build that holds a count, by the hash of the address. */
function countsOf(build: Build): Map<number, { address: string; value: number }[]> {
  const counts = new Map<number, { address: string; value: number }[]>();
  const visit = (address: string, value: unknown, depth: number): void => {
    if (isCount(value, countsBelow)) {
      const hash = hashOf(address);
      counts.set(hash, [...(counts.get(hash) ?? []), { address, value }]);
    } else if (typeof value === "object" && value && depth < 2)
      for (const [key, one] of Object.entries(value)) visit(`${address}.${key}`, one, depth + 1);
  };
  for (const [id, { holder, key }] of placesOf(build)) visit(id, holder[key], 0);
  return counts;
}

/**
 * A short link for changes of values: letters, digits, - and _, a letter last. Three changed counts take at most 40
 * characters. Each change carries a check of what it replaced.
 *
 * @param changes as `applyChanges` takes them; what changes nothing is left out
 * @throws MeshwrightError `missing-address` where the build has no such address
 *
 * @example
 * import { buildFromAttributes, changesFrom, linkOf } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ stages: "Spur and pinion: 15 to 62", rear: "Ring: 12 to 35" });
 * const link = linkOf(build, { "spur-and-pinion.driver": 17, "rear-ring.driver": 11 });
 * link.length <= 40; // => true
 * changesFrom(link, build).changes; // => { "spur-and-pinion.driver": 17, "rear-ring.driver": 11 }
 */
export function linkOf(build: Build, changes: ChangeSet): string {
  const find = finderIn(build);
  const counts = countsOf(build);
  let text = changesMark;
  for (const [address, to] of Object.entries(changes)) {
    if (!find(address)) throw new MeshwrightError("missing-address", address, `Nothing is at ${address}.`);
    const was = find.value(address);
    if (JSON.stringify(was ?? null) === JSON.stringify(to ?? null)) continue;
    const hash = hashOf(address);
    const alike = counts.get(hash)?.filter((one) => one.value === was);
    if (alike?.length === 1 && isCount(to, 64 ** 4)) {
      const size = to < 64 ? 1 : to < 64 ** 2 ? 2 : to < 64 ** 3 ? 3 : 4;
      text += digits(size, 1) + digits(hash, 4) + digits(was as number, 3) + digits(to, size);
    } else {
      const long = pack([address, to]);
      text += digits(longEntry, 1) + digits(long.length, 4) + checkOf(was) + long;
    }
  }
  return seal(text);
}

/**
 * The changes that a link carries, for a build as its author has it now. A change of something that the author has changed
 * since, or that the build cannot take, becomes a finding; the others are returned. Never throws.
 *
 * @returns changes that `applyChanges` carries out without an error
 *
 * @example
 * import { buildFromAttributes, changesFrom, linkOf } from "@meshwright/calc/document";
 * const { build } = buildFromAttributes({ rear: "Ring: 12 to 35; Hub: 16 to 23" });
 * const { build: later } = buildFromAttributes({ rear: "Ring: 13 to 35; Hub: 16 to 23" });
 * const { changes, findings } = changesFrom(linkOf(build, { "rear-ring.driver": 11, "rear-hub.driven": 24 }), later);
 * changes; // => { "rear-hub.driven": 24 }
 * findings[0].message; // => "rear-ring.driver: the author has changed this since the link was made."
 */
export function changesFrom(link: string, build: Build): { changes: ChangeSet; findings: Finding[] } {
  const content = open(link, changesMark);
  if (typeof content !== "string") return { changes: {}, findings: [content] };
  const find = finderIn(build);
  const counts = countsOf(build);
  const findings: Finding[] = [];
  const groups = new Map<string, [string, unknown][]>();
  const refuse = (code: FindingCode, address: string, values?: FindingValues) => {
    if (findings.length < mostRefused) findings.push(finding(code, address, values));
  };
  const stale = (address: string) => refuse("change-stale", address);
  const keep = (address: string, to: unknown) => {
    const id = address.split(".")[0]!;
    groups.set(id, [...(groups.get(id) ?? []), [address, to]]);
  };

  let at = 0;
  const take = (size: number): string => content.slice(at, (at += size));
  while (at < content.length) {
    const size = valueOf(take(1));
    if (size > 0) {
      const named = counts.get(valueOf(take(4))) ?? [];
      const was = valueOf(take(3));
      const to = valueOf(take(size));
      const alike = named.filter((one) => one.value === was);
      if (alike.length === 1) keep(alike[0]!.address, to);
      else stale(named.length === 1 ? named[0]!.address : "");
    } else {
      const length = valueOf(take(4));
      const check = take(8);
      try {
        const [address, to] = JSON.parse(unpack(take(length))) as [string, unknown];
        if (find(address) && checkOf(find.value(address)) === check) keep(address, to);
        else stale(address);
      } catch {
        refuse("link-broken", "");
      }
    }
  }

  let kept: [string, unknown][] = [];
  // What cannot be carried out is found by halving; changes of one stage stay together, as a set of gears has to.
  const accept = (some: [string, unknown][][]): void => {
    const all = [...kept, ...some.flat()];
    const tried = applyChanges(build, Object.fromEntries(all));
    if (tried.ok) kept = all;
    else if (some.length > 1 && findings.length < mostRefused) {
      const half = some.length >> 1;
      accept(some.slice(0, half));
      accept(some.slice(half));
    } else {
      const why = tried.findings.find((one) => one.severity === "error")!;
      refuse("change-refused", some[0]![0]![0], { why: why.message });
    }
  };
  if (groups.size) accept([...groups.values()]);
  return { changes: Object.fromEntries(kept), findings };
}

/** The link that holds the whole build, for changes that a short link cannot carry. */
export const linkOfBuild = (build: Build): string => seal(buildMark + pack(build));

/** The build that a link holds, read and checked like any other document. Never throws. */
export function buildFromLink(link: string): Reading {
  const content = open(link, buildMark);
  if (typeof content !== "string") return refused(content);
  try {
    return readPlainly(unpack(content));
  } catch {
    return refused(finding("link-broken", ""));
  }
}
