import { inners, type Position, type Stage } from "../stages/index.js";
import { pointerTo } from "./pointer.js";
import { shapes } from "./shapes.js";
import type { Branch, Build, Output } from "./types.js";

/** Where a stage stands: in which list, at which place. */
export interface Place {
  readonly stage: Stage;
  readonly list: readonly Stage[];
  readonly index: number;
  readonly pointer: string;
}

/** Goes through a list and the stages inside its stages, until `see` has seen enough; says whether it has. */
function through(list: readonly Stage[], pointer: string, see: (place: Place) => boolean): boolean {
  // A draft may hold anything in the place of a list: then there is nothing to see.
  for (let index = 0; index < list.length; index++) {
    const stage = list[index]!;
    const at = `${pointer}/${index}`;
    if (see({ stage, list, index, pointer: at })) return true;
    const inside = inners[stage.kind]?.positions(stage) as readonly Position<Stage>[] | undefined;
    if (inside?.some(({ stages }, n) => stages && through(stages, `${at}/positions/${n}/stages`, see))) return true;
  }
  return false;
}

/** Goes through every stage of a build, from the motor outwards, until `see` has seen enough. */
const throughAll = (build: Build, see: (place: Place) => boolean): boolean =>
  through(build.stages, "/stages", see) ||
  !!build.branches?.some(({ stages }, n) => through(stages, `/branches/${n}/stages`, see)) ||
  build.outputs.some(({ stages }, n) => through(stages, `/outputs/${n}/stages`, see));

/** Every stage of a build with its place, those inside positions too, from the motor outwards. */
export function stagesOf(build: Build): readonly Place[] {
  const places: Place[] = [];
  throughAll(build, (place) => {
    places.push(place);
    return false;
  });
  return places;
}

/** The branches that drive an output, from the split outwards. */
export const branchesOf = (build: Build, end: Output | Branch): readonly Branch[] => {
  if (!end.from) return [];
  const path: Branch[] = [];
  const byId = new Map(build.branches?.map((branch) => [branch.id, branch]));
  // A branch taken out of the table cannot come again: what loops has an end.
  for (let from: string | undefined = end.from; from;) {
    const branch = byId.get(from);
    byId.delete(from);
    if (branch) path.push(branch);
    from = branch?.from;
  }
  return path.reverse();
};

/** The lists of stages between an output's motor and its wheel, in the order of drive. */
export const pathTo = (build: Build, output: Output): readonly (readonly Stage[])[] =>
  output.motor
    ? [output.stages]
    : [build.stages, ...branchesOf(build, output).map((branch) => branch.stages), output.stages];

/** What a stage stands for when its mode or its own selection is looked at: itself, the stages inside, or nothing driven. */
export const innerOf = (
  stage: Stage,
  positions?: Readonly<Record<string, string>>,
): readonly Stage[] | "free" | "held" | undefined =>
  inners[stage.kind]?.at(stage, positions?.[stage.id]) as readonly Stage[] | "free" | "held" | undefined;

/** An address taken apart: the object or list that holds the value, and its key there. */
export interface Spot {
  readonly holder: Record<string | number, unknown>;
  readonly key: string | number;
  readonly pointer: string;
  /** The stage that it belongs to, if it does. */
  readonly stage?: Stage | undefined;
}

/** Where every id stands, and every key of the document itself. Ids come before keys, stages before outputs and branches. */
export function placesOf(build: Build): Map<string, Spot> {
  const places = new Map<string, Spot>();
  const add = (id: string, holder: object, key: string | number, pointer: string, stage?: Stage) =>
    places.set(id, { holder: holder as Spot["holder"], key, pointer, stage });
  for (const key of Object.keys(build)) add(key, build, key, pointerTo("", key));
  for (const key of ["branches", "outputs"] as const)
    build[key]?.forEach(({ id }, index, list) => add(id, list, index, `/${key}/${index}`));
  for (const { stage, list, index, pointer } of stagesOf(build)) add(stage.id, list, index, pointer, stage);
  return places;
}

const own = (holder: object, key: string | number): boolean => Object.hasOwn(holder, key);

/** Where an address points to, if anywhere, and the value there. */
export interface Finder {
  (address: string): Spot | undefined;
  value(address: string): unknown;
}

/** A spot inside another: its pointer is made when somebody asks. */
class InnerSpot implements Spot {
  readonly holder: Spot["holder"];
  readonly key: string;
  readonly stage: Stage | undefined;
  readonly #outer: Spot;

  constructor(outer: Spot, holder: object, key: string) {
    this.holder = holder as Spot["holder"];
    this.key = key;
    this.stage = outer.stage;
    this.#outer = outer;
  }

  get pointer(): string {
    return pointerTo(this.#outer.pointer, this.key);
  }
}

/** Finds addresses in a build from where their ids stand. */
function finderFrom(build: Build, placeOf: (id: string) => Spot | undefined): Finder {
  const find = (address: string): Spot | undefined => {
    const [id, ...keys] = address.split(".");
    let spot = placeOf(id!);
    // A field of the document that is not there yet can be set.
    if (!spot && own(shapes.build!, id!)) spot = { holder: build as never, key: id!, pointer: `/${id!}` };
    for (const key of keys.length < 3 ? keys : [""]) {
      const holder: unknown = spot && own(spot.holder, spot.key) ? spot.holder[spot.key] : undefined;
      if (typeof holder !== "object" || holder === null || !/^\w[\w-]*$/.test(key) || key === "__proto__")
        return undefined;
      if (Array.isArray(holder) && !(/^\d{1,5}$/.test(key) && +key < holder.length)) return undefined;
      spot = new InnerSpot(spot!, holder, key);
    }
    return spot;
  };
  const value = (address: string): unknown => {
    const spot = find(address);
    return spot && own(spot.holder, spot.key) ? spot.holder[spot.key] : undefined;
  };
  return Object.assign(find, { value });
}

/** Finds many addresses in one build, as it was when this was called. */
export function finderIn(build: Build): Finder {
  const places = placesOf(build);
  return finderFrom(build, (id) => places.get(id));
}

/** What `placesOf` has for one id, without a table of all of them. */
function placeOf(build: Build, id: string): Spot | undefined {
  let found: Place | undefined;
  throughAll(build, (place) => {
    if (place.stage.id === id) found = place;
    return !!found;
  });
  if (found) return { holder: found.list as never, key: found.index, pointer: found.pointer, stage: found.stage };
  for (const key of ["outputs", "branches"] as const) {
    const index = build[key]?.findIndex((one) => one.id === id) ?? -1;
    if (index >= 0) return { holder: build[key] as never, key: index, pointer: `/${key}/${index}` };
  }
  return own(build, id) ? { holder: build as never, key: id, pointer: pointerTo("", id) } : undefined;
}

/** Finds one address in a build, without looking at all of them. */
export const oneIn = (build: Build): Finder => finderFrom(build, (id) => placeOf(build, id));

/** Where `id`, `id.field` or `id.field.n` points to in a build, if anywhere. */
export const spotOf = (build: Build, address: string): Spot | undefined => oneIn(build)(address);

/** The value at an address; undefined where there is none. */
export const valueAt = (build: Build, address: string): unknown => oneIn(build).value(address);
