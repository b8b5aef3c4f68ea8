import { axleAttributeOf, buildFromAttributes, sealOf } from "@meshwright/calc/document";
import { stagesOf, type Build, type Output } from "@meshwright/calc/drivetrain";
import { notations, stageShapes, type Stage } from "@meshwright/calc/stages";

/** A drivetrain as attributes, and the ids that its stages and axles have there. */
export interface Written {
  readonly attributes: Readonly<Record<string, string>>;
  readonly build: Build;
  readonly ids: ReadonlyMap<string, string>;
}

const plainLabel = (label: string): string => label.replace(/[;:,]/g, " ").replace(/\s+/g, " ").trim();

/** A stage as the notation writes it; nothing where the notation has no words for it. */
function stageText(stage: Stage): string | undefined {
  const notation = notations[stage.kind];
  if (!notation || ("positions" in stage && stage.positions)) return undefined;
  const counts = notation.write(stage);
  const said = { kind: stage.kind, id: stage.id, label: stage.label, ...notation.parse(counts) };
  const more = Object.entries(stage).flatMap(([name, value]) => {
    if (name in said || name === "fitted" || value === undefined) return [];
    const shape = (stageShapes[stage.kind] as Record<string, string>)[name];
    if (value === true) return [name];
    if (value === false) return [`${name} not`];
    if (typeof value !== "string" && typeof value !== "number") return [undefined];
    if (/[,;]/.test(String(value))) return [undefined];
    if (shape?.includes("|") && String(value).includes(" ")) return [undefined];
    return [`${name} ${String(value)}`];
  });
  if (more.includes(undefined)) return undefined;
  const label = stage.label && plainLabel(stage.label);
  return `${label ? `${label}: ` : ""}${[counts, ...more].join(", ")}`;
}

function wheelText({ wheel }: Output): string | undefined {
  if (!wheel) return undefined;
  if (wheel.travel) return `${String(wheel.travel.turns)} turns ${wheel.travel.length}`;
  return wheel.loadedDiameter ? `${wheel.loadedDiameter}, under weight` : wheel.diameter;
}

/**
 * A drivetrain as attributes, for editors that let nothing else through; nothing where it holds more than attributes can say
 * that changes a figure. What is left out: parts, notes, alternatives.
 */
export function writtenAs(build: Build): Written | undefined {
  const { stages, outputs, branches, modes, motor, battery, controller, centre, target, compare } = build;
  if (branches?.length || modes?.length || outputs.some((output) => output.from || output.motor)) return undefined;
  const attributes: Record<string, string> = {};
  const ids = new Map<string, string>();
  const list = (all: readonly Stage[]): string | undefined => {
    const texts = all.map(stageText);
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
      `${battery.cells} ${battery.cells === 1 ? "cell" : "cells"}${battery.chemistry ? ` ${battery.chemistry}` : ""}${battery.parallel && battery.parallel > 1 ? `, ${battery.parallel} parallel` : ""}`,
  );
  say("controller", controller?.maxVolts !== undefined && `${String(controller.maxVolts)} V`);
  if (centre?.kind === "differential")
    attributes.centre = centre.share
      ? `differential: ${Object.entries(centre.share)
          .map(([id, part]) => `${id} ${String(part)}`)
          .join(", ")}`
      : "differential";
  const mounts = (build.mounts ?? []).flatMap((mount) => {
    const label = stagesOf(build).find(({ stage }) => stage.id === mount.stage)?.stage.label;
    if (!label) return [];
    const name = plainLabel(label);
    if (mount.knownPair)
      return [
        `${name}: known pair ${mount.knownPair.join(" to ")}${mount.closer ? `, closer ${mount.closer}` : ""}${mount.farther ? `, farther ${mount.farther}` : ""}`,
      ];
    return mount.from && mount.to ? [`${name}: ${mount.from} to ${mount.to}`] : [];
  });
  say("mount", mounts.join("; "));
  const read = buildFromAttributes(attributes);
  if (!read.ok) return undefined;
  const [ours, theirs] = [stagesOf(build), stagesOf(read.build)];
  if (ours.length !== theirs.length) return undefined;
  ours.forEach(({ stage }, n) => ids.set(stage.id, theirs[n]!.stage.id));
  outputs.forEach(({ id }, n) => ids.set(id, read.build.outputs[n]?.id ?? id));
  return { attributes: { ...attributes, seal: sealOf(attributes) }, build: read.build, ids };
}
