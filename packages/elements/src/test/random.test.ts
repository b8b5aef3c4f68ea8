import { assert } from "@esm-bundle/chai";
import type { MwBuild } from "../elements/build/index.js";
import {
  countsOf,
  documentOf,
  driveFrom,
  expected,
  mayBe,
  queryFor,
  randomFrom,
  stagesOf,
  type Counts,
  type Stage,
} from "./drives.js";
import { clear, countIn, find, lineOf, press, settle, show, turn, type } from "./page.js";

// The figures of drives made at random, after edits made at random, against fractions that are worked out here from the
// rules of the trade alone. Nothing of calc is used.

/** One element for each figure, by the same names. */
const valueFor = (name: string): string => {
  const attributes = Object.entries(queryFor(name)).map(([attribute, value]) => ` ${attribute}="${value}"`);
  return `<mw-value data-name="${name}"${attributes.join("")}></mw-value>`;
};

/** What the page shows, by name. */
function shownOn(page: HTMLElement): Record<string, string> {
  const found: Record<string, string> = {};
  for (const value of page.querySelectorAll<HTMLElement>("mw-value")) found[value.dataset.name!] = lineOf(value);
  const gauge = find(page, "mw-overdrive-gauge").shadowRoot!;
  found.gauge = find(gauge, "svg").getAttribute("aria-label")!;
  const summary = find(page, "mw-ratio-summary").shadowRoot!;
  const rows = [...summary.querySelectorAll("tr")].map((row) =>
    [...row.children].map((cell) => cell.textContent!.replace(/\s+/g, " ").trim()),
  );
  found["summary total"] = rows.at(-1)!.slice(1).join(" | ");
  const axle = rows.find(([head]) => head === "Axle");
  if (axle) found["summary axle"] = axle.slice(1).join(" | ");
  found["summary exact"] = [...summary.querySelectorAll("details p")].map((line) => line.textContent).join(" | ");
  found["summary range"] = find(summary, "svg").getAttribute("aria-label")!.split(". The range")[0]!;
  return found;
}

const edits = 70;

