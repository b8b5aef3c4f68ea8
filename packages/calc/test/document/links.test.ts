import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, buildFromLink, changesFrom, linkOf, linkOfBuild } from "../../src/document/index.js";
import { valueAt, type Build, type ChangeSet } from "../../src/drivetrain/index.js";
import { document, pair, read, told } from "../make.js";

const limpet = read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const back = (changes: ChangeSet, build: Build = limpet, later: Build = build) =>
  changesFrom(linkOf(build, changes), later);
const applied = (build: Build, changes: ChangeSet): Build => {
  const result = applyChanges(build, changes);
  expect(result.findings.filter((one) => one.severity === "error")).toEqual([]);
  return result.build!;
};

describe("a short link", () => {
  it("carries three changed counts in forty characters at most", () => {
    const changes = { "primary.driver": 17, "primary.driven": 66, "row.teeth.1": 30 };
    const link = linkOf(limpet, changes);
    expect(link.length).toBeLessThanOrEqual(34);
    expect(back(changes)).toEqual({ changes, findings: [] });
    const largest = { "primary.driver": 1_000_000, "primary.driven": 999_999, "row.teeth.0": 300_000 };
    expect(linkOf(limpet, largest).length).toBeLessThanOrEqual(40);
    expect(back(largest)).toEqual({ changes: largest, findings: [] });
  });

  it("is made of letters, digits, - and _, says its version first and ends in a letter", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.string({ maxLength: 40, unit: "binary" }), (count, title) => {
        for (const link of [
          linkOf(limpet, { "primary.driver": count, title }),
          linkOfBuild(applied(limpet, { title })),
        ])
          expect(link).toMatch(/^1[\w-]*[A-Za-z]$/);
      }),
    );
  });

  it("carries whatever a change can set: text, flags, nothing, whole stages, parts of lists", () => {
    const changes = {
      title: "Krabbe № 7 – “écume” 🦀",
      "front.wheel.diameter": "118 mm",
      "primary.reverses": false,
      "primary.group": null,
      "row.teeth": [18, 45],
      "front-hub": { id: "front-hub", kind: "published", value: "1.5", label: "Hub, as printed" },
      "battery.cells": 4,
      wheelbase: null,
      "target.from": "38.5",
      "alternatives.0.label": "Another name",
    };
    expect(back(changes)).toEqual({ changes, findings: [] });
    expect(applied(limpet, back(changes).changes)).toEqual(applied(limpet, changes));
  });

  it("leaves out what changes nothing", () => {
    const link = linkOf(limpet, { "primary.driver": 15, "primary.reverses": null, "row.teeth": [18, 31, 45] });
    expect(link).toHaveLength(4);
    expect(changesFrom(link, limpet)).toEqual({ changes: {}, findings: [] });
  });

  it("is refused its making where an address leads nowhere", () => {
    expect(() => linkOf(limpet, { "primry.driver": 16 })).toThrow(
      expect.objectContaining({ code: "missing-address", at: "primry.driver" }),
    );
  });
});

