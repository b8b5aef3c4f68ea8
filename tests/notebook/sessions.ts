import type { Browser, Page } from "puppeteer-core";
import { expect } from "vitest";
import { linkOfBuild, parseBuild } from "../../packages/calc/src/document/index.js";

// Sessions by chance in a real browser, against a model of a few lines: edits, undo, tabs that take over, reloads, tabs that are
// killed. What is 300 ms old is kept, later edits are whole or absent, and nothing is doubled.

/** One pair: what is kept is tried here, and not what is drawn of it. */
const smallest = parseBuild({
  format: "meshwright-build/1",
  title: "Stint",
  stages: [{ id: "primary", kind: "pair", driver: 15, driven: 60 }],
  outputs: [{ id: "rear", stages: [] }],
});

/** Numbers from 0 to 1, the same for the same seed. */
function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** All that the model knows of a notebook: two values, and how many lines its history has. */
interface State {
  readonly driver: number;
  readonly title: string;
  readonly lines: number;
}

/** The part of the notebook that a session works with. */
interface Worked {
  readonly session: {
    readonly notebook: { readonly title: string; readonly log?: readonly unknown[] };
    readonly build: { readonly stages: readonly { readonly driver: number }[] };
    change(request: object): unknown;
    put(fields: object, name: string): void;
    undo(): unknown;
    redo(): unknown;
  };
}

const begun = async (page: Page, isAlone: boolean): Promise<void> => {
  await page.waitForFunction(
    (alone) => {
      const { session } = document.querySelector("mw-notebook") as unknown as { session?: Worked["session"] };
      const said = document.querySelector("mw-notebook")!.shadowRoot!.querySelector(".keeping")?.textContent ?? "";
      return !!session?.build && (alone ? /Saved/ : /Saved|another tab/).test(said);
    },
    { polling: 20 },
    isAlone,
  );
};

const stateIn = (page: Page): Promise<State> =>
  page.evaluate(() => {
    const { session } = document.querySelector("mw-notebook") as unknown as Worked;
    const { title, log = [] } = session.notebook;
    return { driver: session.build.stages[0]!.driver, title, lines: log.length };
  });

/** What can be undone is of this tab and this visit: a reload forgets it. */
class Model {
  state: State;
  past: State[] = [];
  undone: State[] = [];
  /** The states that may be what is kept: the last one that is old enough, and all after it. */
  readonly #recent: { readonly state: State; readonly at: number }[];

  constructor(state: State) {
    this.state = state;
    this.#recent = [{ state, at: 0 }];
  }

  to(next: Omit<State, "lines">): void {
    this.state = { ...next, lines: this.state.lines + 1 };
    this.#recent.push({ state: this.state, at: performance.now() });
  }

  edit(next: Partial<State>): void {
    this.past.push(this.state);
    this.undone = [];
    this.to({ ...this.state, ...next });
  }

  undo(): void {
    const before = this.past.pop()!;
    this.undone.push(this.state);
    this.to(before);
  }

  redo(): void {
    const next = this.undone.pop()!;
    this.past.push(this.state);
    this.to(next);
  }

  /** What may be there after a tab was killed at a time. */
  possible(at: number): readonly State[] {
    const old = this.#recent.findLastIndex((one) => one.at <= at - 300);
    return this.#recent.slice(Math.max(0, old)).map(({ state }) => state);
  }

  settle(state: State): void {
    this.state = state;
    this.past = [];
    this.undone = [];
    this.#recent.splice(0, this.#recent.length, { state, at: 0 });
  }
}

/** In the page: the states that the database holds, and how many lie beside. */
async function inDatabase(): Promise<{ states: State[]; aside: number }> {
  const database = await new Promise<IDBDatabase>((opened) => {
    const request = indexedDB.open("meshwright notebooks /notebook/");
    request.onsuccess = () => opened(request.result);
  });
  const all = (store: string): Promise<readonly unknown[]> =>
    new Promise((read) => {
      const request = database.transaction(store).objectStore(store).getAll();
      request.onsuccess = () => read(request.result as unknown[]);
    });
  const [notebooks, aside] = [await all("notebooks"), await all("aside")];
  database.close();
  const states = (notebooks as { notebook: Worked["session"]["notebook"] & Pick<Worked["session"], "build"> }[]).map(
    ({ notebook: { title, log = [], build } }) => ({ driver: build.stages[0]!.driver, title, lines: log.length }),
  );
  return { states, aside: aside.length };
}

/** In the page: nothing is kept any more. */
async function emptied(): Promise<void> {
  localStorage.clear();
  const database = await new Promise<IDBDatabase>((opened) => {
    const request = indexedDB.open("meshwright notebooks /notebook/");
    request.onsuccess = () => opened(request.result);
  });
  const names = [...database.objectStoreNames];
  const transaction = database.transaction(names, "readwrite");
  for (const name of names) transaction.objectStore(name).clear();
  await new Promise((done) => (transaction.oncomplete = done));
  database.close();
}

