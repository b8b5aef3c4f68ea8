import { assert } from "@esm-bundle/chai";
import { clear, find, limpet, lineOf, settle, short, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../../elements/build/index.js";
import type { MwValue } from "../../elements/value/index.js";
import "../../all.js";
import { isAuthorsPlace, lookFrom } from "../page/index.js";

const buildIn = (root: ParentNode): MwBuild => find<MwBuild>(root, "mw-build");
const told = async (root: ParentNode): Promise<string[]> =>
  (await buildIn(root).checked).map(({ code, at, element }) => `${element?.localName ?? ""}${at} ${code}`);
const signOf = (element: Element): HTMLButtonElement | null =>
  element.shadowRoot!.querySelector<HTMLButtonElement>("[part=sign]");

/** The languages whose sentences about findings the page has fetched. */
const fetched = (): string[] =>
  performance
    .getEntriesByType("resource")
    .map(({ name }) => /\/findings\/(ar|de|es|fr|ja)\.[jt]s/.exec(name)?.[1] ?? "");

// Every module of the library is a request here: the record has to have room for them.
performance.setResourceTimingBufferSize(5000);

describe("findings", () => {
  const { warn } = console;
  let warnings: string[];
  beforeEach(() => {
    warnings = [];
    console.warn = (...what: unknown[]) => void warnings.push(String(what[0]));
  });
  afterEach(() => {
    console.warn = warn;
    lookFrom();
    clear();
  });

  it("are not known before the build was looked at, and a list that nobody can write to afterwards", async () => {
    const page = await show("");
    page.innerHTML = withLimpet("");
    const build = buildIn(page);
    assert.isUndefined(build.findings);
    assert.deepEqual(await build.checked, []);
    assert.deepEqual(build.findings, []);
    assert.isFrozen(build.findings);
  });

  it("wait for a build that comes from a file", async () => {
    const page = await show("");
    page.innerHTML = `<mw-build src="/nowhere.json"></mw-build>`;
    await turn();
    assert.isUndefined(buildIn(page).findings);
    assert.deepEqual(await told(page), [" load-failed"]);
  });

  it("hold what is wrong with the data, then with the elements in the order of the page", async () => {
    const page = await show(
      `<p><mw-value of="raer">1</mw-value></p><mw-build ${short} colour="red"></mw-build>` +
        `<p><mw-teeth of="spur-and-pinion.drivr">15</mw-teeth> <mw-value figur="lead">7</mw-value></p>`,
    );
    assert.deepEqual(await told(page), [
      "/colour unknown-attribute",
      "mw-value/of missing-reference",
      "mw-teeth/of missing-address",
      "mw-value/figur unknown-attribute",
    ]);
    assert.deepEqual([...page.querySelectorAll("mw-value, mw-teeth")].map(lineOf), ["1", "15", "7"]);
  });

  it("are renewed when words, names of attributes, the build and its elements change, with an event each time", async () => {
    const page = await show(withLimpet(`<p><mw-value of="rear">0</mw-value></p>`));
    const value = find<MwValue>(page, "mw-value");
    const events: number[] = [];
    page.addEventListener("mw-findings", (event) => events.push((event as CustomEvent<unknown[]>).detail.length));
    assert.deepEqual(await told(page), []);
    value.of = "raer";
    assert.deepEqual(await told(page), ["mw-value/of missing-reference"]);
    value.of = "rear";
    value.setAttribute("figur", "lead");
    assert.deepEqual(await told(page), ["mw-value/figur unknown-attribute"]);
    assert.equal(lineOf(value), "0");
    value.removeAttribute("figur");
    assert.deepEqual(await told(page), []);
    assert.equal(lineOf(value), "43.32");
    buildIn(page).json = limpet.replaceAll('"rear"', '"back"');
    assert.deepEqual(await told(page), ["mw-value/of missing-reference"]);
    value.remove();
    assert.deepEqual(await told(page), []);
    assert.deepEqual(events, [1, 1, 0, 1, 0]);
  });

  describe("about names of elements", () => {
    it("tell one that is none of ours with the nearest, once, and leave its text", async () => {
      const page = await show(
        withLimpet(`<p><mw-vaule of="front">30</mw-vaule> <mw-value of="raer">1</mw-value> <my-vaule>2</my-vaule></p>`),
      );
      for (let n = 0; n < 40 && warnings.length < 2; n++) await settle(1);
      const spelt = "<mw-vaule>: There is no element <mw-vaule>; nearest: mw-value.";
      assert.deepEqual(
        warnings.filter((one) => one.includes("mw-vaule")),
        [spelt],
      );
      assert.deepEqual(await told(page), ["mw-vaule unknown-element", "mw-value/of missing-reference"]);
      assert.equal(buildIn(page).findings![0]!.element, find(page, "mw-vaule"));
      assert.equal(lineOf(find(page, "p")), "30 1 2");
      assert.lengthOf(warnings, 2);
      find(page, "mw-vaule").remove();
      assert.deepEqual(await told(page), ["mw-value/of missing-reference"]);
    });

    it("take it back where one is defined later", async () => {
      const page = await show(withLimpet(`<mw-laters></mw-laters>`));
      assert.deepEqual(await told(page), ["mw-laters unknown-element"]);
      customElements.define("mw-laters", class extends HTMLElement {});
      for (let n = 0; n < 40 && buildIn(page).findings!.length; n++) await settle(1);
      assert.deepEqual(buildIn(page).findings, []);
    });

    it("tell one inside a root of the page's own, and one where there is no build in the console alone", async () => {
      const page = await show("<div></div>");
      const root = find(page, "div").attachShadow({ mode: "open" });
      root.innerHTML = withLimpet(`<mw-teth of="primary.driver">15</mw-teth>`);
      assert.deepEqual(await told(root), ["mw-teth unknown-element"]);
      await show(`<mw-edit></mw-edit>`);
      dispatchEvent(new HashChangeEvent("hashchange"));
      await settle();
      assert.include(warnings.join(), "<mw-edit>: There is no element <mw-edit>; nearest: mw-edits.");
    });
  });

  it("tell the author what is odd about the drive, though it can be read", async () => {
    const ring = (id: string, reverses: boolean) => ({ id, kind: "pair", driver: 10, driven: 20, reverses });
    const json = JSON.stringify({
      format: "meshwright-build/1",
      stages: [{ id: "spur", kind: "pair", driver: 15, driven: 60, reverses: true }],
      outputs: [
        { id: "front", stages: [ring("front-ring", true)] },
        { id: "rear", stages: [ring("rear-ring", false)] },
      ],
      battery: { cells: 3, chemistry: "lipo" },
      controller: { maxVolts: 12 },
    });
    const page = await show(
      `<mw-build><script type="application/json">${json}</script></mw-build><mw-value of="front">0</mw-value>`,
    );
    assert.deepEqual(await told(page), ["/outputs/1 outputs-oppose", "/controller/maxVolts full-over-controller"]);
    assert.isTrue(buildIn(page).findings!.every(({ severity }) => severity === "warning"));
    assert.equal(lineOf(find(page, "mw-value")), "8.00");
  });

  it("tell of what stands beside the source of a build and is not read", async () => {
    const script = `<script type="application/json">${limpet}</script>`;
    for (const [markup, expected] of [
      [`<mw-build ${short}>${script}</mw-build>`, ["/stages source-passed-over"]],
      [`<mw-build src="/a.json" target="1 to 2">${script}</mw-build>`, ["/src", "/target"]],
      [`<mw-build title="A tractor" seal="x" lang="en">${script}</mw-build>`, []],
    ] as const) {
      const page = await show(markup);
      const found = (await told(page)).map((one) => one.split(" ")[0]);
      assert.deepEqual(
        found,
        expected.map((one) => one.split(" ")[0]),
        markup,
      );
      assert.isDefined(buildIn(page).store.article);
    }
  });

  it("do not follow what a reader does", async () => {
    const page = await show(
      withLimpet(`<mw-teeth of="rear-ring.driver">12</mw-teeth><mw-value of="rear">0</mw-value>`),
    );
    assert.deepEqual(await told(page), []);
    buildIn(page).store.change({ remove: "rear-ring" });
    await turn();
    assert.deepEqual(await told(page), []);
    assert.equal(lineOf(find(page, "mw-teeth")), "12");
  });

  it("are told in the console once each, whatever is drawn again", async () => {
    const page = await show(
      withLimpet(
        `<mw-value figure="laed">7</mw-value><mw-value figure="laed">8</mw-value><mw-value of="rear">0</mw-value>`,
      ),
    );
    await told(page);
    assert.lengthOf(warnings, 2, warnings.join("\n"));
    assert.include(warnings[0]!, '<mw-value figure="laed">: ');
    assert.include(warnings[0]!, "nearest: lead");
    buildIn(page).store.change({ "primary.driver": 17 });
    page.querySelectorAll("mw-value")[2]!.setAttribute("digits", "1");
    for (const value of page.querySelectorAll<MwValue>("mw-value")) value.requestUpdate();
    page.lang = "de";
    await settle();
    page.removeAttribute("lang");
    await told(page);
    assert.lengthOf(warnings, 2);
  });

  describe("about names of attributes", () => {
    it("one slip from ours is an error, on every element; the page's own pass, any other is a warning", async () => {
      const own = `id="x" class="y" data-of="z" aria-label="a" v-on:click="b" slot="" style="" title="t"`;
      for (const [markup, expected, alive] of [
        [`<mw-value figur="lead">7</mw-value>`, ["mw-value/figur unknown-attribute"], false],
        [`<mw-value ${own}>7</mw-value>`, [], true],
        [`<mw-value colour="red">7</mw-value>`, ["mw-value/colour unknown-attribute"], true],
        [`<mw-working fo="rear">7</mw-working>`, ["mw-working/fo unknown-attribute"], false],
        [`<mw-edits biuld="limpet">7</mw-edits>`, ["mw-edits/biuld unknown-attribute"], false],
      ] as const) {
        const page = await show(withLimpet(markup));
        assert.deepEqual(await told(page), [...expected], markup);
        const element = page.lastElementChild!;
        if (element.localName !== "mw-edits") assert.equal(lineOf(element) !== "7", alive, markup);
      }
    });

    it("of a build refuse it where a word of it is lost", async () => {
      const json = `<script type="application/json">${limpet}</script></mw-build><mw-value of="rear">0</mw-value>`;
      for (const [attributes, alive] of [
        [`mdoe="low"`, false],
        [`permalnk="/a"`, false],
        [`third-wheel="108 mm"`, false],
        [`colour="red"`, true],
        [`mode="nope"`, false],
        [`data-x="1" id="limpet"`, true],
      ] as const) {
        const page = await show(`<mw-build ${attributes}>${json}`);
        assert.equal(lineOf(find(page, "mw-value")), alive ? "43.32" : "0", attributes);
        assert.lengthOf(await told(page), attributes.startsWith("data") ? 0 : 1, attributes);
      }
      const page = await show(`<mw-build fornt="Ring: 12 to 35"></mw-build><mw-value>0</mw-value>`);
      assert.include(await told(page), "/fornt unknown-attribute");
      assert.equal(lineOf(find(page, "mw-value")), "0");
    });
  });

  it("darken what depends on them, and no more", async () => {
    const broken = limpet.replace(
      '"alternatives": [',
      '"alternatives": [{ "id": "broken", "changes": { "primry.driver": 14 } }, ',
    );
    const page = await show(
      `<mw-build id="limpet"><script type="application/json">${broken}</script></mw-build>` +
        `<p><mw-value of="rear">0</mw-value> <mw-value of="rear" at="broken">1</mw-value> <mw-value of="raer">2</mw-value></p>`,
    );
    assert.equal(lineOf(find(page, "p")), "43.32 1 2");
    assert.deepEqual(await told(page), [
      "/alternatives/0/changes/primry.driver missing-address",
      "mw-value/at missing-reference",
      "mw-value/of missing-reference",
    ]);
  });

  it("tell of each element what it asks for and there is not", async () => {
    const text = "as it was";
    for (const [markup, expected, nearest] of [
      [`<mw-teeth>`, "mw-teeth/of word-needed", undefined],
      [`<mw-teeth of="primary.label">`, "mw-teeth/of not-count", undefined],
      [`<mw-teeth of="primary">`, "mw-teeth/of missing-address", ["primary.driver", "primary.driven"]],
      [`<mw-teeth of="primary.driver" min="ten">`, "mw-teeth/min not-count", undefined],
      [`<mw-ratio-summary of="raer">`, "mw-ratio-summary/of missing-reference", ["rear"]],
      [`<mw-working of="frnt">`, "mw-working/of missing-reference", ["front"]],
      [`<mw-overdrive-gauge scope="gear">`, "mw-overdrive-gauge/scope unknown-word", ["gears"]],
      [`<mw-wheel-speed unit="kmh">`, "mw-wheel-speed/unit unknown-word", ["km/h"]],
      [`<mw-wheel-speed loaded="some">`, "mw-wheel-speed/loaded not-understood", undefined],
      [`<mw-train-drawing of="primray row">`, "mw-train-drawing/of missing-reference", ["primary"]],
      [`<mw-pair-finder of="row">`, "mw-pair-finder/of missing-reference", []],
      [`<mw-pair-finder of="primery">`, "mw-pair-finder/of missing-reference", ["primary"]],
      [`<mw-change-table show="hub23">`, "mw-change-table/show missing-reference", ["hub-23"]],
      [`<mw-order-list from="noting">`, "mw-order-list/from missing-reference", ["nothing"]],
      [`<mw-parts-list at="articel">`, "mw-parts-list/at missing-reference", ["article"]],
      [`<mw-bench-card at="hub-32">`, "mw-bench-card/at missing-reference", ["hub-23"]],
      [`<mw-stage-editor build="limpt">`, "mw-stage-editor/build missing-reference", ["limpet"]],
    ] as const) {
      const tag = /[\w-]+/.exec(markup)![0];
      const page = await show(withLimpet(`${markup}${text}</${tag}>`));
      assert.deepEqual(await told(page), [expected], markup);
      assert.equal(lineOf(page.lastElementChild!), text, markup);
      if (nearest) assert.deepEqual(buildIn(page).findings![0]!.values.nearest, nearest, markup);
    }
  });

  describe("of an element without any build", () => {
    it("are told where the whole page came before it was looked at", async () => {
      const page = await show("");
      const frame = document.createElement("iframe");
      const entry = new URL("../../all.ts", import.meta.url).href;
      frame.srcdoc =
        `<!doctype html><script>heard = []; console.warn = (text) => heard.push(text);</script>` +
        `<p><mw-value of="rear">7</mw-value></p><script type="module" src="${entry}"></script>`;
      page.append(frame);
      const heard = () =>
        ((frame.contentWindow as unknown as { heard?: unknown[] } | null)?.heard ?? []).filter((text) =>
          String(text).startsWith("<mw-"),
        );
      const late = performance.now() + 50_000;
      while (!heard().length && performance.now() < late) await settle(1);
      assert.deepEqual(heard(), ['<mw-value>: There is no "mw-build".']);
    });

    it("are told in the console, and by a sign where it stands, until there is one", async () => {
      const page = await show(`<p>It comes to <mw-value of="rear">16.00</mw-value>.</p>`);
      const value = find(page, "mw-value");
      assert.lengthOf(warnings, 1);
      assert.include(warnings[0]!, "mw-value");
      assert.isNotNull(signOf(value));
      page.insertAdjacentHTML("beforeend", `<mw-build ${short}></mw-build>`);
      await settle();
      assert.isNull(signOf(value));
      assert.deepEqual(await told(page), []);
    });

    it("stand with the nearest build where they name another", async () => {
      const page = await show(withLimpet(`<mw-value build="limpt" of="rear">7</mw-value>`));
      assert.deepEqual(await told(page), ["mw-value/build missing-reference"]);
      assert.isNotNull(signOf(find(page, "mw-value")));
      assert.lengthOf(warnings, 1);
    });
  });

  describe("the author's sign", () => {
    const wrong = withLimpet(`<p>So <mw-value figure="laed">7</mw-value>, <mw-value of="raer">8</mw-value>.</p>`);

    it("says in the language that stands there what is to be mended, once its words have come", async () => {
      const page = await show(`<div lang="de">${wrong}</div>`);
      await told(page);
      const root = buildIn(page).shadowRoot!;
      assert.notInclude(fetched(), "de", "words that nobody reads are not fetched");
      find<HTMLButtonElement>(root, "[part=sign]").click();
      const list = () => lineOf(find(root, "[part=findings]"));
      for (let n = 0; n < 100 && !list().includes("gibt es nicht"); n++) await settle(1);
      assert.include(list(), "„raer“ gibt es nicht; am nächsten: rear");
      assert.include(warnings.join(), 'There is no "raer"');
    });

    it("opens what is to be mended, by keyboard too, and moves nothing", async () => {
      lookFrom("https://shore.example/post");
      const page = await show(`<div>${wrong}</div>`);
      const [before] = [find(page, "div").getBoundingClientRect().height];
      lookFrom();
      dispatchEvent(new HashChangeEvent("hashchange"));
      await settle();
      assert.equal(find(page, "div").getBoundingClientRect().height, before);
      const root = buildIn(page).shadowRoot!;
      const sign = signOf(buildIn(page))!;
      assert.equal(sign.getAttribute("aria-label"), "2 things to mend");
      assert.isAtLeast(sign.getBoundingClientRect().width, 24);
      sign.focus();
      assert.equal(root.activeElement, sign);
      sign.click();
      const list = find(root, "[part=findings]");
      assert.deepEqual(
        [...list.querySelectorAll("code")].map((code) => code.textContent),
        ['<mw-value figure="laed">', '<mw-value of="raer">'],
      );
      assert.include(list.textContent, "nearest: lead");
      assert.equal(find(page, "div").getBoundingClientRect().height, before);
      sign.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true, cancelable: true }));
      assert.isNull(root.querySelector("[part=findings]"));
      assert.equal(root.activeElement, sign);
    });

    it("stands beside the block, over no text, out of tables and lists, as far as there is room", async () => {
      const boxes = (node: Node): DOMRect[] => {
        if (node.nodeType === 3) {
          const range = document.createRange();
          range.selectNodeContents(node);
          return [...range.getClientRects()];
        }
        if (/^(SCRIPT|STYLE)$/.test(node.nodeName)) return [];
        return [...((node as Element).shadowRoot ?? node).childNodes].flatMap((one) =>
          (one as Partial<Element>).classList?.contains("to-mend")
            ? []
            : one.nodeName === "SLOT"
              ? [...node.childNodes].flatMap(boxes)
              : boxes(one),
        );
      };
      const long = "The motor turns many more times than the wheels do. ".repeat(4);
      const lost = `<mw-value of="rear">16.00</mw-value>`;
      const [built, sentence, table, list] = [
        withLimpet(`<p>${long}<mw-value of="raer">16.00</mw-value></p>`),
        `<p>${long}${lost} ${long}</p>`,
        `<table><tr><td>first</td><td align="right">20.00</td><td>${lost} or so</td></tr></table>`,
        `<ol><li>one</li><li>${lost} or so<ol><li>${lost}</li></ol></li></ol>`,
      ];
      for (const markup of [`<p>${long}</p>${built}`, sentence, table, list, `<div dir="rtl">${table}${list}</div>`])
        for (const room of [40, 0]) {
          const page = await show(`<div style="padding: 0 ${room}px">${markup}</div>`, 500);
          if (room === 0) page.style.cssText += "position: relative; overflow: hidden";
          dispatchEvent(new HashChangeEvent("hashchange"));
          await settle();
          const signs = [...page.querySelectorAll("mw-value, mw-build")].flatMap((one) => signOf(one) ?? []);
          assert.isAtLeast(signs.length, 1, markup);
          for (const sign of signs) {
            const { left, right, top, bottom } = sign.getBoundingClientRect();
            const over = boxes(page).filter(
              (box) => box.left < right - 1 && box.right > left + 1 && box.top < bottom - 1 && box.bottom > top + 1,
            );
            const around = page.getBoundingClientRect();
            if (room) assert.lengthOf(over, 0, markup.slice(-300));
            else
              assert.isTrue(
                left >= around.left - 1 && right <= around.right + 1,
                `${markup.slice(-300)} ${left} ${right}`,
              );
          }
        }
    });

    it("goes when all is mended", async () => {
      const page = await show(wrong);
      assert.isNotNull(signOf(buildIn(page)));
      for (const value of page.querySelectorAll("mw-value")) value.remove();
      await told(page);
      assert.isNull(signOf(buildIn(page)));
    });

    it("is not there for a reader on a public page, and is where the address says so", async () => {
      lookFrom("https://shore.example/post");
      const page = await show(wrong);
      assert.lengthOf(await buildIn(page).checked, 2);
      assert.equal(buildIn(page).shadowRoot!.querySelectorAll("*").length, 1);
      lookFrom("https://shore.example/post#mw-author");
      dispatchEvent(new HashChangeEvent("hashchange"));
      await settle();
      assert.isNotNull(signOf(buildIn(page)));
    });

    it("comes and goes with the address for a build that has no elements", async () => {
      lookFrom("https://shore.example/post");
      const page = await show(`<mw-build stages="Pair: 0 to 40" rear="Hub: 10 to 10"></mw-build>`);
      for (const [hash, isShown] of [
        ["#mw-author", true],
        ["#top", false],
      ] as const) {
        lookFrom(`https://shore.example/post${hash}`);
        dispatchEvent(new HashChangeEvent("hashchange"));
        await settle();
        assert.equal(signOf(buildIn(page)) !== null, isShown, hash);
      }
    });

    it("knows where an author is", () => {
      const isHere = (address: string) => isAuthorsPlace(new URL(address));
      for (const address of [
        "http://localhost:8080/a",
        "http://127.0.0.1/",
        "http://[::1]:3000/",
        "file:///home/a.html",
        "https://shore.example/#mw-author",
        "https://shore.example/#part.mw-author",
        "https://shore.example/#/posts/5?mw-author",
      ])
        assert.isTrue(isHere(address), address);
      for (const address of [
        "https://shore.example/",
        "https://localhost.shore.example/",
        "https://shore.example/?mw-author",
        "https://shore.example/#mw-authors",
        "https://shore.example/#mw-author-x",
      ])
        assert.isFalse(isHere(address), address);
    });
  });
});
