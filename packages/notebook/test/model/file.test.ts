import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "@meshwright/calc/document";
import {
  fileName,
  fileText,
  newNotebook,
  noSheet,
  openFile,
  Session,
  usualExport,
  type Notebook,
} from "../../src/model/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const open = (text: string) => openFile(bytes(text), "new");
const whole: Notebook = {
  ...newNotebook("one", "Limpet, shore"),
  build: limpet,
  post: { type: "doc", content: [{ type: "paragraph", content: [{ type: "text", text: "With 15 teeth" }] }] },
  bench: [{ of: "front", text: "44.3", date: "2026-10-04", with: { "primary.driver": 15 } }],
  runs: [{ date: "2026-10-05", motor: "61 °C", minutes: "12" }],
  orders: { "pinion-17": "ordered" },
  versions: [{ date: "2026-10-03", note: "hubs counted", build: limpet }],
  log: [{ at: "2026-10-03T10:00:00.000Z", what: "begun" }],
};

describe("a notebook in a file", () => {
  it("comes back as it was", () => {
    const opened = open(fileText(whole, { ...usualExport, history: true }));
    expect(opened.kind === "notebook" && opened.notebook).toEqual(whole);
  });

  it("comes back after any number of edits, those included that leave an alternative nothing to stand on", () => {
    const session = new Session({ ...newNotebook("one"), build: limpet });
    expect(session.change([{ remove: "rear-hub" }])).toEqual([]);
    session.change({ "front-ring.set": null });
    const opened = open(fileText(session.notebook));
    expect(opened.kind === "notebook" && opened.notebook.build).toEqual(session.build);
  });

  it("leaves out what was not chosen: the history unless it is asked for", () => {
    expect(JSON.parse(fileText(whole))).not.toHaveProperty("log");
    const bare = JSON.parse(fileText(whole, { drivetrain: true, post: false, parts: false, history: false }));
    expect(bare).not.toHaveProperty("post");
    expect(bare).not.toHaveProperty("orders");
    expect(bare.build).not.toHaveProperty("parts");
    expect(bare.build.stages).toHaveLength(2);
  });

  it("has the title's name", () => {
    expect(fileName(whole)).toBe("limpet-shore.json");
    expect(fileName({ ...whole, title: "…" })).toBe("notebook.json");
  });

  it.each([
    ["nothing", "", /empty/],
    ["spaces", " \n ", /empty/],
    ["a picture", "\x89PNG\r\n\x1a\n", /a picture/],
    ["a packed sheet", "PK\x03\x04", /save it as CSV/],
    ["a PDF", "%PDF-1.7", /a PDF/],
    ["bytes", "ab\0\0cd", /no text/],
    ["other data", '{"name":"x"}', /does not say “meshwright-notebook\/1”/],
    ["a list", "[1, 2]", /bare value/],
    ["half a notebook", fileText(whole).slice(0, 400), /cut off/],
    ["a newer notebook", '{"format":"meshwright-notebook/2"}', /newer format, meshwright-notebook\/2/],
    [
      "a broken drivetrain",
      '{"format":"meshwright-build/1","outputs":[{"id":"rear","stages":[{"id":"a","kind":"pair","driver":0,"driven":3}]}]}',
      /\/outputs\/0\/stages\/0\/driver/,
    ],
    ["a letter", "Dear sir", /neither a notebook/],
  ])("is told apart from %s in a sentence, and nothing is opened", (_what, text, sentence) => {
    const opened = openFile(
      Uint8Array.from(text, (one) => one.charCodeAt(0)),
      "new",
    );
    expect(opened.kind).toBe("refused");
    if (opened.kind === "refused") {
      expect(opened.why).toMatch(sentence);
      expect(opened.why).toMatch(/Nothing was opened\.$/);
    }
  });

  it("is told apart from 50 MB dropped by mistake, at once", () => {
    expect(openFile(new Uint8Array(5e7), "new")).toEqual({
      kind: "refused",
      why: "This file has 50 MB; a notebook has a few at most. Nothing was opened.",
    });
  });

  it("is told apart from a drivetrain alone, a sheet of parts, a post", () => {
    const build = open(JSON.stringify(limpet));
    expect(build.kind === "notebook" && build.notebook.title).toBe("Limpet, a 1:8 beach-launch tractor");
    expect(open("Name;Teeth\nPinion;15\n").kind).toBe("sheet");
    expect(open("<p>With <mw-teeth>15</mw-teeth></p>").kind).toBe("post");
  });

  it.each([
    ["post.md", "With 15 teeth, all is well.\nNext, the hub, and so on.\n"],
    ["post.txt", "# Limpet, again\n\nWith 15 teeth, all is well.\n"],
    ["post.txt", "---\ntitle: Limpet, again\n---\n\nWith 15 teeth.\n"],
    [
      "post.markdown",
      '<mw-build stages="15 to 62" rear=""></mw-build>\nWith <mw-teeth of="stage-1.driver">15</mw-teeth>.\n',
    ],
    ["", "See [the box](https://example.org/), and **count**.\n"],
  ])("is told apart from a post in Markdown, which is no sheet either: %s", (name, text) => {
    expect(openFile(bytes(text), "new", name)).toEqual({
      kind: "refused",
      why: "This file is a post in Markdown; the notebook opens a post as HTML. Save the page that your blog makes of it, and open that. Nothing was opened.",
    });
  });

  const leftOut = (data: object): readonly string[] => {
    const opened = open(JSON.stringify(data));
    return opened.kind === "notebook" ? opened.left : [opened.kind];
  };

  it("takes in no field that it does not know, and no node that is none, and says which and where", () => {
    const odd = { ...whole, evil: 1, post: { type: "doc", content: [1, null, { type: 3 }] } };
    const opened = open(JSON.stringify(odd));
    expect(opened.kind === "notebook" && Object.keys(opened.notebook)).not.toContain("evil");
    expect(opened.kind === "notebook" && opened.notebook.post).toEqual({ type: "doc", content: [] });
    expect(leftOut(odd)).toEqual([
      "/evil: this page does not know “evil”.",
      "/post/content/0: found 1, expected a piece of a post, with its type.",
      "/post/content/1: found null, expected a piece of a post, with its type.",
      "/post/content/2/type: found 3, expected text.",
    ]);
    expect(leftOut(whole)).toEqual([]);
  });

  it("keeps a post whose paragraphs stand in many elements of its page", () => {
    const deep = (n: number): object =>
      n ? { type: "box", attrs: { tag: "div" }, content: [deep(n - 1)] } : { type: "paragraph", content: [] };
    const post = { type: "doc", content: [deep(120)] };
    const opened = open(JSON.stringify({ ...whole, post }));
    expect(opened.kind === "notebook" && [opened.left, opened.notebook.post]).toEqual([[], post]);
  });

  it("says what it leaves out of each of its lists, and where", () => {
    const [version] = whole.versions!;
    const odd = {
      ...whole,
      runs: [{ date: "2026-10-05", minutes: 12 }, { date: "2026-10-06", motor: ["61 °C"] }, { minutes: "3" }, 7],
      bench: [{ of: "front", text: "44.3" }, ...whole.bench!],
      versions: [{ ...version!, build: { format: "meshwright-build/1", outputs: 3 } }, version],
      orders: { "pinion-17": "ordered", spur: 4 },
      days: "none",
      assemblies: [{ name: "Front axle", date: "2026-10-05", axle: { id: "front" } }],
      log: [{ at: "now" }],
      onlyText: ["a", 5],
      title: 12,
    };
    expect(leftOut(odd)).toEqual([
      "/title: found 12, expected text.",
      "/onlyText/1: found 5, expected text.",
      "/orders/spur: found 4, expected text.",
      "/bench/0/date: found nothing, expected text.",
      '/runs/1/motor: found ["61 °C"], expected text.',
      "/runs/2/date: found nothing, expected text.",
      "/runs/3: found 7, expected an entry with its fields.",
      expect.stringMatching(/^\/versions\/0\/build\/outputs: .*3/),
      '/days: found "none", expected a list.',
      expect.stringMatching(/^\/assemblies\/0\/axle: .*stages/),
      "/log/0/what: found nothing, expected text.",
    ]);
    const opened = open(JSON.stringify(odd));
    if (opened.kind !== "notebook") throw new Error(opened.kind);
    // A number is what would have been typed.
    expect(opened.notebook.runs).toEqual([{ date: "2026-10-05", minutes: "12" }]);
    expect(opened.notebook.versions).toEqual([version]);
    expect(opened.notebook.bench).toEqual(whole.bench);
  });

  it("of a later minor version is read as a drivetrain of one is: what it says it uses has to be known, and other keys are told", () => {
    const later = { ...whole, format: "meshwright-notebook/1.4", tides: ["high"] };
    expect(leftOut(later)).toEqual(["/tides: this page does not know “tides”."]);
    const refused = open(JSON.stringify({ ...later, uses: ["pair", "tides"] }));
    expect(refused.kind === "refused" && refused.why).toMatch(
      /meshwright-notebook\/1\.4.*“tides”.*Nothing was opened\.$/,
    );
    const older = open('{"format":"meshwright-notebook/0"}');
    expect(older.kind === "refused" && older.why).toMatch(
      /format meshwright-notebook\/0.*reads meshwright-notebook\/1/,
    );
    expect(older.kind === "refused" && older.why).not.toMatch(/newer/);
  });

  it.each([
    ["a picture", Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10), /is a picture, and no sheet of parts/],
    ["a PDF", bytes("%PDF-1.7 "), /is a PDF, and no sheet of parts/],
    ["nothing", bytes(" \n"), /This file is empty\. Nothing was read\./],
    ["a notebook", bytes(fileText(whole)), /is a notebook, and no sheet of parts/],
    ["a drivetrain", bytes(JSON.stringify(limpet)), /is a drivetrain, and no sheet of parts/],
    ["a film", new Uint8Array(5e7), /has 50 MB; a sheet of parts has a few at most/],
  ])("is told from a sheet of parts: %s", (_, content, sentence) => {
    expect(noSheet(content)).toMatch(sentence);
  });

  it.each([
    ["UTF-16 with its mark", (text: string) => Buffer.from(`\ufeff${text}`, "utf16le")],
    ["UTF-16 without it", (text: string) => Buffer.from(text, "utf16le")],
    ["UTF-16, the other way round", (text: string) => Buffer.from(`\ufeff${text}`, "utf16le").swap16()],
    ["Windows-1252", (text: string) => Buffer.from(text.replace("€", "\x80"), "latin1")],
  ])("is read as it was written, in %s, wherever it is opened", (_, written) => {
    const sheet = "Name;Zähne;Preis\nRitzel;13;3 €\n";
    expect(openFile(written(sheet), "new")).toEqual({ kind: "sheet", text: sheet });
    expect(noSheet(written(sheet))).toBeUndefined();
    const build = written(JSON.stringify({ ...limpet, title: "Möwe" }));
    const opened = openFile(build, "new");
    expect(opened.kind === "notebook" && opened.notebook.title).toBe("Möwe");
    expect(noSheet(build)).toMatch(/is a drivetrain, and no sheet/);
  });

  it("may be a sheet, whatever else it is", () => {
    expect(noSheet(bytes("Name;Teeth\nPinion;15\n"))).toBeUndefined();
    expect(noSheet(Uint8Array.of(0xff, 0xfe, 0x4e, 0))).toBeUndefined();
  });
});