describe("edits at random", () => {
  afterEach(clear);

  for (const seed of [1, 20, 301, 4002, 50_003, 600_004]) {
    it(`leave every figure exact: seed ${seed}`, async () => {
      const random = randomFrom(seed);
      const drive = driveFrom(random);
      const article = countsOf(drive);
      let counts = article;
      const past: Counts[] = [];
      const names = Object.keys(expected(drive, counts, article)).filter((name) => !/^(gauge|summary)/.test(name));
      const setsIn = stagesOf(drive).filter(({ set }) => set);
      // A set's counts can be changed one by one where the author says so.
      const teeth = [...article.keys()].map((address) => `<mw-teeth of="${address}" free></mw-teeth>`);
      const choices = setsIn.map(({ id }) => `<mw-teeth class="set" of="${id}"></mw-teeth>`);
      const markup =
        `<mw-build id="random"><script type="application/json">${JSON.stringify(documentOf(drive))}</script></mw-build>` +
        [...teeth, ...choices, ...names.map(valueFor)].join(" ") +
        `<mw-ratio-summary></mw-ratio-summary><mw-overdrive-gauge></mw-overdrive-gauge><mw-edits></mw-edits>`;
      /** A page of its own. Pictures are drawn once their width is known. */
      const opened = async (): Promise<HTMLElement> => {
        const fresh = await show(markup);
        while (!find(fresh, "mw-overdrive-gauge").shadowRoot!.querySelector("svg")) await settle(1);
        return fresh;
      };
      let page = await opened();
      const addresses = [...article.keys()];
      const controlAt = (n: number): HTMLInputElement => countIn(page.querySelectorAll("mw-teeth:not(.set)")[n]!);
      const stageOf = (address: string): Stage => stagesOf(drive).find(({ id }) => id === address.split(".")[0])!;
      const button = (words: string): HTMLButtonElement | undefined =>
        [...find(page, "mw-edits").shadowRoot!.querySelectorAll("button")].find((one) =>
          one.textContent!.includes(words),
        );
      const isChanged = (): boolean => addresses.some((address) => counts.get(address) !== article.get(address));

      /** Asks for a count as a reader does; says what was done. */
      const ask = (n: number, value: number, act: () => void): void => {
        const address = addresses[n]!;
        act();
        if (value === counts.get(address) || !mayBe(stageOf(address), counts, address, value)) return;
        past.push(counts);
        counts = new Map(counts).set(address, value);
      };
      /** Chooses a set among those on sale, as a reader does. */
      const choose = (n: number): string => {
        const { id } = setsIn[n]!;
        const select = page.querySelectorAll("mw-teeth.set")[n]!.shadowRoot!.querySelector("select");
        if (!select) return "no choice";
        const [driver, driven] = [`${id}.driver`, `${id}.driven`] as const;
        const index = random(select.options.length);
        select.selectedIndex = index;
        select.dispatchEvent(new Event("change", { bubbles: true }));
        const [one, other] = /(\d+) driving (\d+)/.exec(select.options[index]!.text)!.slice(1).map(Number);
        if (one !== counts.get(driver) || other !== counts.get(driven)) {
          past.push(counts);
          counts = new Map(counts).set(driver, one!).set(driven, other!);
        }
        return `${one} to ${other} at ${id}`;
      };
      /** Somebody else opens the link to what there is: a page of its own, in which nothing was done yet. */
      const open = async (): Promise<void> => {
        const link = find<MwBuild>(page, "mw-build").link();
        page = await opened();
        // As a reader follows a link: some engines count how often a program writes the address itself.
        location.hash = new URL(link).hash;
        await settle();
        past.length = 0;
      };
      const edit = (): string => {
        const n = random(addresses.length);
        const control = controlAt(n);
        const now = counts.get(addresses[n]!)!;
        const kind = random(14);
        if (kind === 12 && setsIn.length) return choose(random(setsIn.length));
        if (kind === 13) return "link";
        if (kind < 5) {
          const [key, by] = (
            [
              ["ArrowUp", 1],
              ["ArrowDown", -1],
              ["PageUp", 10],
              ["PageDown", -10],
            ] as const
          )[random(4)]!;
          ask(n, Math.max(now + by, Math.abs(by) > 1 ? 1 : 0), () => press(control, key));
          return `${key} at ${addresses[n]}`;
        }
        if (kind < 9) {
          const value = random(6) ? 1 + random(120) : random(1_000_000);
          ask(n, value, () => {
            type(control, String(value));
            press(control, "Enter");
          });
          return `${value} at ${addresses[n]}`;
        }
        if (kind === 9) {
          const text = ["0", "-3", "12.5", "", "15 to 62", "1e3", "99999999"][random(7)]!;
          type(control, text);
          press(control, "Enter");
          return `"${text}" at ${addresses[n]}`;
        }
        if (kind === 10 || random(4)) {
          if (random(2)) button("Undo")?.click();
          else press(control, "z", { ctrlKey: true });
          counts = past.pop() ?? counts;
          return "undo";
        }
        // What a sender changed is left by a button of another name.
        (button("Back to the article") ?? button("See the author"))?.click();
        if (isChanged()) {
          past.push(counts);
          counts = article;
        }
        return "reset";
      };

      const done: string[] = [];
      for (let n = 0; n <= edits; n++) {
        if (n > 0) done.push(edit());
        await turn();
        if (done.at(-1) === "link") await open();
        await turn();
        const wanted = expected(drive, counts, article);
        const shown = shownOn(page);
        // A set is one change, whichever of its counts are others.
        const others = addresses.filter((address) => counts.get(address) !== article.get(address));
        wanted.changes = String(new Set(others.map((one) => (stageOf(one).set ? one.split(".")[0] : one))).size);
        shown.changes = String(find<MwBuild>(page, "mw-build").store.changed);
        for (const [at, { id }] of setsIn.entries()) {
          // Where a count can be changed it stands as it is typed, without grouping.
          wanted[`set ${id}`] = `${counts.get(`${id}.driver`)} driving ${counts.get(`${id}.driven`)}`;
          shown[`set ${id}`] = lineOf(page.querySelectorAll("mw-teeth.set")[at]!).split(" article")[0]!;
        }
        // A group of one stage alone is its own subtotal: the table has no line for it.
        if (!("summary axle" in shown)) delete wanted["summary axle"];
        const wrong = Object.keys({ ...wanted, ...shown })
          .filter((name) => shown[name] !== wanted[name])
          .map((name) => `${name}: ${shown[name]}, not ${wanted[name]}`);
        const story = `seed ${seed}, edit ${n} (${done.slice(-5).join("; ")})`;
        assert.isEmpty(wrong, `${story}\n${wrong.join("\n")}\n`);
      }
      assert.isAbove(done.filter((one) => / at /.test(one)).length, 20, `seed ${seed} changes nothing`);
    });
  }
});
