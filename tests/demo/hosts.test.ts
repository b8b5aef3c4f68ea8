import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { allRows, recorded } from "../../scripts/hosts.js";
import { attributesOf, elementsIn, elementsOf, sourceOf, textOf } from "./page.js";

interface Recorded {
  readonly row?: number;
  readonly title: string;
  readonly software: readonly string[];
  readonly impossible?: string;
}

const rows = (await allRows()).map((row) => recorded(row)) as Recorded[];
const written = JSON.parse(readFileSync(new URL("../hosts/results.json", import.meta.url), "utf8")) as {
  readonly rows: readonly Recorded[];
};

/** Programs that are not packages come with the machine, in the version that it has. */
const withoutMachines = (all: readonly Recorded[]): unknown[] =>
  all.map(({ impossible: _, software, ...row }) => ({
    ...row,
    software: software.map((name) => name.replace(/ \S* ?\(Debian\)$/, "")),
  }));

// A browser's worth of other people's packages is loaded for this.
describe("the guide's page about other software", { timeout: 120_000 }, () => {
  test("stands on a run of every row that there is, with the packages that are installed", () => {
    expect(withoutMachines(written.rows)).toEqual(withoutMachines(rows));
  });

  test("names every row, its number and what it was tried with", () => {
    const lines = elementsIn(sourceOf("guide/hosts.html"))
      .filter(({ tagName, parentNode }) => tagName === "tr" && parentNode?.nodeName === "tbody")
      .map((row) => elementsOf(row).filter(({ tagName }) => /^t[hd]$/.test(tagName)))
      .map((cells) => cells.map((cell) => textOf(cell)));
    expect(lines).toHaveLength(written.rows.length);
    const plain = (text: string): string => text.replaceAll("’", "'").replace(/[“”]/g, '"');
    for (const { row, title, software, impossible } of written.rows) {
      const line = lines.find(([, words]) => plain(words!).startsWith(plain(title)));
      expect(line?.[0], title).toBe(String(row ?? "+"));
      for (const name of software) expect(line![1]).toContain(name);
      expect(line![2]).toContain(impossible ?? "Holds");
    }
    const numbers = written.rows.flatMap(({ row }) => row ?? []);
    expect(numbers).toEqual(Array.from({ length: 54 }, (_, n) => n + 1));
  });

  test("is reached from every other page of the guide", () => {
    for (const name of ["index", "elements", "figures", "build", "hosts"]) {
      const links = elementsIn(sourceOf(`guide/${name}.html`)).map((element) => attributesOf(element).href);
      expect(links).toContain("hosts.html");
    }
  });
});
