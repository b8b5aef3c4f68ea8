import { readFileSync } from "node:fs";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askedFindings, mendedDraft, sayDriveLine, speakerOf, type Reporter } from "../../src/article/index.js";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const text = readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8");
const limpet = parseBuild(text);
const data = (): Record<string, unknown> & { stages: unknown[]; outputs: Record<string, unknown>[] } =>
  JSON.parse(text) as never;
const plain = (said: string): string => said.replace(/[\u00a0\u2009]/g, " ");

const reporter = (build: Build = limpet, locale = "en", mode?: string): Reporter =>
  speakerOf({
    evaluation: evaluate(build, mode),
    locale,
    words: wordsFor(locale).figures,
    reports: wordsFor(locale).reports,
    figures,
  });

describe("what the line of drive says", () => {
  it("is told stage by stage, with what each shaft has come to, and where the totals stand", () => {
    const { strands, cells, totals, origin } = sayDriveLine(reporter());
    const [shared] = strands;
    expect(shared!.cells.map(({ heard }) => plain(heard))).toEqual([
      "motor, 1850 kV",
      "Spur and pinion: 15 drives 62, module 0.8",
      "Gear row: 18 drives 31 drives 45, module 0.8",
      "axles locked together",
    ]);
    // 62/15 turns back to front; the row turns twice and keeps it.
    expect(cells.get("primary")!.shaft).toMatchObject({ text: "4.13", turn: -1, isEstablished: false });
    expect(cells.get("row")!.shaft!.text).toBe("10.33");
    expect([...totals.values()].map(({ heard }) => heard)).toEqual([
      "Front: 44.30 motor turns for one wheel turn, inside 38 to 46",
      "Rear: 43.32 motor turns for one wheel turn, inside 38 to 46",
    ]);
    expect(origin).toBe("Limpet, a 1:8 beach-launch tractor · Revision 2 · October 3, 2026");
    expect(shared!.feeds.map(({ label }) => label)).toEqual(["Front", "Rear"]);
  });

  it("says the same of a drivetrain that was edited as of one that is read anew, whatever was said before", () => {
    const counts = ["primary.driver", "primary.driven", "row.teeth.1", "front-hub.driver", "rear-hub.driven"];
    const one = fc.oneof(
      fc.record({ at: fc.constantFrom(...counts), to: fc.integer({ min: 10, max: 70 }) }),
      fc.record({ at: fc.constantFrom("primary.module", "rear-hub.module"), to: fc.constantFrom("0.8", "0.6", "1") }),
      fc.record({ at: fc.constantFrom("primary.label", "row.label"), to: fc.constantFrom("Spur", "Idle row") }),
      fc.record({
        at: fc.constant("mounts"),
        to: fc.constantFrom(null, [{ stage: "primary", from: "30 mm", to: "31 mm" }]),
      }),
      fc.record({ at: fc.constant("lengths"), to: fc.constantFrom("mm", "in") }),
      fc.record({
        at: fc.constant("rounding"),
        to: fc.constantFrom({ maximumFractionDigits: 1 }, { maximumFractionDigits: 3 }),
      }),
    );
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 8 }), fc.constantFrom("en", "de", "ar"), (edits, locale) => {
        let build = limpet;
        for (const { at, to } of edits) {
          build = applyChanges(build, { [at]: to }).build ?? build;
          const anew = parseBuild(JSON.stringify(build));
          expect(sayDriveLine(reporter(build, locale))).toEqual(sayDriveLine(reporter(anew, locale)));
        }
      }),
      { numRuns: 12 },
    );
  });

  it("holds the address of every count that can be changed, and of nothing else", () => {
    const build = read(
      document(
        [
          { id: "box", kind: "published", value: "2.6" },
          { id: "row", kind: "train", teeth: [18, 31, 45] },
        ],
        {
          rear: [
            pair("ring", 12, 35),
            { id: "sealed", kind: "measured", turnsIn: 20, turnsOut: { from: "7.2", to: "7.4" } },
          ],
        },
      ),
    );
    const { cells } = sayDriveLine(reporter(build));
    const addresses = [...cells.values()].flatMap(({ pieces }) => pieces.flatMap(({ address }) => address ?? []));
    expect(addresses).toEqual(["row.teeth.0", "row.teeth.1", "row.teeth.2", "ring.driver", "ring.driven"]);
  });

  it("says what a box can be, and carries it to the end", () => {
    const build = read(document([{ id: "box", kind: "published", value: "2.6" }], { rear: [pair("ring", 10, 40)] }));
    const { cells, totals } = sayDriveLine(reporter(build));
    expect(cells.get("box")!.notes).toEqual(["2.55 to 2.65"]);
    expect(cells.get("box")!.shaft!.text).toBe("2.55 to 2.65");
    expect(totals.get("rear")!.text).toBe("10.20 to 10.60");
  });

  it("gives each way that a lever can stand its total; where a mode decides, nobody is asked", () => {
    const box = {
      id: "box",
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", stages: [pair("low-pair", 10, 30)] },
        { id: "high", stages: [pair("high-pair", 20, 20)] },
        { id: "neutral", released: "free" },
      ],
    };
    const build = read(
      document([box], { rear: [pair("ring", 10, 40)] }, { modes: [{ id: "crawl", positions: { box: "high" } }] }),
    );
    const lanes = sayDriveLine(reporter(build)).cells.get("box")!.lanes;
    expect(lanes.map(({ id, total, stands, changes }) => [id, total, stands, changes])).toEqual([
      ["low", "12.00", true, { "box.selected": "low" }],
      ["high", "4.00", false, { "box.selected": "high" }],
      ["neutral", "not driven", false, { "box.selected": "neutral" }],
    ]);
    const ruled = sayDriveLine(reporter(build, "en", "crawl"));
    expect(ruled.totals.get("rear")!.text).toBe("4.00");
    expect(ruled.cells.get("box")!.lanes.map(({ stands, changes }) => [stands, changes])).toEqual([
      [false, undefined],
      [true, undefined],
      [false, undefined],
    ]);
  });

  it("says which way a shaft turns where the build does, and what nothing drives", () => {
    const worm = { id: "worm", kind: "worm", starts: 1, teeth: 30 };
    const box = { ...{ id: "box", kind: "selectable", selected: "out" }, positions: [{ id: "out", released: "free" }] };
    const stages = [
      pair("back", 10, 20, { reverses: true }),
      pair("on", 10, 20, { reverses: false }),
      { ...worm, label: "Worm" },
    ];
    const { cells, totals } = sayDriveLine(reporter(read(document(stages, { rear: [pair("last", 1, 2), box] }))));
    expect(["back", "on", "worm"].map((id) => cells.get(id)!.shaft!.heard)).toEqual([
      "2.00 motor turns up to here, opposite way",
      "4.00 motor turns up to here, opposite way",
      "120.00 motor turns up to here",
    ]);
    expect(cells.get("box")!.shaft).toBeUndefined();
    expect(totals.get("rear")!.heard).toBe("rear: not driven");
    const forth = sayDriveLine(
      reporter(read(document([pair("on", 10, 20, { reverses: false })], { rear: [pair("r", 1, 2)] }))),
    );
    expect(forth.cells.get("on")!.shaft!.heard).toBe("2.00 motor turns up to here, same way");
  });

  it("says where a total stands, what shares the torque, and that axles turn against each other", () => {
    const said = (more: object, front: object[] = [pair("f", 10, 20)], rear: object[] = [pair("r", 10, 20)]) =>
      sayDriveLine(reporter(read(document([], { front: front as never, rear: rear as never }, more as never))));
    const verdicts = ({ totals }: ReturnType<typeof said>) => [...totals.values()].map(({ verdict }) => verdict);
    expect(verdicts(said({}))).toEqual(["", ""]);
    expect(verdicts(said({ target: { from: 3, to: 5 } }))).toEqual(["too few motor turns", "too few motor turns"]);
    expect(verdicts(said({ target: { from: 1, to: 2, output: "rear" } }))).toEqual(["", "inside 1 to 2"]);
    const split = (kind: string) => said({ centre: { kind } }).cells.get("split:")!.name;
    expect([split("spool"), split("differential")]).toEqual(["axles locked together", "open differential"]);
    const opposed = said({}, [pair("f", 10, 20, { reverses: true })], [pair("r", 10, 20, { reverses: false })]);
    expect([opposed.faults.length, said({}).faults]).toEqual([1, []]);
  });

  it("tells of a mount that has one end no range, and of a lever before both axles the first one's total", () => {
    const first = pair("first", 15, 62, { module: "0.8" });
    const notes = (mount: object) =>
      sayDriveLine(reporter(read(document([first], { rear: [] }, { mounts: [{ stage: "first", ...mount }] }))))
        .cells.get("first")!
        .notes.map(plain);
    expect(notes({ to: "31 mm" })).toEqual(["module 0.8", "30.8 mm"]);
    expect(notes({ from: "30 mm", to: "31 mm" })).toEqual(["module 0.8", "30.8 mm", "slot 30.0 mm to 31.0 mm"]);
    const box = {
      ...{ id: "box", kind: "selectable", selected: "low" },
      positions: [{ id: "low", stages: [pair("low-pair", 10, 30)] }],
    };
    const lanes = sayDriveLine(reporter(read(document([box], { front: [pair("f", 1, 2)], rear: [] })))).cells.get(
      "box",
    )!.lanes;
    expect(lanes.map(({ label, total }) => [label, total])).toEqual([["low", "6.00"]]);
  });

  it("knows where something that is let in goes", () => {
    const { cells } = sayDriveLine(reporter());
    const places = ["motor:", "primary", "split:", "front-ring", "wheel:rear"].map(
      (key) => cells.get(key)!.before?.place,
    );
    expect(places).toEqual([undefined, { at: 0 }, { at: 2 }, { into: "front", at: 0 }, { into: "rear", at: 2 }]);
  });

  it("tells wheels apart by their axles, with tyres and without, in every language", () => {
    const bare = read(
      document([pair("one", 12, 48)], {
        front: [pair("f", 1, 2)],
        rear: { label: "Hinten", stages: [pair("r", 1, 2)] },
      }),
    );
    for (const [locale, front, rear] of [
      ["en", "wheel: front", "wheel: Hinten"],
      ["de", "Rad: front", "Rad: Hinten"],
      ["es", "rueda: front", "rueda: Hinten"],
      ["fr", "roue : front", "roue : Hinten"],
      ["ja", "車輪：front", "車輪：Hinten"],
      ["ar", "العجلة: front", "العجلة: Hinten"],
    ] as const) {
      const { cells } = sayDriveLine(reporter(bare, locale));
      expect(["front", "rear"].map((id) => plain(cells.get(`wheel:${id}`)!.heard))).toEqual([front, rear]);
    }
    expect(plain(sayDriveLine(reporter()).cells.get("wheel:rear")!.heard)).toBe("wheel: Rear, 120 mm, locked axle");
  });

  it("speaks six languages: none of its words stays English", () => {
    const english = sayDriveLine(reporter());
    const own = (said: typeof english): string[] => [
      said.name.replace(limpet.title!, ""),
      said.cells.get("split:")!.name,
      said.cells.get("motor:")!.name,
      said.cells.get("primary")!.shaft!.heard,
      said.cells.get("wheel:rear")!.notes[0]!,
      said.cells.get("front-ring")!.notes[0]!,
      said.totals.get("rear")!.verdict,
      said.totals.get("rear")!.heard,
    ];
    for (const locale of ["de", "es", "fr", "ja", "ar"]) {
      const said = own(sayDriveLine(reporter(limpet, locale)));
      const same = said.filter((one, n) => one === own(english)[n] && !/^(motor|Motor)$/.test(one));
      expect([locale, same]).toEqual([locale, []]);
      expect(said.filter((one) => /undefined|\{\d\}/.test(one))).toEqual([]);
    }
  });

  it("tells an author of something chosen that is not there, without losing the line", () => {
    const told = askedFindings("mw-drive-line", limpet, { chosen: "primry" });
    expect(told.map(({ severity, at, values }) => [severity, at, values["nearest"]])).toEqual([
      ["warning", "/chosen", ["primary"]],
    ]);
    expect(askedFindings("mw-drive-line", limpet, { chosen: "motor:" })).toEqual([]);
    expect(askedFindings("mw-drive-line", limpet, { chosen: "rear-hub" })).toEqual([]);
  });
});

