import type { Build } from "@meshwright/calc/drivetrain";
import { page, type BuildHolder } from "../store/index.js";

/** The builds that one can be held against by a name which is none of its own versions': those of the page, and those it refers to by address. */
export const otherIds = (home: BuildHolder, article: Build | undefined): readonly string[] => [
  ...new Set([
    ...[...page().holders].flatMap(({ id }) => (id && id !== home.id ? id : [])),
    ...(article?.references ?? []).flatMap(({ id, src }) => (src === undefined ? [] : id)),
  ]),
];
