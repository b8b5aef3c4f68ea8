import { assert } from "@esm-bundle/chai";
import { sealOf } from "@meshwright/calc/document";
import { clear, countIn, find, limpet, lineOf, press, settle, short, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "./index.js";

const rear = `<mw-value of="rear">0</mw-value>`;
const pair = (driven: number, more = ""): string =>
  `<mw-build stages="Pair: 10 to ${driven}" rear="Hub: 10 to 10" ${more}></mw-build>`;
const values = (root: ParentNode): string[] => [...root.querySelectorAll("mw-value")].map(lineOf);
const buildIn = (root: ParentNode): MwBuild => find<MwBuild>(root, "mw-build");

describe("mw-build", () => {
  afterEach(clear);

  it("takes a build as attributes, as a script inside, as a property", async () => {
    assert.deepEqual(values(await show(`<mw-build ${short}></mw-build>${rear}`)), ["16.00"]);
    assert.deepEqual(values(await show(withLimpet(rear))), ["43.32"]);
    const page = await show(`<mw-build></mw-build>${rear}`);
    buildIn(page).json = JSON.parse(limpet);
    await settle();
    assert.deepEqual(values(page), ["43.32"]);
  });

  it("takes a title among the attributes, under the seal that a tool wrote over all of them", async () => {
    const attributes = { stages: "Pair: 10 to 20", rear: "Hub: 10 to 30", title: "Limpet" };
    const said = Object.entries(attributes).map(([name, value]) => `${name}="${value}"`);
    const page = await show(`<mw-build ${said.join(" ")} seal="${sealOf(attributes)}"></mw-build>${rear}`);
    assert.deepEqual(await buildIn(page).checked, []);
    assert.deepEqual(values(page), ["6.00"]);
    assert.equal(buildIn(page).store.article?.title, "Limpet");
  });

  it("takes a build from a file", async () => {
    const page = await show(`<mw-build src="/seeds/limpet.json"></mw-build>${rear}`);
    for (let n = 0; n < 20 && values(page)[0] === "0"; n++) await settle();
    assert.deepEqual(values(page), ["43.32"]);
  });

  it("waits for a script that comes in pieces, and says nothing meanwhile", async () => {
    const page = await show(`<mw-build id="limpet"></mw-build><mw-value>43.32</mw-value>`);
    const script = document.createElement("script");
    script.type = "application/json";
    buildIn(page).append(script);
    const text = document.createTextNode(limpet.slice(0, 200));
    script.append(text);
    await settle();
    assert.equal(lineOf(find(page, "mw-value")), "43.32");
    text.data = limpet;
    await settle();
    assert.deepEqual(buildIn(page).findings, []);
    assert.isDefined(buildIn(page).store.article);
  });

  it("leaves the fallbacks where the data are broken, and tells the author on demand", async () => {
    for (const [markup, word] of [
      [`<mw-build><script type="application/json">{"format": </script></mw-build>`, ""],
      [
        `<mw-build><script type="application/json">{"format":"meshwright-build/1","outputs":[],"colour":1}</script></mw-build>`,
        "colour",
      ],
      [`<mw-build stages="Pair: 0 to 40" rear="Hub: 10 to 10"></mw-build>`, "found 0"],
      [`<mw-build src="/nowhere.json"></mw-build>`, "404"],
      [`<mw-build></mw-build>`, "expected"],
      [withLimpet("").replace("meshwright-build/1", "meshwright-build/2"), ""],
    ] as const) {
      const page = await show(`${markup}<p>It comes to ${rear}.</p>`);
      await settle(6);
      assert.equal(lineOf(find(page, "p")), "It comes to 0.");
      const findings = await buildIn(page).checked;
      assert.isNotEmpty(findings, markup);
      assert.include(JSON.stringify(findings.map(({ message }) => message)), word);
      const sign = find(buildIn(page).shadowRoot!, "[part=sign]");
      // Its author reads at once what is wrong, in its place.
      assert.equal(sign.getAttribute("aria-expanded"), "true");
      assert.isAbove(find(buildIn(page).shadowRoot!, "[part=findings]").getBoundingClientRect().height, 10);
      assert.ok(sign.getAttribute("aria-label"));
    }
  });

  it("tells the author what elements ask for in vain, and no figure is drawn again for it", async () => {
    const page = await show(withLimpet(rear));
    const { store } = buildIn(page);
    const evaluation = store.evaluation();
    let told = 0;
    store.followers.add({ stateChanged: () => void told++ });
    page.insertAdjacentHTML("beforeend", `<mw-value figure="nothing-like-it">7</mw-value>`);
    await settle();
    assert.lengthOf(buildIn(page).findings!, 1);
    assert.isNotNull(buildIn(page).shadowRoot!.querySelector("[part=sign]"));
    page.querySelectorAll("mw-value")[1]!.remove();
    await settle();
    assert.deepEqual(buildIn(page).findings, []);
    assert.isNull(buildIn(page).shadowRoot!.querySelector("[part=sign]"));
    assert.equal(store.evaluation(), evaluation);
    assert.equal(told, 0);
  });

  it("draws nothing of its own while all is well", async () => {
    const page = await show(withLimpet(""));
    assert.isNull(buildIn(page).shadowRoot!.querySelector("[part=sign]"));
    assert.equal(buildIn(page).getBoundingClientRect().height, 0);
  });

  it("follows the author's changes under the reader's", async () => {
    const page = await show(`<mw-build ${short}></mw-build><mw-teeth of="spur-and-pinion.driver">15</mw-teeth>${rear}`);
    press(countIn(find(page, "mw-teeth")), "ArrowUp");
    await turn();
    assert.deepEqual(values(page), ["15.00"]);
    buildIn(page).setAttribute("rear", "Ring: 10 to 20");
    await settle();
    assert.deepEqual(values(page), ["7.50"]);
  });

  it("keeps the reader's change when the same markup is put in again", async () => {
    const page = await show(`<mw-build ${short}></mw-build><mw-teeth of="spur-and-pinion.driver">15</mw-teeth>${rear}`);
    press(countIn(find(page, "mw-teeth")), "ArrowUp");
    await settle();
    for (const { name, value } of [...buildIn(page).attributes]) buildIn(page).setAttribute(name, value);
    await settle();
    assert.deepEqual(values(page), ["15.00"]);
  });

  it("never executes and never pollutes what hostile data say", async () => {
    const hostile = limpet
      .replace('"Limpet, a 1:8 beach-launch tractor"', '"<img src=x onerror=globalThis.broken=1>"')
      .replace('"Spur and pinion"', '"<img src=x onerror=globalThis.broken=1>"')
      .replace('"format"', '"x-a": {"__proto__": {"broken": 1}}, "format"');
    const page = await show(`<mw-build></mw-build><mw-ratio-summary></mw-ratio-summary>`);
    buildIn(page).json = hostile;
    await settle();
    assert.include(lineOf(find(page, "mw-ratio-summary")), "<img");
    assert.isUndefined((globalThis as { broken?: unknown }).broken);
    assert.isUndefined(({} as { broken?: unknown }).broken);
  });

  describe("is found", () => {
    it("whatever the order of arrival", async () => {
      const page = await show(`<section>${rear}</section>`);
      assert.deepEqual(values(page), ["0"]);
      find(page, "section").insertAdjacentHTML("beforeend", pair(30));
      await settle();
      assert.deepEqual(values(page), ["3.00"]);
      find(page, "section").insertAdjacentHTML("afterbegin", pair(40));
      await settle();
      assert.deepEqual(values(page), ["4.00"]);
      buildIn(page).remove();
      await settle();
      assert.deepEqual(values(page), ["3.00"]);
    });

    it("in the smallest ancestor that has one, the last before, else the first after", async () => {
      const page = await show(
        `${pair(10)}<article>${rear}${pair(20)}${pair(30)}${rear}<p>${rear}</p>${pair(40)}</article><p>${rear}</p>`,
      );
      assert.deepEqual(values(page), ["2.00", "3.00", "3.00", "4.00"]);
    });

    it("around the element as well as beside it", async () => {
      const page = await show(`${pair(10)}<div></div>`);
      find(page, "div").innerHTML = pair(50).replace("</mw-build>", `<p>${rear}</p></mw-build>`);
      await settle();
      assert.deepEqual(values(page), ["5.00"]);
    });

    it("by its id, and by a new one when it is renamed", async () => {
      const page = await show(`${pair(10, "id=one")}${pair(20, "id=two")}<mw-value of="rear" build="one">0</mw-value>`);
      assert.deepEqual(values(page), ["1.00"]);
      find(page, "#one").id = "three";
      await settle();
      assert.deepEqual(values(page), ["0"]);
      find(page, "#two").id = "one";
      await settle();
      assert.deepEqual(values(page), ["2.00"]);
    });

    it("out of shadow roots, through their hosts", async () => {
      const page = await show(`${pair(20)}<div></div>`);
      const inner = find(page, "div").attachShadow({ mode: "open" });
      inner.innerHTML = rear;
      await settle();
      assert.deepEqual(values(inner), ["2.00"]);
      inner.innerHTML = pair(30) + inner.innerHTML;
      await settle();
      assert.deepEqual(values(inner), ["3.00"]);
    });

    it("apart where the same post stands twice", async () => {
      const post = `<article>${pair(20, 'id="post"')}<mw-teeth of="pair.driven">20</mw-teeth>${rear}</article>`;
      const page = await show(post + post);
      press(countIn(page.querySelectorAll("mw-teeth")[1]!), "PageUp");
      await settle();
      assert.deepEqual(values(page), ["2.00", "3.00"]);
    });
  });

  it("works in another document", async () => {
    const page = await show(withLimpet(rear));
    const frame = document.createElement("iframe");
    page.append(frame);
    const body = frame.contentDocument!.body;
    body.append(...page.querySelectorAll("mw-build, mw-value"));
    await settle();
    assert.deepEqual(values(body), ["43.32"]);
    body.insertAdjacentHTML("beforeend", "");
    assert.isAbove(find(body, "mw-value").shadowRoot!.adoptedStyleSheets.length, 0);
    body.replaceChildren();
  });

  it("leaves nothing behind", async () => {
    const page = await show("");
    const shared = (globalThis as unknown as Record<symbol, { holders: Set<unknown>; watchers: Set<unknown> }>)[
      Symbol.for("meshwright page 1")
    ]!;
    const before = [shared.holders.size, shared.watchers.size];
    for (let n = 0; n < 50; n++) {
      page.innerHTML = `${pair(20)}${rear}<mw-teeth of="pair.driven">20</mw-teeth>`;
      await turn();
      page.replaceChildren();
    }
    await settle();
    assert.deepEqual([shared.holders.size, shared.watchers.size], before);
  });

  describe("that a link has changed", () => {
    const told = (root: ParentNode = document): HTMLElement | null =>
      [...root.querySelectorAll("*")].map((one) => one.shadowRoot?.querySelector<HTMLElement>(".told")).find(Boolean) ??
      null;
    const said = (): string => told()?.textContent!.replace(/\s+/g, " ").trim() ?? "";
    const press = async (text: string): Promise<void> => {
      [...told()!.querySelectorAll("button")].find((one) => one.textContent!.trim() === text)!.click();
      await settle();
    };
    const sentence = `<p>It comes to <mw-value of="front">44.30</mw-value>.</p>`;
    /** Opens the markup by a link that holds changes, or by any text. */
    const arrive = async (markup: string, changes: object | string): Promise<HTMLElement> => {
      const page = await show(withLimpet(""));
      let text = changes;
      if (typeof changes === "object") {
        buildIn(page).store.change(changes as never);
        await turn();
        text = buildIn(page).link().split("#")[1]!;
      }
      const shown = await show(markup);
      history.replaceState(null, "", `#${text as string}`);
      dispatchEvent(new HashChangeEvent("hashchange"));
      await settle();
      return shown;
    };
    afterEach(() => history.replaceState(null, "", location.pathname + location.search));

    it("says so in two lines before its first figure, with no mw-edits on the page", async () => {
      const page = await arrive(withLimpet(sentence), { "front-hub.driven": 23 });
      assert.match(
        said(),
        /^This link changes the author’s numbers\. Front hub gear 23, was 22: Front wheels 4\.3% slower\. See the author’s Hide$/,
      );
      assert.isAtMost(told()!.getBoundingClientRect().bottom, find(page, "p").getBoundingClientRect().top);
      assert.equal(find(page, "p").innerHTML, '<p>It comes to <mw-value of="front">44.30</mw-value>.</p>'.slice(3, -4));
      assert.isNotNull(find(page, "mw-value").shadowRoot!.querySelector("[data-was]"));
    });

    it("shows the author's, brings the sent version back, and can be put away", async () => {
      const page = await arrive(withLimpet(sentence), { "front-hub.driven": 23 });
      await press("See the author’s");
      assert.deepEqual(values(page), ["44.30"]);
      assert.equal(said(), "These are the author’s numbers. Back to the sent version Hide");
      await press("Back to the sent version");
      assert.deepEqual(values(page), ["46.31"]);
      assert.include(said(), "This link changes the author’s numbers.");
      await press("Hide");
      assert.isNull(told());
      assert.deepEqual(values(page), ["46.31"]);
    });

    it("says that a link could not be read, and shows the author's numbers", async () => {
      const page = await arrive(withLimpet(sentence), "mw-limpet=1cBroken");
      assert.equal(said(), "This link’s changes could not be read. These are the author’s numbers. Hide");
      assert.deepEqual(values(page), ["44.30"]);
    });

    it("says nothing where no link came, and nothing of a reader's own changes", async () => {
      const page = await show(withLimpet(sentence));
      buildIn(page).store.change({ "front-hub.driven": 23 });
      await settle();
      assert.isNull(told());
    });

    it("is seen in the window where the build stands after its figures, or is not drawn", async () => {
      for (const markup of [
        sentence + withLimpet(""),
        `<div style="display: none">${withLimpet("")}</div>${sentence}`,
      ]) {
        await arrive(`<div style="height: 400px"></div>${markup}`, { "front-hub.driven": 23 });
        const { top, width } = told()!.getBoundingClientRect();
        assert.isAbove(width, 100, markup);
        assert.isAtLeast(top, 0);
        assert.isBelow(top, 400);
        await press("Hide");
        assert.isNull(told());
      }
    });

    it("counts what has no room, and takes no words from the link", async () => {
      await arrive(withLimpet(sentence), {
        "front-hub.driven": 23,
        "row.teeth.0": 19,
        "primary.driven": 60,
        "primary.driver": 16,
        "primary.label": "Evil words",
      });
      assert.include(said(), "and 1 more");
      assert.notInclude(said(), "Evil");
    });

    it("tells at each picture and table whose version it draws, while it is another's", async () => {
      const page = await arrive(
        withLimpet(
          `<mw-ratio-summary></mw-ratio-summary><mw-overdrive-gauge></mw-overdrive-gauge><mw-ratio-summary at="article"></mw-ratio-summary>`,
        ),
        { "front-hub.driven": 23 },
      );
      const marks = () =>
        [...page.querySelectorAll("mw-ratio-summary, mw-overdrive-gauge")].map(
          (one) => one.shadowRoot!.querySelector("[part=version]")?.textContent ?? "",
        );
      assert.deepEqual(marks(), ["a sender’s", "a sender’s", ""]);
      buildIn(page).store.change({ "front-hub.driven": 24 });
      await settle();
      assert.deepEqual(marks(), ["yours", "yours", ""]);
      buildIn(page).store.reset();
      await settle();
      assert.deepEqual(marks(), ["", "", ""]);
    });
  });
});