describe("a draft", () => {
  const broken = (draft: unknown): string[] | undefined => {
    const mended = mendedDraft(draft);
    return mended && [...mended.broken.keys()];
  };

  it("that is whole is the build", () => {
    const mended = mendedDraft(data())!;
    expect(mended.broken.size).toBe(0);
    expect(evaluate(mended.build).output("rear")!.bounds!.low.toFraction()).toBe(
      evaluate(limpet).output("rear")!.bounds!.low.toFraction(),
    );
  });

  it("is broken at the stages that cannot be read, and nowhere else", () => {
    const draft = data();
    draft.stages[1] = { id: "row", label: "Gear row", kind: "train", teeth: [18] };
    expect(broken(draft)).toEqual(["row"]);
    draft.outputs[0]!["stages"] = [{ id: "front-ring", kind: "pair", driver: 13 }];
    expect(broken(draft)).toEqual(["row", "front-ring"]);
    const said = sayDriveLine(reporter(mendedDraft(draft)!.build), mendedDraft(draft)!.broken);
    expect([...said.totals.values()].map(({ text: total, isWaiting }) => [total, isWaiting])).toEqual([
      ["waiting for Gear row", true],
      ["waiting for Gear row", true],
    ]);
    expect(said.cells.get("primary")!.shaft!.text).toBe("4.13");
    expect(said.cells.get("rear-ring")!.shaft).toBeUndefined();
    expect(said.cells.get("row")!.faults[0]).toBeTruthy();
  });

  it("lets other axles come to their totals", () => {
    const draft = data();
    draft.outputs[0]!["stages"] = [{ id: "front-ring", label: "Ring", kind: "pair", driver: 13 }];
    const mended = mendedDraft(draft)!;
    const { totals } = sayDriveLine(reporter(mended.build), mended.broken);
    expect([...totals.values()].map((one) => one.text)).toEqual(["waiting for Ring", "43.32"]);
  });

  it("needs no wheels, no format, no ids and no kinds that are known", () => {
    expect(broken({ stages: [{ id: "one", kind: "pair", driver: 15, driven: 62 }] })).toEqual([]);
    expect(broken({ stages: [{ id: "one", kind: "piar", driver: 15, driven: 62 }, { kind: "pair" }] })).toHaveLength(2);
    expect(broken({ ...data(), outputs: [] })).toEqual([]);
    expect(broken({ ...data(), target: { from: "many" } })).toEqual([]);
    expect(broken({ ...data(), stages: "none" })).toEqual([]);
    const twice = data();
    twice.stages.push(twice.stages[0]);
    expect(broken(twice)!.length).toBeGreaterThan(0);
  });

  it("that is no document at all is nothing", () => {
    for (const draft of [undefined, null, 7, "{}", [], true]) expect(mendedDraft(draft)).toBeUndefined();
  });

  it("never throws, and what it gives can be told", () => {
    const value = fc.oneof(fc.anything(), fc.constant(undefined));
    const stage = fc.record(
      {
        id: fc.constantFrom("a", "b", "c", "A b", 5),
        kind: fc.constantFrom("pair", "train", "published", "selectable", "x"),
        driver: value,
        driven: value,
        teeth: value,
        value,
        positions: value,
      },
      { requiredKeys: [] },
    );
    const output = fc.record(
      { id: fc.constantFrom("front", "rear", ""), stages: fc.oneof(fc.array(stage, { maxLength: 3 }), value) },
      { requiredKeys: [] },
    );
    const draft = fc.record(
      {
        stages: fc.oneof(fc.array(stage, { maxLength: 4 }), value),
        outputs: fc.oneof(fc.array(output, { maxLength: 3 }), value),
        target: value,
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(draft, (one) => {
        const mended = mendedDraft(one);
        if (mended) expect(sayDriveLine(reporter(mended.build), mended.broken).strands.length).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });
});
