import { freeId, stageShape, type Build, type Change, type Finder } from "../drivetrain/index.js";
import { inners, stageShapes, type Stage, type StageKind } from "../stages/index.js";
import { listOf } from "./carry.js";
import { checkOfOrder, checkOfStage, fieldsOf, idsIn, stageFieldsOf } from "./link-values.js";
import { sameValue } from "./same.js";

// Changes of structure in a link: kinds, places and numbers. The author's stages go by their ids, new ones by how many new
// ones came before: who opens the link gives them ids of their own, and no names.

/** So many changes of structure, and new stages, are far beyond what a reader makes. */
export const mostStructure = 200;

/** A stage's reference: the author's by id, a new one by its number. */
type Reference = string | number;
/** A list of stages: the shared ones, an axle's or shaft's, a position's; of a new stage, its number and the position's. */
type Place = null | string | readonly [stage: number, position: number];
interface PackedPosition {
  readonly id?: string;
  readonly stages?: readonly PackedStage[];
  readonly released?: string;
}
interface PackedStage {
  readonly id?: string;
  readonly kind: string;
  readonly positions?: readonly PackedPosition[];
  /** By its place among them. */
  readonly selected?: number;
  readonly [field: string]: unknown;
}
export type PackedChange =
  | readonly ["insert", into: Place, at: number, stage: PackedStage, check: string]
  | readonly ["move", stage: Reference, into: Place | 0, at: number, check: string]
  | readonly ["remove", stage: Reference, check: string];

const positionsOf = (stage: Stage | undefined) =>
  (stage && (inners[stage.kind]?.positions(stage) as readonly { id: string; stages?: Stage[]; released?: string }[])) ??
  [];

/** Writes changes of one author's build. */
export class StagePacker {
  readonly #find: Finder;
  readonly #build: Build;
  readonly #ids: ReadonlySet<string>;
  readonly #made: Stage[] = [];

  constructor(build: Build, find: Finder) {
    this.#build = build;
    this.#find = find;
    this.#ids = idsIn(build);
  }

  /** How many new stages there were. */
  get size(): number {
    return this.#made.length;
  }

  /** A stage without words. What is the author's keeps its id. */
  stage(stage: Stage): PackedStage {
    const own = this.#find(stage.id)?.stage;
    if (!own) this.#made.push(stage);
    const known = positionsOf(own).map(({ id }) => id);
    const places = positionsOf(stage);
    return {
      ...this.#alone(stage),
      ...("positions" in stage && {
        positions: places.map(({ id, stages, released }) => ({
          ...(known.includes(id) && { id }),
          ...(stages && { stages: stages.map((one) => this.stage(one)) }),
          ...(released && { released }),
        })),
        selected: places.findIndex(({ id }) => id === stage.selected),
      }),
    };
  }

