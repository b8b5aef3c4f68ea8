import { axleAttributeOf, buildFromAttributes, readUnfinished, sealOf } from "@meshwright/calc/document";
import { stagesOf, type Build, type Mount, type Output } from "@meshwright/calc/drivetrain";
import { notations, type Stage } from "@meshwright/calc/stages";

/** A drivetrain as attributes, and the ids that its stages and axles have there. */
export interface Written {
  readonly attributes: Readonly<Record<string, string>>;
  readonly build: Build;
  readonly ids: ReadonlyMap<string, string>;
}

type Ids = ReadonlyMap<string, string>;
type Data = Readonly<Record<string, unknown>>;

/** Further fields of a stage or mount, each by its name; undefined among them where the notation has no words for one. */
const fieldTexts = (fields: Data): readonly (string | undefined)[] =>
  Object.entries(fields).flatMap(([name, value]) => {
    if (value === undefined) return [];
    if (value === true) return [name];
    if (value === false) return [`${name} not`];
    if ((typeof value !== "string" && typeof value !== "number") || /[,;]/.test(String(value))) return [undefined];
    return [`${name} ${String(value)}`];
  });

/** A stage as the notation writes it; nothing where the notation has no words for it. */
function stageText(stage: Stage, ids: Ids | undefined): string | undefined {
  const notation = notations[stage.kind];
  if (!notation) return undefined;
  const { fitted: _, ...own } = stage as Stage & { readonly sameAs?: string };
  const counts = notation.write(stage);
  const said = { kind: stage.kind, id: stage.id, label: stage.label, ...notation.parse(counts) };
  const fields = Object.fromEntries(Object.entries(own).filter(([name]) => !(name in said)));
  // What it names has its id there once all stages are read.
  if (own.sameAs !== undefined) fields.sameAs = ids?.get(own.sameAs);
  const more = fieldTexts(fields);
  if (more.includes(undefined)) return undefined;
  return `${stage.label ? `${stage.label}: ` : ""}${[counts, ...more].join(", ")}`;
}

/** How a pair is mounted, as the notation writes it; nothing where it has no words for it. */
function mountText({ stage, knownPair, from, to, ...more }: Mount, name: string): string | undefined {
  const ends = knownPair ? `known pair ${knownPair.join(" to ")}` : from && to && `${from} to ${to}`;
  const fields = fieldTexts({ ...(knownPair && { from, to }), ...more });
  return ends && !fields.includes(undefined) ? `${name}: ${[ends, ...fields].join(", ")}` : undefined;
}

function wheelText({ wheel }: Output): string | undefined {
  if (!wheel) return undefined;
  if (wheel.travel) return `${String(wheel.travel.turns)} turns ${wheel.travel.length}`;
  return wheel.loadedDiameter ? `${wheel.loadedDiameter}, under weight` : wheel.diameter;
}

/**
 * The attributes of a drivetrain, as far as there are words; nothing where a part of it has none.
 *
 * @param ids the ids that its stages have there, once that is known: before, nothing names a stage
 */
function attributesOf(build: Build, ids?: Ids): Record<string, string> | undefined {
  const { stages, outputs, motor, battery, controller, centre, target, compare } = build;
  const attributes: Record<string, string> = {};
  const list = (all: readonly Stage[]): string | undefined => {
    const texts = all.map((stage) => stageText(stage, ids));
    return texts.includes(undefined) ? undefined : texts.join("; ");
  };
  const shared = list(stages);
  if (shared === undefined) return undefined;
  attributes.stages = shared;
  for (const output of outputs) {
    const name =
      axleAttributeOf(output.id)?.axle === output.id && !axleAttributeOf(output.id)?.part
        ? output.id
        : `axle-${output.id}`;
    const own = list(output.stages);
    if (own === undefined || axleAttributeOf(name)?.part) return undefined;
    attributes[name] = own;
    const wheel = wheelText(output);
    if (wheel) attributes[`${name}-wheel`] = wheel;
  }
  const say = (name: string, text: string | undefined | false): void => {
    if (text) attributes[name] = text;
  };
  say("title", build.title);
  say(
    "target",
    target && `${String(target.from)} to ${String(target.to)}${target.output ? ` at ${target.output}` : ""}`,
  );
  say("compare", compare && `${compare.of} with ${compare.with}`);
  say("wheelbase", build.wheelbase);
  say("headline", build.headline);
  say("lengths", build.lengths);
  say(
    "motor",
    motor?.kv !== undefined &&
      [
        `${String(motor.kv)} kv`,
        motor.maxRpm !== undefined && `${String(motor.maxRpm)} rpm at most`,
        motor.maxVolts !== undefined && `${String(motor.maxVolts)} V at most`,
      ]
        .filter(Boolean)
        .join(", "),
  );
  say(
    "battery",
    battery?.cells !== undefined &&
      `${battery.cells} ${battery.cells === 1 ? "cell" : "cells"}${battery.chemistry ? ` ${battery.chemistry}` : ""}${battery.parallel !== undefined ? `, ${battery.parallel} parallel` : ""}`,
  );
  say("controller", controller?.maxVolts !== undefined && `${String(controller.maxVolts)} V`);
  const share = Object.entries(centre?.share ?? {}).map(([id, part]) => `${id} ${String(part)}`);
  say("centre", centre && `${centre.kind}${share.length ? `: ${share.join(", ")}` : ""}`);
  const all = stagesOf(build).map(({ stage }) => stage);
  const names = all.flatMap(({ id, label }) => [ids?.get(id), label]).map((name) => name?.toLowerCase());
  const mounts = (ids ? (build.mounts ?? []) : []).map((mount) => {
    const { label } = all.find(({ id }) => id === mount.stage) ?? {};
    // A label that is another's as well, or another's id, is no name.
    const isOne = label && names.filter((name) => name === label.toLowerCase()).length === 1;
    return mountText(mount, isOne ? label : (ids!.get(mount.stage) ?? mount.stage));
  });
  if (mounts.includes(undefined)) return undefined;
  say("mount", mounts.join("; "));
  return attributes;
}

