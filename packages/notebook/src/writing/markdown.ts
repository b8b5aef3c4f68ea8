import {
  defaultMarkdownSerializer,
  MarkdownParser,
  MarkdownSerializer,
  defaultMarkdownParser,
} from "prosemirror-markdown";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Node } from "prosemirror-model";
import { elementsFor, type Elements } from "./html.js";
import { schema, type BlockAttrs, type FigureAttrs } from "./schema.js";

const serializerFor = (elements: Elements): MarkdownSerializer =>
  new MarkdownSerializer(
    {
      ...defaultMarkdownSerializer.nodes,
      // Tags are written as they are: nothing in them is Markdown.
      figure: (state, node) => state.write(elements.figure(node.attrs as unknown as FigureAttrs)),
      drawn: (state, node) => {
        state.write(elements.block(node.attrs as unknown as BlockAttrs).replace(/\n/g, " "));
        state.closeBlock(node);
      },
    },
    defaultMarkdownSerializer.marks,
  );

/**
 * The post as Markdown: elements on one line each, the drivetrain at the top. Where the post begins with a paragraph it is part of that
 * one: a system that shows the first paragraph in a list shows words, and their figures alive.
 */
export function postToMarkdown(doc: Node, build: Build | undefined): string {
  const elements = elementsFor(
    doc,
    build ?? ({ format: "meshwright-build/1", stages: [], outputs: [] } as unknown as Build),
  );
  const body = serializerFor(elements).serialize(doc);
  const gap = doc.firstChild?.type.name === "paragraph" && doc.firstChild.childCount > 0 ? "\n" : "\n\n";
  return `${build ? `${elements.carried()}${gap}` : ""}${body}\n`;
}

const parser = new MarkdownParser(schema, defaultMarkdownParser.tokenizer, defaultMarkdownParser.tokens);

/** Markdown as a post. Tags in it stay as they are, for whoever reads HTML out of them. */
export const postFromMarkdown = (text: string): Node => parser.parse(text);
