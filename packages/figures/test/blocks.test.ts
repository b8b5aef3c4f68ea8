import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures } from "../src/index.js";
import { document, page, post } from "./pages.js";

const head = "<tr><th>Stage</th><th>Front</th><th>Rear</th></tr>";
const table = (rows: string, first = head) =>
  page(`<mw-ratio-summary><table>${first}${rows}</table></mw-ratio-summary>`);
const row = (name: string, ...cells: readonly string[]) =>
  `<tr><th>${name}</th>${cells.map((cell) => `<td>${cell}</td>`).join("")}</tr>`;
const expectedOf = (source: string) => checkFigures(source).differences.map(({ expected }) => expected);

/** What cannot be shown to be a figure's own place is told, and left. */
function stays(source: string, figures = 1) {
  expect(mendFigures(source)).toMatchObject({ text: source, stale: figures, mended: 0, left: figures });
}

describe("a table of figures", () => {
  it("is held against each row and each column by their heads", () => {
    expect(expectedOf(table(row("Hub", "1.47", "1.44")))).toEqual([]);
    const swapped = table(row("Hub", "1.44", "1.47"));
    expect(expectedOf(swapped)).toEqual(["1.47", "1.44"]);
    expect(mendFigures(swapped).text).toBe(table(row("Hub", "1.47", "1.44")));
  });

  it("may have its rows and columns changed round, and in another order", () => {
    const turned = (hub: string) =>
      table(row("Rear", hub, "2.92") + row("Front", "1.47", "2.92"), "<tr><th></th><th>Hub</th><th>Ring</th></tr>");
    expect(expectedOf(turned("1.44"))).toEqual([]);
    expect(mendFigures(turned("1.45"))).toMatchObject({ text: turned("1.44"), left: 0 });
  });

  it("may have no heads for its columns", () => {
    const bare = (front: string) => table(row("Hub", front, "1.44") + row("Gear row", "2.50", "2.50"), "");
    expect(mendFigures(bare("1.5")).text).toBe(bare("1.47"));
  });

  it("may have one row for the total of each output", () => {
    const totals = (rear: string) =>
      page(`<mw-ratio-summary><dl><dt>Front</dt><dd>44.30</dd><dt>Rear</dt><dd>${rear}</dd></dl></mw-ratio-summary>`);
    expect(mendFigures(totals("43.3")).text).toBe(totals("43.32"));
    const list = (rear: string) =>
      page(`<mw-ratio-summary><ul><li>Front: 44.30</li><li>Rear: ${rear}</li></ul></mw-ratio-summary>`);
    expect(mendFigures(list("43.3")).text).toBe(list("43.32"));
  });

  it("has each number of a range in its own place, equal ones as well", () => {
    const printed = '<mw-build stages="Spur: 15 to 60" rear="Hub: printed 1.5"></mw-build>';
    const source = (hub: string) => `${printed}<mw-ratio-summary><table>${row("Hub", hub)}</table></mw-ratio-summary>`;
    expect(expectedOf(source("1.45 to 1.55"))).toEqual([]);
    expect(mendFigures(source("1.5 to 1.5"))).toMatchObject({ text: source("1.45 to 1.55"), left: 0 });
    stays(source("1.5"));
    stays(source("1.5 and 1.5"));
  });

  it("keeps what the author wrote around its figures", () => {
    const styled = (figure: string) => table(row("Hub", `<b> ${figure}&nbsp;</b>`, "1.44"));
    expect(mendFigures(styled("1.5")).text).toBe(styled("1.47"));
  });

  it("says how many whole numbers it could not hold against anything, and lets those be that are its figures", () => {
    const said = (inside: string) => checkFigures(page(`<mw-ratio-summary>${inside}</mw-ratio-summary>`)).notChecked;
    expect(said("<p>Front: 73. Rear: 75, both with the 20 tooth pinion.</p>")).toEqual({
      "whole number without a place": 3,
    });
    expect(said("<p>Front: 44.30. Rear: 43.32.</p>")).toEqual({});
    expect(said(`<table>${row("Hub", "1.47", "1.44")}</table>`)).toEqual({});
  });

  it("is held against in its first column too, where its rows have no heads", () => {
    const own = "<tr><th>Rear</th><th>Front</th></tr>";
    const cells = (rear: string) => table(`<tr><td>${rear}</td><td>44.30</td></tr>`, own);
    expect(expectedOf(cells("43.32"))).toEqual([]);
    expect(mendFigures(cells("99.99"))).toMatchObject({ text: cells("43.32"), left: 0 });
    const single = (rear: string) => table(`<tr><td>${rear}</td></tr>`, "<tr><th>Rear</th></tr>");
    expect(mendFigures(single("99.99"))).toMatchObject({ text: single("43.32"), left: 0 });
    const markdown = (rear: string) =>
      post(`<mw-ratio-summary>\n\n| Rear | Front |\n| --- | --- |\n| ${rear} | 44.30 |\n\n</mw-ratio-summary>`);
    expect(mendFigures(markdown("99.99"), { format: "markdown" })).toMatchObject({ text: markdown("43.32"), left: 0 });
    // What names a row is no figure: under a head of its own, with a word that none of them has.
    expect(expectedOf(table("<tr><td>Hub</td><td>1.47</td><td>1.44</td></tr>"))).toEqual([]);
    expect(
      expectedOf(table("<tr><td>13 to 38</td><td>2.92</td></tr>", "<tr><th>Ring</th><th>Front</th></tr>")),
    ).toEqual([]);
  });

  it("has first columns that name its rows, numbers or not, and is left as it is then", () => {
    const numbered = "<tr><td>1</td><td>4.13</td><td>4.13</td></tr><tr><td>2.0</td><td>2.50</td><td>2.50</td></tr>";
    for (const right of [
      table(numbered),
      table("<tr><td>1.47</td><td>Hub</td></tr>", "<tr><th>Front</th><th>Stage</th></tr>"),
      table("<tr><td>1.47</td><td>1.44</td><td>Hub</td></tr>", "<tr><th>Front</th><th>Rear</th><th>Stage</th></tr>"),
      table("<tr><td>1.47</td></tr><tr><td>44.30</td></tr>", "<tr><th>Front</th></tr>"),
      page("<mw-ratio-summary><p>Front: 2</p><p>Rear: 4.13 × 2.50</p></mw-ratio-summary>"),
      page("<mw-ratio-summary><p>Front: 1.47</p><p>Front: 44.30</p></mw-ratio-summary>"),
    ])
      expect(mendFigures(right)).toMatchObject({ text: right, stale: 0 });
  });

  it("tells of numbers in its heads that they were not compared", () => {
    expect(checkFigures(table(row("Hub 99.9", "1.47", "1.44"))).notChecked).toEqual({ "number in a head": 1 });
    expect(checkFigures(table(row("Hub 2", "1.47", "1.44"))).notChecked).toEqual({});
  });

  it("may have lines of its own, each behind its head, in paragraphs or none", () => {
    const paragraphs = (front: string, rear: string) =>
      page(`<mw-ratio-summary><p>Front: ${front}</p><p>Rear: ${rear}</p></mw-ratio-summary>`);
    expect(expectedOf(paragraphs("44.30", "43.32"))).toEqual([]);
    expect(mendFigures(paragraphs("43.32", "44.30"))).toMatchObject({ text: paragraphs("44.30", "43.32"), left: 0 });
    const breaks = (front: string, rear: string) =>
      page(`<mw-ratio-summary>Front: ${front}<br>Rear: ${rear}</mw-ratio-summary>`);
    expect(mendFigures(breaks("43.32", "44.30"))).toMatchObject({ text: breaks("44.30", "43.32"), left: 0 });
    const alone = (front: string) => page(`<mw-ratio-summary>Front: ${front}</mw-ratio-summary>`);
    expect(mendFigures(alone("43.32"))).toMatchObject({ text: alone("44.30"), left: 0 });
  });

  it("has terms that share what stands behind them, which do not say whose it is", () => {
    const shared = page(
      "<mw-ratio-summary><dl><dt>Front</dt><dt>Rear</dt><dd>44.30</dd><dd>43.32</dd></dl></mw-ratio-summary>",
    );
    expect(mendFigures(shared)).toMatchObject({ text: shared, mended: 0 });
    expect(checkFigures(shared.replace("44.30", "99.9")).differences).toMatchObject([
      { found: "99.9", edit: undefined },
    ]);
  });

  it("is left where its heads do not say which figure a place has", () => {
    stays(table(row("Weight", "1.5", "1.44")));
    stays(table(row("Hub", "1.5", "1.44"), "<tr><th>Stage</th><th>Before</th><th>Rear</th></tr>"));
    stays(table(`<tr><th>Hub</th><td colspan="2">1.5</td></tr>`));
    stays(table(`<tr><th>Hub</th><td rowspan="0">1.5</td><td>1.44</td></tr>`));
    const single = (figure: string) =>
      table(`<tr><th colspan="1">Hub</th><td rowspan="01" colspan="0">${figure}</td><td colspan="">1.44</td></tr>`);
    expect(mendFigures(single("1.5")).text).toBe(single("1.47"));
  });

  it("is left where more than a figure stands at a place", () => {
    stays(table(row("Hub", "1.5 as printed on the box in 2019", "1.44")));
    stays(table(row("Hub", "about 1.5", "1.44")));
    stays(table(row("Hub", "1<i>.5</i>", "1.44")));
  });

  it("takes no count and no name for a figure", () => {
    expect(expectedOf(table(row("Hub 2.5", "–", "") + row("Hub", "see text", "1.44")))).toEqual([]);
  });

  it("leaves an element inside to itself", () => {
    const nested = (figure: string) => table(row("Hub", `<mw-value of="front-hub">${figure}</mw-value>`, "1.44"));
    expect(mendFigures(nested("1.5"))).toMatchObject({ text: nested("1.47"), stale: 1, mended: 1, left: 0 });
  });

  it("is left where its element has no end of its own", () => {
    stays(page(`<div><mw-ratio-summary><table>${head}${row("Hub", "1.5", "1.44")}</table></div>`));
    stays(page(`<div><mw-ratio-summary /><table>${head}${row("Hub", "1.5", "1.44")}</table></mw-ratio-summary></div>`));
  });

  it("is found in Markdown's own tables", () => {
    const source = (figure: string) =>
      post(
        `<mw-ratio-summary>\n\n| Stage | Front | Rear |\n|---|---|---|\n| Hub | 1.47 | ${figure} |\n\n</mw-ratio-summary>`,
      );
    for (const format of ["markdown", "mdx"] as const)
      expect(mendFigures(source("1.45"), { format })).toMatchObject({ text: source("1.44"), mended: 1, left: 0 });
  });

  it("is written with the digits that the build says", () => {
    const rounded = document.replace('"stages"', '"rounding":{"maximumFractionDigits":1},"stages"');
    const source = (figure: string) =>
      `<mw-build json='${rounded}'></mw-build><mw-ratio-summary><table>${row("Front", figure)}</table></mw-ratio-summary>`;
    expect(mendFigures(source("16.3")).text).toMatch(/<td>16(\.0)?<\/td>/);
  });
});

describe("a line of figures", () => {
  const gauge = (text: string) => page(`<mw-overdrive-gauge>${text}</mw-overdrive-gauge>`);

  it("is right where its numbers are", () => {
    for (const text of ["1.06%", "Front 1.06 % ahead", "The front rolls 106 mm farther in 10 m: 1.06%.", ""])
      expect(expectedOf(gauge(text))).toEqual([]);
  });

  it("is mended where it is nothing but its figure", () => {
    expect(mendFigures(gauge(" 1.07 %\n")).text).toBe(gauge(" 1.06 %\n"));
  });

  it("is told and left where it is prose", () => {
    stays(gauge("Front 1.07 % ahead"));
    stays(gauge("The front rolls 107 mm farther in 10 m: 1.07%."));
    stays(gauge("<p>Nothing of 1.07% here.</p><p>And 2 more.</p>"));
  });
});
