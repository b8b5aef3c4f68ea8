import { addressPattern } from "./scalars.js";
import { scalarTexts } from "./expected.js";
import { longestText, scalars } from "./scalars.js";
import { shapes, stageShape } from "../drivetrain/index.js";
import { stageShapes, type Shape, type StageKind } from "../stages/index.js";

type Schema = Readonly<Record<string, unknown>>;

const reference = (name: string): Schema => ({ $ref: name === "build" ? "#" : `#/$defs/${name}` });

/** What an object of a shape must be: required fields and no unknown ones but `x-…`. */
function objectOf(shape: Shape): Schema {
  const names = Object.keys(shape);
  return {
    type: "object",
    properties: Object.fromEntries(names.map((name) => [name, schemaOf(shape[name]!.replace("!", ""))])),
    required: names.filter((name) => shape[name]!.endsWith("!")),
    patternProperties: { "^x-": true },
    additionalProperties: false,
  };
}

/** The Schema of a shape as {@link Shape} writes it. */
function schemaOf(shape: string): Schema | boolean {
  if (shape === "any") return true;
  if (shape === "flag") return { type: "boolean" };
  const [, item, minItems, maxItems] = /^\[(.+)\](\d+)-(\d+)$/.exec(shape) ?? [];
  if (item) return { type: "array", items: schemaOf(item), minItems: +minItems!, maxItems: +maxItems! };
  if (shape.includes("|")) return { enum: shape.split("|") };
  if (shape[0] !== "{") return reference(shape);
  return {
    type: "object",
    propertyNames: { pattern: addressPattern.source },
    additionalProperties: schemaOf(shape.slice(1, -1)),
  };
}

function scalarOf(name: string): Schema {
  const { pattern, from, above, to, whole, among } = scalars[name]!;
  const expected = scalarTexts[name];
  const text = pattern
    ? { type: "string", pattern: pattern.source, maxLength: 119 }
    : { type: "string", maxLength: longestText };
  if (from === undefined && above === undefined) return { description: expected, ...text };
  if (among) return { description: expected, anyOf: [{ enum: among }, text] };
  const number = {
    type: whole ? "integer" : "number",
    ...(from !== undefined && { minimum: from }),
    ...(above !== undefined && { exclusiveMinimum: above }),
    ...(to !== undefined && { maximum: to }),
  };
  return { description: expected, anyOf: [number, text] };
}

/**
 * The JSON Schema (2020-12) of a build document of this version, made from what the reader goes by. It agrees with `readBuild`
 * on shape: a document is valid exactly when no error among the findings is about shape. Meaning it cannot see.
 */
export function buildSchema(): Schema {
  const kindNames = Object.keys(stageShapes) as StageKind[];
  const defs: Record<string, unknown> = {};
  for (const name of Object.keys(scalars)) defs[name] = scalarOf(name);
  for (const [name, shape] of Object.entries(shapes)) if (name !== "build") defs[name] = objectOf(shape);
  // A count of wheel turns is a number, or a span of them.
  defs.span = { anyOf: [reference("positive"), defs.span] };
  for (const kind of kindNames) {
    const stage = objectOf(stageShape(kind));
    defs[`${kind}-stage`] = { ...stage, properties: { ...(stage.properties as object), kind: { const: kind } } };
  }
  defs.stage = {
    type: "object",
    properties: { kind: { enum: kindNames } },
    required: ["kind"],
    allOf: kindNames.map((kind) => ({
      if: { properties: { kind: { const: kind } } },
      then: reference(`${kind}-stage`),
    })),
  };
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    $id: "urn:meshwright:build:1",
    title: "Meshwright build document",
    ...objectOf(shapes.build!),
    $defs: defs,
  };
}
