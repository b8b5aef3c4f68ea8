// What editors and frameworks know of the elements, made from their manifest: types of attributes and events, the maps of tags,
// JSX for React and Preact, Vue's and Svelte's templates, and hints for HTML.
import { elementsOf } from "./manifest.js";

const made = "// Made from the doc comments of the elements: npm run build.\n";
const quoted = (text) => JSON.stringify(text);
const comment = (text, indent) => `${indent}/** ${text.replace(/\*\//g, "*\\/")} */\n`;
const interfaceName = (tag) => `${tag.replace(/(^|-)([a-z])/g, (_, __, letter) => letter.toUpperCase())}Attributes`;

/** Every event by its name, with its type and the elements that raise it. */
function eventsOf(elements) {
  const events = new Map();
  for (const { tagName, events: own } of elements)
    for (const { name, type } of own) {
      const known = events.get(name) ?? { type: type.text, tags: [] };
      known.tags.push(tagName);
      events.set(name, known);
    }
  return [...events].sort(([one], [other]) => one.localeCompare(other));
}

/** Types whose names stand in the types of events, and where they come from. */
const sources = {
  Change: "@meshwright/calc/drivetrain",
  ChangeSet: "@meshwright/calc/drivetrain",
  Part: "@meshwright/calc/drivetrain",
  PageFinding: "../index.js",
};

function imports(texts) {
  const byPlace = new Map();
  for (const [name, place] of Object.entries(sources))
    if (texts.some((text) => new RegExp(`\\b${name}\\b`).test(text)))
      byPlace.set(place, [...(byPlace.get(place) ?? []), name]);
  return [...byPlace].map(([place, names]) => `import type { ${names.join(", ")} } from ${quoted(place)};\n`).join("");
}

/** The attributes of every element, and the events that they raise: what the frameworks' types build on. */
function attributesFile(elements) {
  const events = eventsOf(elements);
  const interfaces = elements.map(({ tagName, description, attributes }) => {
    const fields = attributes.map(
      ({ name, type, description: about }) =>
        `${comment(about, "  ")}  ${/^\w+$/.test(name) ? name : quoted(name)}?: ${type.text} | undefined;\n`,
    );
    const others =
      tagName === "mw-build"
        ? "  /** An axle of any other name, its wheel, its motor. */\n  [axle: `axle-${string}`]: string | undefined;\n"
        : "";
    return `${comment(description, "")}export interface ${interfaceName(tagName)} {\n${fields.join("")}${others}}\n`;
  });
  return [
    made,
    imports(events.map(([, { type }]) => type)),
    ...interfaces,
    "/** The attributes of each element by its tag. */\nexport interface MeshwrightAttributes {\n",
    ...elements.map(({ tagName }) => `  ${quoted(tagName)}: ${interfaceName(tagName)};\n`),
    "}\n\n/** The events that readers' doings raise, by name. */\nexport interface MeshwrightEvents {\n",
    ...events.map(([name, { type }]) => `  ${quoted(name)}: ${type};\n`),
    "}\n\n/** The events of each element. */\nexport interface MeshwrightElementEvents {\n",
    ...elements.map(({ tagName, events: own }) =>
      own.length === 0
        ? `  ${quoted(tagName)}: never;\n`
        : `  ${quoted(tagName)}: ${own.map(({ name }) => quoted(name)).join(" | ")};\n`,
    ),
    "}\n",
  ].join("");
}

/** The maps that `querySelector`, `createElement` and `addEventListener` go by. */
function tagsFile(elements) {
  return [
    made,
    ...elements.map(({ name, module }) => `import type { ${name} } from ${quoted(module.replace("dist/", "../"))};\n`),
    'import type { MeshwrightEvents } from "./attributes.js";\n\ndeclare global {\n  interface HTMLElementTagNameMap {\n',
    ...elements.map(({ tagName, name }) => `    ${quoted(tagName)}: ${name};\n`),
    "  }\n  interface GlobalEventHandlersEventMap extends MeshwrightEvents {}\n}\n",
  ].join("");
}

/** What a framework's table of elements says, one line an element. */
const lines = (elements, indent, type) =>
  elements.map(({ tagName }) => `${indent}${quoted(tagName)}: ${type}<${quoted(tagName)}>;\n`).join("");

