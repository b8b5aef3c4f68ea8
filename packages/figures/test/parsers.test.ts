// The same texts, read by other people's parsers: ours have to find the same elements at the same places.
import fc from "fast-check";
import { fromMarkdown } from "mdast-util-from-markdown";
import { mdxFromMarkdown } from "mdast-util-mdx";
import { mdxjs } from "micromark-extension-mdxjs";
import { describe, expect, it } from "vitest";
import { elementsIn } from "../src/article.js";
import { readArticle, type Format } from "../src/read.js";

interface Tree {
  readonly type: string;
  readonly name?: string | null;
  readonly children?: readonly Tree[];
  readonly position?: { readonly start: { readonly offset?: number }; readonly end: { readonly offset?: number } };
}

function nodesOf(tree: Tree): readonly Tree[] {
  return [tree, ...(tree.children ?? []).flatMap(nodesOf)];
}

/** Where our elements begin, and what stands between the tags of each. */
function ours(source: string, format: Format) {
  const found = [...elementsIn(readArticle(source, format))].filter(({ tag }) => tag === "mw-value");
  return found
    .map(({ start, inside }) => [start, inside && source.slice(...inside)] as const)
    .sort((a, b) => a[0] - b[0]);
}

const pieces = [
  ...['<mw-value of="front">44.31</mw-value>', "<mw-value>1</mw-value>", "<mw-value\n  of='x'>2</mw-value>"],
  ...["words", " and ", "44.31", ".", "**", "_", "*", "`", "``", "[", "](x)", "[a](b)", "![", "\\", "&amp;", "&nbsp;"],
  ...[
    "\n",
    "\n\n",
    "\n\n\n",
    "\n    ",
    "  \n",
    "\n> ",
    "\n- ",
    "\n1. ",
    "\n  ",
    "\n# ",
    "\n```\n",
    "\n~~~\n",
    "\n---\n",
    "\n===\n",
  ],
  ...["<b>", "</b>", "<div>", "\n\n<div>\n", "\n</div>\n", "(", ")", "\t", "\n[a]: b 'c'\n\n", "'", '"'],
];
const text = fc
  .array(fc.constantFrom(...pieces), { maxLength: 16 })
  .map((parts) => `<mw-value>0</mw-value>${parts.join("")}`);

describe("our reading of an article", () => {
  it("finds the tags of HTML where another parser of Markdown finds them", () => {
    fc.assert(
      fc.property(text, (source) => {
        const tags = nodesOf(fromMarkdown(source) as Tree)
          .filter(({ type }) => type === "html")
          .flatMap(({ position }) => {
            const [start, end] = [position!.start.offset!, position!.end.offset!];
            return [...source.slice(start, end).matchAll(/<mw-value(?:\s[^<>]*)?>/g)].map(({ index }) => start + index);
          });
        // Half a tag at the end of a block is one to a browser; it is never mended.
        const found = ours(source, "markdown").filter(
          ([start, inside]) => inside !== undefined || tags.includes(start),
        );
        expect(found.map(([start]) => start)).toEqual(tags);
      }),
      { numRuns: 1200 },
    );
  });

  const properties = [
    '<mw-value of="front">44.31</mw-value>',
    "<mw-value of={front}>3</mw-value>",
    "<mw-value {...x}/>",
  ];
  const program = [
    ...properties,
    "{a}",
    '{"}"}',
    "{/* <mw-value> */}",
    "{`${b}`}",
    "\n{\n a\n}\n",
    "<Note>",
    "</Note>",
  ];
  const more = [
    "<mw-value />",
    "<></>",
    "\n<Note>\n",
    "\n</Note>\n",
    "\n<Note a='>' b={c}>\n\n",
    "\nimport a from 'b'\n\n",
    "<br/>",
    ...["\n    ```\n", "\n\n     ````\n", "\n        ~~~\n", "\n      # ", "\n     > ", "\n       - ", "\n     ---\n"],
  ];
  const mdx = fc
    .array(fc.constantFrom(...pieces, ...program, ...more), { maxLength: 14 })
    .map((parts) => `<mw-value>0</mw-value>${parts.join("")}`);

  it("finds the tags of JSX where the parser of MDX finds them, with the same between them", () => {
    let compared = 0;
    fc.assert(
      fc.property(mdx, (source) => {
        let tree: Tree;
        try {
          tree = fromMarkdown(source, { extensions: [mdxjs()], mdastExtensions: [mdxFromMarkdown()] }) as Tree;
        } catch {
          // What is no MDX to its own parser may be anything to us.
          return;
        }
        compared++;
        const tags = nodesOf(tree).filter(({ type, name }) => type.startsWith("mdxJsx") && name === "mw-value");
        const starts = tags.map(({ position }) => position!.start.offset!).sort((a, b) => a - b);
        const found = ours(source, "mdx");
        expect(found.map(([start]) => start)).toEqual(starts);
        for (const { position } of tags) {
          const [, inside] = found.find(([start]) => start === position!.start.offset)!;
          if (inside === undefined) continue;
          const written = source.slice(position!.start.offset, position!.end.offset);
          expect(written.endsWith(`${inside}</mw-value>`)).toBe(true);
        }
      }),
      { numRuns: 2000 },
    );
    expect(compared).toBeGreaterThan(200);
  });
});
