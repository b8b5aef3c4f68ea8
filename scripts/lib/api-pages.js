// What the API's pages have besides what typedoc makes of the sources: modules under the names that they are imported by, examples
// with their imports, words for parameters that have none, and a check that every public name has a line.
import { Converter, ReflectionKind } from "typedoc";
import { withImports } from "./examples.js";

/** The address that a module is imported by, from its place in the sources. */
const addressOf = (name) =>
  name.replace(
    /^(\w+)\/src(?:\/(?:shared\/)?(.+))?$/,
    (_, name, inside) => `@meshwright/${name}${inside ? `/${inside}` : ""}`,
  );

/** A word for a parameter that is taken apart where it stands: the last one of its type's name. */
function wordFor(type) {
  const name = type?.name ?? type?.types?.find((one) => one.name)?.name;
  const word = name?.match(/[A-Z][a-z]+/g)?.at(-1);
  return word ? word.toLowerCase() : "options";
}

const shown =
  ReflectionKind.Function |
  ReflectionKind.Class |
  ReflectionKind.Interface |
  ReflectionKind.TypeAlias |
  ReflectionKind.Variable |
  ReflectionKind.Module;

/** Whether a name has a line of its own, or says what it is by its signature's. */
const hasLine = (one) =>
  [one, ...(one.signatures ?? []), ...(one.type?.declaration?.signatures ?? [])].some(
    ({ comment }) => comment?.summary.length > 0,
  );

/** @param {import("typedoc").Application} app */
export function load(app) {
  let examples = [];
  app.converter.on(Converter.EVENT_RESOLVE_END, ({ project }) => {
    for (const module of project.getReflectionsByKind(ReflectionKind.Module)) module.name = addressOf(module.name);
    for (const parameter of project.getReflectionsByKind(ReflectionKind.Parameter))
      if (parameter.name.startsWith("__")) parameter.name = wordFor(parameter.type);
    const reflections = Object.values(project.reflections);
    examples = reflections
      .flatMap(({ comment }) => comment?.getTags("@example").flatMap(({ content }) => content) ?? [])
      .filter(({ kind }) => kind === "code");
    const silent = project
      .getReflectionsByKind(shown)
      .filter((one) => !hasLine(one) && one.parent?.kindOf(ReflectionKind.Project | ReflectionKind.Module));
    for (const one of silent) app.logger.error(`${one.getFullName()} has no line that says what it is.`);
  });
  app.renderer.preRenderAsyncJobs.push(async () => {
    for (const part of examples) {
      const [, open, code, close] = /^(```\w*\n)([^]*?)(\n?```)$/.exec(part.text) ?? [];
      if (code !== undefined) part.text = `${open}${await withImports(code)}${close}`;
    }
  });
}
