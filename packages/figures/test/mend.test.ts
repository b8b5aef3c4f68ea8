import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures, type Format } from "../src/index.js";
import { withoutCrossings } from "../src/mending.js";
import { build, page, post } from "./pages.js";

const formats: readonly Format[] = ["html", "markdown", "mdx"];
const reasonsOf = (source: string, format: Format = "html") =>
  mendFigures(source, { format }).differences.map(({ reason }) => reason);

/** What is not to be mended stays as it is and is told, once for each figure. */
function stays(source: string, figures = 1, format: Format = "html") {
  const mended = mendFigures(source, { format });
  expect(mended.text).toBe(source);
  expect(mended).toMatchObject({ mended: 0, left: figures, stale: figures });
  expect(mended.differences.every(({ reason }) => reason)).toBe(true);
}

describe("mendFigures", () => {
  it("mends a figure and leaves every other character as it was, line ends and markup too", () => {
    const source = page(
      '<p>Front <mw-value\tof="front"  ><b>44.31</b></mw-value> &amp; <MW-VALUE of=rear>9</MW-VALUE></p><!-- 44.31 -->',
    );
    const { text, stale, left, mended } = mendFigures(source);
    expect([stale, mended, left]).toEqual([2, 2, 0]);
    expect(text).toBe(source.replace("<b>44.31", "<b>44.30").replace(">9<", ">43.32<"));
    expect(checkFigures(text).differences).toEqual([]);
  });

  it.each(formats)("loses no prose behind a tag that closes itself, in %s", (format) => {
    const source = post('<p><mw-value figure="lead" /> and here follows a whole sentence</p>');
    stays(source, 1, format);
    stays(post('The nose <mw-value figure="lead" /> and here follows a whole sentence.'), 1, format);
  });

  it("loses no prose behind a tag that closes itself and is closed again", () => {
    stays(page('<p><mw-value figure="lead" />1.5% ahead</mw-value></p>'));
    stays(page('<p><mw-value of="front" />44.31</mw-value></p>'));
  });

  it("loses no prose where an end tag is missing", () => {
    stays(page('<p><mw-value of="front">44.31</p><p>and more</p>'));
    stays(page('<p><mw-value of="front">44.31'));
    stays(page('<p><b><mw-value of="front">44.31</b></mw-value></p>'));
    stays(page('<ul><li><mw-value of="front">44.31<li>and more</ul>'));
  });

  it("loses no prose that stands between the tags", () => {
    stays(page('<p><mw-value of="front">44.31, and 2 more words that belong to the sentence</mw-value></p>'));
    stays(page('<p><mw-value of="front">, which is 44.31</mw-value></p>'));
    stays(page('<p><mw-value of="front"> turns of 44</mw-value></p>'));
    stays(page('<p><mw-value of="front">in front</mw-value></p>'));
    stays(page('<p><mw-value of="front">44.31 turns</mw-value></p>'));
    stays(page('<p><mw-value of="front">44.31x</mw-value></p>'));
    stays(page('<p><mw-value of="front">(44.31)</mw-value></p>'));
    stays(page('<p><mw-value of="front">44.31.</mw-value></p>'));
    stays(page('<p><mw-value of="front">44.31 12</mw-value></p>'));
    stays(page('<p><mw-value figure="standing" of="front">wet</mw-value></p>'));
    stays(page('<div><mw-value of="front"><p>44.31</p></mw-value></div>'));
    stays(page('<p><mw-value of="front">44<!-- not 44.31 -->.31</mw-value></p>'));
    stays(page('<p><mw-value of="front"><!-- 44.31 --></mw-value></p>'));
    stays(page('<p><mw-value of="front"><b>44</b>.31</mw-value></p>'));
  });

  it("writes one figure for another of its kind: a verdict, a range, another unit", () => {
    const mends = (attributes: string, before: string, after: string) => {
      const source = (figure: string) => page(`<p><mw-value ${attributes}>${figure}</mw-value></p>`);
      expect(mendFigures(source(before)).text).toBe(source(after));
    };
    mends('figure="standing" of="front"', "too many motor turns", "inside");
    mends('figure="lead"', "3.34% behind", "1.06% ahead");
    mends('of="front"', "43.79 to 46.82", "44.30");
    mends('figure="drift" over="10 m"', "4.2 in", "106&nbsp;mm");
    mends('figure="gap"', "−1,07&nbsp;%", "1.06&nbsp;%");
  });

  it("mends none of two elements of which one stands in the other", () => {
    stays(page('<p><mw-value of="rear">12.<mw-value of="rear">08</mw-value></mw-value></p>'), 2);
    stays(page('<p><mw-value of="rear">12.08<mw-value of="rear">12.08</mw-value></mw-value></p>'), 2);
    stays(page('<p><mw-value of="rear"><mw-teeth of="gear-row.teeth.0">9.9</mw-teeth> and 9.9</mw-value></p>'), 2);
    stays(page('<p><mw-value of="rear"><mw-vlaue>12.08</mw-vlaue></mw-value></p>').replace(/mw-vlaue/g, "mw-edits"));
  });

  it("mends the same number in its own place only", () => {
    const source = page('<p>2.9 and <mw-value of="rear">2.9</mw-value> and 2.9</p>');
    expect(mendFigures(source).text).toBe(source.replace(">2.9<", ">43.32<"));
  });

  it("writes into an element that is empty", () => {
    const source = page('<p>Front <mw-value of="front"></mw-value></p>');
    expect(mendFigures(source).text).toBe(source.replace("></mw-value>", ">44.30</mw-value>"));
  });

  it("keeps the blanks and the codes of characters around a number", () => {
    const source = page(
      '<p><mw-value figure="drift" over="10 m">99&nbsp;mm</mw-value>, <mw-value figure="gap">\n 9 %\n</mw-value></p>',
    );
    expect(mendFigures(source).text).toBe(source.replace("99&nbsp;", "106&nbsp;").replace(" 9 %", " 1.06 %"));
  });

  it("counts what it mended and what it left as parts of one sum", () => {
    const source = page(
      '<p><mw-value of="front">44.31</mw-value> <mw-value of="rear">43</mw-value> <mw-value of="front" /> and prose</p>',
    );
    const first = mendFigures(source);
    expect(first).toMatchObject({ stale: 3, mended: 2, left: 1 });
    expect(mendFigures(first.text)).toMatchObject({ stale: 1, mended: 0, left: 1, text: first.text });
  });

  it.each(["html", "markdown"] as const)(
    "writes signs of markup so that they are read as characters, in %s",
    (format) => {
      const outputs = ["*Front* _1_|<b>", "Rear"].map((label, n) => ({
        id: n ? "rear" : "front",
        label,
        stages: [{ id: `pair-${n}`, kind: "pair", driver: 10, driven: 40 + n }],
      }));
      const json = JSON.stringify({ format: "meshwright-build/1", outputs });
      const source = `<mw-build json='${json.replaceAll("<", "&lt;")}'></mw-build>\n\nFirst: <mw-value figure="count" of="front.label">Front 2</mw-value>.\n`;
      const { text, mended } = mendFigures(source, { format });
      expect(mended).toBe(1);
      expect(text).toContain("&lt;b&gt;</mw-value>");
      expect(checkFigures(text, { format })).toMatchObject({ compared: 1, differences: [] });
    },
  );

  it("does not write into a page that says that its encoding is another", () => {
    const source = page('<p><mw-value of="front">44.31</mw-value></p>');
    stays(source.replace("<body>", '<meta charset="windows-1252"><body>'));
    stays(source.replace("<body>", '<meta http-equiv="Content-Type" content="text/html; charset=iso-8859-1"><body>'));
    expect(mendFigures(source.replace("<body>", '<meta charset="UTF-8"><body>')).mended).toBe(1);
  });

  it("says why it leaves a figure", () => {
    expect(reasonsOf(page('<p><mw-value of="front" />44</p>'))[0]).toMatch(/closes itself/);
    expect(reasonsOf(page('<p><mw-value of="front">44</p>'))[0]).toMatch(/no end tag/);
  });
});

