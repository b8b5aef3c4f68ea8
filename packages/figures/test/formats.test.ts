import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures, type Format } from "../src/index.js";
import { attributes, build, page, post } from "./pages.js";

const stale = '<mw-value of="front">44.31</mw-value>';
const right = '<mw-value of="front">44.30</mw-value>';

/** Mends what is stale, and nothing of what is said to be no markup. */
function mends(source: string, format: Format, figures = 1) {
  const { text, mended, left } = mendFigures(source, { format });
  expect([mended, left]).toEqual([figures, 0]);
  return text;
}

describe("Markdown", () => {
  const untouched: Readonly<Record<string, string>> = {
    "front matter in YAML": `---\ntitle: A ${stale}\n---\n\nX`,
    "front matter in YAML with its language": `---yaml\ntitle: A ${stale}\n---\n\nX`,
    "front matter in TOML": `+++\ntitle = '${stale}'\n+++\n\nX`,
    "front matter in JSON": `{\n"title": "${stale.replaceAll('"', "'")}"\n}\n\nX`,
    "inline code": `X \`${stale}\` and \`\`${stale} \` ${stale}\`\``,
    "fenced code": `X\n\n\`\`\`html\n${stale}\n\`\`\`\n\n~~~\n${stale}\n~~~\n\n> \`\`\`\n> ${stale}\n> \`\`\``,
    "code by indentation": `X\n\n    ${stale}\n`,
    "an escaped tag": `X \\${stale}`,
    "a comment": `X <!-- ${stale} -->\n\n<!--\n${stale}\n\n${stale}\n-->`,
    "an address": `X <https://example.org/${stale.replaceAll(/["<> ]/g, "")}>`,
    "a link's title": `X [y](z "${stale.replaceAll('"', "'")}") and ![${stale.replaceAll('"', "'")}](z)`,
    "a link's definition": `X\n\n[y]: z '${stale}'`,
    "a script": `<script>\nconst x = '${stale}';\n\nconst y = '${stale}';\n</script>\n\nX`,
  };
  it.each(Object.keys(untouched))("leaves %s as it is", (name) => {
    const [before = "", after = ""] = [untouched[name]!, post(`Front ${stale}.`)];
    expect(mends(`${before}\n\n${after}`, "markdown")).toBe(`${before}\n\n${after.replace(stale, right)}`);
  });

  const places: Readonly<Record<string, (figure: string) => string>> = {
    "a paragraph of several lines": (figure) => `One\ntwo ${figure} three\n${figure} four`,
    "a heading": (figure) => `# ${figure} ##\n\n${figure}\n===`,
    "a list": (figure) => `- one ${figure}\n  - two\n    ${figure}\n\n1. three ${figure}\n\n   ${figure}`,
    "a quotation": (figure) => `> one ${figure}\n> two ${figure}\n${figure}\n> > ${figure}`,
    "a table": (figure) => `| a | b |\n|---|:-:|\n| ${figure} | x ${figure} |\n| 44.31 | ${figure}|`,
    "a table with strokes in it": (figure) =>
      `| a | b |\n|---|---|\n| x \\| ${figure} | \`y \\| z\` ${figure} |\n| ${figure.replace(" of", ' title="p \\| q" of')} \\| ${figure} | ${figure} |`,
    emphasis: (figure) => `**${figure}** and *a ${figure} b* and ~~${figure}~~ and [${figure}](x "y")`,
    "emphasis inside": (figure) => figure.replace(/>(44[^<]*)</, ">**$1**<"),
    HTML: (figure) => `<div>\n${figure}\n</div>\n\n<table><tr>\n<td>${figure}</td>\n</tr></table>`,
    "a tag over several lines": (figure) => `One ${figure.replace(" of", "\n  of")} two`,
    "a list of HTML": (figure) => `- <div>\n  ${figure}\n  </div>\n\t- ${figure}`,
    "lines of another length": (figure) => `One\r\ntwo ${figure}\r\n\r\n> ${figure}\r\n> ${figure}\r\n`,
  };
  it.each(Object.keys(places))("mends figures in %s", (name) => {
    const source = (figure: string) => post(places[name]!(figure));
    const times = source("\u0000").split("\u0000").length - 1 || 1;
    expect(mends(source(stale), "markdown", times)).toBe(source(right));
  });

  it("keeps a mark of the encoding, and blanks that are written as a character's code", () => {
    const source = `\uFEFF---\r\ntitle: ${stale}\r\n---\r\n\r\n${build}\r\n\r\nAt <mw-value figure="drift" over="10 m">99&nbsp;mm</mw-value>.\r\n`;
    expect(mends(source, "markdown")).toBe(source.replace("99&nbsp;", "106&nbsp;"));
  });

  it("does not mend in code, nor where a figure is written in another way than it reads", () => {
    for (const content of ["`44.31`", "44\\.31", "[44.31](x)44"])
      expect(mendFigures(post(`A <mw-value of="front">${content}</mw-value>`), { format: "markdown" }).mended).toBe(0);
  });

  it("takes JSON in a script for what it is", () => {
    const json = `{ “format”: "meshwright-build/1", "outputs": [{ "id": "rear", "stages": [{ "id": "ring", "kind": "pair", "driver": 12, "driven": 36 }] }] }`;
    const source = `<mw-build>\n<script type="application/json">\n${json}\n</script>\n</mw-build>\n\nRear <mw-value of="rear">3.00</mw-value>\n`;
    expect(checkFigures(source, { format: "markdown" })).toMatchObject({ compared: 1, differences: [] });
  });

  it("refuses what is nested deeper than it is read", () => {
    expect(() => checkFigures(`${">".repeat(200)} ${build}`, { format: "markdown" })).toThrow(/nested/);
  });
});

