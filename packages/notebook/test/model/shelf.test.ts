import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "@meshwright/calc/document";
import { partsFromSheet, readSheet } from "@meshwright/calc/parts";
import { addPart, newNotebook, partsOf, Session, shelve, withPart } from "../../src/model/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const empty = (): Session => new Session(newNotebook("one", "Limpet"), () => new Date(0));

/** Puts a sheet on the shelf; answers with what is told. */
function put(session: Session, text: string) {
  return shelve(session, partsFromSheet(readSheet(text).rows), "a sheet");
}
const heads = "Name;Teeth;Module;Price;Owned\n";
const told = ({ notebook }: Session) =>
  partsOf(notebook).map(({ id, teeth, module, diametralPitch, maker, owned }) =>
    [id, teeth, module ?? `${String(diametralPitch)} DP`, maker ?? "", owned ?? ""].join(" "),
  );

describe("a second sheet of parts", () => {
  it("replaces no part that differs in what it is, and says how many are new, updated and left", () => {
    const session = empty();
    expect(put(session, `${heads}Pinion;13;0.6;3 EUR;1`)).toMatchObject({ added: 1, updated: 0, left: 0 });
    const [first] = partsOf(session.notebook);
    withPart(session, { ...first!, owned: 5 }, "I have 5");
    expect(put(session, `${heads}Pinion;13;0.8;4 EUR;`)).toMatchObject({ added: 1, updated: 0, left: 0 });
    const other = "Name;Teeth;Pitch;Maker;Price\nPinion;13;48 DP;Other Works;2 EUR";
    expect(put(session, other)).toMatchObject({ added: 1, updated: 0, left: 0 });
    expect(told(session)).toEqual(["pinion-13 13 0.6  5", "pinion-13-2 13 0.8  ", "pinion-13-3 13 48 DP Other Works "]);
    // Each sheet again: every part finds the one that it is.
    expect(put(session, `${heads}Pinion;13;0.80;4 EUR;`)).toMatchObject({ added: 0, updated: 0, left: 1 });
    expect(put(session, other)).toMatchObject({ added: 0, updated: 0, left: 1 });
    expect(told(session)).toHaveLength(3);
  });

  it("updates the same part, and keeps what the builder has set unless it speaks of it", () => {
    const session = empty();
    put(session, `${heads}Pinion;13;0.6;3 EUR;1`);
    withPart(session, { ...partsOf(session.notebook)[0]!, owned: 5, status: "fitted" }, "I have 5");
    expect(put(session, `${heads}Pinion;13;0.6;3.50 EUR;`)).toMatchObject({ added: 0, updated: 1, left: 0 });
    const [now] = partsOf(session.notebook);
    expect(now).toMatchObject({ owned: 5, status: "fitted", price: { amount: "3.50", currency: "EUR" } });
    put(session, `${heads}Pinion;13;0.6;3.50 EUR;2`);
    expect(partsOf(session.notebook)[0]!.owned).toBe(2);
    // More is known of it now, and nothing is known less.
    put(session, "Name;Teeth;Bore\nPinion;13;5 mm");
    expect(partsOf(session.notebook)).toMatchObject([{ module: "0.6", bore: "5 mm", owned: 2 }]);
  });

  it("takes no part for another of the same name where it does not say which of them it means", () => {
    const session = empty();
    put(session, `${heads}Pinion;13;0.6;;1\nPinion;13;0.8;;1`);
    expect(put(session, "Name;Teeth\nPinion;13")).toMatchObject({ added: 1, updated: 0 });
    expect(partsOf(session.notebook)).toHaveLength(3);
  });

  it("keeps its own rows apart, however alike they are, and finds them again", () => {
    const session = empty();
    const twice = `${heads}Pinion;13;0.6;;1\nPinion;13;0.6;;1`;
    expect(put(session, twice)).toMatchObject({ added: 2 });
    expect(put(session, twice)).toMatchObject({ added: 0, left: 2 });
  });

  it("replaces by an id that it gives itself, and what the builder has set stays all the same", () => {
    const session = empty();
    put(session, "Id;Name;Teeth;Module;Price\np13;Pinion;13;0.6;3 EUR");
    withPart(session, { ...partsOf(session.notebook)[0]!, owned: 5 }, "I have 5");
    expect(put(session, "Id;Name;Teeth;Module\np13;Pinion;14;0.8")).toMatchObject({ added: 0, updated: 1 });
    expect(partsOf(session.notebook)).toMatchObject([{ id: "p13", teeth: 14, module: "0.8", owned: 5 }]);
    expect(put(session, "Id;Name;Teeth;Pitch\np13;Pinion;14;32 DP")).toMatchObject({ updated: 1 });
    expect(partsOf(session.notebook)[0]).not.toHaveProperty("module");
  });

  it("takes no id of a stage, and finds its part again all the same", () => {
    const session = new Session({ ...newNotebook("one", "Limpet"), build: limpet });
    const before = partsOf(session.notebook).length;
    const sheet = "Id;Name;Teeth;Module\nprimary;Odd pinion;13;0.6";
    expect(put(session, sheet)).toMatchObject({ findings: [], added: 1 });
    expect(put(session, sheet)).toMatchObject({ findings: [], added: 0, left: 1 });
    expect(partsOf(session.notebook)).toHaveLength(before + 1);
  });
});

describe("parts put on the shelf by hand", () => {
  it("are refused before the drivetrain is there for what it would refuse: the notebook has to open again", () => {
    const session = empty();
    const [refusal] = addPart(session, { name: "Pinion", is: "pinion", module: "abc" }, "Pinion");
    expect(refusal?.at).toBe("/parts/0/module");
    expect(partsOf(session.notebook)).toEqual([]);
  });

  it("stay beside each other, whatever they are called", () => {
    const session = empty();
    addPart(session, { name: "Pinion", is: "pinion", teeth: 13, module: "0.6", owned: 1 }, "Pinion");
    addPart(session, { name: "Pinion", is: "pinion", teeth: 17, module: "0.8", owned: 1 }, "Pinion");
    addPart(session, { name: "平歯車", is: "spur", teeth: 40 }, "平歯車");
    addPart(session, { name: "ピニオン", is: "pinion", teeth: 12 }, "ピニオン");
    const parts = partsOf(session.notebook);
    expect(parts.map(({ name, teeth }) => `${name} ${teeth}`)).toEqual([
      "Pinion 13",
      "Pinion 17",
      "平歯車 40",
      "ピニオン 12",
    ]);
    expect(new Set(parts.map(({ id }) => id)).size).toBe(4);
  });
});
