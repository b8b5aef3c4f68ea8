import { assert } from "@esm-bundle/chai";
import { buildFromLink, linkOfBuild } from "@meshwright/calc/document";
import { valueAt } from "@meshwright/calc/drivetrain";
import { clear, countIn, find, lineOf, press, settle, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import type { MwEdits } from "./index.js";

const page = () =>
  show(
    withLimpet(
      `<mw-teeth of="primary.driven">62</mw-teeth><mw-value of="rear">43.32</mw-value><mw-edits><p>Numbers can be changed where scripts run: 62.</p></mw-edits>`,
    ),
  );
const later = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

describe("mw-edits", () => {
  let root: HTMLElement;
  const edits = () => find<MwEdits>(root, "mw-edits");
  const build = () => find<MwBuild>(root, "mw-build");
  const button = (text: string): HTMLButtonElement => {
    const found = [...edits().shadowRoot!.querySelectorAll("button")].find((one) => one.textContent!.trim() === text);
    if (!found) throw new Error(`No button "${text}" in ${lineOf(edits())}`);
    return found;
  };
  const rear = () => lineOf(find(root, "mw-value"));
  const step = async (key = "ArrowUp") => {
    press(countIn(find(root, "mw-teeth")), key);
    await turn();
  };

  beforeEach(async () => void (root = await page()));
  afterEach(clear);

  it("draws nothing while nothing differs", () => {
    assert.equal(lineOf(edits()), "");
  });

  it("says what differs, takes it back, and brings the article's values", async () => {
    await step();
    await step();
    assert.include(lineOf(edits()), "You changed spur (yours 64 · article 62).");
    button("Undo").click();
    await settle();
    assert.include(lineOf(edits()), "yours 63 · article 62");
    button("Back to the article’s values").click();
    await settle();
    assert.equal(rear(), "43.32");
    assert.include(lineOf(edits()), "These are the article’s values.");
    button("Undo").click();
    await settle();
    assert.equal(rear(), "44.02");
  });

  it("never loses the focus to a button that goes away", async () => {
    await step();
    button("Back to the article’s values").focus();
    button("Back to the article’s values").click();
    await settle();
    assert.equal(edits().shadowRoot!.activeElement?.textContent?.trim(), "Undo");
    button("Undo").click();
    await settle();
    button("Undo").click();
    await settle();
    assert.isNotNull(edits().shadowRoot!.activeElement ?? document.activeElement);
  });

  it("puts the version into the address once things have settled, and takes it out again", async () => {
    await step();
    assert.equal(location.hash, "");
    await later(600);
    assert.match(location.hash, /^#mw-limpet--[\w-]+[a-z]$/i);
    button("Back to the article’s values").click();
    await later(600);
    assert.equal(location.hash, "");
  });

  it("leaves the address alone where a router uses it", async () => {
    for (const hash of ["#section-2", "#/posts/5"]) {
      history.replaceState(null, "", hash);
      await step();
      await later(600);
      assert.equal(location.hash, hash);
    }
  });

  it("opens a reader's version, says so, and shows the article's on request", async () => {
    await step();
    press(countIn(find(root, "mw-teeth")), "PageUp");
    await turn();
    const link = build().link();
    history.replaceState(null, "", link);
    root = await page().then((fresh) => fresh);
    history.replaceState(null, "", link);
    dispatchEvent(new HashChangeEvent("hashchange"));
    await settle();
    assert.equal(rear(), "51.01");
    assert.include(lineOf(edits()), "A reader’s version: 1 change.");
    button("See the author’s").click();
    await settle();
    assert.equal(rear(), "43.32");
  });

  it("makes a link for the post, not for the page that lists it", async () => {
    const post = (id: string) =>
      `<article><h2><a rel="bookmark" href="/posts/limpet">Limpet</a></h2>${withLimpet(`<mw-teeth of="primary.driven">62</mw-teeth>`).replace("limpet", id)}</article>`;
    root = await show(post("limpet") + post("limpet"));
    const second = root.querySelectorAll<MwBuild>("mw-build")[1]!;
    second.store.change({ "primary.driven": 60 });
    await settle();
    assert.match(second.link(), /\/posts\/limpet#mw-limpet--[\w-]+$/);
  });

  it("keeps a router's path in the link, and an anchor", async () => {
    await step();
    history.replaceState(null, "", "#/posts/5?x=1");
    assert.match(build().link(), /#\/posts\/5\?x=1&mw-limpet=[\w-]+$/);
    history.replaceState(null, "", "#section-2");
    assert.match(build().link(), /#section-2\?mw-limpet=[\w-]+$/);
    root.id = "section-2";
    assert.match(build().link(), /#section-2\.mw-limpet--[\w-]+$/);
  });

  it("says when a link was made for another revision, and applies the rest", async () => {
    build().store.change({ "primary.driven": 60, "row.teeth.0": 20 });
    await turn();
    const link = build().link();
    const json = JSON.parse(build().querySelector("script")!.textContent!);
    json.stages[0].driven = 66;
    root = await show(
      `<mw-build id="limpet"></mw-build><mw-value figure="count" of="primary.driven">66</mw-value><mw-value figure="count" of="row.teeth.0">18</mw-value>`,
    );
    history.replaceState(null, "", link);
    build().json = JSON.stringify(json);
    await settle();
    assert.deepEqual([...root.querySelectorAll("mw-value")].map(lineOf), ["66", "20"]);
    assert.lengthOf(await build().checked, 1);
  });

  it("names a set once, with both its counts", async () => {
    build().store.change({ "front-ring.driver": 12, "front-ring.driven": 38 });
    await turn();
    assert.include(
      lineOf(edits()),
      "You changed Front: Ring and pinion (yours 12 driving 38 · article 13 driving 38).",
    );
    const link = build().link();
    root = await page();
    history.replaceState(null, "", link);
    dispatchEvent(new HashChangeEvent("hashchange"));
    await settle();
    assert.match(
      lineOf(edits()),
      /^A reader’s version: 1 change\. .* You changed Front: Ring and pinion \(yours 12 driving 38/,
    );
  });

  it("says what went with a stage that is gone", async () => {
    build().store.change({ remove: "rear-ring" });
    await turn();
    assert.include(
      lineOf(edits()),
      "You changed the stages. With Rear: Ring and pinion went 2 of its parts, Deeper rear set.",
    );
  });

  it("says what a copied link leaves out, because it is words", async () => {
    build().store.change({ "primary.driver": 16, "primary.label": "My pair" });
    await turn();
    assert.notInclude(lineOf(edits()), "left out");
    const { clipboard } = navigator;
    Object.defineProperty(navigator, "clipboard", { value: { writeText: async () => {} }, configurable: true });
    button("Copy a link to this version").click();
    await settle();
    Object.defineProperty(navigator, "clipboard", { value: clipboard, configurable: true });
    assert.include(lineOf(edits()), "A link carries numbers and no words: Spur and pinion is left out.");
    const link = build().link();
    root = await page();
    history.replaceState(null, "", link);
    dispatchEvent(new HashChangeEvent("hashchange"));
    await settle();
    assert.deepEqual(build().store.layer.sets, { "primary.driver": 16 });
  });

  it("takes nothing from a link that cannot be read, nor from one that holds a whole build", async () => {
    await step();
    const whole = await linkOfBuild(build().store.article!);
    for (const text of ["1cBroken", whole, "x".repeat(5000)]) {
      history.replaceState(null, "", `#mw-limpet--${text}`);
      dispatchEvent(new HashChangeEvent("hashchange"));
      await settle();
      assert.equal(rear(), "44.02");
      assert.lengthOf(await build().checked, 1);
    }
  });

  it("sends changes of the stages, in a line", async () => {
    build().store.change({ insert: { id: "worm-1", kind: "worm", starts: 1, teeth: 2 }, at: 0 });
    build().store.change({ "worm-1.teeth": 3 });
    await turn();
    const link = build().link();
    assert.isBelow(link.length - location.href.length, 200);
    root = await page();
    history.replaceState(null, "", link);
    dispatchEvent(new HashChangeEvent("hashchange"));
    await settle();
    assert.equal(rear(), "129.97");
    assert.include(lineOf(edits()), "A reader’s version: 1 change.");
    await step();
    assert.include(lineOf(edits()), "spur (yours 63 · article 62)");
    assert.match(build().link(), /#mw-limpet--[\w-]+$/);
    button("Back to the article’s values").click();
    await settle();
    assert.equal(rear(), "43.32");
  });

  it("offers the build as it stands for a notebook, where the author names one", async () => {
    const offered = () => edits().shadowRoot!.querySelector("a");
    const whenOffered = async (): Promise<HTMLAnchorElement> => {
      while (!offered()) await later(5);
      return offered()!;
    };
    await step();
    await settle();
    assert.isNull(offered());
    build().setAttribute("notebook", "/notebook/?x=1#old");
    await step();
    const { href, textContent } = await whenOffered();
    assert.equal(textContent, "Take it into a notebook");
    const [page, link] = href.split("#build-");
    assert.equal(page, new URL("/notebook/?x=1", location.href).href);
    const reading = await buildFromLink(link!);
    assert.isTrue(reading.ok);
    assert.equal(reading.ok && valueAt(reading.build, "primary.driven"), 64);
    assert.equal(reading.ok && reading.build.title, build().store.article!.title);
    button("Back to the article’s values").click();
    await settle();
    assert.isNull(offered());
  });

  it("offers no way into a script, nor into an address that is none", async () => {
    for (const address of ["javascript:alert(1)", "https://["]) {
      build().setAttribute("notebook", address);
      await step();
      await later(50);
      assert.isNull(edits().shadowRoot!.querySelector("a"));
    }
  });

  it("offers the link as text where copying is refused", async () => {
    const { clipboard } = navigator;
    Object.defineProperty(navigator, "clipboard", {
      value: { writeText: () => Promise.reject(new Error("no")) },
      configurable: true,
    });
    await step();
    button("Copy a link to this version").click();
    await settle();
    const field = find<HTMLInputElement>(edits().shadowRoot!, "input");
    assert.equal(field.value, build().link());
    assert.isTrue(field.readOnly);
    Object.defineProperty(navigator, "clipboard", { value: clipboard, configurable: true });
  });

  it("says what it comes to before what was changed", async () => {
    await step();
    assert.match(lineOf(edits()), /^A reader’s version.*Rear 44\.02, was 43\.32\. You changed spur/);
  });

  describe("at the bottom of the window", () => {
    const strip = () => edits().shadowRoot!.querySelector<HTMLElement>(".strip");
    const sticking = `<mw-teeth of="primary.driven">62</mw-teeth><mw-edits sticks></mw-edits><div style="height: 3000px"></div>`;
    const lift = () => innerHeight - strip()!.getBoundingClientRect().bottom;

    beforeEach(async () => void (root = await show(withLimpet(sticking))));

    it("stands there while something differs, says the effect, and steps the count in hand wherever the page is", async () => {
      assert.isNull(strip());
      countIn(find(root, "mw-teeth")).focus();
      await step();
      countIn(find(root, "mw-teeth")).blur();
      await settle();
      assert.closeTo(lift(), 0, 1);
      scrollTo(0, 1500);
      await settle();
      assert.closeTo(lift(), 0, 1);
      assert.include(strip()!.textContent, "Rear 44.02, was 43.32");
      for (const key of strip()!.querySelectorAll("button")) {
        const { width, height } = key.getBoundingClientRect();
        assert.isAtLeast(Math.min(width, height), 24, key.textContent!);
      }
      find<HTMLElement>(strip()!, "button[aria-label^='One more']").click();
      await settle();
      assert.include(strip()!.textContent, "Rear 44.72, was 43.32");
      button("Back to the article’s values").click();
      await settle();
      assert.include(strip()!.textContent, "These are the article’s values.");
      scrollTo(0, 0);
    });

    it("can be closed, and then stands where the author has put it", async () => {
      await step();
      await settle();
      find<HTMLElement>(strip()!, ".close").click();
      await settle();
      assert.isNull(strip());
      assert.include(lineOf(edits()), "Rear 44.02, was 43.32");
      await step();
      await settle();
      assert.isNull(strip());
    });

    it("stands above a bar of the page's own", async () => {
      root.insertAdjacentHTML(
        "beforeend",
        `<footer style="position: fixed; inset: auto 0 0; height: 48px">Cookies?</footer>`,
      );
      await step();
      await settle();
      assert.closeTo(lift(), 48, 1);
    });

    it("is one a page: of the build that was changed last", async () => {
      root = await show(withLimpet(sticking) + withLimpet(sticking).replace('id="limpet"', 'id="other"'));
      const strips = () =>
        [...root.querySelectorAll("mw-edits")].map((one) => one.shadowRoot!.querySelector(".strip") !== null);
      const [one, other] = [...root.querySelectorAll<MwBuild>("mw-build")];
      one!.store.change({ "primary.driven": 60 });
      await settle();
      assert.deepEqual(strips(), [true, false]);
      other!.store.change({ "primary.driven": 60 });
      await settle();
      assert.deepEqual(strips(), [false, true]);
    });
  });

  it("says of which axle it is, where both bear one label; and so does the field", async () => {
    root =
      await show(`<mw-build front="Ring: 13 to 38" rear="Ring: 12 to 35" stages="Spur and pinion: 15 to 62"></mw-build>
      <mw-teeth of="front-ring.driver">13</mw-teeth><mw-teeth of="rear-ring.driver">12</mw-teeth>
      <mw-teeth of="spur-and-pinion.driver">15</mw-teeth><mw-edits></mw-edits>`);
    const fields = [...root.querySelectorAll("mw-teeth")].map((one) => countIn(one));
    assert.deepEqual(
      fields.map((one) => one.getAttribute("aria-label")),
      ["front: Ring: driver, teeth", "rear: Ring: driver, teeth", "Spur and pinion: driver, teeth"],
    );
    for (const field of fields) press(field, "ArrowUp");
    await turn();
    for (const name of ["front: Ring: driver (yours 14 · article 13)", "rear: Ring: driver (yours 13 · article 12)"])
      assert.include(lineOf(edits()), name);
    assert.include(lineOf(edits()), "Spur and pinion: driver (");
  });

  it("calls what stands beside the stages by what it is, in every language", async () => {
    root =
      await show(`<mw-build stages="Spur and pinion: 15 to 62" front="Ring: 13 to 38" front-wheel="124 mm" motor="1850 kv" battery="3 cells lipo"></mw-build>
      <mw-edits></mw-edits>`);
    const { store } = build();
    store.change({ "front.wheel.diameter": "130 mm" });
    store.change({ "motor.kv": 2600 });
    store.change({ "battery.cells": 4 });
    await settle();
    for (const name of ["front wheel: diameter (", "motor: kV (", "battery: cells ("])
      assert.include(lineOf(edits()), name);
    for (const language of ["de", "fr", "es", "ja", "ar"]) {
      root.lang = language;
      // Its words come in files of their own, which a busy machine takes its time over.
      const english = /motor\.|battery|\.wheel|diameter/;
      for (let n = 0; n < 200 && english.test(lineOf(edits())); n++) await settle(1);
      assert.notMatch(lineOf(edits()), english, language);
    }
  });
});
