import { schema as markdown } from "prosemirror-markdown";
import {
  Schema,
  type AttributeSpec,
  type Attrs,
  type Node,
  type NodeSpec,
  type NodeType,
  type TagParseRule,
} from "prosemirror-model";

/** Attributes of an element, by name. */
export type Ask = Readonly<Record<string, string>>;

/** A figure in a sentence: which element shows it, and what it asks the drivetrain for. */
export interface FigureAttrs {
  readonly tag: "mw-teeth" | "mw-value";
  /** The element's attributes, by name. */
  readonly ask: Ask;
  /** What it said last: the author's own text, where the drivetrain has no answer any more. */
  readonly said?: string;
  /** Attributes that ask for nothing: classes and the like. */
  readonly rest?: Ask | null;
}

/** A picture or table of the drivetrain, as a block of its own. */
export interface BlockAttrs {
  readonly tag: string;
  readonly ask: Ask;
  /** What stood in it last, as HTML. */
  readonly said?: string;
  readonly rest?: Ask | null;
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

/** Elements in a sentence that the editor has no button for: they stay around their words. */
export const phrases = [
  ...["a", "abbr", "bdi", "bdo", "cite", "del", "dfn", "font", "ins", "kbd", "mark", "q", "s", "samp", "small", "span"],
  ...["sub", "sup", "time", "u", "var"],
];
/** Elements around paragraphs that stay around them. */
export const boxes = ["address", "article", "aside", "div", "footer", "header", "main", "nav", "section"];

const tags = /<[a-z/!?](?:"[^"]*"|'[^']*'|[^>"'])*(?:>|$)/gi;

const named: Readonly<Record<string, string>> = { colon: ":", tab: "\t", newline: "\n" };

/** A text of markup with the characters that are written by their numbers, or by a name that an address may hide behind. */
const plainly = (text: string): string =>
  text.replace(/&(?:#x0*([0-9a-f]{1,6})|#0*(\d{1,7})|(colon|tab|newline));?/gi, (_, hex, decimal, name) => {
    if (name) return named[(name as string).toLowerCase()]!;
    return String.fromCodePoint(Math.min(hex ? parseInt(hex as string, 16) : Number(decimal), 0x10ffff));
  });

/** Whether an address is a script: blanks and controls inside it are nothing to a browser. */
const isScript = (address: string): boolean => /^["']?(java|vb)script:/i.test(address.replace(/[\s\p{Cc}]/gu, ""));

/** Whether markup would run something, or speak for the whole page. */
const runs = (html: string): boolean =>
  (html.match(tags) ?? []).some((tag) => {
    const names = tag.replace(/"[^"]*"|'[^']*'/g, '""');
    return (
      /^<\/?(script|style|base|meta|link)\b/i.test(tag) ||
      /[\s/"](on[a-z]+|srcdoc)\s*=/i.test(names) ||
      tag.split("=").slice(1).map(plainly).some(isScript)
    );
  });

/** Attributes that may stand in a post: none that runs anything. */
export const isHarmless = (name: string, value: string): boolean =>
  /^[a-z][\w:.-]*$/i.test(name) && !/^(on|srcdoc$)/i.test(name) && !isScript(value);

const isAsk = (value: unknown): value is Ask =>
  typeof value === "object" &&
  value !== null &&
  !Array.isArray(value) &&
  Object.entries(value).every(([name, text]) => typeof text === "string" && isHarmless(name, text));

const must = (is: boolean, what: string): void => {
  if (!is) throw new RangeError(`This is no ${what}.`);
};
const oneOf = (known: readonly string[]): AttributeSpec["validate"] => {
  return (value) => must(known.includes(value as string), "element of a post");
};
const restAttr: AttributeSpec = { default: null, validate: (value) => must(value === null || isAsk(value), "list") };
const askAttr: AttributeSpec = { default: {}, validate: (value) => must(isAsk(value), "list") };
const htmlAttr: AttributeSpec = {
  default: "",
  validate: (value) => must(typeof value === "string" && !runs(value), "markup"),
};

/** Under it, what the editor has no use for travels through the clipboard. */
export const keptName = "data-mw-kept";

const recordOf = (text: string | null): Ask | null => {
  try {
    const read: unknown = JSON.parse(text ?? "null");
    return isAsk(read) && Object.keys(read).length ? read : null;
  } catch {
    return null;
  }
};

const restOf = (element: HTMLElement): Ask | null => recordOf(element.getAttribute(keptName));
const withRest = (rest: unknown): Record<string, string> => (rest ? { [keptName]: JSON.stringify(rest) } : {});

/** A part of a post that keeps attributes which nobody here has a use for. */
function keeping<Spec extends Pick<NodeSpec, "attrs" | "parseDOM" | "toDOM">>(spec: Spec): Spec {
  const { attrs, parseDOM, toDOM } = spec;
  return {
    ...spec,
    attrs: { ...attrs, rest: restAttr },
    parseDOM: parseDOM?.map((rule) => {
      const { tag, getAttrs, attrs: fixed } = rule as TagParseRule;
      if (!tag) return rule;
      return {
        ...rule,
        getAttrs: (element: HTMLElement) => {
          const own = getAttrs ? getAttrs(element) : {};
          return own === false ? false : { ...fixed, ...own, rest: restOf(element) };
        },
      };
    }),
    toDOM: (one: Node) => {
      const [name, second, ...others] = toDOM!(one) as unknown as [string, ...unknown[]];
      const has = typeof second === "object" && !Array.isArray(second);
      const own = { ...(has && second), ...withRest(one.attrs.rest) };
      return [name, own, ...(has || second === undefined ? [] : [second]), ...others];
    },
  } as Spec;
}

const askOf = (element: HTMLElement): Record<string, string> =>
  Object.fromEntries(
    [...element.attributes]
      .filter(
        ({ name, value }) =>
          /^[a-z-]+$/.test(name) &&
          !/^(class|style|id|contenteditable|draggable)$/.test(name) &&
          name !== keptName &&
          isHarmless(name, value),
      )
      .map(({ name, value }) => [name, value]),
  );

const elementOf = (attrs: Attrs): [string, Record<string, string>] => [
  attrs.tag as string,
  attrs.ask as Record<string, string>,
];

/** What stands in an element of the drivetrain, as its markup: nothing where it would run something. */
const markupIn = ({ innerHTML }: HTMLElement): string =>
  runs(innerHTML) ? "" : innerHTML.replace(/\s*\n\s*/g, " ").trim();

/** Markup that is kept as it stands, as one thing. */
const keptNode = (isInline: boolean): NodeSpec => {
  const tag = isInline ? "span" : "div";
  const name = `${keptName}-html`;
  return {
    inline: isInline,
    group: isInline ? "inline" : "block",
    atom: true,
    attrs: { html: htmlAttr },
    leafText: () => "\ufffc",
    parseDOM: [
      {
        tag: `${tag}[${name}]`,
        priority: 90,
        getAttrs: (element) => {
          const html = element.getAttribute(name) ?? "";
          return runs(html) ? false : { html };
        },
      },
    ],
    toDOM: ({ attrs }) => [tag, { [name]: attrs.html as string }],
  };
};

const { nodes: known, marks } = markdown.spec;
const keptNodes = ["paragraph", "blockquote", "ordered_list", "bullet_list", "list_item", "hard_break"];

/**
 * What a post is made of: what Markdown has, figures as atoms, pictures and tables of the drivetrain; and what a post brings along
 * that no button makes: elements around words and paragraphs, and markup that is kept as it stands.
 */
export const schema = new Schema({
  nodes: keptNodes
    .reduce((all, name) => all.update(name, keeping(all.get(name)!)), known)
    .update(
      "image",
      keeping({
        ...known.get("image")!,
        toDOM: ({ attrs: { src, alt, title } }: Node) => ["img", { src, alt, title } as Record<string, string>],
      } as NodeSpec),
    )
    // A figure may stand in a heading as well.
    .update("heading", { ...keeping(known.get("heading")!), content: "inline*" })
    .addBefore(
      "image",
      "figure",
      keeping({
        inline: true,
        group: "inline",
        atom: true,
        attrs: {
          tag: { default: "mw-value", validate: oneOf(["mw-teeth", "mw-value"]) },
          ask: askAttr,
          said: { default: "", validate: "string" },
        },
        leafText: () => "\ufffc",
        parseDOM: ["mw-teeth", "mw-value"].map((tag) => ({
          tag,
          getAttrs: (element: HTMLElement) => ({
            tag,
            ask: askOf(element),
            said: element.textContent.replace(/\s+/g, " ").trim(),
          }),
        })),
        toDOM: ({ attrs }) => [...elementOf(attrs), attrs.said as string],
      } as NodeSpec),
    )
    .addBefore("image", "kept", keptNode(true))
    .addToEnd(
      "drawn",
      keeping({
        group: "block",
        atom: true,
        attrs: {
          tag: { default: "mw-ratio-summary", validate: oneOf(Object.keys(blocks)) },
          ask: askAttr,
          said: htmlAttr,
        },
        parseDOM: Object.keys(blocks).map((tag) => ({
          tag,
          getAttrs: (element: HTMLElement) => ({ tag, ask: askOf(element), said: markupIn(element) }),
        })),
        toDOM: ({ attrs }) => elementOf(attrs),
      } as NodeSpec),
    )
    .addToEnd(
      "box",
      keeping({
        group: "block",
        content: "block+",
        attrs: { tag: { default: "div", validate: oneOf(boxes) } },
        // A bare one says nothing.
        parseDOM: boxes.map((tag) => ({ tag: tag === "div" ? `div[${keptName}]` : tag, getAttrs: () => ({ tag }) })),
        toDOM: ({ attrs }) => [attrs.tag as string, 0],
      } as NodeSpec),
    )
    .addToEnd("kept_block", keptNode(false)),
  marks: ["em", "strong"]
    .reduce((all, name) => all.update(name, keeping(all.get(name) as NodeSpec) as never), marks)
    .update(
      "link",
      keeping({
        ...(marks.get("link") as NodeSpec),
        toDOM: ({ attrs: { href, title } }: Node) => ["a", { href, title } as Record<string, string>, 0],
      } as NodeSpec) as never,
    )
    .addToStart(
      "phrase",
      keeping({
        attrs: { tag: { default: "span", validate: oneOf(phrases) } },
        excludes: "",
        inclusive: false,
        parseDOM: phrases.map((tag) => ({
          tag: tag === "a" ? "a:not([href])" : /^(span|font)$/.test(tag) ? `${tag}[${keptName}]` : tag,
          getAttrs: () => ({ tag }),
        })),
        toDOM: ({ attrs }) => [attrs.tag as string, 0],
      } as NodeSpec) as never,
    ),
});

/** A node as it lies in a file. */
interface Data {
  readonly type?: unknown;
  readonly attrs?: unknown;
  readonly content?: unknown;
  readonly marks?: unknown;
  readonly text?: unknown;
}
const isData = (value: unknown): value is Data => typeof value === "object" && value !== null && !Array.isArray(value);
const childrenOf = ({ content }: Data): readonly Data[] => (Array.isArray(content) ? content.filter(isData) : []);

/** A post as it was read, and what of it nobody here knows, by name. */
export interface ReadPost {
  readonly doc: Node;
  readonly unknown: readonly string[];
}

const emptyParagraph = (): Node => schema.node("paragraph");
const textIn = (one: Data): string => (typeof one.text === "string" ? one.text : childrenOf(one).map(textIn).join(""));

const isList = (type: NodeType | undefined): boolean =>
  type === schema.nodes.bullet_list || type === schema.nodes.ordered_list;

/** Reads a post of which not all is known: what is known stays, of all else its text. */
class Mending {
  readonly unknown = new Set<string>();

  #made(one: Data, content: readonly Node[], isInline: boolean): Node | undefined {
    const type = typeof one.type === "string" ? schema.nodes[one.type] : undefined;
    if (!type || type.isInline !== isInline || type.name === "doc") return undefined;
    const marksOf = isInline && Array.isArray(one.marks) ? one.marks.flatMap((mark) => this.#mark(mark)) : [];
    try {
      if (type.isText) return schema.text(String(one.text), marksOf);
      const node = type.createChecked(isData(one.attrs) ? one.attrs : null, [...content], marksOf);
      node.check();
      return node;
    } catch {
      return undefined;
    }
  }

  #mark(data: unknown) {
    try {
      return [schema.markFromJSON(data)];
    } catch {
      this.#miss(isData(data) ? data.type : undefined);
      return [];
    }
  }

  #miss(type: unknown): void {
    this.unknown.add(typeof type === "string" ? type : "something without a name");
  }

  inline(one: Data): readonly Node[] {
    const made = this.#made(one, [], true);
    if (made) return [made];
    if (one.type !== "text") this.#miss(one.type);
    const inside = childrenOf(one).flatMap((child) => this.inline(child));
    const said = isData(one.attrs) ? (one.attrs as { said?: unknown }).said : undefined;
    const text = typeof one.text === "string" ? one.text : typeof said === "string" && !/</.test(said) ? said : "";
    return text ? [schema.text(text), ...inside] : inside;
  }

  block(one: Data): readonly Node[] {
    const type = typeof one.type === "string" ? schema.nodes[one.type] : undefined;
    if (type?.isInline || one.type === "text") {
      const inline = this.inline(one);
      return inline.length ? [schema.node("paragraph", null, [...inline])] : [];
    }
    const isText = type ? type.isTextblock : this.#hasWords(one);
    const inside = isText ? childrenOf(one).flatMap((child) => this.inline(child)) : this.blocks(one, isList(type));
    const made = type && this.#made(one, inside, false);
    if (made) return [made];
    this.#miss(one.type);
    if (!isText) return inside.map((node) => (node.type.name === "list_item" ? [...node.children] : [node])).flat();
    if (!inside.length && typeof one.text === "string")
      return [schema.node("paragraph", null, [schema.text(one.text)])];
    if (!inside.length) return [];
    try {
      return [schema.nodes.paragraph!.createChecked(null, [...inside])];
    } catch {
      return [schema.node("paragraph", null, [schema.text(textIn(one) || " ")])];
    }
  }

  #hasWords(one: Data): boolean {
    return childrenOf(one).some(
      ({ type }) => type === "text" || (typeof type === "string" && schema.nodes[type]?.isInline),
    );
  }

  /** @param isOfItems each stands in an item of its own */
  blocks(one: Data, isOfItems = false): readonly Node[] {
    const found = childrenOf(one).flatMap((child) => this.block(child));
    if (!isOfItems) return found;
    return found.map((node) => (node.type.name === "list_item" ? node : schema.node("list_item", null, [node])));
  }
}

/**
 * A post out of data that may have been anywhere. What is not known is named, and its text stays as text; an empty post where the
 * data are none.
 */
export function readPost(data: unknown): ReadPost {
  try {
    const node = schema.nodeFromJSON(data);
    node.check();
    if (node.type.name === "doc") return { doc: node, unknown: [] };
  } catch {
    // What is known of it stays.
  }
  const mending = new Mending();
  const found = isData(data) ? (data.type === "doc" ? mending.blocks(data) : mending.block(data)) : [];
  // An item of a list stands in none here.
  const content = found.flatMap((node) => (node.type.name === "list_item" ? [...node.children] : [node]));
  const doc = schema.node("doc", null, content.length ? content : [emptyParagraph()]);
  return { doc, unknown: [...mending.unknown] };
}

/** The same without what was not known. */
export const postOf = (data: unknown): Node => readPost(data).doc;
