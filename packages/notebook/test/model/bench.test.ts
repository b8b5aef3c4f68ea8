import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "@meshwright/calc/document";
import { centresRead, newNotebook, noteCentre, Session } from "../../src/model/index.js";

// Spur and pinion: 15 and 62 teeth of module 0.8, 30.8 mm apart; by the pair 23 and 53 the mount goes from 30.3 to 31.3 mm.
const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const begun = (): Session => new Session({ ...newNotebook("one", "Limpet"), build: limpet }, () => new Date(0));
const after = (...texts: string[]) => {
  const session = begun();
  for (const text of texts) expect(noteCentre(session, "primary", text)).toBeUndefined();
  return centresRead(session.notebook).map(({ verdict, why }) => `${verdict}: ${why}`);
};

describe("a centre distance that was read off", () => {
  it.each(["abc", "31.2 ells", "-3", "0", "1,850", "31.2 mm or so"])("is refused where it is no length: %s", (text) => {
    const session = begun();
    expect(noteCentre(session, "primary", text)).toBe(
      `Found “${text}”, Spur and pinion; expected a length above 0 such as 31.2 mm, 31,2 or 1.23 in.`,
    );
    expect(session.notebook.bench).toBeUndefined();
  });

  it("agrees where it is what is worked out, give or take 0.2 mm; without a unit it is in millimetres", () => {
    expect(after("30.8")).toEqual(["agrees: with 30.8 mm that is worked out, within 0.2 mm"]);
    expect(after("31,0 mm")).toEqual(["agrees: with 30.8 mm that is worked out, within 0.2 mm"]);
    expect(after("1.213 in")).toEqual(["agrees: with 30.8 mm that is worked out, within 0.2 mm"]);
  });

  it("disagrees where it is farther away, or outside of what the mount sets", () => {
    expect(after("30.5")).toEqual([
      "disagrees: 0.3 mm less than 30.8 mm that is worked out, and reading it may be 0.2 mm out",
    ]);
    expect(after("31.9 mm")).toEqual([
      "disagrees: 1.1 mm more than 30.8 mm that is worked out, and reading it may be 0.2 mm out; the mount sets 30.3 mm to 31.3 mm",
    ]);
    expect(after("31.2 in")[0]).toMatch(/^disagrees: 761\.68 mm more than 30\.8 mm/);
  });

  it("is measured against an opening that is set, and against the latest reading only", () => {
    const session = begun();
    session.change([{ set: "mounts", to: [{ ...limpet.mounts![0]!, opening: "0.4 mm" }] }]);
    noteCentre(session, "primary", "31.4");
    expect(centresRead(session.notebook)[0]!.verdict).toBe("agrees");
    noteCentre(session, "primary", "33");
    expect(centresRead(session.notebook).map(({ verdict }) => verdict)).toEqual(["disagrees"]);
  });

  // Opened, a ring comes closer: 0.8 · (60 − 20) / 2 = 16 mm, 0.4 mm less is 15.6.
  it("is held against how the axes are set: a ring closer, as far as is wanted, and no nearer than a mount lets it", () => {
    const read = (text: string, mount: object, more: object = {}): string => {
      const pair = { id: "primary", kind: "pair", form: "spur", driver: 15, driven: 62, module: "0.8", ...more };
      const build = parseBuild({
        format: "meshwright-build/1",
        stages: [pair],
        mounts: [{ stage: "primary", ...mount }],
        outputs: [{ id: "rear", stages: [] }],
      });
      const session = new Session({ ...newNotebook("one", "Ring"), build }, () => new Date(0));
      noteCentre(session, "primary", text);
      return centresRead(session.notebook)[0]!.verdict;
    };
    const ring = { driver: 20, driven: 60, internal: true };
    expect([read("15.6", { opening: "0.4 mm" }, ring), read("16.4", { opening: "0.4 mm" }, ring)]).toEqual([
      "agrees",
      "disagrees",
    ]);
    const wanted = { opening: "0.1 mm", openingTo: "0.9 mm" };
    expect([read("31.4", wanted), read("31.8", wanted), read("32", wanted)]).toEqual(["agrees", "agrees", "disagrees"]);
    // A slot that begins at 31.5 mm pushes them 0.7 mm apart.
    expect([read("31.5", { from: "31.5 mm", to: "33 mm" }), read("30.8", { from: "31.5 mm", to: "33 mm" })]).toEqual([
      "agrees",
      "disagrees",
    ]);
  });

  it("cannot be told of other counts than it was read with, nor of teeth whose pitch is not known", () => {
    const session = begun();
    noteCentre(session, "primary", "31.9");
    session.change({ "primary.driver": 16 });
    expect(centresRead(session.notebook)[0]).toMatchObject({
      verdict: "cannot tell",
      why: "it was read with other counts",
    });
    session.change({ "primary.driver": 15 });
    session.change({ "primary.module": null, mounts: [{ stage: "primary", from: "30 mm", to: "31 mm" }] });
    expect(centresRead(session.notebook)[0]!.why).toBe("the mount sets 30 mm to 31 mm");
    expect(noteCentre(session, "primary", "30.5")).toBeUndefined();
    expect(centresRead(session.notebook)[0]).toMatchObject({ verdict: "cannot tell", why: "the pitch is not known" });
  });

  it("that was noted before and is no length is told", () => {
    const bench = [
      { of: "primary", text: "abc", date: "2026-10-04", with: { "primary.driver": 15, "primary.driven": 62 } },
    ];
    const session = new Session({ ...begun().notebook, bench });
    expect(centresRead(session.notebook)[0]).toMatchObject({ verdict: "disagrees", why: "“abc” is no length" });
  });
});
