// Compares what came out with what was expected, field by field, and leaves nothing out on either side.

const fractionPattern = /^-?(0|[1-9]\d*)\/([1-9]\d*)$/;

function greatestCommonDivisor(a, b) {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

/** True for "n/d" in lowest terms. */
function isLowestTerms(text) {
  const match = fractionPattern.exec(text);
  if (match === null) return false;
  return greatestCommonDivisor(BigInt(match[1]), BigInt(match[2])) === 1n && !text.startsWith("-0");
}

/** A field that is a fraction in lowest terms. */
export const fraction = { kind: "fraction" };
/** A field that is equal as it stands: text, a count, a boolean, null. */
export const same = { kind: "same" };
/** A field that is a floating-point result, within a part of its size. */
export const near = (tolerance = 1e-12) => ({ kind: "near", tolerance });
/** An array of fields of one form. */
export const listOf = (form) => ({ kind: "list", form });
/** An object whose keys are not known beforehand, each of one form; `ordered` where their order counts. */
export const mapOf = (form, { ordered = false } = {}) => ({ kind: "map", form, ordered });

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
const text = (value) => (value === undefined ? "nothing" : JSON.stringify(value));

/**
 * Lists every difference as `{ path, expected, got }`. `form` says what kind of field stands where: a plain object lists
 * its keys. What it does not name must not be there; a key on one side only is a difference.
 */
export function differences(form, expected, got, path = "expect") {
  const difference = [{ path, expected: text(expected), got: text(got) }];
  const trouble = (what) => [{ path, expected: what, got: text(expected) }];
  if (expected === undefined || got === undefined) return expected === got ? [] : difference;
  switch (form.kind) {
    case "same":
      if (typeof expected === "object" && expected !== null) return trouble("a plain value in the vectors");
      return expected === got ? [] : difference;
    case "fraction":
      if (typeof expected !== "string" || !isLowestTerms(expected)) return trouble("a fraction in lowest terms");
      return expected === got ? [] : difference;
    case "near":
      if (typeof expected !== "number" || !Number.isFinite(expected)) return trouble("a number in the vectors");
      if (typeof got !== "number") return difference;
      return Math.abs(got - expected) <= form.tolerance * Math.abs(expected) ? [] : difference;
    case "list":
      if (!Array.isArray(expected)) return trouble("a list in the vectors");
      if (!Array.isArray(got)) return difference;
      return Array.from({ length: Math.max(expected.length, got.length) }, (_, index) =>
        differences(form.form, expected[index], got[index], `${path}.${index}`),
      ).flat();
    default:
  }
  if (!isObject(expected)) return trouble("an object in the vectors");
  if (!isObject(got)) return difference;
  const isMap = form.kind === "map";
  const names = Object.keys(expected);
  const known = isMap ? names : Object.keys(form);
  const found = [];
  if (isMap && names.length === 0) found.push(...trouble("at least one entry in the vectors"));
  for (const name of new Set([...names, ...Object.keys(got)])) {
    const at = `${path}.${name}`;
    if (!isMap && !known.includes(name)) found.push({ path: at, expected: "no such field", got: text(expected[name]) });
    else found.push(...differences(isMap ? form.form : form[name], expected[name], got[name], at));
  }
  if (form.ordered && found.length === 0 && names.join("\n") !== Object.keys(got).join("\n")) {
    found.push({ path: `${path} (order)`, expected: text(names), got: text(Object.keys(got)) });
  }
  return found;
}
