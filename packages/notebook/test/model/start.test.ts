import { describe, expect, it } from "vitest";
import {
  answerFault,
  askings,
  axleChoices,
  begin,
  blanksOf,
  isAnswered,
  newNotebook,
  Session,
  splitChange,
  stageFrom,
  totalsText,
} from "../../src/model/index.js";

const asking = (id: string) => askings.find((one) => one.id === id)!;

describe("the empty notebook", () => {
  it("comes from nothing to the first totals, which are exact or say how far they are not", () => {
    const session = new Session(newNotebook("one"));
    expect(begin(session, stageFrom(asking("pair"), { driver: "15", driven: "62" }, undefined), "Knot")).toEqual([]);
    expect(totalsText(session.build!)).toBe("4.13");
    const box = stageFrom(asking("printed"), { value: "2.61" }, session.build);
    expect(session.change([{ insert: box, at: 1 }])).toEqual([]);
    expect(totalsText(session.build!)).toBe("10.76 to 10.81");
    expect(session.change(splitChange(session.build!, axleChoices[0]!.axles), "Front and rear")).toEqual([]);
    for (const [into, driver, driven] of [
      ["front", "13", "38"],
      ["rear", "12", "35"],
    ] as const)
      session.change([{ insert: stageFrom(asking("pair"), { driver, driven }, session.build), into, at: 0 }]);
    expect(totalsText(session.build!)).toBe("Front 31.47 to 31.60, rear 31.40 to 31.53");
  });

  it("makes a stage that a build takes out of every question, and lets no half answer through", () => {
    const answers: Record<string, Record<string, string>> = {
      pair: { driver: "15", driven: "62" },
      row: { teeth: "18, 31 → 45" },
      printed: { value: "27:1" },
      unknown: { in: "20", from: "7,2", to: "7.3" },
      belt: { driver: "20", driven: "40" },
      worm: { starts: "2", teeth: "30" },
      planetary: { sun: "20", ring: "60" },
      lever: { lowDriver: "14", lowDriven: "40", highDriver: "20", highDriven: "34" },
    };
    expect(Object.keys(answers).sort()).toEqual(askings.map(({ id }) => id).sort());
    for (const one of askings) {
      const session = new Session(newNotebook("one"));
      expect(begin(session, stageFrom(one, answers[one.id]!, undefined), "Knot"), one.id).toEqual([]);
      expect(session.change([{ insert: stageFrom(one, answers[one.id]!, session.build), at: 1 }]), one.id).toEqual([]);
      for (const { name } of blanksOf(one)) expect(isAnswered(one, { ...answers[one.id], [name]: "" })).toBe(false);
    }
  });

  it.each([
    ["pair", "15.5", "Whole teeth only, from 1."],
    ["pair", "0", "Whole teeth only, from 1."],
    ["pair", "-3", "Whole teeth only, from 1."],
    ["row", "18", "Two counts or more, such as 18 31 45."],
    ["row", "18 31 x", "Two counts or more, such as 18 31 45."],
    ["printed", "about 2", "As it is printed, such as 2.61 or 27:1."],
    ["unknown", "0", "A number above 0, such as 7.25."],
    ["unknown", "1,000", "Found “1,000”, which may be 1 or 1000; expected the one that is meant, written so."],
    ["printed", "1,500", "Found “1,500”, which may be 1.5 or 1500; expected the one that is meant, written so."],
  ])("asks again where %s is answered with %s", (id, answer, sentence) => {
    expect(answerFault(blanksOf(asking(id))[0]!, answer)).toBe(sentence);
  });
});
