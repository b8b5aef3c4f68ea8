import { shapes } from "../drivetrain/index.js";
import { errorOf, stageShapes, type Finding } from "../stages/index.js";
import { nearestTo } from "./nearest.js";

let words: ReadonlySet<string> | undefined;

/** What this reader understands: the kinds of stage, and every field by its name. */
const known = (): ReadonlySet<string> =>
  (words ??= new Set([
    ...Object.keys(stageShapes),
    ...[...Object.values(shapes), ...Object.values(stageShapes)].flatMap((shape) => Object.keys(shape)),
  ]));

/** What a document uses that nobody here understands. */
export const unknownUses = (uses: unknown): readonly Finding[] =>
  Array.isArray(uses)
    ? uses.flatMap((use: unknown, n) =>
        typeof use === "string" && !known().has(use)
          ? [
              errorOf("meaning", "unknown-use", `/uses/${n}`, {
                found: JSON.stringify(use.slice(0, 40)),
                known: Object.keys(stageShapes),
                nearest: nearestTo(use, known()),
              }),
            ]
          : [],
      )
    : [];
