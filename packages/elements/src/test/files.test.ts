// The self-contained article in its three files, in pages of their own: those after the first late, never, and in the middle of
// an edit.
import { assert } from "@esm-bundle/chai";
import { parseBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import { figureOf, figureSpecs, type QueryText } from "@meshwright/calc/report";
import { countIn, find, limpet, lineOf, press, type } from "./page.js";
import type { MwBuild } from "../elements/build/index.js";
import type { MwTeeth } from "../elements/teeth/index.js";

interface View extends Window {
  /** Scripts that the first file has asked for, and that have not been let through. */
  held: HTMLScriptElement[];
  errors: string[];
  warnings: string[];
}

const until = async (so: () => unknown, what: string): Promise<void> => {
  for (let n = 0; n < 200; n++) {
    if (so()) return;
    await new Promise((done) => setTimeout(done, 20));
  }
  assert.fail(`Never: ${what}`);
};
const pause = (time = 60): Promise<unknown> => new Promise((done) => setTimeout(done, time));

const sentence =
  `<p>With <mw-teeth of="primary.driver">15</mw-teeth> to <mw-teeth of="primary.driven">62</mw-teeth> the rear makes ` +
  `<mw-value of="rear">43.32</mw-value>, <mw-value figure="standing" of="rear">inside</mw-value>; ` +
  `the set <mw-teeth of="rear-ring">12 driving 35</mw-teeth>; stale <mw-value of="front">44.31</mw-value>, ` +
  `group <mw-value group="axle" of="rear">4.19</mw-value>, wrong <mw-value figure="laed">as it was</mw-value></p>`;

const inJson = `<mw-build id="limpet"><script type="application/json">${limpet}</script></mw-build>`;
const inAttributes = `<mw-build id="limpet" stages="Primary: 15 to 62" rear="Hub: 10 to 20"></mw-build>`;

describe("an article in three files", () => {
  let frame: HTMLIFrameElement;
  const view = (): View => frame.contentWindow as unknown as View;
  const page = (): Document => frame.contentDocument!;
  const of = (address: string): MwTeeth => find<MwTeeth>(page(), `mw-teeth[of='${address}']`);
  const line = (): string => lineOf(find(page(), "p"));

  /** A page with the first file; what it asks for is held back. */
  async function open(body = sentence, hash = "", pinned = "", build = inJson): Promise<void> {
    const dist = new URL("../../dist/", import.meta.url).href;
    frame = document.createElement("iframe");
    frame.style.cssText = "width: 700px; height: 400px";
    const hold = `held = []; errors = []; warnings = [];
      addEventListener("error", (event) => errors.push(event.message));
      addEventListener("unhandledrejection", (event) => errors.push(String(event.reason)));
      console.warn = (...all) => warnings.push(all.join(" "));
      const append = HTMLHeadElement.prototype.append;
      document.head.append = (...nodes) => nodes.forEach((node) => /-(second|third)\\.js/.test(node.src ?? "") ? held.push(node) : append.call(document.head, node));`;
    const text = `<!doctype html><html lang="en"><head><script>${hold}</script>
      <script src="${dist}meshwright-article.js" defer crossorigin="anonymous" ${pinned}></script></head>
      <body>${build}${body}</body></html>`;
    // A page with an address of its own, which may carry a version.
    const blob = URL.createObjectURL(new Blob([text], { type: "text/html" }));
    frame.src = blob + hash;
    document.body.append(frame);
    await until(() => page()?.readyState === "complete" && view().customElements?.get("mw-teeth"), "the first file");
    await pause();
  }

  /** The next file, once it is asked for. */
  async function asked(name: string): Promise<HTMLScriptElement> {
    await until(() => view().held.length, `the ${name} file is asked for`);
    const script = view().held.shift()!;
    assert.include(script.src, name);
    return script;
  }

  /** Lets what was asked for through, in order; the third is asked for once a reader has changed something. */
  async function letThrough(...names: ("second" | "third")[]): Promise<void> {
    for (const name of names.length ? names : ["second", "third"]) {
      const script = await asked(name);
      const came = new Promise((done, fail) => {
        script.addEventListener("load", done);
        script.addEventListener("error", fail);
      });
      page().head.appendChild(script);
      await came;
      await pause();
    }
  }

  /** The next file is none that can be loaded. */
  async function lose(name: "second" | "third"): Promise<void> {
    const script = await asked(name);
    script.src = script.src.replace("meshwright-", "none-");
    const gone = new Promise((done) => script.addEventListener("error", done));
    page().head.appendChild(script);
    await gone;
    await pause();
  }

  /** What whoever waits for `checked` is told, and what the console says. */
  async function told(): Promise<{ code: string; at: string; warnings: string[] }> {
    const answer = find<MwBuild>(page(), "mw-build").checked.then(
      () => ({ code: "", at: "" }),
      ({ code, at }: { code: string; at: string }) => ({ code, at }),
    );
    const late = pause(3000).then(() => ({ code: "never", at: "" }));
    return { ...(await Promise.race([answer, late])), warnings: view().warnings };
  }

  afterEach(() => {
    const { errors } = view();
    frame.remove();
    assert.deepEqual(errors, []);
  });

  const asWritten =
    "With 15 to 62 the rear makes 43.32, inside; the set 12 driving 35; stale 44.30, group 4.19, wrong as it was";

  it("is alive by the first alone: figures are right, or the author's; counts change; nothing throws", async () => {
    await open();
    assert.equal(line(), asWritten);
    press(countIn(of("primary.driver")), "ArrowUp");
    await pause();
    assert.equal(
      line(),
      "With 16 to 62 the rear makes 40.62, inside; the set 12 driving 35; stale 41.53, group 4.19, wrong as it was",
    );
    const field = countIn(of("primary.driven"));
    field.focus();
    type(field, "40");
    press(field, "Enter");
    await pause();
    assert.include(line(), "the rear makes 26.20, too few motor turns");
    for (const text of ["0", "two"]) {
      type(field, text);
      press(field, "Enter");
      await pause();
      assert.equal(field.value, "40");
    }
    assert.deepEqual(
      view().held.map(({ src }) => src.replace(/^.*-/, "")),
      ["second.js", "third.js"],
      "each file is asked for once: the third, because a change is to be written into the address",
    );
  });

  it("has every figure there is by the third, which is asked for where one of fit, speed or torque stands", async () => {
    const build = evaluate(parseBuild(limpet));
    const at = { output: "front", "output-or-stage": "front", pair: "primary", address: "row" };
    const more: Record<string, QueryText> = {
      count: { of: "primary.driver" },
      drift: { over: "10 m" },
      change: { from: "first-try" },
      slot: { measure: "to" },
    };
    const asked = Object.entries(figureSpecs).flatMap(([figure, { of }]): QueryText[] => {
      // The Limpet has no differential.
      if (of === "stage") return [];
      return [{ figure, ...(of && { of: at[of] }), ...more[figure] }];
    });
    const tags = asked.map((query) => {
      const attributes = Object.entries(query).map(([name, value]) => `${name}="${value}"`);
      return `<mw-value ${attributes.join(" ")}>0</mw-value>`;
    });
    await open(`<p>${tags.join("; ")}</p>`);
    await letThrough();
    assert.deepEqual(
      line().split("; "),
      asked.map((query) => figureOf(build, query).replace(/\s+/g, " ")),
    );
  });

  it("has keys, sets and all figures by the second, whether the third comes or not", async () => {
    await open();
    await letThrough("second");
    assert.equal(line().replace("11 driving 36", ""), asWritten);
    const field = countIn(of("primary.driver"));
    field.focus();
    await pause();
    const [, , more] = of("primary.driver").shadowRoot!.querySelectorAll<HTMLButtonElement>(".tray button");
    more!.click();
    await pause();
    assert.include(line(), "to 62 the rear makes 40.62, inside");
    const was = (tag: HTMLElement) => find<HTMLElement>(tag.shadowRoot!, "[data-was]").dataset.was;
    assert.equal(was(of("primary.driver")), "article 15");
    assert.include(line(), "stale 41.53, group 4.19, wrong as it was");
    const choice = of("rear-ring").shadowRoot!.querySelector("select")!;
    choice.selectedIndex = 1;
    choice.dispatchEvent(new Event("change", { bubbles: true }));
    await pause();
    // 16 in the place of 15, and the other ring: 24955/576 × 15/16 × (36/11) / (35/12) is 45.575….
    assert.include(line(), "the rear makes 45.58");
    field.blur();
    await pause();
    assert.isTrue(view().held.every(({ src }) => src.includes("third")));
  });

  it("moves nothing when the other files come late, and has the same to say, and more", async () => {
    await open();
    press(countIn(of("primary.driver")), "ArrowUp");
    await pause();
    const before = find(page(), "p").getBoundingClientRect();
    const text = line();
    await letThrough();
    assert.equal(line().replace("11 driving 36", ""), text);
    const after = find(page(), "p").getBoundingClientRect();
    assert.deepEqual([after.width, after.height, after.top], [before.width, before.height, before.top]);
    assert.isNotNull(of("rear-ring").shadowRoot!.querySelector("select"));
    const build = find<HTMLElement & { checked: Promise<readonly { message: string }[]>; store: { undo(): void } }>(
      page(),
      "mw-build",
    );
    assert.include((await build.checked).map(({ message }) => message).join(), "laed");
    build.store.undo();
    await pause();
    assert.equal(line(), asWritten);
  });

  it("leaves the focus, what is being typed and the caret when the second file comes in the middle of an edit", async () => {
    await open();
    const field = countIn(of("primary.driven"));
    field.focus();
    type(field, "5");
    field.setSelectionRange(1, 1);
    await letThrough("second");
    assert.equal(of("primary.driven").shadowRoot!.activeElement, field);
    assert.equal(countIn(of("primary.driven")), field);
    assert.deepEqual([field.value, field.selectionStart], ["5", 1]);
    type(field, "56");
    press(field, "Enter");
    await pause();
    assert.include(line(), "the rear makes 39.13");
    assert.isNotNull(of("primary.driven").shadowRoot!.querySelector(".tray"), "its keys have come");
    press(field, "z", { ctrlKey: true });
    field.blur();
    await pause();
    assert.equal(line(), asWritten);
  });

  it("asks for the second file at once where the address carries a version, and takes the terms of the first along", async () => {
    await open(sentence, "#mw-limpet=x");
    await until(() => view().held.length, "the second file is asked for");
    const [script] = view().held;
    assert.equal(script!.crossOrigin, "anonymous");
    assert.match(script!.src, /\/meshwright-second\.js$/);
  });

  it("pins the second file where the first is pinned, and only there", async () => {
    await open();
    await until(() => view().held.length, "the second file is asked for");
    assert.equal(view().held[0]!.integrity, "");
    frame.remove();
    // What is served here is not to the letter what is built: of that the tests of hosts make sure.
    const file = await fetch(new URL("../../dist/meshwright-article.js", import.meta.url));
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-384", await file.arrayBuffer()));
    await open(sentence, "", `integrity="sha384-${btoa(String.fromCharCode(...hash))}"`);
    await until(() => view().held.length, "the second file is asked for");
    assert.match(view().held[0]!.integrity, /^sha384-[\w+/]{64}$/);
    assert.equal(view().held[0]!.crossOrigin, "anonymous");
  });

  const short = `<p>The rear makes <mw-value of="rear">8.27</mw-value>, once <mw-value of="rear">9</mw-value>.</p>`;

  it("leaves the author's text of a build in attributes where the third cannot be had, and tells whoever waits", async () => {
    await open(short, "", "", inAttributes);
    await letThrough("second");
    await lose("third");
    assert.equal(line(), "The rear makes 8.27, once 9.");
    const { code, at, warnings } = await told();
    assert.deepEqual([code, at], ["load-failed", "meshwright-third.js"]);
    assert.lengthOf(warnings, 1);
    assert.match(warnings[0]!, /meshwright-third\.js could not be loaded; only builds in JSON are alive/);
  });

  it("blames the second file where it is the one that cannot be had", async () => {
    await open(short, "", "", inAttributes);
    await lose("second");
    await letThrough("third");
    assert.equal(line(), "The rear makes 8.27, once 9.");
    const { code, at, warnings } = await told();
    assert.deepEqual([code, at], ["load-failed", "meshwright-second.js"]);
    assert.lengthOf(warnings, 1, warnings.join("\n"));
    assert.include(warnings[0], "meshwright-second.js could not be loaded");
  });

  it("keeps a build in JSON alive without the others, and tells whoever waits", async () => {
    await open();
    const waiting = told();
    await lose("second");
    await lose("third");
    assert.deepEqual(
      { ...(await waiting), warnings: [] },
      { code: "load-failed", at: "meshwright-second.js", warnings: [] },
    );
    press(countIn(of("primary.driver")), "ArrowUp");
    await pause();
    assert.include(line(), "With 16 to 62 the rear makes 40.62");
    assert.lengthOf(view().warnings, 1);
  });

  it("tells whoever waits where the third is of another build", async () => {
    await open(short, "", "", inAttributes);
    await letThrough("second");
    const script = await asked("third");
    const code = await (await fetch(script.src)).text();
    const other = code.replace(/\.more\("[^"]+"/, '.more("another"');
    assert.notEqual(other, code);
    script.src = URL.createObjectURL(new Blob([other], { type: "text/javascript" }));
    page().head.appendChild(script);
    const { code: why, at, warnings } = await told();
    assert.deepEqual([why, at], ["load-failed", "meshwright-third.js"]);
    assert.include(warnings[0], "not of one build");
  });

  it("tells the author of an element that none of its files has, and of one that nobody has", async () => {
    await open(`<p><mw-working>as it was</mw-working> <mw-vaule>30</mw-vaule></p><mw-edits></mw-edits>`);
    await letThrough();
    const { checked } = find<MwBuild>(page(), "mw-build");
    assert.deepEqual(
      (await checked).map(({ code, message }) => [code, message]),
      [
        [
          "element-not-there",
          "No script on this page brings <mw-working>: meshwright.js has it, and so has the module @meshwright/elements/working.",
        ],
        ["unknown-element", "There is no element <mw-vaule>; nearest: mw-value."],
      ],
    );
    assert.lengthOf(view().warnings, 2);
    assert.equal(line(), "as it was 30");
  });

  it("leaves a page alone whose first file is of another build", async () => {
    await open();
    const [script] = view().held;
    const code = await (await fetch(script!.src)).text();
    const other = page().createElement("script");
    other.textContent = code.replace(/\.more\("[^"]+"/, '.more("another"');
    assert.notEqual(other.textContent, code);
    page().head.appendChild(other);
    await pause();
    assert.lengthOf(
      view().warnings.filter((one) => /not of one build/.test(one)),
      1,
    );
    press(countIn(of("primary.driver")), "ArrowUp");
    await pause();
    assert.include(line(), "With 16 to 62");
  });
});