describe("edits", () => {
  const edit = (start: number, end: number) => ({
    edit: { range: [start, end] as const, text: "" },
    reason: undefined,
  });

  it("that overlap are left, both of them, and the others are not", () => {
    const kept = (...edits: readonly ReturnType<typeof edit>[]) => withoutCrossings(edits).map((one) => !!one.edit);
    expect(kept(edit(0, 5), edit(5, 9), edit(9, 9))).toEqual([true, true, true]);
    expect(kept(edit(4, 9), edit(0, 5), edit(10, 12))).toEqual([false, false, true]);
    expect(kept(edit(0, 20), edit(1, 2), edit(3, 4), edit(20, 21))).toEqual([false, false, false, true]);
    expect(kept(edit(3, 3), edit(3, 3))).toEqual([false, false]);
  });
});

// Whatever stands in an article: what is no number is never touched, and what was mended is right when it is read again.
describe("any article", () => {
  const figure = fc.constantFrom(
    "44.31",
    "44.30",
    "9",
    "",
    "<b>44.31</b>",
    "44.31 and 2 words of the sentence",
    "43.32",
  );
  const tag = fc.constantFrom(
    '<mw-value of="front">',
    '<mw-value of="rear">',
    '<mw-value of="front" />',
    "</mw-value>",
    '<mw-teeth of="gear-row.teeth.0">',
    "</mw-teeth>",
    "<p>",
    "</p>",
    "<b>",
    "</b>",
    "\n\n",
    "> ",
    "- ",
    "`",
    "```\n",
    "<!-- ",
    " -->",
    "\\",
    "<table><tr><td>",
    "</td></tr></table>",
    "<mw-ratio-summary>",
    "</mw-ratio-summary>",
    "| a | b |\n| - | - |\n| ",
  );
  const whole = figure.map((text) => `<mw-value of="front">${text}</mw-value>`);
  const prose = fc.constantFrom(" sand ", " 44.31 ", "12 of 30, ", ". ", "x");
  const article = fc
    .array(fc.oneof(whole, whole, prose, tag, figure), { maxLength: 14 })
    .map((parts) => parts.join(""));
  const bare = (text: string) => text.replace(/[\d.]+/g, "");

  it.each(["html", "markdown"] as const)("is whole after it was mended, as %s", (format) => {
    fc.assert(
      fc.property(article, (body) => {
        const source = post(body);
        const { text, stale, mended, left } = mendFigures(source, { format });
        expect(mended + left).toBe(stale);
        // Only where nothing stood, a figure may come in addition.
        expect(bare(text)).toBe(bare(source));
        const again = checkFigures(text, { format }).differences.filter(({ kind }) => kind === "stale");
        expect(again).toHaveLength(left);
        expect(mendFigures(text, { format })).toMatchObject({ mended: 0, text });
      }),
      { numRuns: 400 },
    );
  });

  it("is whole after it was mended, as MDX, or cannot be read", () => {
    fc.assert(
      fc.property(article, (body) => {
        const source = post(body);
        let result;
        try {
          result = mendFigures(source, { format: "mdx" });
        } catch {
          return;
        }
        const { text, stale, mended, left } = result;
        expect(mended + left).toBe(stale);
        expect(bare(text)).toBe(bare(source));
        expect(mendFigures(text, { format: "mdx" })).toMatchObject({ mended: 0, text });
      }),
      { numRuns: 400 },
    );
  });

  it("is told of every whole figure in it, however many there are", () => {
    const stale = '<p>Front <mw-value of="front">44.31</mw-value>.</p>\n';
    const { text, mended } = mendFigures(build + stale.repeat(500));
    expect([mended, text]).toEqual([500, build + stale.replace("44.31", "44.30").repeat(500)]);
  });
});
