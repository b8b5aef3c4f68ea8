import { readUnfinished } from "@meshwright/calc/document";
import { freeId, type Build, type Change, type Output } from "@meshwright/calc/drivetrain";
import type { Finding, Stage } from "@meshwright/calc/stages";
import type { Assembly, Notebook } from "./notebook.js";
import type { Session } from "./session.js";
import { totalsText, withoutAxle } from "./start.js";

// Axles come off whole, lie on the shelf with their counts and tyre, and are put on again: one edit each.

const nameOf = ({ label, id }: Output): string => label ?? id;

/** A name that no other assembly has: "Front axle", "Front axle (2)". */
function freeName(plain: string, { assemblies = [] }: Pick<Notebook, "assemblies">): string {
  const taken = new Set(assemblies.map(({ name }) => name));
  for (let n = 1; ; n++) {
    const name = n === 1 ? plain : `${plain} (${n})`;
    if (!taken.has(name)) return name;
  }
}

/** An axle as it lies on the shelf. */
function taken(session: Session, output: Output): Assembly {
  const name = freeName(`${nameOf(output)} axle`, session.notebook);
  const { from: _, motor: _motor, ...axle } = output;
  return { name, date: session.today, axle };
}

/** Stages with ids that nothing in the drivetrain has. */
function freed(stages: readonly Stage[], build: Build, taken: Set<string>): readonly Stage[] {
  const ids = idsIn(build);
  return stages.map((stage) => {
    const isFree = !taken.has(stage.id) && !ids.has(stage.id);
    const id = isFree ? stage.id : freeId(stage.kind, [build], (one) => taken.has(one));
    taken.add(id);
    const { fitted: _, ...bare } = stage;
    if (!("positions" in bare) || !Array.isArray(bare.positions)) return { ...bare, id } as Stage;
    const positions = (bare.positions as { stages?: readonly Stage[] }[]).map((position) =>
      position.stages ? { ...position, stages: freed(position.stages, build, taken) } : position,
    );
    return { ...bare, id, positions } as unknown as Stage;
  });
}

/** Every id of a drivetrain. */
function idsIn(build: Build): ReadonlySet<string> {
  const found = new Set<string>();
  const look = (value: unknown): void => {
    if (Array.isArray(value)) value.forEach(look);
    else if (typeof value === "object" && value !== null)
      for (const [key, one] of Object.entries(value))
        if (key === "id" && typeof one === "string") found.add(one);
        else look(one);
  };
  look(build);
  return found;
}

/** Takes an axle off; it lies on the shelf. */
export function takeOff(session: Session, id: string): readonly Finding[] {
  const build = session.build!;
  const output = build.outputs.find((one) => one.id === id)!;
  const assembly = taken(session, output);
  const assemblies = [...(session.notebook.assemblies ?? []), assembly];
  return session.change(withoutAxle(build, id), `${nameOf(output)} taken off`, { assemblies });
}

/** Takes an axle off and puts an assembly on in its place: one edit, and the old one lies on the shelf. */
export function swapFor(session: Session, id: string, name: string): readonly Finding[] {
  const build = session.build!;
  const output = build.outputs.find((one) => one.id === id)!;
  const { assemblies = [] } = session.notebook;
  const chosen = assemblies.find((one) => one.name === name);
  if (!chosen) return [];
  const bare: Build = { ...build, outputs: build.outputs.map((one) => (one.id === id ? { ...one, stages: [] } : one)) };
  const { stages, wheel, wheels, axle } = chosen.axle;
  const { wheel: _w, wheels: _n, axle: _a, ...rest } = output;
  const next: Output = {
    ...rest,
    stages: freed(stages, bare, new Set()),
    ...(wheel && { wheel }),
    ...(wheels !== undefined && { wheels }),
    ...(axle && { axle }),
  };
  const left = [...assemblies.filter((one) => one !== chosen), taken(session, output)];
  const outputs = build.outputs.map((one) => (one.id === id ? next : one));
  return session.change([{ set: "outputs", to: outputs }], `${nameOf(output)}: ${name} put on`, { assemblies: left });
}

/** Puts an assembly on as one more axle. */
export function putOn(session: Session, name: string): readonly Finding[] {
  const build = session.build!;
  const { assemblies = [] } = session.notebook;
  const chosen = assemblies.find((one) => one.name === name);
  if (!chosen) return [];
  const ids = idsIn(build);
  const id = ids.has(chosen.axle.id) ? freeId("axle", [build]) : chosen.axle.id;
  const output: Output = { ...chosen.axle, id, stages: freed(chosen.axle.stages, build, new Set([id])) };
  const left = assemblies.filter((one) => one !== chosen);
  const changes: readonly Change[] = [{ set: "outputs", to: [...build.outputs, output] }];
  return session.change(changes, `${name} put on`, { assemblies: left.length ? left : undefined });
}

/** What an assembly comes to alone. */
export function assemblyText({ axle }: Assembly): string {
  const reading = readUnfinished({ format: "meshwright-build/1", stages: [], outputs: [axle] });
  return reading.ok ? totalsText(reading.build) : "";
}
