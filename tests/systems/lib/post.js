// A post as somebody writes it in the notebook, and what the notebook copies of it for a system.
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { at } from "../../../scripts/lib/paths.js";

/** The notebook's writers, which are sources of TypeScript. */
async function writers() {
  const outfile = at(".cache", "systems", "writing.mjs");
  await build({
    stdin: {
      contents: `export { handedOut } from "./writing/handed-out.ts"; export { schema } from "./writing/schema.ts"; export { systems } from "@meshwright/calc/article"; export { parseBuild } from "@meshwright/calc/document";`,
      resolveDir: at("packages", "notebook", "src"),
    },
    bundle: true,
    format: "esm",
    platform: "neutral",
    mainFields: ["module", "main"],
    outfile,
    logLevel: "silent",
  });
  return import(`${pathToFileURL(outfile)}?${Date.now()}`);
}

/** What a reader reads without scripts: hand-worked, 62/15 × 45/18 × 38/13 × 22/15 and so on. */
export const sentences = {
  first: "With 15 teeth the front turns once for every 44.30 turns of the motor.",
  second: "At the rear it is 43.32: the front is a little slower.",
};

const count = { tag: "mw-teeth", ask: { of: "spur-and-pinion.driver" } };
const front = { tag: "mw-value", ask: { of: "front" } };
const rear = { tag: "mw-value", ask: { of: "rear" } };
const drawn = (tag) => ({ type: "drawn", attrs: { tag, ask: {} } });
const text = (words) => ({ type: "text", text: words });
const figure = (attrs) => ({ type: "figure", attrs });

const outline = (more) => ({
  type: "doc",
  content: [
    {
      type: "paragraph",
      content: [
        ...[text("With "), figure(count), text(" teeth the front turns once for every "), figure(front)],
        text(" turns of the motor."),
      ],
    },
    { type: "heading", attrs: { level: 2 }, content: [text("Both axles")] },
    drawn("mw-ratio-summary"),
    {
      type: "paragraph",
      content: [text("At the rear it is "), figure(rear), text(": the front is a little slower.")],
    },
    drawn("mw-overdrive-gauge"),
    ...more.map((words) => ({ type: "paragraph", content: [text(words)] })),
  ],
});

/** The drivetrain of the post, in our invented world. */
const limpet = {
  format: "meshwright-build/1",
  title: "Limpet",
  stages: [
    { id: "spur-and-pinion", label: "Spur and pinion", kind: "pair", driver: 15, driven: 62 },
    { id: "gear-row", label: "Gear row", kind: "train", teeth: [18, 31, 45] },
  ],
  outputs: [
    {
      ...{ id: "front", label: "Front", wheel: { diameter: "124 mm" } },
      stages: [
        { id: "front-ring", label: "Ring", kind: "pair", driver: 13, driven: 38 },
        { id: "front-hub", label: "Hub", kind: "pair", driver: 15, driven: 22 },
      ],
    },
    {
      ...{ id: "rear", label: "Rear", wheel: { diameter: "120 mm" } },
      stages: [
        { id: "rear-ring", label: "Ring", kind: "pair", driver: 12, driven: 35 },
        { id: "rear-hub", label: "Hub", kind: "pair", driver: 16, driven: 23 },
      ],
    },
  ],
};

/** The writers, and the post in every form that the notebook copies. `more`: paragraphs that came later. */
export async function notebook() {
  const { schema, systems, parseBuild, handedOut } = await writers();
  const build = parseBuild(limpet);
  return {
    systems,
    post: (writing, more = []) => handedOut(schema.nodeFromJSON(outline(more)), build, writing),
  };
}