  /** A stage without those of its positions. */
  #alone(stage: Stage): PackedStage {
    const { id, kind } = stage;
    const besides = stageFieldsOf(kind).flatMap((field) => {
      const stages = (stage as unknown as Record<string, readonly Stage[] | undefined>)[field];
      return stages ? [[field, stages.map((one) => this.#alone(one))] as const] : [];
    });
    const isAuthors = !!this.#find(id)?.stage;
    return { ...(isAuthors && { id }), kind, ...fieldsOf(stage, this.#ids), ...Object.fromEntries(besides) };
  }

  change(change: Change): PackedChange | undefined {
    if ("insert" in change) {
      const { insert, into, at } = change;
      return ["insert", this.#place(into), at, this.stage(insert), checkOfOrder(this.#list(into))];
    }
    if ("remove" in change) {
      const own = this.#find(change.remove)?.stage;
      return ["remove", this.#reference(change.remove), own ? checkOfStage(own) : ""];
    }
    if (!("move" in change)) return undefined;
    const { move, into, at } = change;
    const lists = [this.#home(move), into === undefined ? [] : this.#list(into)];
    return ["move", this.#reference(move), into === undefined ? 0 : this.#place(into), at, checkOfOrder(...lists)];
  }

  #number(id: string): number {
    return this.#made.findIndex((stage) => stage.id === id);
  }

  #reference(id: string): Reference {
    const number = this.#number(id);
    return number < 0 ? id : number;
  }

  #place(into: string | undefined): Place {
    const [id, position] = (into ?? "").split(".") as [string, string?];
    const number = position === undefined ? -1 : this.#number(id);
    if (number < 0) return into ?? null;
    return [number, positionsOf(this.#made[number]).findIndex((one) => one.id === position)];
  }

  /** A list as the author has it. */
  #list(into: string | undefined): readonly Stage[] {
    return listOf(this.#build, this.#find, into) ?? [];
  }

  #home(id: string): readonly Stage[] {
    const spot = this.#find(id);
    return spot?.stage ? (spot.holder as unknown as readonly Stage[]) : [];
  }
}

/** Thrown where a link says what no link of ours would. */
export class Tampered extends Error {}
/** Thrown where the author has changed what a change was made for. */
export class Stale extends Error {}

/** Reads changes for an author's build, as it is now. */
export class StageUnpacker {
  readonly #find: Finder;
  readonly #build: Build;
  readonly #ids: ReadonlySet<string>;
  readonly #made: (Stage | undefined)[] = [];
  readonly #taken: Set<string>;
  /** Lists that are not as the link has them, because a change before could not be made. */
  readonly #muddled = new Set<readonly Stage[]>();

  constructor(build: Build, find: Finder) {
    this.#build = build;
    this.#find = find;
    this.#ids = idsIn(build);
    this.#taken = new Set(this.#ids);
  }

  /** A stage with an id, and with the author's words where it is the author's; without those of its positions. */
  #alone(packed: unknown, id?: string): Stage {
    const { kind, id: own = id, positions: _, selected: __, ...rest } = (packed ?? {}) as PackedStage;
    const fields: Record<string, unknown> = rest;
    if (typeof kind !== "string" || !Object.hasOwn(stageShapes, kind)) throw new Tampered();
    if (own !== undefined && (typeof own !== "string" || !this.#find(own)?.stage || (id && own !== id)))
      throw new Tampered();
    const authors = own === undefined ? undefined : this.#find(own)!.stage;
    const made = own ?? freeId(kind, [this.#build], (one) => this.#taken.has(one));
    this.#taken.add(made);
    const shape = stageShape(kind as StageKind);
    const words = Object.entries(authors ?? {}).filter(([key]) => shape[key] === "text");
    const stage: Record<string, unknown> = { id: made, ...Object.fromEntries(words), kind };
    for (const field of stageFieldsOf(kind as StageKind)) {
      const stages = fields[field];
      if (stages === undefined) continue;
      if (!Array.isArray(stages) || stages.length > mostStructure) throw new Tampered();
      stage[field] = stages.map((one) => this.#alone(one));
      delete fields[field];
    }
    const numbers = fieldsOf({ ...fields, kind } as unknown as Stage, this.#ids);
    if (!Object.entries(fields).every(([key, one]) => Object.hasOwn(numbers, key) && sameValue(numbers[key], one)))
      throw new Tampered();
    return { ...stage, ...fields } as unknown as Stage;
  }

  /** A stage with all that stands in its positions. */
  stage(packed: unknown, id?: string): Stage {
    const { kind, id: own = id, positions, selected } = (packed ?? {}) as PackedStage;
    const number = own === undefined ? this.#made.push(undefined) - 1 : -1;
    if (number >= mostStructure) throw new Tampered();
    const stage = this.#alone(packed, id) as unknown as Record<string, unknown>;
    const authors = own === undefined ? undefined : this.#find(own)!.stage;
    if ("positions" in stageShape(kind as StageKind)) {
      if (!Array.isArray(positions)) throw new Tampered();
      const known = positionsOf(authors);
      const isKnown = (id: string) => known.some((one) => one.id === id);
      let place = 1;
      const nextId = (): string => {
        while (isKnown(`position-${place}`)) place++;
        return `position-${place++}`;
      };
      const places = (positions as readonly PackedPosition[]).map((one) => {
        const before = known.find(({ id: name }) => name === one.id);
        if (one.id !== undefined && !before) throw new Tampered();
        return {
          ...(before ? { ...before, released: undefined } : { id: nextId() }),
          stages: Array.isArray(one.stages) ? one.stages.map((inner) => this.stage(inner)) : undefined,
          released: one.released,
        };
      });
      stage.positions = JSON.parse(JSON.stringify(places)) as unknown;
      stage.selected = places[Number(selected)]?.id;
      if (places.some(({ released }) => released !== undefined && !/^(free|held)$/.test(released)))
        throw new Tampered();
    }
    if (number >= 0) this.#made[number] = stage as unknown as Stage;
    return stage as unknown as Stage;
  }

  /** A change, if what it was made for is as it was; else the lists that it would have changed are not to be counted on. */
  change([what, one, two, three, four]: readonly unknown[]): Change {
    if (what === "insert") {
      const first = this.#made.length;
      try {
        const insert = this.stage(three);
        const { into, list } = this.#place(one);
        return this.#unless(four !== checkOfOrder(list), [list], { insert, ...into, at: Number(two) });
      } catch (error) {
        // What comes later and speaks of it finds nothing.
        this.#made.fill(undefined, first);
        throw error;
      }
    }
    const id = this.#idOf(one);
    const own = this.#find(id)?.stage;
    const home = own ? (this.#find(id)!.holder as unknown as readonly Stage[]) : [];
    if (what === "remove") return this.#unless(!!own && two !== checkOfStage(own), [home], { remove: id });
    const { into, list } = two === 0 ? { into: {}, list: [] } : this.#place(two);
    return this.#unless(four !== checkOfOrder(home, list), [home, list], { move: id, ...into, at: Number(three) });
  }

  /** The label of the author's stage or shaft that a change speaks of, to tell people. */
  subjectOf([, id]: readonly unknown[]): string {
    return typeof id === "string" && this.#find(id) ? id : "";
  }

  #unless(isOther: boolean, lists: readonly (readonly Stage[])[], change: Change): Change {
    const isMuddled = lists.some((list) => this.#muddled.has(list));
    if (!isOther && !isMuddled) return change;
    for (const list of lists) this.#muddled.add(list);
    throw new Stale();
  }

  #idOf(reference: unknown): string {
    if (typeof reference === "number") {
      const stage = this.#made[reference];
      if (stage) return stage.id;
    } else if (typeof reference === "string" && this.#find(reference)?.stage) return reference;
    throw new Stale();
  }

  #place(place: unknown): { readonly into: { readonly into?: string }; readonly list: readonly Stage[] } {
    if (place === null) return { into: {}, list: this.#build.stages };
    if (Array.isArray(place)) {
      const stage = this.#made[place[0] as number];
      const position = positionsOf(stage)[place[1] as number];
      if (stage && position?.stages) return { into: { into: `${stage.id}.${position.id}` }, list: [] };
    } else if (typeof place === "string") {
      const list = listOf(this.#build, this.#find, place);
      if (list) return { into: { into: place }, list };
    }
    throw new Stale();
  }
}
