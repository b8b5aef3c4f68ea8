import { assert } from "@esm-bundle/chai";
import { clear, find, lineOf, settle, show, short, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import type { MwValue } from "./index.js";

const values = async (markup: string): Promise<string[]> => {
  const page = await show(withLimpet(`<p>${markup}</p>`));
  return [...page.querySelectorAll("mw-value")].map(lineOf);
};

describe("mw-value", () => {
  afterEach(clear);

  it("shows figures and verdicts of the build", async () => {
    assert.deepEqual(
      await values(
        `<mw-value of="front"></mw-value><mw-value></mw-value><mw-value figure="standing" of="front"></mw-value>` +
          `<mw-value figure="gap"></mw-value><mw-value figure="drift" over="10 m"></mw-value><mw-value digits="3" of="front"></mw-value>`,
      ),
      ["44.30", "43.32", "inside", "1.06%", "106 mm", "44.301"],
    );
  });

  it("stays where it is pinned, whatever the reader does", async () => {
    const page = await show(
      withLimpet(
        `<mw-value of="front" at="article">44.30</mw-value><mw-value of="front" at="first-try">24.70</mw-value><mw-value of="front">44.30</mw-value>`,
      ),
    );
    find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
    await turn();
    assert.deepEqual([...page.querySelectorAll("mw-value")].map(lineOf), ["44.30", "24.70", "39.09"]);
  });

  it("shows the interval where an input was printed", async () => {
    assert.deepEqual(await values(`<mw-value of="front" at="as-printed"></mw-value>`), ["43.79 to 46.82"]);
  });

  it("takes short phrasing with a figure as its fallback, and leaves other content in sight", async () => {
    assert.deepEqual(
      await values(
        `<mw-value of="rear">43.32</mw-value>|<mw-value of="rear"><b>43.3</b></mw-value>|<mw-value of="rear">\n  43.32\n</mw-value>|` +
          `<mw-value of="rear"><font><font>43,32</font></font></mw-value>|` +
          `<mw-value figure="standing" of="rear">inside</mw-value>|` +
          `<mw-value of="rear"> turns of the motor, and 2 more words.</mw-value>|<mw-value of="rear">, which is right.</mw-value>|` +
          `<mw-value of="rear">turns</mw-value>`,
      ),
      [
        "43.32",
        "43.32",
        "43.32",
        "43.32",
        "inside",
        "43.32 turns of the motor, and 2 more words.",
        "43.32, which is right.",
        "43.32turns",
      ],
    );
  });

  it("judges again what comes to stand inside, in the turn it is drawn in and later", async () => {
    const page = await show(withLimpet(`<p></p>`));
    const value = document.createElement("mw-value") as MwValue;
    value.of = "rear";
    value.textContent = "43.32";
    find(page, "p").append(value);
    await value.updateComplete;
    value.textContent = " turns of the motor";
    await turn();
    assert.equal(lineOf(value), "43.32 turns of the motor");
    value.replaceChildren("43.3");
    await turn();
    assert.equal(lineOf(value), "43.32");
  });

  it("is looked at for slips though it was drawn before, and darkens then", async () => {
    const page = await show(withLimpet(`<p></p>`));
    find(page, "p").innerHTML = `<mw-value of="rear" unit="furlongs">7</mw-value> <mw-value of="reer">8</mw-value>`;
    const build = find<MwBuild>(page, "mw-build");
    await build.checked;
    const wrong = (build.findings ?? []).map(({ at, severity }) => `${severity} ${at}`);
    assert.includeMembers(wrong, ["error /of"]);
    assert.equal(lineOf(find(page, "p")), "7 8");
  });

  it("keeps the fallback until there is a build, and where it asks for what is not there", async () => {
    const page = await show(`<p><mw-value of="rear">16.00</mw-value> <mw-value of="nobody">7</mw-value></p>`);
    assert.equal(lineOf(page), "16.00 7");
    page.insertAdjacentHTML("beforeend", `<mw-build ${short}></mw-build>`);
    await settle();
    assert.equal(lineOf(find(page, "p")), "16.00 7");
    const findings = await find<MwBuild>(page, "mw-build").checked;
    assert.lengthOf(findings, 1);
    assert.include(findings[0]!.message, "nobody");
  });

  it("leaves the author's text where a word is none, and tells the nearest that is", async () => {
    const wrong: readonly (readonly [attributes: string, nearest: string])[] = [
      ['figure="laed"', "lead"],
      ['figure="lead" scope="gear"', "gears"],
      ['figure="gap" base="raer"', "rear"],
      ['figure="mean" measure="Arithmetic"', "arithmetic"],
      ['figure="travel" unit="MM"', "mm"],
      ['figure="travel" unit="inch"', "in, ft"],
      ['figure="reduction" unit="mm"', "takes no unit"],
      ['figure="change" sign="x"', "none"],
      ['of="raer"', "rear"],
      ['of="Primary"', "primary"],
      ['of="rear" at="articel"', "article"],
      ['of="rear" build="limpt"', "limpet"],
    ];
    for (const [attributes, nearest] of wrong) {
      const page = await show(withLimpet(`<p><mw-value ${attributes}>as it was, 7</mw-value></p>`));
      assert.equal(lineOf(find(page, "mw-value")), "as it was, 7", attributes);
      const findings = await find<MwBuild>(page, "mw-build").checked;
      assert.lengthOf(findings, 1, attributes);
      assert.include(findings[0]!.message, nearest);
    }
  });

  it("takes its complaint back when the word is right, and when it goes", async () => {
    const page = await show(withLimpet(`<p><mw-value figure="laed">7</mw-value></p>`));
    const value = find<MwValue>(page, "mw-value");
    const told = async () => (await find<MwBuild>(page, "mw-build").checked).length;
    assert.equal(await told(), 1);
    value.figure = "lead";
    await turn();
    assert.deepEqual([lineOf(value), await told()], ["1.06% ahead", 0]);
    value.setAttribute("build", "limpt");
    await turn();
    assert.deepEqual([lineOf(value), await told()], ["7", 1]);
    value.remove();
    assert.equal(await told(), 0);
  });

  it("says what it leaves out where nobody asked for it: tyres that are not given, a differential that is open", async () => {
    const page = await show(
      `<mw-build stages="Spur: 15 to 60" front="Ring: 12 to 36" rear="Ring: 12 to 35"></mw-build>` +
        `<p><mw-value figure="lead"></mw-value>; <mw-value figure="lead" scope="gears"></mw-value></p>`,
    );
    assert.equal(lineOf(find(page, "p")), "2.78% behind, gears alone; 2.78% behind");
  });

  it("follows its attributes, null among them, and properties set before it was known", async () => {
    const page = await show(withLimpet(`<mw-value of="front">44.30</mw-value>`));
    const value = find<MwValue>(page, "mw-value");
    value.of = "rear";
    await turn();
    assert.equal(lineOf(value), "43.32");
    value.of = null;
    value.digits = 0;
    await turn();
    assert.equal(lineOf(value), "43");
    value.removeAttribute("of");
    value.setAttribute("digits", "1");
    await turn();
    assert.equal(lineOf(value), "43.3");
  });

  it("speaks the language around it, and follows it live", async () => {
    const page = await show(withLimpet(`<p lang="de"><mw-value figure="gap">1,06 %</mw-value></p>`));
    const shown = () => lineOf(find(page, "mw-value")).replace(/\s/g, " ");
    assert.equal(shown(), "1,06 %");
    find(page, "p").lang = "en";
    await settle();
    assert.equal(shown(), "1.06%");
    find(page, "p").removeAttribute("lang");
    page.lang = "fr";
    await settle();
    assert.equal(shown(), "1,06 %");
    page.lang = "en_GB";
    await settle();
    assert.equal(shown(), "1.06%");
    page.lang = "de_DE";
    await settle();
    assert.equal(shown(), "1,06 %");
  });

  it("finds its build out of a form that has a field of any name", async () => {
    const page = await show(
      `<form lang="de"><input name="parentNode" /><mw-value of="rear">16.00</mw-value></form><mw-build ${short}></mw-build>`,
    );
    assert.equal(lineOf(find(page, "mw-value")), "16,00");
  });

  it("does not move the line that it stands in", async () => {
    const page = await show(`<p>Rear <mw-value of="rear">43.32</mw-value> turns</p>`);
    const before = find(page, "p").getBoundingClientRect();
    page.insertAdjacentHTML("beforeend", withLimpet(""));
    await settle();
    const after = find(page, "p").getBoundingClientRect();
    assert.deepEqual([after.height, after.width], [before.height, before.width]);
  });

  describe("while it says what the author wrote", () => {
    const parts = (value: Element) => {
      const root = value.shadowRoot!;
      return { drawn: find(root, "[part=value]"), slot: find(root, "slot") };
    };

    it("shows the author's own text, which is selected, copied and found as it stands; a figure that differs is drawn", async () => {
      const page = await show(withLimpet(`<p>Rear <mw-value of="rear"><b>43.32</b></mw-value> turns</p>`));
      const { drawn, slot } = parts(find(page, "mw-value"));
      assert.deepEqual([drawn.hidden, drawn.textContent, slot.hidden], [true, "", false]);
      assert.equal(find(page, "p").innerText, "Rear 43.32 turns");
      const { store } = find<MwBuild>(page, "mw-build");
      store.change({ "primary.driver": 17 });
      await turn();
      assert.deepEqual([drawn.hidden, drawn.textContent, slot.hidden], [false, "38.23", true]);
      getSelection()!.selectAllChildren(find(page, "p"));
      store.undo();
      await turn();
      assert.deepEqual([drawn.hidden, slot.hidden], [true, false]);
    });

    it("is not doubled by what stands around the text, and a stale one is drawn over", async () => {
      const around = [
        "<time>43.32</time>",
        "<data value=1>43.32</data>",
        "<button>43.32</button>",
        "<i>43</i>.<i>32</i>",
      ];
      for (const inside of around) {
        const page = await show(withLimpet(`<p><mw-value of="rear">${inside}</mw-value></p>`));
        assert.equal(lineOf(find(page, "p")), "43.32", inside);
        find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
        await turn();
        assert.equal(lineOf(find(page, "p")), "38.23", inside);
      }
      const page = await show(withLimpet(`<p><mw-value of="rear"><time>43.31</time></mw-value></p>`));
      assert.equal(lineOf(find(page, "p")), "43.32");
    });

    it("stays as it is when something wraps or translates it, until an edit moves the figure", async () => {
      const page = await show(withLimpet(`<p><mw-value of="rear">43.32</mw-value></p>`));
      const value = find(page, "mw-value");
      value.innerHTML = "<font><font>43,32</font></font>";
      await settle(1);
      assert.equal(lineOf(value), "43,32");
      find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
      await turn();
      assert.equal(lineOf(value), "38.23");
    });
  });

  it("follows when something outside wraps or cleans what it has drawn", async () => {
    const page = await show(withLimpet(`<p><mw-value of="rear">43.32</mw-value></p>`));
    const value = find(page, "mw-value");
    const { store } = find<MwBuild>(page, "mw-build");
    store.change({ "primary.driver": 17 });
    await turn();
    const drawn = find(value.shadowRoot!, "[part=value]");
    drawn.innerHTML = `<font>${drawn.textContent}</font>`;
    store.change({ "primary.driver": 16 });
    await turn();
    assert.equal(lineOf(value), "40.62");
    value.shadowRoot!.replaceChildren();
    store.change({ "primary.driver": 17 });
    await turn();
    assert.equal(lineOf(value), "38.23");
  });
});
