import MarkdownIt from "markdown-it";
import { parseFragment, type DefaultTreeAdapterTypes as Tree } from "parse5";
import rehypeStringify from "rehype-stringify";
import remarkParse from "remark-parse";
import remarkRehype from "remark-rehype";
import { unified } from "unified";
import { describe, expect, test } from "vitest";
import markdownItRule from "../../integrations/markdown-it/meshwright.js";
import remarkPlugin from "../../integrations/remark/meshwright.js";

const build =
  '<mw-build id="limpet" stages="Spur and pinion: 15 to 62" rear="Ring: 12 to 35" axle-third="Ring: 12 to 36"></mw-build>';
const sentence =
  'With <mw-teeth of="spur-and-pinion.driver">15</mw-teeth> teeth *the rear* turns <mw-value of="rear">12.06</mw-value> times.';
const table = "<table><tr><th>Rear</th><td>12.06 &amp; more</td></tr></table>";
const summary = `<mw-ratio-summary of="rear">${table}</mw-ratio-summary>`;

interface Made {
  readonly html: string;
  readonly told: readonly string[];
}

/** Each with HTML let through, and without. */
const ways: Record<string, (text: string) => Made> = {
  "markdown-it without HTML": (text) => markdownIt(text, false),
  "markdown-it with HTML": (text) => markdownIt(text, true),
  "remark without HTML": (text) => remark(text, false),
  "remark with HTML": (text) => remark(text, true),
};

function markdownIt(text: string, html: boolean): Made {
  const told: string[] = [];
  const md = new MarkdownIt({ html, typographer: true }).use(markdownItRule, {
    tell: (fault: string) => told.push(fault),
  });
  return { html: md.render(text), told };
}

function remark(text: string, allowDangerousHtml: boolean): Made {
  const file = unified()
    .use(remarkParse)
    .use(remarkPlugin)
    .use(remarkRehype, { allowDangerousHtml })
    .use(rehypeStringify, { allowDangerousHtml })
    .processSync(text);
  return { html: String(file), told: file.messages.map(({ reason }) => reason) };
}

type Element = Tree.Element;
const children = (node: Tree.Node): Tree.ChildNode[] => ("childNodes" in node ? node.childNodes : []);
const textOf = (node: Tree.Node): string =>
  node.nodeName === "#text" ? (node as Tree.TextNode).value : children(node).map(textOf).join("");
function all(node: Tree.Node, tag: string): Element[] {
  return children(node).flatMap((one) => [...(one.nodeName === tag ? [one as Element] : []), ...all(one, tag)]);
}
const attributes = (node: Element) => Object.fromEntries(node.attrs.map(({ name, value }) => [name, value]));
/** The page as a browser reads it. */
const read = (html: string) => parseFragment(html);

describe.each(Object.keys(ways))("%s", (name) => {
  const through = ways[name]!;

  test("a build, a count and a value stand in the page with all that they say", () => {
    const { html, told } = through(`First.\n\n${build}\n\n${sentence}\n`);
    const page = read(html);
    expect(told).toEqual([]);
    expect(all(page, "mw-build").map(attributes)).toEqual([
      { id: "limpet", stages: "Spur and pinion: 15 to 62", rear: "Ring: 12 to 35", "axle-third": "Ring: 12 to 36" },
    ]);
    expect(all(page, "mw-teeth").map((one) => [attributes(one), textOf(one)])).toEqual([
      [{ of: "spur-and-pinion.driver" }, "15"],
    ]);
    expect(all(page, "mw-value").map((one) => [attributes(one), textOf(one)])).toEqual([[{ of: "rear" }, "12.06"]]);
    expect(all(page, "em").map(textOf)).toEqual(["the rear"]);
    expect(textOf(page).replace(/\s+/g, " ").trim()).toBe("First. With 15 teeth the rear turns 12.06 times.");
  });

  test.each([
    ["alone", summary],
    ["wrapped", `<div>${summary}</div>`],
    ["over lines", summary.replace(/></g, ">\n<")],
    ["with a blank line inside", summary.replace("<table>", "\n\n<table>")],
  ])("a block %s keeps its table inside", (_, block) => {
    const page = read(through(`First.\n\n${block}\n\nLast.`).html);
    const [element] = all(page, "mw-ratio-summary");
    expect(all(page, "mw-ratio-summary")).toHaveLength(1);
    expect(all(element!, "td").map(textOf)).toEqual(["12.06 & more"]);
    expect(textOf(page).replace(/\s+/g, "")).toBe("First.Rear12.06&moreLast.");
  });

  test.each([
    ['<mw-value fo="rear">12.06</mw-value>', /no attribute fo; the nearest: .*of/],
    ['<mw-value figure="reductoin" of="rear">12.06</mw-value>', /no figure “reductoin”; the nearest: reduction/],
    ['<mw-value onclick="alert(1)" of="rear">12.06</mw-value>', /no attribute onclick/],
    ['<mw-value style="position:fixed" of="rear">12.06</mw-value>', /no attribute style/],
    ['<mw-build src="javascript:alert(1)">12.06</mw-build>', /leads to no file/],
  ])("%s is left as the author's text, and told", (mark, message) => {
    const { html, told } = through(`Turns ${mark} times.`);
    expect(html).not.toContain("mw-");
    expect(textOf(read(html)).trim()).toBe("Turns 12.06 times.");
    expect(told).toEqual([expect.stringMatching(message)]);
  });

  test("code stays code", () => {
    const page = read(through("Write `" + sentence + "`.\n\n    " + build).html);
    expect([all(page, "mw-value"), all(page, "mw-build")]).toEqual([[], []]);
    expect(textOf(page)).toContain('<mw-value of="rear">12.06</mw-value>');
  });

  test("lists, quotations and tables hold figures", () => {
    const page = read(through(`- ${sentence}\n- two\n\n> ${sentence}\n`).html);
    expect(all(page, "mw-value").map(textOf)).toEqual(["12.06", "12.06"]);
    expect(all(page, "li")).toHaveLength(2);
  });
});

describe.each(Object.keys(ways).filter((name) => name.includes("without")))("%s", (name) => {
  test("lets nothing else through", () => {
    const evil =
      '<mw-ratio-summary of="rear"><img src=x onerror=alert(1)><script>alert(1)</script><td onclick="x">1</td></mw-ratio-summary>';
    const { html } = ways[name]!(`Text ${evil}\n\n${evil}\n\n<script>alert(2)</script>\n`);
    const page = read(html);
    for (const tag of ["script", "img"]) expect(all(page, tag)).toEqual([]);
    expect(html).not.toMatch(/<[^>]*\son[a-z]+=/);
  });

  test("a script with JSON is refused with the way out", () => {
    const json = '<mw-build><script type="application/json">{"format":"meshwright-build/1"}</script></mw-build>';
    const { html, told } = ways[name]!(json);
    if (name.startsWith("markdown-it")) expect(told.join()).toMatch(/in attributes/);
    expect(html).not.toContain("alert");
  });
});
