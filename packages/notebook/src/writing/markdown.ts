import {
  defaultMarkdownSerializer,
  MarkdownParser,
  MarkdownSerializer,
  defaultMarkdownParser,
} from "prosemirror-markdown";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Mark, Node } from "prosemirror-model";
import { blockTags, closeTag, elementsFor, imageTag, openTag, type Elements } from "./html.js";
import { schema, type BlockAttrs, type FigureAttrs } from "./schema.js";

type Write = (typeof defaultMarkdownSerializer.nodes)[string];
type MarkWriting = (typeof defaultMarkdownSerializer.marks)[string];

/** What keeps attributes that Markdown has no word for is written as HTML. */
function serializerFor(elements: Elements): MarkdownSerializer {
  const { nodes, marks } = defaultMarkdownSerializer;
  const asHtml: Write = (state, node) => {
    state.text(blockTags(node, elements), false);
    state.closeBlock(node);
  };
  const hasRest = ({ attrs }: Node | Mark): boolean => !!attrs.rest;
  /** An item that keeps something is written with its whole list. */
  const keepsWithin = (node: Node): boolean =>
    hasRest(node) || node.children.some((item) => item.type.name === "list_item" && hasRest(item));
  const orHtml =
    (write: Write): Write =>
    (state, node, parent, index) =>
      keepsWithin(node) ? asHtml(state, node, parent, index) : write(state, node, parent, index);
  const orTags = (writing: MarkWriting): MarkWriting => ({
    ...writing,
    open: (state, mark, parent, index) => {
      if (hasRest(mark)) return openTag(mark);
      return typeof writing.open === "string" ? writing.open : writing.open(state, mark, parent, index);
    },
    close: (state, mark, parent, index) => {
      if (hasRest(mark)) return closeTag(mark);
      return typeof writing.close === "string" ? writing.close : writing.close(state, mark, parent, index);
    },
  });
  const blockNames = ["paragraph", "heading", "blockquote", "bullet_list", "ordered_list"];
  return new MarkdownSerializer(
    {
      ...nodes,
      ...Object.fromEntries(blockNames.map((name) => [name, orHtml(nodes[name]!)])),
      image: (state, node, parent, index) =>
        hasRest(node) ? state.write(imageTag(node)) : nodes.image!(state, node, parent, index),
      // Tags are written as they are: nothing in them is Markdown.
      figure: (state, node) => state.write(elements.figure(node.attrs as unknown as FigureAttrs)),
      kept: (state, node) => state.write(elements.kept(node.attrs.html as string)),
      kept_block: asHtml,
      box: asHtml,
      drawn: (state, node) => {
        state.write(elements.block(node.attrs as unknown as BlockAttrs).replace(/\n/g, " "));
        state.closeBlock(node);
      },
    },
    {
      ...Object.fromEntries(Object.entries(marks).map(([name, writing]) => [name, orTags(writing)])),
      phrase: { open: (_state, mark) => openTag(mark), close: (_state, mark) => closeTag(mark), mixable: true },
    },
    // What somebody wrote as a sign is no tag.
    { escapeExtraCharacters: /<|&(?=#?\w+;)/g },
  );
}

/**
 * The post as Markdown: elements on one line each, the drivetrain at the top. Where the post begins with a paragraph it is part of that
 * one: a system that shows the first paragraph in a list shows words, and their figures alive.
 */
export function postToMarkdown(doc: Node, build: Build | undefined): string {
  const elements = elementsFor(doc, build);
  const body = serializerFor(elements).serialize(doc);
  const gap = doc.firstChild?.type.name === "paragraph" && doc.firstChild.childCount > 0 ? "\n" : "\n\n";
  return `${build ? `${elements.carried()}${gap}` : ""}${body}\n`;
}

const parser = new MarkdownParser(schema, defaultMarkdownParser.tokenizer, defaultMarkdownParser.tokens);

/** Markdown as a post. Tags in it stay as they are, for whoever reads HTML out of them. */
export const postFromMarkdown = (text: string): Node => parser.parse(text);
