import { markRead, type Build } from "../drivetrain/index.js";
import { errorOf } from "../stages/index.js";
import { checkMeaning } from "./meaning.js";
import { refused, type Reading } from "./reading.js";
import { ShapeReader } from "./read.js";
import { unknownUses } from "./uses.js";

/** Whether a document is of a later minor version of the format. */
export const isNewer = (format: unknown): boolean =>
  typeof format === "string" && /^meshwright-build\/1\.[1-9]\d{0,5}$/.test(format);

/** Any other than this one. */
const other = /^meshwright-build\/(?!1(\.0)?$)\d/;

/** Marks a build as read, and those that it refers to. */
function marked(data: Build): Build {
  const build: Build = { ...data, stages: data.stages ?? [] };
  const references = build.references?.map((one) => (one.build ? { ...one, build: marked(one.build) } : one));
  return markRead(references ? { ...build, references } : build);
}

/**
 * Checks plain data against the shape and the meaning of a build. At most a hundred findings, an error always among them
 * where there is one. What is written for a later minor version is read where all that it says it uses is known.
 */
export function checkBuild(data: unknown): Reading {
  const { format, uses } = Object(data) as { format?: unknown; uses?: unknown };
  const newer = isNewer(format);
  const strange = newer ? unknownUses(uses) : [];
  if (strange.length) return refused(...strange);
  if (typeof format === "string" && !newer && other.test(format))
    return refused(
      errorOf("shape", "newer-format", "/format", { found: format.slice(0, 40), expected: "meshwright-build/1" }),
    );
  const reader = new ShapeReader(newer);
  const { findings } = reader;
  const copy = reader.read(data) as Build | undefined;
  if (reader.failed) return refused(...findings);
  const build = marked(copy!);
  checkMeaning(build, reader);
  return reader.failed ? refused(...findings) : { ok: true, build, findings };
}