describe("a build that its author has changed since", () => {
  it("refuses the stale change by name and applies the rest", () => {
    const later = applied(limpet, { "primary.driver": 16 });
    const { changes, findings } = back({ "primary.driver": 17, "primary.driven": 66, title: "Mine" }, limpet, later);
    expect(changes).toEqual({ "primary.driven": 66, title: "Mine" });
    expect(findings).toMatchObject([
      {
        severity: "error",
        about: "meaning",
        code: "change-stale",
        at: "primary.driver",
        message: "primary.driver: the author has changed this since the link was made.",
      },
    ]);
    expect(told(back({ title: "Mine" }, limpet, applied(limpet, { title: "New" })).findings)).toEqual([
      "change-stale at title",
    ]);
  });

  it("is never changed where a count was: no other count of any size passes for the one replaced", () => {
    const link = linkOf(limpet, { "primary.driver": 17 });
    for (let count = 1; count < 3000; count++)
      if (count !== 15)
        expect(
          changesFrom(link, {
            ...limpet,
            stages: [{ ...limpet.stages[0]!, driver: count } as never, ...limpet.stages.slice(1)],
          }).changes,
        ).toEqual({});
  });

  it("refuses a stage that is gone, renamed or of another kind", () => {
    const link = linkOf(limpet, { "row.teeth.0": 20, "front-hub.driver": 16 });
    const without = read({ ...limpet, stages: limpet.stages.slice(0, 1), mounts: [], alternatives: [], parts: [] });
    const { changes, findings } = changesFrom(link, without);
    expect(changes).toEqual({ "front-hub.driver": 16 });
    expect(told(findings)).toEqual(["change-stale at "]);
  });

  it("is found again by addresses, wherever the stage has moved", () => {
    const [primary, row] = limpet.stages;
    const moved = read({ ...limpet, stages: [row, primary] });
    expect(back({ "primary.driver": 17 }, limpet, moved)).toEqual({ changes: { "primary.driver": 17 }, findings: [] });
  });
});

describe("a change that the build cannot take", () => {
  it("is refused alone", () => {
    const changes = { "primary.driver": 0, "row.teeth.1": 30, "centre.kind": "spool", "row.label": "Row" };
    const { changes: kept, findings } = back(changes);
    expect(kept).toEqual({ "row.teeth.1": 30, "row.label": "Row" });
    expect(told(findings)).toEqual(["change-refused at primary.driver"]);
    expect(findings[0]!.message).toBe(
      "The link's change of primary.driver cannot be made: Expected a whole number from 1 to 1000000, found 0.",
    );
  });

  it("takes the other half of a set with it, and nothing else", () => {
    const later = applied(limpet, { "front-ring.driver": 12, "front-ring.driven": 38 });
    const changes = { "front-ring.driver": 11, "front-ring.driven": 36, "primary.driver": 17 };
    expect(back(changes)).toEqual({ changes, findings: [] });
    const { changes: kept, findings } = back(changes, limpet, later);
    expect(kept).toEqual({ "primary.driver": 17 });
    expect(told(findings)).toEqual(["change-stale at front-ring.driver", "change-refused at front-ring.driven"]);
  });

  it("yields changes that always apply, whatever was asked for", () => {
    const value = fc.oneof(fc.integer({ min: -5, max: 100 }), fc.constant(null), fc.constant("1.5"), fc.boolean());
    const address = fc.constantFrom(
      "primary.driver",
      "row.teeth.1",
      "row.teeth",
      "front-hub",
      "front.wheel",
      "target.to",
      "outputs",
      "rear.from",
    );
    fc.assert(
      fc.property(fc.dictionary(address, value, { maxKeys: 6 }), (changes) => {
        const { changes: kept, findings } = back(changes as ChangeSet);
        expect(applyChanges(limpet, kept).build).toBeDefined();
        for (const [at, to] of Object.entries(changes))
          if (!(at in kept) && JSON.stringify(valueAt(limpet, at) ?? null) !== JSON.stringify(to))
            expect(findings).not.toEqual([]);
      }),
      { numRuns: 200 },
    );
  });
});

describe("two addresses that look alike to the link", () => {
  // Out of many addresses with one count each, some pair shares the 24 bits that the link keeps of an address.
  const stages = Array.from({ length: 9000 }, (_, n) => pair(`s${n}`, 7, 7));
  const build = read(document([], { rear: stages }));

  it("come back each in its own place", () => {
    const changes = Object.fromEntries(stages.map(({ id }, n) => [`${id}.driver`, 10 + (n % 50)]));
    const link = linkOf(build, changes);
    // At least one change had to be written out in full.
    expect(link.length).toBeGreaterThan(4 + 9000 * 9);
    expect(changesFrom(link, build)).toEqual({ changes, findings: [] });
    const { findings, changes: none } = changesFrom(
      link,
      read(document([], { rear: stages.map((one) => ({ ...one, driver: 8 })) })),
    );
    expect(none).toEqual({});
    expect(findings).toHaveLength(20);
  });
});

