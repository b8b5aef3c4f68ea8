import { readBuild } from "../document/index.js";
import type { Build } from "../drivetrain/index.js";
import type { Finding } from "../stages/index.js";

/** A document that is not whole yet, as far as it can be read. */
export interface MendedDraft {
  readonly build: Build;
  /** The stages that cannot be read, by id, and why: in the build each of them stands as one that does nothing. */
  readonly broken: ReadonlyMap<string, string>;
}

type Data = Record<string, unknown>;

const stageAt = /^((?:\/(?:outputs|branches)\/\d+)?\/stages)\/(\d+)/;

function valueIn(root: unknown, pointer: string): unknown {
  return pointer
    .split("/")
    .slice(1)
    .reduce<unknown>((at, key) => (at as Data | undefined)?.[key], root);
}

const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);

/** Takes what one error speaks of out of a document; whether it could. */
function takeOut(root: Data, { at, message }: Finding, broken: Map<string, string>): boolean {
  const [, list, place] = stageAt.exec(at) ?? [];
  if (list !== undefined) {
    const stages = valueIn(root, list) as unknown[];
    const before = isData(stages[+place!]) ? (stages[+place!] as Data) : {};
    const { id, label } = before;
    // What was taken out once is not what is wrong: then it is its id.
    const own =
      typeof id === "string" && /^[a-z](?:-?[a-z0-9])*$/.test(id) && !broken.has(id)
        ? id
        : `unclear-${broken.size + 1}`;
    broken.set(own, message);
    stages[+place!] = {
      id: own,
      kind: "published",
      value: "1",
      exact: true,
      ...(typeof label === "string" && { label }),
    };
    return true;
  }
  const [, key] = at.split("/") as [string, string?];
  if (key === "outputs" && !(Array.isArray(root[key]) && root[key].length)) {
    root[key] = [{ id: "wheels", stages: [] }];
    return true;
  }
  if (key === "format") root[key] = "meshwright-build/1";
  else if (key === "stages") root[key] = [];
  else if (key && key !== "outputs" && key in root) delete root[key];
  else return false;
  return true;
}

/**
 * Reads a document that is being written: stages that cannot be read are told, and all others come to what they come to.
 *
 * @param draft a document as data
 * @returns nothing where it is no document at all
 *
 * @example
 * const stages = [{ id: "one", kind: "pair", driver: 15, driven: 62 }, { id: "row", kind: "train", teeth: [18] }];
 * const mended = mendedDraft({ format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }] });
 * [...mended!.broken.keys()]; // => ["row"]
 */
export function mendedDraft(draft: unknown): MendedDraft | undefined {
  if (!isData(draft)) return undefined;
  const root = JSON.parse(JSON.stringify(draft)) as Data;
  root["outputs"] ??= [{ id: "wheels", stages: [] }];
  root["format"] ??= "meshwright-build/1";
  const broken = new Map<string, string>();
  for (let tries = 0; tries < 50; tries++) {
    const { build, findings } = readBuild(root);
    if (build) return { build, broken };
    const errors = findings.filter(({ severity }) => severity === "error");
    const one = errors.find(({ at }) => stageAt.test(at)) ?? errors[0];
    if (!one || !takeOut(root, one, broken)) return undefined;
  }
  return undefined;
}
