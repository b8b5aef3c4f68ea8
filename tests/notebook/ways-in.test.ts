import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser } from "puppeteer-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Hands, notebookBrowser, pressOn } from "./page.js";

// What can be brought along: the example, a file, a post that was published. Nothing replaces what is there.

const folder = mkdtempSync(join(tmpdir(), "notebook-files-"));
let browser: Browser;
let address: string;
let close: () => Promise<void>;

const fileOf = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

async function openFile(hands: Hands, path: string): Promise<void> {
  const [chooser] = await Promise.all([hands.page.waitForFileChooser(), hands.press("Open a file")]);
  await chooser.accept([path]);
}

const titleOf = async (hands: Hands): Promise<string> =>
  (await hands.find("textbox", "Name of this notebook")).evaluate((one) => (one as HTMLInputElement).value);

describe("what a builder brings along", () => {
  beforeAll(async () => {
    ({ browser, address, close } = await notebookBrowser());
  });
  afterAll(async () => {
    await close();
    rmSync(folder, { recursive: true, force: true });
  });

  it("is refused in one sentence each where it is no notebook, and the page stays as it was", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    for (const [name, content, sentence] of [
      [
        "picture.png",
        Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10),
        /This file is a picture, and no notebook\. Nothing was opened\./,
      ],
      ["empty.json", "", /This file is empty\. Nothing was opened\./],
      ["newer.json", '{"format":"meshwright-notebook/7"}', /of a newer format, meshwright-notebook\/7/],
      ["other.json", '{"version":3}', /holds data, and no notebook/],
      ["large.json", new Uint8Array(5e7), /This file has 50 MB; a notebook has a few at most\. Nothing was opened\./],
    ] as const) {
      await openFile(hands, fileOf(name, content));
      await hands.until(sentence);
      expect(await hands.text()).toContain("What does the motor turn first?");
    }
  });

  it("is opened beside what is there, under a name of its own", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?open=example`);
    await hands.until(/Front 44\.30, rear 43\.32, inside 38 to 46/);
    await hands.until(/Saved in this browser only/);
    await hands.press("Notebooks");
    await openFile(hands, join(process.cwd(), "seeds", "limpet.json"));
    await hands.until(/Limpet, a 1:8 beach-launch tractor \(2\), opened beside yours\./);
    expect(await titleOf(hands)).toBe("Limpet, a 1:8 beach-launch tractor (2)");
    await hands.press("Notebooks");
    await hands.press("Limpet, a 1:8 beach-launch tractor");
    await hands.page.waitForFunction(
      () =>
        document.querySelector("mw-notebook")!.shadowRoot!.querySelector<HTMLInputElement>("h1 input")!.value ===
        "Limpet, a 1:8 beach-launch tractor",
    );
  });

  it("is the drivetrain of a published post, where that is the only copy left; its figures follow again", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    const post = [
      '<mw-build stages="Motor gears: 14 to 56" rear="Ring: 13 to 39" title="Dotterel"></mw-build>',
      '<p>With <mw-teeth of="motor-gears.driver">14</mw-teeth> teeth it comes to <mw-value of="rear">12.00</mw-value>.</p>',
    ].join("\n");
    await openFile(hands, fileOf("post.html", post));
    await hands.until(/With 14 teeth it comes to 12\.00\./);
    expect(await titleOf(hands)).toBe("Dotterel");
    const count = await hands.find("spinbutton", "Motor gears: driver, teeth");
    await pressOn(count);
    await hands.page.keyboard.type("16");
    await hands.page.keyboard.press("Enter");
    // 56 / 16 · 39 / 13 = 10.5
    await hands.until(/With 16 teeth it comes to 10\.50\./);
    await hands.press("Undo: Motor gears, driver 14, now 16");
    await hands.until(/With 14 teeth it comes to 12\.00\./);
    expect(hands.said).toEqual([]);
  });

  it("is a post in the place of the one that is there, in one step that is named and can be taken back", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?open=example`);
    await hands.until(/Front 44\.30, rear 43\.32, inside 38 to 46/);
    const editor = await hands.find("textbox", "The post");
    await pressOn(editor);
    await hands.page.keyboard.type("My own article.");
    await hands.press("Notebooks");
    const post = [
      '<mw-build stages="Motor gears: 14 to 56" rear="Ring: 13 to 39"></mw-build>',
      '<p class="lead">H<sub>2</sub>O, <mw-teeth of="primry.driver">15</mw-teeth> and <mw-value of="front">7.00</mw-value>.</p>',
      "<table><caption>Runs</caption><tbody><tr><td>61</td></tr></tbody></table><script>x()</script>",
    ].join("\n");
    await openFile(hands, fileOf("other.html", post));
    await hands.until(/H2O, 15 and 44\.30\.\s*Runs\s*61/);
    await hands.until(
      /brings a drivetrain of its own, which was not taken in.*Left out, for a post runs nothing here: 1 × script\./,
    );
    await hands.press("Undo: Post opened");
    await hands.until(/My own article\./);
    expect(await hands.text()).not.toContain("H2O");
    await hands.press("Again: Post opened");
    await hands.until(/H2O, 15 and 44\.30/);
    // Before it goes out it is said what follows nothing.
    await hands.press("Yes");
    await hands.press("a block editor");
    await hands.until(
      /One figure follows nothing in the drivetrain\. It goes out as it read last:\s*“15”: .*primary\.driver/,
    );
    const out = await hands.find("textbox", "What to paste");
    const html = await out.evaluate((one) => (one as HTMLTextAreaElement).value);
    expect(html).toContain('<p class="lead">H<sub>2</sub>O, <mw-teeth of="primry.driver">15</mw-teeth> and');
    expect(html).toContain("<table><caption>Runs</caption>");
    // Undoing ends with the page; what was written does not.
    const [, aside] = /The post that was here is set aside as “([^”]+)”: see Notebooks\./.exec(await hands.text())!;
    await hands.until(/Saved in this browser only/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.press("Notebooks");
    await hands.press(aside!);
    await hands.until(/My own article\./);
    expect(hands.said).toEqual([]);
  });

  it("is a post that Ctrl+Z takes back in the text as well", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?open=example`);
    await hands.until(/Front 44\.30, rear 43\.32, inside 38 to 46/);
    const editor = await hands.find("textbox", "The post");
    await pressOn(editor);
    await hands.page.keyboard.type("My own article.");
    await hands.press("Notebooks");
    await openFile(hands, fileOf("other.html", "<p>Another</p>"));
    await hands.until(/Undo: Post opened/);
    await pressOn(editor);
    await hands.page.keyboard.down("Control");
    await hands.page.keyboard.press("z");
    await hands.page.keyboard.up("Control");
    await hands.until(/My own article\./);
    expect(hands.said).toEqual([]);
  });

  it("is no post in Markdown, and no sheet of parts then", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await openFile(hands, fileOf("post.md", "With 15 teeth, all is well.\n"));
    await hands.until(/This file is a post in Markdown; the notebook opens a post as HTML\./);
    expect(await hands.text()).toContain("What does the motor turn first?");
  });

  it("keeps the words of a post that this page does not know, and the notebook as it was found", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    const line = { type: "paragraph", content: [{ type: "text", text: "What I wrote." }] };
    const odd = { type: "callout", content: [{ type: "text", text: "Mind the gap." }] };
    const build = JSON.parse(readFileSync(join(process.cwd(), "seeds", "limpet.json"), "utf8")) as object;
    const post = { type: "doc", content: [line, odd] };
    const file = { format: "meshwright-notebook/1", id: "odd-one", title: "Odd", build, post };
    await openFile(hands, fileOf("odd.json", JSON.stringify(file)));
    await hands.until(/What I wrote\.\s*Mind the gap\./);
    await hands.until(
      /The post holds what this page does not know: “callout”\. Its text stays as text\. .* set aside as “Odd, as it was found/,
    );
    const editor = await hands.find("textbox", "The post");
    await pressOn(editor);
    await hands.page.keyboard.type("!");
    await hands.until(/Saved in this browser only/);
    await hands.page.reload({ waitUntil: "networkidle0" });
    await hands.until(/What I wrote\./);
    // Once is enough.
    expect(await hands.text()).not.toContain("does not know");
    await hands.press("Notebooks");
    await hands.until(/Set aside from this one:\s*Odd, as it was found/);
    expect(hands.said).toEqual([]);
  });

  it("keeps what a figure said last, when its stage is taken out", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    const post =
      '<mw-build stages="Motor gears: 14 to 56" rear="Ring: 13 to 39"></mw-build><p>They are <mw-value of="motor-gears">4</mw-value>!</p>';
    await openFile(hands, fileOf("gears.html", post));
    await hands.until(/They are 4\.00!/);
    await hands.press("Motor gears: 14 drives 56");
    await hands.press("Take it out");
    await hands.until(/Undo: Motor gears taken out/);
    await hands.until(/They are 4\.00!/);
    await hands.page.waitForFunction(
      () =>
        document
          .querySelector("mw-notebook")!
          .shadowRoot!.querySelector("mw-notebook-post")!
          .shadowRoot!.querySelector(".figure.gone") !== null,
    );
    expect(hands.said).toEqual([]);
  });

  it("may be a sheet that is typed: it is read when its writer says so", async () => {
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await hands.press("Paste a parts list");
    const area = await hands.find("textbox", "The sheet, as it is, with its heads");
    await pressOn(area);
    await hands.page.keyboard.type("Gear;Teeth;Mod\nPinion 15;15;0,8");
    await hands.press("Read what I typed");
    await hands.press("Put 1 part on the shelf");
    await hands.until(/Pinion 15/);
    await hands.page.close();
  });

  it("is the example, which is the demo's own drivetrain", async () => {
    const seed = JSON.parse(readFileSync(join(process.cwd(), "seeds", "limpet.json"), "utf8")) as { parts: unknown[] };
    const hands = await Hands.open(browser, `${address}notebook/?new`);
    await hands.press("Open an example");
    await hands.until(new RegExp(`${seed.parts.length} parts\\.`));
  });
});
