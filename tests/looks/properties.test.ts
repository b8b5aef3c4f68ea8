// Public custom properties begin with --mw- and are each mapped to a private one in one place, so that an element never
// reads a property that nobody defines and a page never sets one that nobody reads.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { at, filesBelow, shown } from "../../scripts/lib/paths.js";

const place = "packages/elements/src/shared/element/styles.ts";
const isStyled = (path: string) => path.endsWith(".ts") && !path.endsWith(".test.ts");
const withoutComments = (code: string) => code.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
const sources = new Map(
  filesBelow(at("packages", "elements", "src"), isStyled).map((path) => [
    shown(path),
    withoutComments(readFileSync(path, "utf8")),
  ]),
);
const all = [...sources.values()].join("\n");

const namesIn = (code: string, pattern: RegExp) => [...code.matchAll(pattern)].map((match) => match[1] as string);
const unique = (names: Iterable<string>) => [...new Set(names)].sort();

describe("custom properties of the elements", () => {
  const mapped = namesIn(sources.get(place) ?? "", /--[\w-]+:\s*var\((--mw-[\w-]+)/g);

  it("are mapped once each, and are there", () => {
    expect(mapped).toEqual([...new Set(mapped)]);
    expect(mapped.length).toBeGreaterThan(0);
  });

  it("are read in that place only", () => {
    const elsewhere = [...sources]
      .filter(([path]) => path !== place)
      .flatMap(([path, code]) => namesIn(code, /(--mw-[\w-]+)/g).map((name) => `${path}: ${name}`));
    expect(elsewhere).toEqual([]);
  });

  it("are all mapped where a page of ours sets them", () => {
    const set = filesBelow(at("demo"), (path) => /\.(css|html)$/.test(path)).flatMap((path) =>
      namesIn(readFileSync(path, "utf8"), /(--mw-[\w-]+)\s*:/g),
    );
    expect(unique(set).filter((name) => !mapped.includes(name))).toEqual([]);
  });

  it("are private names that somebody sets, where they are read", () => {
    const set = new Set([...namesIn(all, /(--[\w-]+)\s*:/g), ...namesIn(all, /setProperty\(\s*["'`](--[\w-]+)/g)]);
    const read = namesIn(all, /var\(\s*(--(?!mw-)[\w-]+)/g);
    expect(unique(read).filter((name) => !set.has(name))).toEqual([]);
  });
});
