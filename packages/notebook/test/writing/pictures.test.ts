import { readdirSync, readFileSync } from "node:fs";
import { parseFragment } from "parse5";
import { describe, expect, it } from "vitest";
import { applyChanges, parseBuild } from "@meshwright/calc/document";
import { pictureOf, pictureSizes, type Picture } from "../../src/writing/index.js";
import { elementsIn, textOf } from "../../../../tests/demo/page.js";

const root = new URL("../../../../", import.meta.url);
const limpet = parseBuild(readFileSync(new URL("seeds/limpet.json", root), "utf8"));
const others = readdirSync(new URL("tests/drivetrains/", root)).map((name) => {
  const data = JSON.parse(readFileSync(new URL(`tests/drivetrains/${name}`, root), "utf8")) as { build?: unknown };
  return [name, parseBuild(JSON.stringify(data.build ?? data))] as const;
});
const names = Object.keys(pictureSizes) as (keyof typeof pictureSizes)[];

/** Everything that is lettered, with its size and place on the picture. */
function lettered({ svg }: Picture): readonly { text: string; size: number; x: number; y: number }[] {
  const found: { text: string; size: number; x: number; y: number }[] = [];
  for (const one of elementsIn(svg)) {
    if (one.tagName !== "text") continue;
    const attribute = (name: string) => Number(one.attrs.find((attr) => attr.name === name)?.value);
    const parent = (one.parentNode as { attrs?: { name: string; value: string }[] }).attrs ?? [];
    const moved = /translate\(([\d.-]+) ([\d.-]+)\) scale\(([\d.]+)\)/.exec(
      parent.find(({ name }) => name === "transform")?.value ?? "",
    );
    const [left, top, scale] = moved ? moved.slice(1).map(Number) : [0, 0, 1];
    found.push({
      text: textOf(one),
      size: attribute("font-size") * scale!,
      x: left! + attribute("x") * scale!,
      y: top! + attribute("y") * scale!,
    });
  }
  return found;
}

describe("pictures", () => {
  it.each(names)("%s is the same every time, of its size, with its text as text", (name) => {
    const [one, other] = [pictureOf(name, limpet)!, pictureOf(name, parseBuild(JSON.stringify(limpet)))!];
    expect(one.svg).toBe(other.svg);
    const { width, height } = pictureSizes[name];
    expect(one.svg).toContain(`width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"`);
    const texts = lettered(one).map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(["15 → 62", "44.30", "43.32", "Front 44.30 · Rear 43.32"]));
    expect(one.description).toContain("Front: 44.30 motor turns for one wheel turn, inside 38 to 46.");
  });

  it("for a film has nothing behind it, and totals that are read from a sofa", () => {
    const film = pictureOf("film", limpet)!;
    expect(film.svg).not.toContain("<rect");
    expect(pictureOf("preview", limpet)!.svg).toContain('<rect width="1200" height="630" fill="#fbfaf6"');
    const totals = lettered(film).filter(({ text }) => text.startsWith("Front 44.30"));
    expect(Math.min(...totals.map(({ size }) => size))).toBeGreaterThanOrEqual(1080 / 20);
  });

  it("say what was, where something is another", () => {
    const reading = applyChanges(limpet, { "primary.driver": 14 });
    if (!reading.ok) throw new Error("unread");
    const picture = pictureOf("preview", limpet, { before: reading.build, note: "2026-10-03" })!;
    const texts = lettered(picture).map(({ text }) => text);
    // 62 / 14 · 45 / 18 · 38 / 13 · 22 / 15
    expect(texts).toEqual(expect.arrayContaining(["was 14 → 62", "was 47.47", "2026-10-03"]));
    expect(texts.filter((text) => text.startsWith("was 18"))).toEqual([]);
    expect(picture.description).toContain("inside 38 to 46, was 47.47.");
  });

  it.each(others)("stand whole on the sheet: %s", (_, build) => {
    for (const name of names) {
      const picture = pictureOf(name, build)!;
      expect(picture.svg).not.toMatch(/NaN|undefined|Infinity|\[object/);
      for (const { text, x, y, size } of lettered(picture)) {
        expect(x, text).toBeGreaterThanOrEqual(0);
        expect(x, text).toBeLessThanOrEqual(picture.width);
        expect(y, text).toBeGreaterThan(0);
        expect(y, text).toBeLessThanOrEqual(picture.height);
        expect(size, text).toBeGreaterThan(8);
      }
    }
  });

  it("hold an author's words as words", () => {
    const odd = parseBuild({
      format: "meshwright-build/1",
      title: '</title><script>alert("1")</script> & sons',
      stages: [{ id: "gears", label: "<b>Gears</b>", kind: "pair", driver: 10, driven: 40 }],
      outputs: [{ id: "rear", label: "Rear", stages: [] }],
    });
    const { svg } = pictureOf("preview", odd)!;
    expect(elementsIn(svg).map(({ tagName }) => tagName)).not.toContain("script");
    expect(elementsIn(svg).map(({ tagName }) => tagName)).not.toContain("b");
    expect(textOf(parseFragment(svg))).toContain("<b>Gears</b>");
  });
});