const later = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

/** One session; what went wrong names the seed and what was done. */
export async function session(browser: Browser, address: string, seed: number, steps = 14): Promise<void> {
  const random = chance(seed);
  const upTo = (n: number): number => Math.floor(random() * n);
  const done: string[] = [];
  // What the browser has cached of the page serves every session; what they keep is taken away after each.
  const pages = new Set<Page>();
  const told = (): string => `seed ${seed}: ${done.join(", ")}`;
  const open = async (url: string, isAlone = true): Promise<Page> => {
    const page = await browser.newPage();
    pages.add(page);
    page.on("pageerror", (error) => done.push(`page error ${String(error)}`));
    await page.goto(url);
    await begun(page, isAlone);
    return page;
  };
  try {
    let page = await open(`${address}notebook/#build-${await linkOfBuild(smallest)}`);
    const here = page.url();
    const model = new Model(await stateIn(page));
    const change = (what: string, value?: number | string): Promise<void> =>
      page.evaluate(
        (kind, to) => {
          const { session: one } = document.querySelector("mw-notebook") as unknown as Worked;
          if (kind === "driver") one.change({ "primary.driver": to });
          else if (kind === "title") one.put({ title: to }, `Called ${to}`);
          else if (kind === "undo") one.undo();
          else one.redo();
        },
        what,
        value,
      );
    const again = async (possible: readonly State[]): Promise<void> => {
      page = await open(here);
      const now = await stateIn(page);
      expect(possible, told()).toContainEqual(now);
      model.settle(now);
    };
    for (let n = 0; n < steps; n++) {
      const which = upTo(12);
      if (which < 4) {
        const driver = 10 + upTo(20);
        done.push(`driver ${driver}`);
        await change("driver", driver);
        if (driver !== model.state.driver) model.edit({ driver });
      } else if (which < 6) {
        const title = `Name ${upTo(1000)}`;
        done.push(title);
        await change("title", title);
        model.edit({ title });
      } else if (which < 8) {
        // That a notebook was begun can be taken back, too: then there is nothing to go on with.
        if (!model.past.length) continue;
        done.push("undo");
        await change("undo");
        model.undo();
      } else if (which === 8) {
        if (!model.undone.length) continue;
        done.push("redo");
        await change("redo");
        model.redo();
      } else if (which === 9) {
        // Whoever leaves at once loses nothing either.
        done.push("reload");
        await page.goto("about:blank");
        await page.close();
        await again([model.state]);
      } else if (which === 10) {
        await later(upTo(2) ? 0 : 320);
        done.push("kill");
        // A renderer that is gone at once: no event, no last word.
        const at = performance.now();
        const cdp = await page.createCDPSession();
        cdp.send("Page.crash").catch(() => undefined);
        await later(60);
        await page.close().catch(() => undefined);
        await again(model.possible(at));
      } else {
        await later(320);
        done.push("another tab");
        const other = await open(here, false);
        expect(await stateIn(other), told()).toEqual(model.state);
        await other.evaluate(() => {
          const root = document.querySelector("mw-notebook")!.shadowRoot!;
          [...root.querySelectorAll("button")].find(({ textContent }) => textContent === "Edit here instead")!.click();
        });
        await other.waitForFunction(
          () =>
            /Saved/.test(document.querySelector("mw-notebook")!.shadowRoot!.querySelector(".keeping")!.textContent!),
          { polling: 20 },
        );
        if (upTo(2)) {
          const driver = 31 + upTo(9);
          done.push(`there driver ${driver}`);
          await other.evaluate((to) => {
            (document.querySelector("mw-notebook") as unknown as Worked).session.change({ "primary.driver": to });
          }, driver);
          if (driver !== model.state.driver) model.edit({ driver });
          await page.bringToFront();
          await page.waitForFunction(
            (wanted) =>
              (document.querySelector("mw-notebook") as unknown as Worked).session.build.stages[0]!.driver === wanted,
            { polling: 20 },
            driver,
          );
        }
        await page.close();
        page = other;
        model.settle(model.state);
      }
      if (which < 9) expect(await stateIn(page), told()).toEqual(model.state);
    }
    await later(320);
    // What is old enough lies in the database, whole, once, and beside nothing.
    const kept = await page.evaluate(inDatabase);
    expect(kept, told()).toEqual({ states: [model.state], aside: 0 });
    expect(
      done.filter((one) => one.startsWith("page error")),
      told(),
    ).toEqual([]);
  } finally {
    const [last] = [...pages].filter((page) => !page.isClosed());
    for (const page of pages) if (page !== last) await page.close().catch(() => undefined);
    // Away from the notebook first: leaving it writes.
    await last?.goto(`${address}limpet.svg`).catch(() => undefined);
    await last?.evaluate(emptied).catch(() => undefined);
    await last?.close().catch(() => undefined);
  }
}
