import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures } from "../src/index.js";
import { attributes, build, document, page } from "./pages.js";

const differences = (source: string) => checkFigures(source).differences;

describe("checkFigures", () => {
  it("finds nothing where every figure is right", () => {
    const source = page(
      '<p>Front <mw-value of="front">44.30</mw-value>, <mw-value figure="lead">1.06% ahead</mw-value>.</p>',
    );
    expect(checkFigures(source)).toEqual({ differences: [], warnings: [], compared: 2, notChecked: {} });
  });

  it("names line, column, what stands there and what should", () => {
    const found = differences(page('<p>Front <mw-value of="front">44.3</mw-value></p>'));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ kind: "stale", line: 4, column: 10, found: "44.3", expected: "44.30" });
  });

  it("takes spacing and signs of other engines for the same", () => {
    const source = page(
      '<p lang="de"><mw-value figure="gap">1,06%</mw-value> <mw-value figure="gap">1,06 %</mw-value></p>',
    );
    expect(differences(source)).toEqual([]);
  });

  it("says what is wrong with a build, and what belongs to none", () => {
    const found = differences(
      '<mw-build stages="Spur: 0 to 62" front="Ring: 1 to 2"></mw-build><p><mw-value build="nowhere">1</mw-value></p>',
    );
    expect(found.map(({ element, kind }) => [element, kind])).toEqual([
      ["<mw-build>", "untold"],
      ["<mw-value> nowhere", "untold"],
    ]);
  });

  it("says what it found in the language that stands there, as the page does", () => {
    const source = (lang: string) =>
      `<div lang="${lang}">${build}<mw-value of="raer">1</mw-value><mw-value colour="red" of="rear">43.32</mw-value></div>`;
    const said = (lang: string) => {
      const { differences: found, warnings } = checkFigures(source(lang));
      return [...found, ...warnings].map(({ message }) => message);
    };
    expect(said("de")).toEqual([
      "„raer“ gibt es nicht; am nächsten: rear. Erwartet wird eines von front, rear, spur-and-pinion, gear-row, front-ring, front-hub, rear-ring, rear-hub.",
      "says “43.32”, should say “43,32”",
      "<mw-value> hat kein Attribut colour.",
    ]);
    expect(said("it")[0]).toContain('There is no "raer"; nearest: rear.');
    expect(said("ja")[0]).toContain("raer");
    expect(said("ja")[0]).not.toContain("There is");
  });

  it("warns of what is odd, and compares as before", () => {
    const warned = (source: string) => {
      const { warnings, differences: found, compared } = checkFigures(source);
      expect(found).toEqual([]);
      return [compared, ...warnings.map(({ line, element, message }) => `${line} ${element} ${message}`)];
    };
    expect(warned('\n<mw-edits colour="red"></mw-edits>' + build)).toEqual([
      ...[0, "2 <mw-edits> <mw-edits> has no attribute colour."],
    ]);
    const script = `<script type="application/json">${document}</script>`;
    expect(
      warned(`<mw-build stages="" target="1 to 2">${script}</mw-build><mw-value of="front">16.00</mw-value>`),
    ).toEqual([1, "1 <mw-build> /stages: The build is read from script; stages, target beside it is passed over."]);
    const full = build.replace("<mw-build", '<mw-build battery="3 cells lipo" controller="12 V"');
    expect(warned(full)).toEqual([
      ...[0, "1 <mw-build> /controller/maxVolts: 3 full cells reach 12.60 V, not 11.1. Controller limit: 12 V."],
    ]);
    expect(warned(build.replace("<mw-build", "<mw-build zoetrope=1"))).toEqual([
      ...[0, "1 <mw-build> /zoetrope: <mw-build> has no attribute zoetrope."],
    ]);
  });

  it("says of every figure of a broken build that it cannot be told", () => {
    const found = differences('<mw-build front="Ring: 0 to 2"></mw-build><mw-value>1</mw-value><mw-value>2</mw-value>');
    expect(found.map(({ kind }) => kind)).toEqual(["untold", "untold", "untold"]);
  });

  it("tells what is wrong with another version of a build, and compares the rest", () => {
    const broken = document.replace('"changes"', '"chnages"');
    const source = `<mw-build><script type="application/json">${broken}</script></mw-build><mw-value of="front">16.01</mw-value>`;
    expect(differences(source).map(({ element, kind, message }) => [element, kind, message.split(";")[0]])).toEqual([
      ["<mw-build>", "untold", '/alternatives/0/chnages: There is no "chnages" here'],
      ["<mw-value> front", "stale", "says “16.01”, should say “16.00”"],
    ]);
  });

  it("keeps two posts on one page apart", () => {
    const article = (driver: number, figure: string) =>
      `<article><mw-build stages="Spur: ${driver} to 60" drive="Ring: 10 to 40"></mw-build><p><mw-value>${figure}</mw-value></p></article>`;
    expect(differences(article(15, "16.00") + article(20, "12.00"))).toEqual([]);
  });

  it("finds the last build before an element, else the first after it, by its id where one is named", () => {
    const other = (id: string, driver: number) =>
      `<mw-build id="${id}" stages="Spur: ${driver} to 60" drive="Ring: 10 to 40"></mw-build>`;
    expect(
      differences(
        `<p><mw-value>16.00</mw-value></p>${other("a", 15)}<p><mw-value>16.00</mw-value></p>${other("c", 20)}<p><mw-value>12.00</mw-value> <mw-value build="a">16.00</mw-value></p>`,
      ),
    ).toEqual([]);
  });

  it("looks into templates, and at what readers without scripts see", () => {
    const stale = '<mw-value of="front">44.31</mw-value>';
    expect(differences(page(`<template>${stale}</template><noscript>${stale}</noscript>`))).toHaveLength(2);
  });

  it("takes JSON as the page does: with the quotes of typographers and the codes of editors", () => {
    const script = (json: string) =>
      `<mw-build><script type="application/json">${json}</script></mw-build><p><mw-value of="front">16.00</mw-value></p>`;
    const curled = document.replace(/"([^"]*)"/g, "“$1”");
    const written = document.replaceAll('"', "&quot;");
    const otherwise = document.replace(/"([^"]*)"/g, "&ldquo;$1&rdquo;").replace("&ldquo;", "&#34;");
    for (const json of [document, curled, written, otherwise])
      expect(checkFigures(script(json))).toMatchObject({ differences: [], compared: 1 });
    expect(differences(script(document.slice(1)))[0]).toMatchObject({ element: "<mw-build>", kind: "untold" });
  });

  it("holds a build against another of the article, and against one that it refers to by address", () => {
    // 12 against 8: half as much again; the gearbox 4 against 8/3.
    const first = '<mw-build id="dunlin" stages="Spur: 10 to 40" rear="Ring: 10 to 30"></mw-build>';
    const other = '<mw-build id="whimbrel" stages="Spur: 15 to 40" rear="Ring: 10 to 30"></mw-build>';
    const says = (text: string, from = "whimbrel") =>
      `<mw-value build="dunlin" figure="change" of="rear" from="${from}">${text}</mw-value>`;
    expect(differences(first + other + says("+50.00%"))).toEqual([]);
    expect(differences(other + says("+50.00%") + first)).toEqual([]);
    expect(differences(first + other + says("+40.00%"))[0]).toMatchObject({ kind: "stale", expected: "+50.00%" });
    expect(differences(first + other + says("+50.00%", "whimbrle"))[0]!.message).toContain("nearest: whimbrel");
    const table = (total: string) =>
      `<mw-change-table build="dunlin" against="whimbrel"><table><tr><th>Total</th><th>whimbrel</th><th>Published</th></tr><tr><th>Rear</th><td>8.00</td><td>${total}</td></tr></table></mw-change-table>`;
    expect(differences(first + other + table("12.00"))).toEqual([]);
    expect(differences(first + other + table("12.50"))).toHaveLength(1);

    const stages = [{ id: "spur", kind: "pair", driver: 15, driven: 40 }];
    const outputs = [{ id: "rear", label: "Rear", stages: [{ id: "ring", kind: "pair", driver: 10, driven: 30 }] }];
    const sold = { format: "meshwright-build/1", stages, outputs };
    const now = {
      ...sold,
      stages: [{ ...stages[0], driver: 10 }],
      references: [{ id: "as-sold", label: "as sold", src: "sold.json" }],
    };
    const files: Record<string, string> = {
      "builds/dunlin.json": JSON.stringify(now),
      "builds/sold.json": JSON.stringify(sold),
    };
    const source = (text: string) =>
      `<mw-build id="dunlin" src="builds/dunlin.json"></mw-build>${says(text, "as-sold")}`;
    const load = (src: string) => files[src];
    expect(checkFigures(source("+50.00%"), { load }).differences).toEqual([]);
    expect(checkFigures(source("+51.00%"), { load }).differences).toHaveLength(1);
  });

  it("takes JSON from an attribute, and from a file beside the article", () => {
    const value = '<mw-value of="rear">15.60</mw-value>';
    expect(differences(`<mw-build json='${document}'></mw-build>${value}`)).toEqual([]);
    const load = (src: string) => (src === "limpet.json" ? document : undefined);
    expect(checkFigures(`<mw-build src="limpet.json"></mw-build>${value}`, { load }).differences).toEqual([]);
    const lost = checkFigures(`<mw-build src="dunlin.json"></mw-build>${value}`, { load }).differences;
    expect(lost.map(({ kind }) => kind)).toEqual(["untold", "untold"]);
    expect(lost[0]!.message).toContain("dunlin.json");
  });

  it("does not take what stands in a drawing for an element", () => {
    expect(differences(page('<svg><mw-value of="front">44.31</mw-value></svg>'))[0]).toMatchObject({ kind: "untold" });
  });

  it("names a tag that is none of ours, with the nearest", () => {
    const found = differences(`${build}<mw-vlaue of="front">44.31</mw-vlaue><mw-ratio-sumary></mw-ratio-sumary>`);
    expect(found.map(({ kind, message }) => [kind, message])).toEqual([
      ["untold", "There is no element <mw-vlaue>; nearest: mw-value."],
      ["untold", "There is no element <mw-ratio-sumary>; nearest: mw-ratio-summary."],
    ]);
  });

  it("names what it did not look at", () => {
    const finder = "<mw-pair-finder><ul><li>15 and 62: 44.30</li></ul></mw-pair-finder>";
    const checked = checkFigures(
      page(finder + finder + "<mw-stage-editor>15, 62</mw-stage-editor><mw-edits></mw-edits>"),
    );
    expect(checked).toMatchObject({
      compared: 0,
      differences: [],
      notChecked: { "mw-pair-finder": 2, "mw-stage-editor": 1 },
    });
  });

  it("looks at the working, at speeds, at the order: a figure that is none of theirs is told", () => {
    const driven = `<mw-build ${attributes} motor="1850 kV" battery="3 cells lipo"></mw-build>`;
    const falsified = (tag: string, content: string) => differences(`${driven}<${tag}>${content}</${tag}>`);
    for (const [tag, right, wrong] of [
      ["mw-working", "Front: 44.30", "Front: 44.33"],
      ["mw-wheel-speed", "8.79 mm", "8.97 mm"],
      ["mw-train-drawing", "", "18.75 mm"],
      ["mw-change-table", "44.30", "44.33"],
      ["mw-bench-card", "21.44", "21.49"],
    ] as const) {
      expect(falsified(tag, `<p>${right}</p>`), tag).toEqual([]);
      expect(falsified(tag, `<p>${wrong}</p>`), tag).toMatchObject([{ kind: "stale" }]);
    }
  });

  it("says figures in the words of the language that they stand in, and takes no others for them", () => {
    const german = (lead: string) =>
      page(`<p><mw-value figure="lead">${lead}</mw-value>, <mw-value of="front">44,31</mw-value></p>`, "de");
    for (const lead of ["1,06 % voraus", "1,07 % voraus"])
      expect(mendFigures(german(lead)).text).toBe(german("1,06 % voraus").replace("44,31", "44,30"));
    const english = german("1.06% ahead");
    expect(mendFigures(english)).toMatchObject({ mended: 1, left: 1, text: english.replace("44,31", "44,30") });
  });

  it("reads a language that is written with a low line", () => {
    const german = (figure: string) => page(`<p lang="de_DE">Vorn <mw-value of="front">${figure}</mw-value></p>`);
    expect(differences(german("44,30"))).toEqual([]);
    expect(mendFigures(german("44,3")).text).toBe(german("44,30"));
  });

  it("shows what an element is pinned to, blocks as well", () => {
    const pinned = (at: string, figure: string, ring: string) =>
      `<mw-build json='${document}'></mw-build><p><mw-value of="front" at="${at}">${figure}</mw-value></p><mw-ratio-summary at="${at}"><table><tr><th>Stage</th><th>Front</th><th>Rear</th></tr><tr><th>Spur</th><td>${ring}</td><td>${ring}</td></tr></table></mw-ratio-summary>`;
    for (const source of [pinned("article", "16.00", "4.00"), pinned("deeper", "20.00", "5.00")])
      expect(checkFigures(source)).toMatchObject({ differences: [], compared: 2 });
    expect(differences(pinned("deeper", "16.00", "4.00"))).toHaveLength(3);
  });

  it("compares what is pinned to a revision with that revision, and what is pinned to the article with the build as it is", () => {
    const revised = document.replace(
      '"stages"',
      '"revision":{"number":2},"revisions":[{"number":1,"back":[{"set":{"spur":{"driver":20}}}]}],"stages"',
    );
    const source = (at: string, figure: string) =>
      `<mw-build json='${revised}'></mw-build><p><mw-value of="front" at="${at}">${figure}</mw-value></p>`;
    for (const [at, figure] of [
      ["revision-1", "12.00"],
      ["revision-2", "16.00"],
      ["article", "16.00"],
    ] as const) {
      expect(checkFigures(source(at, figure))).toMatchObject({ compared: 1, differences: [] });
      expect(mendFigures(source(at, "9")).text).toBe(source(at, figure));
    }
    expect(differences(source("revision-3", "9"))).toMatchObject([{ kind: "untold" }]);
  });

  it("does not guess where a version is not there", () => {
    const source = `<mw-build json='${document}'></mw-build><p><mw-value of="front" at="revision-1">24.70</mw-value></p>`;
    expect(differences(source)[0]).toMatchObject({ kind: "untold", found: "" });
    expect(mendFigures(source).text).toBe(source);
  });

  it("says what an element asks for that its build does not have", () => {
    const found = differences(
      page('<p><mw-value of="nobody">1</mw-value> <mw-teeth of="primary.driver">15</mw-teeth></p>'),
    );
    expect(found.map(({ kind }) => kind)).toEqual(["untold", "untold"]);
    expect(found[1]!.message).toContain("primary.driver");
  });
});
