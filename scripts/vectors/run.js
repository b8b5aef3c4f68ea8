// Runs vectors: reads them, has them answered, and lists what differs.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { differences } from "./compare.js";
import { files } from "./files.js";

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

/** What is wrong with one case: a list of `{ path, expected, got }`. */
function troubleOf(calc, file, one) {
  if (!isObject(one)) return [{ path: "", expected: "a case", got: JSON.stringify(one) }];
  const expected = {};
  const trouble = [];
  for (const [name, value] of Object.entries(one)) {
    if (name in file.form) expected[name] = value;
    else if (!file.given.includes(name))
      trouble.push({ path: name, expected: "no such field", got: JSON.stringify(value) });
  }
  for (const name of file.given.filter((field) => !(field in one) && !file.optional?.includes(field))) {
    trouble.push({ path: name, expected: "a field", got: "nothing" });
  }
  if (trouble.length > 0) return trouble;
  let got;
  try {
    got = file.answer(calc, one);
  } catch (error) {
    return [{ path: "", expected: "an answer", got: error instanceof Error ? error.message : String(error) }];
  }
  return Object.keys(file.form).flatMap((name) => differences(file.form[name], expected[name], got[name], name));
}

/** Runs one file's cases. Resolves to `{ passed, failed, lines }`. */
export function runCases(calc, name, cases) {
  const result = { passed: 0, failed: 0, lines: [] };
  const file = files[name];
  const fail = (line) => {
    result.failed += 1;
    result.lines.push(line);
  };
  if (!Array.isArray(cases) || cases.length === 0) {
    fail(`${name}.json: a list of cases is expected`);
    return result;
  }
  cases.forEach((one, index) => {
    const trouble = troubleOf(calc, file, one);
    if (trouble.length === 0) {
      result.passed += 1;
      return;
    }
    const lines = trouble.map(
      ({ path, expected, got }) => `${name}.json [${index}] ${path}: expected ${expected}, got ${got}`,
    );
    fail(lines.join("\n"));
  });
  return result;
}

/**
 * Runs every file of a folder. `calc` holds the functions of calc by name. Resolves to `{ passed, failed, lines }`:
 * what differs, and which files cannot be answered yet.
 */
export function runVectors(calc, folder) {
  const total = { passed: 0, failed: 0, lines: [] };
  const fail = (line) => {
    total.failed += 1;
    total.lines.push(line);
  };
  let names;
  try {
    names = readdirSync(folder).filter((name) => name.endsWith(".json"));
  } catch (error) {
    fail(`${folder}: a folder of vectors is expected (${error.code})`);
    return total;
  }
  if (names.length === 0) fail(`${folder}: holds no vectors`);
  for (const fileName of names.sort()) {
    const name = fileName.slice(0, -".json".length);
    if (!Object.hasOwn(files, name)) {
      fail(`${fileName}: not a file of vectors; expected one of ${Object.keys(files).join(", ")}`);
      continue;
    }
    let cases;
    try {
      cases = JSON.parse(readFileSync(join(folder, fileName), "utf8"));
    } catch (error) {
      fail(`${fileName}: ${error.message}`);
      continue;
    }
    const missing = files[name].needs.filter((needed) => calc[needed] === undefined);
    if (missing.length > 0) {
      total.lines.push(`not yet: ${name} (calc has no ${missing.join(", ")})`);
      continue;
    }
    const { passed, failed, lines } = runCases(calc, name, cases);
    total.passed += passed;
    total.failed += failed;
    total.lines.push(...lines);
  }
  return total;
}
