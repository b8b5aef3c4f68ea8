import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, parseBuild } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { deadIn, handedOut, postOf, postToHtml, readPost, withLastWords } from "../../src/writing/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
interface Part {
  readonly type: string;
  readonly text?: string;
  readonly attrs?: Readonly<Record<string, unknown>>;
  readonly marks?: readonly Part[];
  readonly content?: readonly Part[];
}
const words = (text: string): Part => ({ type: "text", text });
const figure = (tag: string, ask: Record<string, string>, said?: string) => ({
  type: "figure",
  attrs: { tag, ask, ...(said !== undefined && { said }) },
});
const drawn = (tag: string, ask: Record<string, string>, said?: string) => ({
  type: "drawn",
  attrs: { tag, ask, ...(said !== undefined && { said }) },
});
const line = (...content: Part[]) => ({ type: "paragraph", content });
const post = (...content: Part[]) => ({ type: "doc", content });

describe("figures that follow nothing", () => {
  const dead = post(
    line(
      figure("mw-teeth", { of: "primry.driver" }, "15"),
      words(" and "),
      figure("mw-value", { of: "drvie" }, "6.06"),
    ),
    line(figure("mw-value", { of: "front", figrue: "travel" }, "8.79 mm")),
    drawn("mw-working", { of: "nobody" }, "<table><tbody><tr><td>44</td></tr></tbody></table>"),
  );

  it("go out as they read last, and are told with the reason", () => {
    const doc = postOf(dead);
    const html = postToHtml(doc, limpet);
    expect(html).toContain('<mw-teeth of="primry.driver">15</mw-teeth> and <mw-value of="drvie">6.06</mw-value>');
    expect(html).toContain('<mw-value of="front" figrue="travel">8.79 mm</mw-value>');
    expect(html).toContain('<mw-working of="nobody"><table><tbody><tr><td>44</td></tr></tbody></table></mw-working>');
    expect(handedOut(doc, limpet, "text")).toBe("15 and 6.06\n\n8.79 mm\n\n44\n");
    const told = deadIn(doc, limpet);
    expect(told.map(({ text }) => text)).toEqual(["15", "6.06", "8.79 mm", "The working"]);
    expect(told[0]!.why).toContain("primary.driver");
  });

  it("go out as they read last without a drivetrain too", () => {
    expect(postToHtml(postOf(dead), undefined)).toContain('<mw-teeth of="primry.driver">15</mw-teeth>');
  });

  it("keep what they said last when the drivetrain loses them", () => {
    const before = post(
      line(figure("mw-value", { of: "front-hub" }), words(", "), figure("mw-value", { of: "front" })),
      drawn("mw-train-drawing", { of: "front-hub" }),
    );
    const reading = applyChanges(limpet, { "front.stages": limpet.outputs[0]!.stages.slice(0, 1), alternatives: null });
    const after = reading.build as Build;
    const kept = withLastWords(before, limpet, after);
    const html = postToHtml(postOf(kept), after);
    // 22 / 15
    expect(html).toContain('<mw-value of="front-hub">1.47</mw-value>');
    // 62 / 15 · 45 / 18 · 38 / 13
    expect(html).toContain('<mw-value of="front">30.21</mw-value>');
    expect(html).toMatch(/<mw-train-drawing of="front-hub"><p>Spur and pinion .*<\/p>/);
    expect(withLastWords(kept, after, after)).toBe(kept);
  });
});

describe("a post of which not all is known", () => {
  it("keeps what is known, and the text of what is not", () => {
    const { doc, unknown } = readPost(
      post(
        line(words("One")),
        { type: "callout", content: [words("hi "), figure("mw-value", { of: "front" })] },
        { type: "columns", content: [{ type: "column", content: [line(words("left"))] }, line(words("right"))] },
        line(
          { type: "text", text: "under", marks: [{ type: "underline" }, { type: "em" }] },
          { type: "mention", text: "@you" },
        ),
        { type: "bullet_list", content: [{ type: "task", content: [line(words("do it"))] }] },
        figure("mw-value", { of: "front" }),
        { type: "figure", attrs: { tag: "script", ask: { onclick: "x()" }, said: "7" } },
        line({ type: "kept", attrs: { html: "<img src=x onerror=y()>" } }),
      ),
    );
    doc.check();
    expect(doc.children.map((one) => one.textContent.replace(/\ufffc/g, "*"))).toEqual([
      "One",
      "hi *",
      "left",
      "right",
      "under@you",
      "do it",
      "*",
      "7",
      "",
    ]);
    expect(postToHtml(doc, undefined)).toContain("<p><em>under</em>@you</p>");
    expect(postToHtml(doc, undefined)).toContain("<ul>\n<li>do it</li>\n</ul>");
    expect(unknown).toEqual(["callout", "column", "columns", "underline", "mention", "task", "figure", "kept"]);
  });

  it("is read without a word where all is known", () => {
    expect(readPost(post(line(words("One")), drawn("mw-working", {}))).unknown).toEqual([]);
    expect(readPost(undefined)).toMatchObject({ unknown: [] });
  });
});
