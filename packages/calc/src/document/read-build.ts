import { checkBuild } from "./check.js";
import { errorOf } from "./read.js";
import type { Build, Finding } from "../drivetrain/index.js";
import { faultIn } from "./json.js";

/** A build that could be read, or what keeps it from being one. */
export interface Reading {
  readonly build?: Build;
  readonly findings: Finding[];
}

/**
 * Reads a build document: JSON text, or the data that it stands for. Never throws: whatever is wrong is a finding.
 *
 * @param json text is parsed, and the place of a fault told; anything else is taken as data and copied
 * @returns `build` exactly when no finding is an error
 *
 * @example
 * import { readBuild } from "@meshwright/calc/document";
 * const text = '{ "format": "meshwright-build/1", "outputs": [{ "id": "rear", "stages": [{ "id": "ring", "kind": "pair", "driver": 12, "driven": 35 }] }] }';
 * readBuild(text).build.outputs[0].stages[0].driven; // => 35
 * readBuild(text.replace("35", "0")).findings[0].pointer; // => "/outputs/0/stages/0/driven"
 * readBuild(text.replace("}", "")).findings[0].message.slice(0, 10); // => "Line 1:133"
 */
export function readBuild(json: unknown): Reading {
  try {
    if (typeof json !== "string") return checkBuild(json);
    const fault = faultIn(json);
    return fault ? { findings: [fault] } : checkBuild(JSON.parse(json));
  } catch {
    // Only what is no plain data can bring us here: a getter that throws, a proxy that was taken back.
    return { findings: [errorOf("shape", "not-data", "", "Expected plain data such as JSON.parse gives.")] };
  }
}
