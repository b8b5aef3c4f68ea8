import { assert } from "@esm-bundle/chai";
import { clear, countIn, find, lineOf, press, settle, show, turn, type, withLimpet } from "../../test/page.js";
import { parseBuild } from "@meshwright/calc/document";
import type { MwBuild } from "../build/index.js";
import type { MwTeeth } from "./index.js";

const sentence = withLimpet(
  `<p>With <mw-teeth of="primary.driver">15</mw-teeth> to <mw-teeth of="primary.driven">62</mw-teeth>: <mw-value of="rear">43.32</mw-value></p>`,
);

describe("mw-teeth", () => {
  let page: HTMLElement;
  let teeth: MwTeeth;
  let count: HTMLInputElement;
  const rear = () => lineOf(find(page, "mw-value"));
  const value = () => count.getAttribute("aria-valuenow");
  const message = () => teeth.shadowRoot!.querySelector(".message")?.textContent;

  beforeEach(async () => {
    page = await show(sentence);
    teeth = find<MwTeeth>(page, "[of='primary.driven']");
    count = countIn(teeth);
  });
  afterEach(clear);

  it("says in the language that stands there what stands against a count", async () => {
    page = await show(
      `<div lang="de"><mw-build stages="" rear="Hub: sun 12 in ring 60"></mw-build><p>Hohlrad mit <mw-teeth of="rear-hub.ring" free>60</mw-teeth>.</p></div>`,
    );
    teeth = find<MwTeeth>(page, "mw-teeth");
    count = countIn(teeth);
    type(count, "11");
    press(count, "Enter");
    await settle();
    const told = "Ein Hohlrad mit 11 Zähnen fasst kein Rad mit 12. Es bleibt bei 60.";
    for (let n = 0; n < 100 && message() !== told; n++) await settle(1);
    assert.equal(message(), told);
  });

  it("reads as the sentence that the author wrote", () => {
    assert.equal(lineOf(find(page, "p")), "With 15 to 62: 43.32");
  });

  describe("that has just come", () => {
    /** One that nobody waits for. */
    const come = async (): Promise<MwTeeth> => {
      find(page, "p").insertAdjacentHTML("beforeend", ` <mw-teeth of="primary.driver">15</mw-teeth>`);
      for (let n = 0; n < 20; n++) await Promise.resolve();
      return find<MwTeeth>(page, "mw-teeth:last-child");
    };
    const field = (one: MwTeeth) => one.shadowRoot!.querySelector("input");
    const brought = async (one: MwTeeth) => {
      for (let n = 0; n < 100 && !field(one); n++) await settle(1);
      return field(one)?.getAttribute("aria-valuenow");
    };

    it("shows its text at once, and has its field when that has been painted", async () => {
      const one = await come();
      assert.equal(lineOf(one), "15");
      assert.include(getComputedStyle(find(one.shadowRoot!, ".text")).textDecorationLine, "underline");
      assert.isNull(field(one));
      assert.equal(await brought(one), "15");
      assert.equal(lineOf(one), "15");
    });

    it("has its field for whoever focuses it, or waits for it", async () => {
      const one = await come();
      one.focus();
      assert.equal(one.shadowRoot!.activeElement, field(one));
      const other = await come();
      await other.updateComplete;
      assert.equal(field(other)!.value, "15");
    });

    it("has it also where it was moved, or taken away for a while, before it was painted", async () => {
      const [moved, away] = [await come(), await come()];
      page.append(moved);
      away.remove();
      assert.equal(await brought(moved), "15");
      assert.isNull(field(away));
      find(page, "p").append(away);
      assert.equal(await brought(away), "15");
    });

    it("is drawn anew around its field where somebody took away what stands under that", async () => {
      const one = await come();
      await brought(one);
      find(one.shadowRoot!, ".text").remove();
      find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
      await settle();
      assert.equal(lineOf(one), "17");
      assert.equal(field(one)!.parentElement, find(one.shadowRoot!, ".root"));
    });

    it("sees what the author, or an edit, makes of it meanwhile", async () => {
      const [one, other] = [await come(), await come()];
      one.textContent = "16";
      find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
      assert.equal(await brought(one), "17");
      assert.equal(await brought(other), "17");
      assert.deepEqual([lineOf(one), lineOf(other)], ["17", "17"]);
    });
  });

  it("is a spinbutton named after its gear", () => {
    assert.equal(count.getAttribute("role"), "spinbutton");
    assert.include(count.getAttribute("aria-label"), "spur");
    assert.equal(count.getAttribute("aria-valuemin"), "1");
    assert.equal(value(), "62");
  });

  it("steps by keys, and the figure follows in the same frame", async () => {
    press(count, "ArrowUp");
    await turn();
    assert.equal(value(), "63");
    assert.equal(rear(), "44.02");
    press(count, "ArrowDown");
    press(count, "ArrowDown");
    press(count, "PageUp");
    await turn();
    assert.equal(value(), "71");
    press(count, "PageDown");
    await turn();
    assert.equal(value(), "61");
    press(count, "Home");
    await turn();
    assert.equal(value(), "1");
  });

  it("goes to the end only where the author set one", async () => {
    assert.isFalse(press(count, "End").defaultPrevented);
    teeth.max = 70;
    await teeth.updateComplete;
    press(count, "End");
    await turn();
    assert.equal(value(), "70");
    press(count, "ArrowUp");
    await turn();
    assert.equal(value(), "70");
    assert.equal(message(), "70 is the most here. Kept 70.");
  });

  it("takes what is typed, in the digits of any script", async () => {
    for (const [text, expected] of [
      ["56", "56"],
      ["１２", "12"],
      ["٤٥", "45"],
      [" 70 ", "70"],
    ] as const) {
      count.focus();
      type(count, text);
      press(count, "Enter");
      await turn();
      assert.equal(value(), expected, text);
    }
  });

  it("refuses 0, negatives, fractions and text, says so, and keeps the last good count", async () => {
    count.focus();
    for (const text of ["0", "-3", "3.14", "3,14", "15.0", "1e2", "teeth", "", "99999999", "1 5"]) {
      type(count, text);
      press(count, "Enter");
      await turn();
      assert.equal(value(), "62", text);
      assert.include(message(), "Kept 62.", text);
      assert.equal(rear(), "43.32");
      assert.equal(count.getAttribute("aria-invalid"), "true");
    }
    press(count, "ArrowUp");
    await turn();
    assert.notOk(message());
  });

  it("leaves the value alone while something is being composed", async () => {
    type(count, "1");
    press(count, "Enter", { isComposing: true });
    press(count, "ArrowUp", { isComposing: true });
    await turn();
    assert.equal(value(), "62");
  });

  it("gives up what was typed on Escape, takes it on leaving", async () => {
    count.focus();
    type(count, "50");
    press(count, "Escape");
    await turn();
    assert.equal(count.value, "62");
    type(count, "50");
    count.dispatchEvent(new FocusEvent("blur"));
    await turn();
    assert.equal(value(), "50");
  });

  it("is not changed by the wheel, and lets the page scroll", async () => {
    count.focus();
    const wheel = new WheelEvent("wheel", { deltaY: 100, bubbles: true, composed: true, cancelable: true });
    count.dispatchEvent(wheel);
    await turn();
    assert.isFalse(wheel.defaultPrevented);
    assert.equal(value(), "62");
  });

  it("shows − and + on focus without moving the text, and they change the count", async () => {
    page.style.marginTop = "200px";
    const word = find(teeth.shadowRoot!, ".text");
    const before = word.getBoundingClientRect();
    assert.isNull(teeth.shadowRoot!.querySelector("button"));
    count.focus();
    await settle(1);
    const after = word.getBoundingClientRect();
    assert.deepEqual([after.x, after.y, after.width], [before.x, before.y, before.width]);
    const more = find(teeth.shadowRoot!, "button[aria-label^='One more']");
    assert.isAtMost(more.getBoundingClientRect().bottom, after.top, "above: the line below is read next");
    more.click();
    more.click();
    await turn();
    assert.equal(value(), "64");
    const size = more.getBoundingClientRect();
    assert.isAtLeast(Math.min(size.width, size.height), 24);
  });

  it("shows them above the line, below it where there is no room above", async () => {
    const tray = (): DOMRect => find(teeth.shadowRoot!, ".tray").getBoundingClientRect();
    for (const margin of [0, 200]) {
      page.style.marginTop = `${margin}px`;
      page.scrollIntoView();
      scrollTo(0, 0);
      count.focus();
      await settle();
      const line = teeth.getBoundingClientRect();
      assert.isAtLeast(tray().top, 0);
      assert.equal(tray().top > line.top, margin === 0);
      count.blur();
      await settle();
    }
  });

  it("offers a target of 24 px without making the line taller", async () => {
    const target = count.getBoundingClientRect();
    assert.isAtLeast(Math.min(target.width, target.height), 24);
    const bare = document.createElement("p");
    bare.textContent = "With 15 to 62: 43.32";
    find(page, "p").after(bare);
    assert.equal(find(page, "p").offsetHeight, bare.offsetHeight);
  });

  it("marks what differs; the article's value floats, moves no text, is not copied, and is gone with the difference", async () => {
    const float = () => find(page, "mw-value").shadowRoot!.querySelector(".was");
    press(count, "ArrowUp");
    await settle();
    assert.equal(lineOf(find(page, "p")), "With 15 to 63: 44.02");
    const figure = find(find(page, "mw-value").shadowRoot!, "[part=value]");
    const before = find(page, "p").getBoundingClientRect().height;
    assert.notEqual(getComputedStyle(figure).backgroundImage, "none");
    assert.isNull(float());
    figure.focus();
    const said = float() as HTMLElement;
    assert.equal(said.textContent, "article 43.32");
    assert.isAbove(said.getBoundingClientRect().width, 20);
    assert.equal(figure.getAttribute("aria-describedby"), said.id);
    assert.equal(find(page, "p").getBoundingClientRect().height, before);
    getSelection()!.selectAllChildren(find(page, "p"));
    assert.notInclude(getSelection()!.toString(), "43.32article");
    assert.equal(getComputedStyle(said).getPropertyValue("user-select") || "none", "none");
    press(figure, "Escape");
    assert.isNull(float());
    figure.blur();
    figure.dispatchEvent(new PointerEvent("pointerover", { bubbles: true, composed: true }));
    assert.equal(float()!.textContent, "article 43.32");
    const root = find(teeth.shadowRoot!, ".root");
    root.dispatchEvent(new PointerEvent("pointerover", { bubbles: true, composed: true }));
    assert.isNull(float());
    assert.equal(teeth.shadowRoot!.querySelector(".was")?.textContent, "article 62");
    press(count, "ArrowDown");
    await turn();
    assert.isNull(teeth.shadowRoot!.querySelector(".was"));
    assert.equal(getComputedStyle(figure).backgroundImage, "none");
    assert.equal(figure.tabIndex, -1);
    assert.equal(lineOf(find(page, "p")), "With 15 to 62: 43.32");
  });

  it("keeps what floats inside the window, at both its ends", async () => {
    for (const side of ["left", "right"]) {
      find(page, "p").style.textAlign = side;
      page.style.width = "auto";
      press(count, "ArrowUp");
      await turn();
      find(teeth.shadowRoot!, ".root").dispatchEvent(
        new PointerEvent("pointerover", { bubbles: true, composed: true }),
      );
      const { left, right } = find(teeth.shadowRoot!, ".was").getBoundingClientRect();
      assert.isAtLeast(left, 0);
      assert.isAtMost(right, document.documentElement.clientWidth);
      document.body.dispatchEvent(new PointerEvent("pointerover", { bubbles: true }));
    }
  });

  it("marks nothing that is pinned, and nothing that did not move", async () => {
    page = await show(
      withLimpet(
        `<mw-teeth of="front-hub.driven">22</mw-teeth><mw-value of="front" at="article">44.30</mw-value><mw-value of="rear">43.32</mw-value><mw-value of="front">44.30</mw-value>`,
      ),
    );
    press(countIn(find(page, "mw-teeth")), "ArrowUp");
    await settle();
    const marks = [...page.querySelectorAll("mw-value")].map(
      (value) => value.shadowRoot!.querySelector("[data-was]") !== null,
    );
    assert.deepEqual(marks, [false, false, true]);
  });

  it("takes what is typed after Enter in place of what was there", async () => {
    count.focus();
    type(count, "17");
    press(count, "Enter");
    await settle();
    assert.deepEqual([count.selectionStart, count.selectionEnd], [0, count.value.length]);
  });

  it("closes its keys on Escape, steps on, and opens them again on a click", async () => {
    const keys = () => teeth.shadowRoot!.querySelector(".tray");
    count.focus();
    await settle();
    assert.ok(keys());
    press(count, "Escape");
    await settle();
    assert.isNull(keys());
    press(count, "ArrowUp");
    await turn();
    assert.equal(value(), "63");
    assert.isNull(keys());
    count.click();
    await settle();
    assert.ok(keys());
  });

  it("tells the page what a reader changed, and nothing of what a program does", async () => {
    const heard: unknown[] = [];
    for (const name of ["mw-change", "change", "input"])
      page.addEventListener(name, (event) => heard.push([name, (event as CustomEvent).detail]));
    press(count, "ArrowUp");
    type(count, "64");
    press(count, "Enter");
    await turn();
    assert.deepEqual(heard, [
      ["mw-change", { "primary.driven": 63 }],
      ["mw-change", { "primary.driven": 64 }],
    ]);
    find<HTMLElement & { store: { undo(): void } }>(page, "mw-build").store.undo();
    await turn();
    assert.lengthOf(heard, 2);
    assert.equal(value(), "63");
  });

  it("says why a count cannot be, keeps the last one, and tells the page of nothing", async () => {
    page = await show(
      `<mw-build stages="Ring: 20 to 60, internal" rear="Hub: 10 to 10"></mw-build><p><mw-teeth of="ring.driver">20</mw-teeth></p>`,
    );
    let heard = 0;
    page.addEventListener("mw-change", () => heard++);
    const field = countIn(find(page, "mw-teeth"));
    field.focus();
    for (const text of ["60", "61", "20"]) {
      type(field, text);
      press(field, "Enter");
      await turn();
      assert.equal(field.value, "20");
      const message = find(page, "mw-teeth").shadowRoot!.querySelector("#message")?.textContent;
      assert.equal(message, text === "20" ? undefined : `A ring of 60 cannot hold a gear of ${text}. Kept 20.`);
    }
    assert.equal(heard, 0);
  });

  it("keeps the keys that write a count from the page's short cuts, and a link around it from being followed", async () => {
    const heard: string[] = [];
    const hear = (event: Event): void => void heard.push((event as KeyboardEvent).key);
    for (const name of ["keydown", "keypress", "keyup"]) document.addEventListener(name, hear);
    for (const key of ["7", " ", "ArrowUp", "ArrowLeft", "Backspace", "Enter", "Escape", "Tab"]) press(count, key);
    for (const name of ["keypress", "keyup"])
      count.dispatchEvent(new KeyboardEvent(name, { key: "7", bubbles: true, composed: true }));
    for (const name of ["keydown", "keypress", "keyup"]) document.removeEventListener(name, hear);
    assert.deepEqual(heard, ["Escape", "Tab"]);
    assert.isTrue(press(count, " ").defaultPrevented);
    const click = new MouseEvent("click", { bubbles: true, composed: true, cancelable: true });
    count.dispatchEvent(click);
    assert.isTrue(click.defaultPrevented);
  });

  it("keeps working after moves, once for each press", async () => {
    for (let n = 0; n < 3; n++) find(page, "p").append(teeth);
    await settle();
    press(count, "ArrowUp");
    await turn();
    assert.equal(value(), "63");
  });

  it("never writes to the light DOM or its own attributes", async () => {
    const before = find(page, "p").innerHTML;
    count.focus();
    press(count, "PageUp");
    await settle();
    assert.equal(find(page, "p").innerHTML, before);
  });

  it("says one thing for twenty steps, when they are over", async () => {
    const said: string[] = [];
    const observer = new MutationObserver(() => {
      const text = teeth.shadowRoot!.querySelector("[role=status]")?.textContent;
      if (text) said.push(text);
    });
    observer.observe(teeth.shadowRoot!, { childList: true, subtree: true, characterData: true });
    for (let n = 0; n < 20; n++) press(count, "ArrowDown");
    await new Promise((done) => setTimeout(done, 1000));
    observer.disconnect();
    assert.lengthOf([...new Set(said)], 1);
    assert.include(said[0], "spur 42");
    assert.include(said[0], "Rear: 29.35, too few motor turns");
  });

  it("undoes a held key in one step", async () => {
    press(count, "ArrowUp");
    for (let n = 0; n < 5; n++) press(count, "ArrowUp", { repeat: true });
    await turn();
    assert.equal(value(), "68");
    press(count, "z", { ctrlKey: true });
    await turn();
    assert.equal(value(), "62");
  });

  it("brings a strip with large keys on a narrow screen, and the keyboard on a second tap", async () => {
    const matches = Object.getOwnPropertyDescriptor(MediaQueryList.prototype, "matches")!;
    Object.defineProperty(MediaQueryList.prototype, "matches", { ...matches, get: () => true });
    try {
      page = await show(sentence);
      teeth = find<MwTeeth>(page, "[of='primary.driven']");
      count = countIn(teeth);
      assert.equal(count.inputMode, "none");
      count.focus();
      count.click();
      await settle();
      const strip = find(teeth.shadowRoot!, ".strip");
      for (const key of strip.querySelectorAll("button")) assert.isAtLeast(key.getBoundingClientRect().height, 56);
      const { bottom, width } = strip.getBoundingClientRect();
      assert.closeTo(bottom, innerHeight, 1);
      assert.closeTo(width, document.documentElement.clientWidth, 1);
      assert.equal(count.inputMode, "none");
      find(strip, "button[aria-label^='One more']").click();
      await turn();
      assert.equal(value(), "63");
      find(strip, "button.wide").click();
      await turn();
      assert.equal(value(), "62");
      count.click();
      assert.equal(count.inputMode, "numeric");
      assert.ok(teeth.shadowRoot!.querySelector(".strip"));
      count.blur();
      await settle();
      assert.isNull(teeth.shadowRoot!.querySelector(".strip"));
      assert.equal(count.inputMode, "none");
    } finally {
      Object.defineProperty(MediaQueryList.prototype, "matches", matches);
    }
  });

  describe("for gears that are sold as a set", () => {
    it("is a choice among the sets on the shelf, both counts together", async () => {
      page = await show(
        withLimpet(`<p><mw-teeth of="rear-ring">12 driving 35</mw-teeth>, <mw-value of="rear">43.32</mw-value></p>`),
      );
      const set = find<MwTeeth>(page, "mw-teeth");
      const select = find<HTMLSelectElement>(set.shadowRoot!, "select");
      assert.deepEqual(
        [...select.options].map((option) => option.text.trim().split(" · ")[0]),
        ["12 driving 35", "11 driving 36"],
      );
      assert.ok(select.getAttribute("aria-label"));
      // A hairline and a mark; a count has dots.
      const text = find(set.shadowRoot!, ".text");
      assert.equal(getComputedStyle(text).textDecorationStyle, "solid");
      assert.isAbove(parseFloat(getComputedStyle(text, "::after").borderTopWidth), 0);
      select.selectedIndex = 1;
      select.dispatchEvent(new Event("change", { bubbles: true }));
      await turn();
      assert.equal(lineOf(find(page, "p")).replace(/ · [^,]*,/, ","), "11 driving 36, 48.61");
    });

    it("takes a set that shares a count with the article's, and tells the page", async () => {
      page = await show(
        withLimpet(
          `<p><mw-teeth of="front-ring">13 to 38</mw-teeth>, <mw-value of="front">44.30</mw-value></p><mw-teeth of="front-ring.driven">38</mw-teeth>`,
        ),
      );
      const [whole, one] = [...page.querySelectorAll<MwTeeth>("mw-teeth")];
      const select = find<HTMLSelectElement>(whole!.shadowRoot!, "select");
      const heard: unknown[] = [];
      page.addEventListener("mw-change", (event) => heard.push((event as CustomEvent).detail));
      const choose = async (index: number) => {
        select.selectedIndex = index;
        select.dispatchEvent(new Event("change", { bubbles: true }));
        await turn();
      };
      const deep = [...select.options].findIndex((option) =>
        /^12 driving 38 · Front set, deep$/.test(option.text.trim()),
      );
      await choose(deep);
      assert.equal(lineOf(find(page, "p")), "12 driving 38, 47.99");
      // Whoever shows one count of it follows, though that count is the same.
      assert.equal(find<HTMLSelectElement>(one!.shadowRoot!, "select").selectedIndex, deep);
      await choose(deep);
      await choose([...select.options].findIndex((option) => /^13 driving 38/.test(option.text.trim())));
      assert.equal(lineOf(find(page, "p")), "13 driving 38, 44.30");
      assert.deepEqual(heard, [
        { "front-ring.driver": 12, "front-ring.driven": 38 },
        { "front-ring.driver": 13, "front-ring.driven": 38 },
      ]);
    });

    it("does not turn over by the wheel", async () => {
      page = await show(withLimpet(`<mw-teeth of="rear-ring">12 driving 35</mw-teeth>`));
      const select = find<HTMLSelectElement>(find<MwTeeth>(page, "mw-teeth").shadowRoot!, "select");
      select.dispatchEvent(new WheelEvent("wheel", { deltaY: 100, bubbles: true }));
      select.selectedIndex = 1;
      select.dispatchEvent(new Event("change", { bubbles: true }));
      await settle();
      assert.equal(select.selectedIndex, 0);
    });

    it("lets counts be free where the author says so", async () => {
      page = await show(
        withLimpet(`<mw-teeth of="rear-ring.driver" free>12</mw-teeth><mw-value of="rear">43.32</mw-value>`),
      );
      const free = countIn(find(page, "mw-teeth"));
      press(free, "ArrowDown");
      await turn();
      assert.equal(lineOf(find(page, "mw-value")), "47.26");
    });
  });

  it("shows prose that a self-closed tag has swallowed", async () => {
    page = await show(
      withLimpet(`<p>With <mw-teeth of="primary.driver"> teeth on the motor, and 62 on the spur.</mw-teeth></p>`),
    );
    assert.equal(lineOf(find(page, "p")), "With 15 teeth on the motor, and 62 on the spur.");
  });

  it("keeps the author's text where the address leads nowhere", async () => {
    page = await show(withLimpet(`<p><mw-teeth of="nowhere.driver">15</mw-teeth></p>`));
    assert.equal(lineOf(find(page, "p")), "15");
  });

  it("keeps the author's text under the field while it is right: one spinbutton, and nothing twice", async () => {
    const text = find(teeth.shadowRoot!, ".text");
    const slot = find(teeth.shadowRoot!, "slot");
    assert.isTrue(text.contains(slot));
    assert.equal(find(page, "p").innerText, "With 15 to 62: 43.32");
    press(count, "ArrowUp");
    await turn();
    assert.isFalse(text.contains(slot));
    assert.equal(text.textContent, "63");
    press(count, "ArrowDown");
    await turn();
    assert.isTrue(text.contains(slot));
    assert.lengthOf(teeth.shadowRoot!.querySelectorAll("[role=spinbutton]"), 1);
    assert.equal(text.getAttribute("aria-hidden"), "true");
  });

  it("hands the focus to its field", async () => {
    teeth.focus();
    assert.equal(teeth.shadowRoot!.activeElement, count);
    count.blur();
    await turn();
  });

  it("keeps the focus, the caret and what is being typed when a list is put into another order", async () => {
    const paragraph = find(page, "p");
    count.focus();
    type(count, "617");
    count.setSelectionRange(1, 2);
    for (const move of [() => paragraph.append(teeth), () => paragraph.prepend(teeth), () => page.append(paragraph)]) {
      move();
      await turn();
      assert.equal(teeth.shadowRoot!.activeElement, count);
      assert.deepEqual([count.value, count.selectionStart, count.selectionEnd], ["617", 1, 2]);
      assert.equal(rear(), "43.32");
    }
    press(count, "Enter");
    await turn();
    assert.equal(value(), "617");
    press(count, "z", { ctrlKey: true });
    count.blur();
    await turn();
  });

  it("does not ask for the focus when it comes back later, nor while another has it", async () => {
    count.focus();
    teeth.remove();
    await turn();
    find(page, "p").append(teeth);
    await turn();
    assert.equal(document.activeElement, document.body);
    const other = document.createElement("input");
    page.append(other);
    count.focus();
    teeth.remove();
    other.focus();
    find(page, "p").append(teeth);
    await turn();
    assert.equal(document.activeElement, other);
    assert.isNull(teeth.shadowRoot!.querySelector(".tray"));
  });

  it("has the name that the author gives it later, though its count is the same", async () => {
    const { store } = find<MwBuild>(page, "mw-build");
    const article = store.article!;
    const stages = article.stages.map((one) =>
      one.id === "primary" ? { ...one, drivenLabel: "Ring of the mill" } : one,
    );
    store.publish(parseBuild({ ...article, stages }));
    await turn();
    assert.equal(count.getAttribute("aria-label"), "Ring of the mill, teeth");
    assert.equal(lineOf(find(page, "p")), "With 15 to 62: 43.32");
  });

  it("is drawn anew where all that it had drawn was taken away", async () => {
    teeth.shadowRoot!.replaceChildren();
    press(countIn(find(page, "[of='primary.driver']")), "ArrowUp");
    await turn();
    teeth.requestUpdate();
    await turn();
    const field = countIn(teeth);
    press(field, "ArrowUp");
    await turn();
    assert.equal(lineOf(teeth), "63");
  });
});