describe("the link that holds the whole build", () => {
  it("gives it back", () => {
    expect(buildFromLink(linkOfBuild(limpet))).toMatchObject({ ok: true, build: limpet });
    const odd = read({
      ...limpet,
      title: "Krabbe № 7 – “écume” 🦀 \ud800",
      "x-a": { __proto__: null, b: ["\0", "\u007f", "\u0080"] },
    });
    expect(buildFromLink(linkOfBuild(odd)).build).toEqual(odd);
  });

  it("is not mistaken for changes, nor the other way round", () => {
    expect(changesFrom(linkOfBuild(limpet), limpet)).toMatchObject({ changes: {}, findings: [{ code: "link-other" }] });
    const { build, findings } = buildFromLink(linkOf(limpet, { "primary.driver": 17 }));
    expect([build, told(findings)]).toEqual([undefined, ["link-other at "]]);
    expect(findings[0]!.message).toBe("The link holds changes, expected a whole build.");
  });

  it("is checked like any other document", () => {
    expect(told(buildFromLink(linkOfBuild({ ...limpet, outputs: [] })).findings)).toEqual(["not-a-list at /outputs"]);
  });
});

describe("links that are none", () => {
  const link = linkOf(limpet, { "primary.driver": 17, title: "Mine" });
  const codes = (text: string) => {
    const { changes, findings } = changesFrom(text, limpet);
    expect(changes).toEqual({});
    expect(told(buildFromLink(text).findings)).toHaveLength(1);
    return told(findings);
  };

  it("are refused when a letter is lost, added or changed", () => {
    for (let n = 0; n < link.length; n++) {
      expect(codes(link.slice(0, n)), `cut at ${n}`).toEqual(["link-broken at "]);
      const other = link[n] === "x" ? "y" : "x";
      expect(codes(link.slice(0, n) + other + link.slice(n + 1)), `changed at ${n}`).toEqual(["link-broken at "]);
    }
    expect(codes(`${link}A`)).toEqual(["link-broken at "]);
  });

  it.each([undefined, null, 5, {}, "", "1c", "1cÄÖ", "1c%20", "a b c d", "=".repeat(1e6)])("%j is refused", (text) => {
    expect(codes(text as string)).toEqual(["link-broken at "]);
  });

  it("are told apart from those of another version", () => {
    const other = linkOf(limpet, {});
    expect(told(changesFrom(other, limpet).findings)).toEqual([]);
    // What a later version would seal: its own mark, and the same two letters at the end.
    const found = new Set<string>();
    for (const a of letters)
      for (const b of letters) found.add(told(changesFrom(`2c${a}${b}`, limpet).findings).join());
    expect(found).toEqual(new Set(["link-broken at ", "newer-link at "]));
  });

  it("do no harm when only their last letters are right", () => {
    for (const content of [
      "1cA",
      "1cAAAAA",
      "1cAAABQ________!!".replace(/!/g, "A"),
      `1c${"B".repeat(1000)}`,
      `1c${"_".repeat(1000)}`,
      `1c${"A".repeat(1000)}`,
      `1b${"_".repeat(1000)}`,
      "1bA",
    ]) {
      const sealed = letters
        .flatMap((a) => letters.map((b) => content + a + b))
        .find(
          (one) =>
            !told(changesFrom(one, limpet).findings).includes("link-broken at ") ||
            !told(buildFromLink(one).findings).includes("link-broken at "),
        );
      for (const text of sealed ? [sealed] : []) {
        expect(changesFrom(text, limpet).changes).toEqual({});
        expect(changesFrom(text, limpet).findings).not.toEqual([]);
        expect(buildFromLink(text).build).toBeUndefined();
      }
    }
  });
});

const letters = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"];
