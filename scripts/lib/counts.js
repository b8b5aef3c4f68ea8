// The last line of a run of tests, alone on it: "N passed, N failed".
import { writeSync } from "node:fs";

export const countsLine = ({ passed, failed }) => `${passed} passed, ${failed} failed`;

/** What the last such line of an output says; nothing where there is none. */
export function countsIn(output) {
  const [line] = [...output.matchAll(/^(?:\w+: )?(\d+) passed, (\d+) failed$/gm)].slice(-1);
  return line && { passed: Number(line[1]), failed: Number(line[2]) };
}

/** Tells vitest's outcome in that line, after everything else that it has to say. */
export default class Counts {
  onTestRunEnd(modules, unhandled) {
    const counts = { passed: 0, failed: unhandled.length };
    for (const module of modules) {
      // A test that was skipped did not pass.
      for (const test of module.children.allTests())
        counts[test.result().state === "passed" ? "passed" : "failed"] += 1;
      // A file that could not be loaded holds no tests, and must not look like one without fault.
      counts.failed += module.errors().length;
    }
    if (counts.passed + counts.failed === 0) counts.failed = 1;
    process.once("exit", () => {
      if (counts.failed > 0) process.exitCode ||= 1;
      writeSync(1, `${countsLine(counts)}\n`);
    });
  }
}
