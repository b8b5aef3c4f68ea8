import type { Build } from "../drivetrain/index.js";
import { MeshwrightError } from "../exact/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { checkBuild } from "./check.js";
import { faultIn } from "./json.js";
import { refused, type Reading } from "./reading.js";
import { tryVersions } from "./trial.js";

/** Reads a build as `readBuild` does, but for the versions that it tells: whether they can be made is not looked at. */
export function readPlainly(json: unknown): Reading {
  try {
    if (typeof json !== "string") return checkBuild(json);
    const fault = faultIn(json);
    return fault ? refused(fault) : checkBuild(JSON.parse(json));
  } catch {
    // Only what is no plain data can bring us here: a getter that throws, a proxy that was taken back.
    return refused(errorOf("shape", "not-data", ""));
  }
}

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
 * readBuild(text).build.outputs[0].stages[0].driven; // => 35
 * readBuild(text.replace("35", "0")).findings[0].at; // => "/outputs/0/stages/0/driven"
 * readBuild(text.replace("}", "")).findings[0].message.slice(0, 10); // => "Line 1:133"
 */
export function readBuild(json: unknown): Reading {
  const reading = readPlainly(json);
  if (!reading.ok) return reading;
  const faults: Finding[] = [];
  tryVersions(reading.build, (code, at, values) => {
    if (faults.length < mostFaults) faults.push(errorOf("meaning", code, at, values));
  });
  return faults.length ? refused(...faults, ...reading.findings) : reading;
}

/** Whoever mends a hundred places will look again. */
const mostFaults = 100;

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
