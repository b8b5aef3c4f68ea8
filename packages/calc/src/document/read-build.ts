import type { Build } from "../drivetrain/index.js";
import { MeshwrightError } from "../exact/index.js";
import { errorOf, findingOf, type Finding } from "../stages/index.js";
import { checkBuild } from "./check.js";
import { readJson } from "./json.js";
import { refused, type Reading } from "./reading.js";
import { tryVersions } from "./trial.js";

/** Whoever mends a hundred places will look again. */
const mostFaults = 100;

function readData(json: unknown): Reading {
  try {
    if (typeof json !== "string") return checkBuild(json);
    const found = readJson(json);
    return "fault" in found ? refused(found.fault) : checkBuild(found.data);
  } catch {
    // Only what is no plain data can bring us here: a getter that throws, a proxy that was taken back.
    return refused(errorOf("shape", "not-data", ""));
  }
}

/** Reads a build, and says how grave it is where one of its versions cannot be made. */
function read(json: unknown, severity: Finding["severity"]): Reading {
  const reading = readData(json);
  if (!reading.ok) return reading;
  const faults: Finding[] = [];
  tryVersions(reading.build, (code, at, values) => {
    if (faults.length < mostFaults) faults.push(findingOf(severity, "meaning", code, at, values));
  });
  if (!faults.length) return reading;
  const findings = [...faults, ...reading.findings];
  return severity === "error" ? refused(...findings) : { ...reading, findings };
}

/** Reads a build as somebody left it in the middle of his work: a version that cannot be made from it is odd, and no more. */
export const readUnfinished = (json: unknown): Reading => read(json, "warning");

/**
 * Reads a build document: JSON text, or the data that it stands for. Alternatives and earlier revisions are tried once each.
 * Never throws: whatever is wrong is a finding.
 *
 * @param json text is parsed, and the place of a fault told; anything else is taken as data and copied
 * @returns told apart by `ok`: a build with what is odd about it, or the findings that keep it from being one
 *
 * @example
 * import { readBuild } from "@meshwright/calc/document";
 * const text = '{ "format": "meshwright-build/1", "outputs": [{ "id": "rear", "stages": [{ "id": "ring", "kind": "pair", "driver": 12, "driven": 35 }] }] }';
 * readBuild(text).build?.outputs[0]?.id; // => "rear"
 * readBuild(text.replace("35", "0")).findings[0]?.at; // => "/outputs/0/stages/0/driven"
 * readBuild(text.replace("}", "")).findings[0]?.message.slice(0, 10); // => "Line 1:133"
 */
export const readBuild = (json: unknown): Reading => read(json, "error");

/**
 * Reads a build document whose author is the program itself: a build, or an error.
 *
 * @throws MeshwrightError `not-a-build`, its message the first finding's, its `at` the place
 *
 * @example
 * import { parseBuild } from "@meshwright/calc/document";
 * parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] }).outputs.length; // => 1
 * parseBuild("{}"); // throws not-a-build
 */
export function parseBuild(json: unknown): Build {
  const reading = readBuild(json);
  if (reading.ok) return reading.build;
  const { at, message } = reading.findings.find(({ severity }) => severity === "error")!;
  throw new MeshwrightError("not-a-build", at, at ? `${at}: ${message}` : message);
}
