import { schema as markdown } from "prosemirror-markdown";
import { Schema, type Attrs, type Node } from "prosemirror-model";

/** A figure in a sentence: which element shows it, and what it asks the drivetrain for. */
export interface FigureAttrs {
  readonly tag: "mw-teeth" | "mw-value";
  /** The element's attributes, by name. */
  readonly ask: Readonly<Record<string, string>>;
}

/** A picture or table of the drivetrain, as a block of its own. */
export interface BlockAttrs {
  readonly tag: string;
  readonly ask: Readonly<Record<string, string>>;
}

/** What can be put between paragraphs. */
export const blocks: Readonly<Record<string, string>> = {
  "mw-ratio-summary": "Totals, stage by stage",
  "mw-overdrive-gauge": "Front against rear",
  "mw-train-drawing": "The gears, to scale",
  "mw-working": "The working",
  "mw-parts-list": "Every part",
  "mw-wheel-speed": "Speeds",
};

const askOf = (element: HTMLElement): Record<string, string> =>
  Object.fromEntries(
    [...element.attributes]
      .filter(({ name }) => /^[a-z-]+$/.test(name) && !/^(class|style|id|contenteditable|draggable)$/.test(name))
      .map(({ name, value }) => [name, value]),
  );

const drawn = (attrs: Attrs): [string, Record<string, string>] => [
  attrs.tag as string,
  attrs.ask as Record<string, string>,
];

/** What a post is made of: what Markdown has, figures as atoms, and pictures and tables of the drivetrain. */
export const schema = new Schema({
  nodes: markdown.spec.nodes
    .addBefore("image", "figure", {
      inline: true,
      group: "inline",
      atom: true,
      attrs: { tag: { default: "mw-value" }, ask: { default: {} } },
      leafText: () => "\ufffc",
      parseDOM: ["mw-teeth", "mw-value"].map((tag) => ({
        tag,
        getAttrs: (element: HTMLElement) => ({ tag, ask: askOf(element) }),
      })),
      toDOM: ({ attrs }) => drawn(attrs),
    })
    .addToEnd("drawn", {
      group: "block",
      atom: true,
      attrs: { tag: { default: "mw-ratio-summary" }, ask: { default: {} } },
      parseDOM: Object.keys(blocks).map((tag) => ({
        tag,
        getAttrs: (element: HTMLElement) => ({ tag, ask: askOf(element) }),
      })),
      toDOM: ({ attrs }) => drawn(attrs),
    }),
  marks: markdown.spec.marks,
});

/** An empty post. */
export const emptyPost = (): Node => schema.node("doc", null, [schema.node("paragraph")]);

/** A post out of data that may have been anywhere; an empty one where it is none. */
export function postOf(data: unknown): Node {
  if (!data) return emptyPost();
  try {
    const node = schema.nodeFromJSON(data);
    node.check();
    return node.type.name === "doc" ? node : emptyPost();
  } catch {
    return emptyPost();
  }
}
