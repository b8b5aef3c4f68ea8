import { rational } from "../exact/index.js";
import { kinds } from "../kinds/index.js";
import { Reader, step } from "./read.js";
import type { Build, Finding } from "./types.js";
import { branchesOf, spotOf, stagesOf } from "./walk.js";

const mostStages = 10_000;

/** What the shape of a build cannot show: ids, references, order, and what each kind of stage has to say. */
function checkMeaning(build: Build, reader: Reader): void {
  const error = (code: string, pointer: string, message: string) => reader.say("error", "meaning", code, pointer, message);
  const seen = new Set<string>();
  const unique = (id: string, pointer: string) => {
    if (seen.has(id)) error("id-repeated", step(pointer, "id"), `"${id}" is used twice; expected ids of their own.`);
    seen.add(id);
  };
  const stages = new Map<string, ReturnType<typeof stagesOf> extends Generator<infer P> ? P : never>();
  for (const place of stagesOf(build)) {
    const { stage, pointer } = place;
    unique(stage.id, pointer);
    stages.set(stage.id, place);
    kinds[stage.kind].check?.(stage, (severity, code, field, message) =>
      reader.say(severity, "meaning", code, step(pointer, field), message),
    );
  }
  if (stages.size > mostStages) error("too-many-stages", "/stages", `${stages.size} stages; expected ${mostStages} at the most.`);
  const outputs = build.outputs.map((output) => output.id);
  const branches = build.branches ?? [];
  branches.forEach((branch, n) => unique(branch.id, `/branches/${n}`));
  build.outputs.forEach((output, n) => unique(output.id, `/outputs/${n}`));

  const refer = (id: string | undefined, known: readonly string[], pointer: string) => {
    if (id !== undefined && !known.includes(id))
      error("missing-reference", pointer, `No "${id}"; expected one of ${known.slice(0, 8).join(", ") || "none"}.`);
  };
  const branchIds = branches.map((branch) => branch.id);
  [...build.outputs.map((one, n) => ({ one, at: `/outputs/${n}` })), ...branches.map((one, n) => ({ one, at: `/branches/${n}` }))].forEach(
    ({ one, at }) => {
      refer(one.from, branchIds, `${at}/from`);
      const path = branchesOf(build, one);
      const first = path[0];
      if (first?.from && branchIds.includes(first.from)) error("branch-loop", `${at}/from`, `"${one.from}" comes back to itself.`);
    },
  );
  build.outputs.forEach(({ wheel }, n) => {
    if (wheel && Object.keys(wheel).filter((key) => key[0] !== "x").length !== 1)
      error("wheel-unclear", `/outputs/${n}/wheel`, "Expected one of diameter, loadedDiameter and travel.");
  });
  Object.keys(build.centre?.share ?? {}).forEach((id) => refer(id, outputs, step("/centre/share", id)));
  refer(build.target?.output, outputs, "/target/output");
  if (build.target && rational(build.target.from).compare(build.target.to) > 0)
    error("range-backwards", "/target", `${build.target.from} to ${build.target.to}; expected the smaller first.`);
  refer(build.compare?.of, outputs, "/compare/of");
  refer(build.compare?.with, outputs, "/compare/with");
  refer(build.headline, outputs, "/headline");
  build.modes?.forEach((mode, n) => {
    for (const [id, position] of Object.entries(mode.positions)) {
      const stage = stages.get(id)?.stage;
      const known = stage?.kind === "selectable" ? stage.positions.map((one) => one.id) : [];
      refer(position, known, step(`/modes/${n}/positions`, id));
    }
  });
  build.mounts?.forEach((mount, n) => refer(mount.stage, [...stages.keys()], `/mounts/${n}/stage`));
  build.measurements?.forEach((one, n) => refer(one.what, outputs, `/measurements/${n}/what`));
  for (const key of ["modes", "alternatives"] as const) {
    const ids = build[key]?.map((one) => one.id) ?? [];
    if (new Set(ids).size < ids.length) error("id-repeated", `/${key}`, "Two of them have one id.");
  }
  build.alternatives?.forEach(({ changes }, n) => {
    for (const address in changes)
      if (!spotOf(build, address)) error("missing-address", step(`/alternatives/${n}/changes`, address), `Nothing is at ${address}.`);
  });
}

/**
 * Checks plain data against the shape and the meaning of a build.
 *
 * @returns `build`, a copy, exactly when no finding is an error.
 */
export function checkBuild(data: unknown): { build?: Build; findings: Finding[] } {
  const reader = new Reader();
  const { findings } = reader;
  const format = (data as Build | null | undefined)?.format as string | undefined;
  if (typeof format === "string" && /^meshwright-build\/\d/.test(format) && !/^meshwright-build\/1(\.0)?$/.test(format)) {
    const newer = /^meshwright-build\/1\.\d+$/.test(format);
    reader.say("error", "meaning", "newer-format", "/format", `Written for ${format.slice(0, 40)}; this reads meshwright-build/1${newer ? ".0" : ""}.`);
    return { findings };
  }
  const copy = reader.read("build", data, "") as Build | undefined;
  const failed = () => findings.some((one) => one.severity === "error");
  if (failed()) return { findings };
  const build: Build = { ...copy!, stages: copy!.stages ?? [] };
  checkMeaning(build, reader);
  return failed() ? { findings } : { build, findings };
}
