import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures } from "../src/index.js";

const build =
  '<mw-build id="b" stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38; Hub: 15 to 22" rear="Ring: 12 to 35; Hub: 16 to 23" front-wheel="124 mm" rear-wheel="120 mm" target="38 to 46"></mw-build>';
const page = (body: string): string =>
  `<!doctype html>\r\n<html lang="en"><body>\r\n${build}\r\n${body}\r\n</body></html>\r\n`;

describe("checkFigures", () => {
  it("finds nothing where every figure is right", () => {
    const source = page(
      '<p>Front <mw-value of="front">44.30</mw-value>, <mw-value figure="lead">1.06% ahead</mw-value>.</p>',
    );
    expect(checkFigures(source)).toEqual({ differences: [], compared: 2 });
  });

  it("names line, column, what stands there and what should", () => {
    const source = page('<p>Front <mw-value of="front">44.3</mw-value></p>');
    const { differences } = checkFigures(source);
    expect(differences).toHaveLength(1);
    expect(differences[0]).toMatchObject({ line: 4, column: 10, found: "44.3", expected: "44.30" });
  });

  it("mends a figure and leaves every other character as it was, line ends and markup too", () => {
    const source = page(
      '<p>Front <mw-value\tof="front"  ><b>44.31</b></mw-value> &amp; <MW-VALUE of=rear>x</MW-VALUE></p><!-- 44.31 -->',
    );
    const { text, left, mended } = mendFigures(source);
    expect([mended, left]).toEqual([2, []]);
    expect(text).toBe(source.replace("<b>44.31", "<b>44.30").replace(">x<", ">43.32<"));
    expect(checkFigures(text).differences).toEqual([]);
  });

  it("takes spacing and signs of other engines for the same", () => {
    const source = page(
      '<p lang="de"><mw-value figure="lead">1,06 % ahead</mw-value> <mw-value figure="gap">1,06%</mw-value></p>',
    );
    expect(checkFigures(source).differences).toEqual([]);
  });

  it("reads Markdown, and leaves its code alone", () => {
    const source = `---\ntitle: A <mw-value> of="x"\n---\n\n${build}\n\nFront <mw-value of="front">44.31</mw-value>.\n\n\`<mw-value of="front">1</mw-value>\`\n\n\`\`\`html\n<mw-value of="front">2</mw-value>\n\`\`\`\n`;
    const { differences, compared } = checkFigures(source, { format: "markdown" });
    expect([compared, differences.map(({ line, expected }) => [line, expected])]).toEqual([1, [[7, "44.30"]]]);
    expect(mendFigures(source, { format: "markdown" }).text).toBe(source.replace("44.31", "44.30"));
  });

  it("says what is wrong with a build, and what belongs to none", () => {
    const { differences } = checkFigures(
      '<mw-build stages="Spur: 0 to 62" front="Ring: 1 to 2"></mw-build><p><mw-value build="nowhere">1</mw-value></p>',
    );
    expect(differences.map(({ element }) => element)).toEqual(["<mw-build>", "<mw-value> nowhere"]);
  });

  it("keeps two posts on one page apart", () => {
    const post = (driver: number, figure: string) =>
      `<article><mw-build stages="Spur: ${driver} to 60" drive="Ring: 10 to 40"></mw-build><p><mw-value>${figure}</mw-value></p></article>`;
    expect(checkFigures(post(15, "16.00") + post(20, "12.00")).differences).toEqual([]);
  });

  it("holds each column of a summary's row against its own output", () => {
    const summary = (rows: string) =>
      page(
        `<mw-ratio-summary><table><tr><th>Stage</th><th>Front</th><th>Rear</th></tr>${rows}</table></mw-ratio-summary>`,
      );
    const hub = (front: string, rear: string) => `<tr><th>Hub</th><td>${front}</td><td>${rear}</td></tr>`;
    expect(checkFigures(summary(hub("1.47", "1.44"))).differences).toEqual([]);
    const swapped = summary(hub("1.44", "1.47"));
    expect(checkFigures(swapped).differences.map(({ expected }) => expected)).toEqual(["1.47", "1.44"]);
    expect(mendFigures(swapped).text).toBe(summary(hub("1.47", "1.44")));
  });
});