describe("HTML", () => {
  it.each([
    ["front matter", `---\ntitle: ${stale}\n---\n`],
    ["comments", `<!-- ${stale} -->`],
    ["scripts and styles", `<script>let a = '${stale}'</script><style>/* ${stale} */</style>`],
    ["text that is shown as it is", `<textarea>${stale}</textarea><title>${stale}</title>`],
    ["escaped tags", stale.replaceAll("<", "&lt;")],
  ])("leaves %s as they are", (_, before) => {
    const source = before + page(stale);
    expect(mends(source, "html")).toBe(before + page(right));
  });

  it("keeps the mark of the encoding", () => {
    expect(mends(`\uFEFF${page(stale)}`, "html")).toBe(`\uFEFF${page(right)}`);
  });
});

describe("MDX", () => {
  it.each([
    ["front matter", `---\ntitle: ${stale}\n---\n`],
    ["comments", `{/* ${stale}\n\n${stale} */}\n\nX {/* ${stale}\n${stale} */} Y`],
    ["comments of HTML", `X <!-- ${stale} -->\n\n<!--\n${stale}\n-->`],
    ["code", `X \`${stale}\`\n\n\`\`\`html\n${stale}\n\`\`\``],
    ["an escaped tag", `X \\${stale}`],
    [
      "code that is written deep in a component",
      `<Tabs>\n  <Tab>\n    Paste this:\n    \`\`\`html\n    <p>\n\n    ${stale}\n    </p>\n    \`\`\`\n  </Tab>\n</Tabs>`,
    ],
  ])("leaves %s as they are", (_, before) => {
    const source = `${before}\n\n${post(stale)}`;
    const { text, mended, left, notChecked } = mendFigures(source, { format: "mdx" });
    expect([text, mended, left, notChecked]).toEqual([`${before}\n\n${post(right)}`, 1, 0, {}]);
  });

  it.each([
    [
      "imports and exports",
      `import a from "a";\nexport const b = ${stale};\n\nexport const c = () => {\n\n  return ${stale};\n};\n`,
      2,
    ],
    ["expressions", `{a && ${stale}}\n\nX {a.map((b) => (\n  ${stale}\n))} Y\n`, 2],
    ["attributes", `<Tabs label={${stale}}>\n\nX\n\n</Tabs>\n`, 0],
  ])("leaves %s as they are, and names the tags in them", (_, before, tags) => {
    const source = `${before}\n${post(stale)}`;
    const { text, mended, notChecked } = mendFigures(source, { format: "mdx" });
    expect([text, mended]).toEqual([`${before}\n${post(right)}`, 1]);
    expect(notChecked).toEqual(tags ? { "tag in an expression": tags } : {});
  });

  it("takes a tag that closes itself for an empty element, and an element for its build", () => {
    const source = `<mw-build ${attributes} />\n\nFront <mw-value of="front">44.31</mw-value> and <Note>${stale}</Note> <br/>.\n`;
    expect(mends(source, "mdx", 2)).toBe(source.replaceAll("44.31", "44.30"));
  });

  it("leaves a figure that a program adds to, and does not say that it is right", () => {
    for (const figure of ['44.31{" to 45"}', '{"about"} 44.31']) {
      const source = post(`Front <mw-value of="front">${figure}</mw-value> turns.`);
      expect(mendFigures(source, { format: "mdx" })).toMatchObject({ text: source, stale: 1, mended: 0, left: 1 });
    }
    // What adds nothing to read keeps no figure from being compared.
    for (const nothing of ['{" "}', "{/* note */}"]) {
      const source = (figure: string) => post(`Front <mw-value of="front">${figure}${nothing}</mw-value> turns.`);
      expect(checkFigures(source("44.30"), { format: "mdx" })).toMatchObject({ compared: 1, notChecked: {} });
      expect(mendFigures(source("44.31"), { format: "mdx" }).text).toBe(source("44.30"));
    }
    const html = post('<mw-value of="front"><b title="a>{b}">44.31</b><!-- a > {b} --></mw-value>');
    expect(mendFigures(html).text).toBe(html.replace("44.31", "44.30"));
    const { differences, compared, notChecked } = checkFigures(
      post('Front <mw-value of="front">44.30{" to 45"}</mw-value> turns.'),
      { format: "mdx" },
    );
    expect([differences, compared, notChecked]).toEqual([[], 0, { "figure with an expression in it": 1 }]);
  });

  it("says what cannot be told where a program works an attribute out", () => {
    for (const attribute of ["of={front}", "{...front}"]) {
      const { differences } = checkFigures(post(`<mw-value ${attribute}>44.31</mw-value>`), { format: "mdx" });
      expect(differences).toMatchObject([{ kind: "untold" }]);
    }
    const lost = checkFigures(`<mw-build json={limpet} />\n\n${stale}`, { format: "mdx" });
    expect(lost.differences.map(({ kind }) => kind)).toEqual(["untold", "untold"]);
  });

  it.each(["{", "{a", "<", "a < b", "<a", "<a b=>", "<!-- ", "{a b}", "export const"])(
    "is not read where it is none: %s",
    (text) => expect(() => checkFigures(`${text}\n\n${post(stale)}`, { format: "mdx" })).toThrow(),
  );
});