/** What attributes leave out: it changes no figure that does not ask for it. */
const leftOut: ReadonlySet<string> = new Set([
  ...["parts", "fitted", "note", "alternatives", "revision", "revisions", "references", "measurements"],
]);

/** What means the same where it is not said. */
const usual: Readonly<Record<string, unknown>> = {
  wheels: 2,
  rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
};
const usualRounding: Readonly<Record<string, unknown>> = {
  roundingMode: "halfExpand",
  roundingIncrement: 1,
  trailingZeroDisplay: "auto",
};

/** A value as a text that is the same for whatever means the same: scalars by their texts, and no order of names. */
function meaningOf(value: unknown): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(String(value));
  if (Array.isArray(value)) return `[${value.map(meaningOf).join()}]`;
  const entries = Object.entries(value)
    .filter(([name, one]) => one !== undefined && !leftOut.has(name))
    .map(([name, one]) => [name, meaningOf(one)] as const)
    .filter(([name, text]) => !Object.hasOwn(usual, name) || text !== meaningOf(usual[name]));
  return `{${entries
    .sort(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, text]) => `${name}:${text}`)
    .join()}}`;
}

const withoutUsual = (fields: object | undefined, of: Data): Data | undefined =>
  fields && Object.fromEntries(Object.entries(fields).filter(([name, value]) => String(value) !== String(of[name])));

/** All that a drivetrain says and attributes have to say too, in the ids that it has there. */
function sayings(build: Build, ids?: Ids): string {
  const there = (id: string): string => ids?.get(id) ?? id;
  const stagesThere = (stages: readonly Stage[]): readonly object[] =>
    stages.map((stage) => {
      const { sameAs } = stage as { readonly sameAs?: string };
      return { ...stage, id: there(stage.id), ...(sameAs !== undefined && { sameAs: there(sameAs) }) };
    });
  const { format: _format, rounding, mounts, outputs, stages, ...rest } = build;
  return meaningOf({
    ...rest,
    stages: stagesThere(stages),
    // An axle is called by its id there: where a figure or a block of the post calls it otherwise, that is seen when they are compared.
    outputs: outputs.map(({ label: _, ...output }) => ({
      ...output,
      stages: stagesThere(output.stages),
    })),
    ...(mounts?.length && { mounts: mounts.map((mount) => ({ ...mount, stage: there(mount.stage) })) }),
    ...(rounding && { rounding: withoutUsual(rounding, usualRounding) }),
  });
}

/**
 * A drivetrain as attributes, for editors that let nothing else through: where what is read back from them is all that it says, but
 * for the names of axles, parts and what is fitted, notes, alternatives, revisions, references and measurements; else nothing.
 */
export function writtenAs(build: Build): Written | undefined {
  const first = attributesOf(build);
  const known = first && buildFromAttributes(first);
  if (!known?.ok) return undefined;
  const [ours, theirs] = [stagesOf(build), stagesOf(known.build)];
  const ids = new Map(ours.map(({ stage }, n) => [stage.id, theirs[n]?.stage.id ?? stage.id]));
  const attributes = attributesOf(build, ids);
  if (!attributes) return undefined;
  const read = buildFromAttributes(attributes);
  if (!read.ok || sayings(build, ids) !== sayings(read.build)) return undefined;
  return { attributes: { ...attributes, seal: sealOf(attributes) }, build: read.build, ids };
}

/** One address, or several ids, in other ids: each begins with one. */
export const renamed = (asked: string, ids: Ids): string =>
  asked.replace(/[^\s,]+/g, (address) => address.replace(/^[^.]+/, (id) => ids.get(id) ?? id));

/**
 * Whether a drivetrain that came with a post is that of a notebook: then the notebook's ids by those that it has there.
 *
 * @param seal of its attributes, where it came as such
 */
export function idsOf(here: Build, there: Build, seal: string | null): Ids | undefined {
  const written = seal === null ? undefined : writtenAs(here);
  if (written?.attributes.seal === seal) return new Map([...written!.ids].map(([own, other]) => [other, own]));
  const same = sayings(withoutParts(here) ?? here) === sayings(withoutParts(there) ?? there);
  return same ? new Map() : undefined;
}

const bare = new WeakMap<Build, { readonly build: Build | undefined }>();

/** A drivetrain without its parts, and what is fitted of them; nothing where it can be none without. */
export function withoutParts(build: Build): Build | undefined {
  let known = bare.get(build);
  if (!known) {
    const { parts: _, ...rest } = build;
    const reading = readUnfinished(
      JSON.stringify(rest, (name, value: unknown) => (name === "fitted" ? undefined : value)),
    );
    bare.set(build, (known = { build: reading.ok ? reading.build : undefined }));
  }
  return known.build;
}
