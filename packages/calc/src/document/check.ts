import { rational } from "../exact/index.js";
import { checks, errorOf, inners, type FindingCode, type FindingValues, type Say } from "../stages/index.js";
import { nearestTo } from "./nearest.js";
import { refused, type Reading } from "./reading.js";
import { Reader } from "./read.js";
import {
  type Branch,
  type Build,
  type Output,
  markRead,
  step,
  branchesOf,
  finderIn,
  stagesOf,
  type Finder,
} from "../drivetrain/index.js";

const mostStages = 10_000;

type Named = readonly { readonly id: string }[] | undefined;
const idsOf = (list: Named): string[] => list?.map((one) => one.id) ?? [];

/** What the shape of a build cannot show: ids, references, order, and what each kind of stage has to say. */
function checkMeaning(build: Build, reader: Reader): void {
  const { outputs, branches = [], modes = [], alternatives = [], target } = build;
  const bad = (code: FindingCode, at: string, values: FindingValues) =>
    reader.say("error", "meaning", code, at, values);
  const unique = (ids: readonly string[], pointer: (n: number) => string) =>
    ids.forEach((id, n) => {
      if (ids.indexOf(id) < n) bad("id-repeated", step(pointer(n), "id"), { id });
    });
  const refer = (id: string | undefined, known: readonly string[], pointer: string) => {
    if (id !== undefined && !known.includes(id))
      bad("missing-reference", pointer, { id, known, nearest: nearestTo(id, known) });
  };

  const places = stagesOf(build);
  if (places.length > mostStages) return bad("too-many-stages", "/stages", { found: places.length, most: mostStages });
  const seen = new Set<string>();
  const name = (id: string, pointer: string) => {
    if (seen.has(id)) bad("id-repeated", step(pointer, "id"), { id });
    seen.add(id);
  };
  let at = "";
  const say: Say = (severity, code, field, values) => reader.say(severity, "meaning", code, step(at, field), values);
  for (const { stage, pointer } of places) {
    at = pointer;
    name(stage.id, pointer);
    checks[stage.kind](stage, say);
  }
  const ends: { end: Branch | Output; pointer: string }[] = [
    ...branches.map((end, n) => ({ end, pointer: `/branches/${n}` })),
    ...outputs.map((end, n) => ({ end, pointer: `/outputs/${n}` })),
  ];
  for (const { end, pointer } of ends) name(end.id, pointer);
  unique(idsOf(modes), (n) => `/modes/${n}`);
  unique(idsOf(alternatives), (n) => `/alternatives/${n}`);

  for (const { end, pointer } of ends) {
    refer(end.from, idsOf(branches), `${pointer}/from`);
    const first = branchesOf(build, end)[0];
    if (first?.from && branches.some((branch) => branch.id === first.from))
      bad("branch-loop", `${pointer}/from`, { id: end.from });
    const wheel = Object.keys(("wheel" in end && end.wheel) || { none: 1 }).filter((key) => key[1] !== "-");
    if (wheel.length !== 1) bad("wheel-unclear", `${pointer}/wheel`, {});
  }
  const ids = idsOf(outputs);
  refer(target?.output, ids, "/target/output");
  refer(build.compare?.of, ids, "/compare/of");
  refer(build.compare?.with, ids, "/compare/with");
  refer(build.headline, ids, "/headline");
  for (const id in build.centre?.share) refer(id, ids, `/centre/share/${id}`);
  build.measurements?.forEach((one, n) => refer(one.what, ids, `/measurements/${n}/what`));
  let finder: Finder | undefined;
  const find = (address: string) => (finder ??= finderIn(build))(address);
  build.mounts?.forEach((one, n) =>
    refer(
      one.stage,
      idsOf(find(one.stage)?.stage ? [{ id: one.stage }] : places.map((place) => place.stage)),
      `/mounts/${n}/stage`,
    ),
  );
  modes.forEach(({ positions }, n) => {
    for (const id in positions) {
      const stage = find(id)?.stage;
      refer(positions[id], stage ? idsOf(inners[stage.kind]?.positions(stage)) : [], `/modes/${n}/positions/${id}`);
    }
  });
  alternatives.forEach(({ changes }, n) => {
    for (const address in changes)
      if (!find(address)) bad("missing-address", `/alternatives/${n}/changes/${address}`, { address });
  });
  if (target && rational(target.from).compare(target.to) > 0)
    bad("range-backwards", "/target", { from: target.from, to: target.to });
}

/**
 * Checks plain data against the shape and the meaning of a build. At most a hundred findings, an error always among them
 * where there is one.
 */
export function checkBuild(data: unknown): Reading {
  const reader = new Reader();
  const { findings } = reader;
  const format = (data as Build | null | undefined)?.format as unknown;
  if (typeof format === "string" && /^meshwright-build\/(?!1(\.0)?$)\d/.test(format))
    return refused(
      errorOf("shape", "newer-format", "/format", { found: format.slice(0, 40), expected: "meshwright-build/1.0" }),
    );
  const copy = reader.read(data) as Build | undefined;
  if (reader.failed) return refused(...findings);
  const build: Build = { ...copy!, stages: copy!.stages ?? [] };
  checkMeaning(build, reader);
  return reader.failed ? refused(...findings) : { ok: true, build: markRead(build), findings };
}
