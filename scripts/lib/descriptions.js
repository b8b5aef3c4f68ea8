// What the fields of a build document mean: the doc comments of their types, by the shapes that reader and Schema go by.
import { pathToFileURL } from "node:url";
import ts from "typescript";
import { at } from "./paths.js";

const calc = (folder) => import(pathToFileURL(at("packages", "calc", "dist", folder, "index.js")).href);

/** The name of the object that a field's letters speak of, if of any. */
const objectIn = (letters) =>
  letters
    .replace(/!$/, "")
    .replace(/^\[(.+)\]\d+-\d+$/, "$1")
    .replace(/^\{(.+)\}$/, "$1");

/** A doc comment as one line. */
const text = (checker, symbol) =>
  ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, " ").trim();

const isOurs = (symbol) => symbol.declarations?.every((one) => !one.getSourceFile().fileName.includes("node_modules"));

/**
 * What each field of each object of a build means, by the object's name (`pair-stage` for a stage of a kind) and the field's.
 * @returns {Promise<{ objects: Record<string, string>, fields: Record<string, Record<string, string>> }>}
 */
export async function descriptions() {
  const [{ shapes, stageShape }, { stageShapes }] = await Promise.all(["drivetrain", "stages"].map(calc));
  const file = at("packages", "calc", "src", "drivetrain", "types.ts");
  const program = ts.createProgram([file], {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
    lib: ["lib.es2023.d.ts"],
    strict: true,
    noEmit: true,
    skipLibCheck: true,
    types: [],
  });
  const checker = program.getTypeChecker();
  const exported = new Map(
    checker.getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(file))).map((one) => [one.name, one]),
  );
  const objects = {};
  const fields = {};

  /** The members of a union, and what a list or a map holds. */
  const parts = (type) => {
    if (type.isUnion()) return type.types.flatMap(parts);
    const item =
      checker.getIndexTypeOfType(type, ts.IndexKind.Number) ?? checker.getIndexTypeOfType(type, ts.IndexKind.String);
    return item && !checker.getPropertyOfType(type, "id") && !(type.flags & ts.TypeFlags.StringLike)
      ? parts(item)
      : [type];
  };
  const typesOf = (property) => parts(checker.getTypeOfSymbol(property));

  /** The doc comments of a shape's fields, found in any of the types that it may be. */
  function walk(name, shape, types) {
    if (fields[name]) return;
    const own = (fields[name] = {});
    // What the compiler's own types say of themselves says nothing of ours: of `Omit<Rounding, …>`, that is Rounding.
    const described = types
      .flatMap(({ aliasSymbol, symbol, aliasTypeArguments = [] }) => [
        aliasSymbol ?? symbol,
        ...aliasTypeArguments.map((one) => one.symbol),
      ])
      .find((one) => one && isOurs(one) && text(checker, one));
    if (described) objects[name] = text(checker, described);
    for (const [field, letters] of Object.entries(shape)) {
      const properties = types.map((type) => checker.getPropertyOfType(type, field)).filter(Boolean);
      own[field] = properties.map((property) => text(checker, property)).find(Boolean) ?? "";
      const inside = properties.flatMap(typesOf);
      const object = objectIn(letters);
      if (object === "stage") stages(inside);
      else if (shapes[object]) walk(object, shapes[object], inside);
    }
  }

  function stages(types) {
    for (const kind of Object.keys(stageShapes)) {
      const mine = types.filter((type) => {
        const property = checker.getPropertyOfType(type, "kind");
        const literal = property && checker.getTypeOfSymbol(property);
        return literal?.isStringLiteral() && literal.value === kind;
      });
      if (mine.length > 0) walk(`${kind}-stage`, stageShape(kind), mine);
    }
  }

  walk("build", shapes.build, [checker.getDeclaredTypeOfSymbol(exported.get("Build"))]);
  return { objects, fields };
}

/** The Schema with the meaning of every object and field in it. */
export async function describedSchema(schema) {
  const { objects, fields } = await descriptions();
  const described = (name, object) => ({
    ...(objects[name] && { description: objects[name] }),
    ...object,
    properties: Object.fromEntries(
      Object.entries(object.properties).map(([field, value]) => [
        field,
        { ...(fields[name]?.[field] && { description: fields[name][field] }), ...(value === true ? {} : value) },
      ]),
    ),
  });
  const { $defs, ...rest } = schema;
  return {
    ...described("build", rest),
    $defs: Object.fromEntries(
      Object.entries($defs).map(([name, one]) => [name, one.properties && fields[name] ? described(name, one) : one]),
    ),
  };
}