const eventProps = (key) =>
  `type Events<Tag extends keyof MeshwrightElementEvents> = {\n  [Name in MeshwrightElementEvents[Tag] as \`${key}\`]?: ((event: MeshwrightEvents[Name]) => void) | undefined;\n};\n`;
const own = 'import type { MeshwrightAttributes, MeshwrightElementEvents, MeshwrightEvents } from "./attributes.js";\n';

/** Properties over a framework's own for an element, where an event is a property that begins with `on`. */
const propsOver = (base, key) =>
  `${eventProps(key)}
type Props<Tag extends keyof MeshwrightAttributes> = Omit<
  ${base},
  keyof MeshwrightAttributes[Tag]
> &
  MeshwrightAttributes[Tag] &
  Events<Tag>;
`;

/** What a framework that is written as JSX is told. */
const jsxFile = (elements, name, types, base) =>
  `${made}import type { ${types} } from "${name}";\nimport "./tags.js";\n${own}
${propsOver(base, "on${Name}")}
declare module "${name}" {
  namespace JSX {
    interface IntrinsicElements {
${lines(elements, "      ", "Props")}    }
  }
}
`;

const reactFile = (elements) =>
  jsxFile(
    elements,
    "react",
    "DetailedHTMLProps, HTMLAttributes",
    "DetailedHTMLProps<HTMLAttributes<HTMLElementTagNameMap[Tag]>, HTMLElementTagNameMap[Tag]>",
  );

const preactFile = (elements) =>
  jsxFile(elements, "preact", "HTMLAttributes", "HTMLAttributes<HTMLElementTagNameMap[Tag]>");

/** Vue's templates: an event is an emit. */
const vueFile = (elements) =>
  `${made}import type { EmitFn, HTMLAttributes, PublicProps } from "vue";\nimport "./tags.js";\n${own}
type Emits<Tag extends keyof MeshwrightElementEvents> = {
  [Name in MeshwrightElementEvents[Tag]]: (event: MeshwrightEvents[Name]) => void;
};
type Props<Tag extends keyof MeshwrightAttributes> = new () => HTMLElementTagNameMap[Tag] & {
  $props: Omit<HTMLAttributes, keyof MeshwrightAttributes[Tag]> & MeshwrightAttributes[Tag] & PublicProps;
  $emit: EmitFn<Emits<Tag>>;
};

declare module "vue" {
  interface GlobalComponents {
${lines(elements, "    ", "Props")}  }
}
`;

/** Svelte's templates: an event is an attribute that begins with `on`. */
const svelteFile = (elements) =>
  `${made}import type { HTMLAttributes } from "svelte/elements";\nimport "./tags.js";\n${own}
${propsOver("HTMLAttributes<HTMLElementTagNameMap[Tag]>", "on${Name}")}
declare module "svelte/elements" {
  interface SvelteHTMLElements {
${lines(elements, "    ", "Props")}  }
}
`;

/** The words of a type that are closed or suggested. */
const wordsIn = (type) => [...type.matchAll(/"([^"]+)"/g)].map(([, word]) => word);

/** Hints for HTML, in the form of VS Code's custom data, which other editors read as well. */
function htmlData(elements) {
  return {
    version: 1.1,
    tags: elements.map(({ tagName, description, attributes }) => ({
      name: tagName,
      description,
      attributes: attributes.map(({ name, description: about, type }) => ({
        name,
        description: about,
        ...(type.text === "boolean" && { valueSet: "v" }),
        ...(wordsIn(type.text).length > 0 && { values: wordsIn(type.text).map((word) => ({ name: word })) }),
      })),
    })),
  };
}

const json = (value) => `${JSON.stringify(value, null, 2)}\n`;

/**
 * The files that a package of elements brings for editors and frameworks, by their paths in `dist`.
 * @param {object} manifest
 * @returns {Record<string, string>}
 */
export function typeFiles(manifest) {
  const elements = elementsOf(manifest).sort((one, other) => one.tagName.localeCompare(other.tagName));
  return {
    "custom-elements.json": json(manifest),
    "html-data.json": json(htmlData(elements)),
    "types/attributes.d.ts": attributesFile(elements),
    "types/tags.d.ts": tagsFile(elements),
    "types/react.d.ts": reactFile(elements),
    "types/preact.d.ts": preactFile(elements),
    "types/vue.d.ts": vueFile(elements),
    "types/svelte.d.ts": svelteFile(elements),
  };
}
