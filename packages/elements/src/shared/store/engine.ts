import { leanApply, leanEdited, leanVersion } from "@meshwright/calc/document/lean";
import type { Edited, Editing, Layer } from "@meshwright/calc/document";
import type { Build, Change, ChangeSet, Unit } from "@meshwright/calc/drivetrain";
import { totalsOf, type Evaluation } from "@meshwright/calc/evaluate";
import type { Finding } from "@meshwright/calc/stages";

/** What a store works builds out with: at first as much as sentences need, and all of it once the second file has come. */
export interface Engine {
  /** Nothing can be changed where there is no build. */
  edited(article: Build | undefined, before: Edited | undefined, request: ChangeSet | Change): Editing;
  /** What is left out is told in words. */
  layOver(article: Build, layer: Layer, known?: Build): Edited & { readonly dropped: readonly Finding[] };
  unitsOf(build: Build, sets: ChangeSet): readonly Unit[];
  version(article: Build, id: string): Build | undefined;
  evaluate(build: Build, mode: string | undefined): Evaluation;
  /** Another build that one is held against by a name which none of its versions has, as it stands or as it is published. */
  elsewhere?(of: { readonly article: Build | undefined }, id: string, at: string): Evaluation | undefined;
}

/** An author's build with values over it, and no structure. */
const withSets = (article: Build, build: Build, sets: ChangeSet): Edited => ({
  build,
  layer: { structure: [], sets },
  base: article,
  gone: [],
  trimmed: false,
});

/** As much as sentences need. */
export const leanEngine: Engine = {
  edited(article, before, request) {
    const made = before && { build: before.build, sets: before.layer.sets };
    const now = article && made && leanEdited(article, made, request as ChangeSet);
    return now ? { ok: true, ...withSets(article!, now.build, now.sets) } : { ok: false, findings: [] };
  },
  layOver(article, { sets }) {
    const build = leanApply(article, sets);
    return { ...withSets(article, build ?? article, build ? sets : {}), dropped: [] };
  },
  unitsOf: (_, sets) => Object.keys(sets).map((address) => ({ address, sets: { [address]: sets[address] } })),
  version: leanVersion,
  evaluate: totalsOf,
};

let engine = leanEngine;

/** What builds are worked out with now. */
export const engineNow = (): Engine => engine;

/** Works builds out with another engine from now on. */
export const runOn = (other: Engine): void => void (engine = other);
