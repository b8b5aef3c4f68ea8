import { assert } from "@esm-bundle/chai";
import { openDB } from "idb";
import { newNotebook, type Notebook } from "../model/index.js";
import { Shelf, type Keeper, type Keeping } from "./index.js";

// Several keepers on one page stand for several tabs: locks, versions and messages are the same between them.

let count = 0;
let name = "";
const open: { keeper: Keeper; shelf: Shelf }[] = [];

interface Tab {
  readonly keeper: Keeper;
  readonly shelf: Shelf;
  notebook: Notebook;
  readonly states: Keeping[];
  readonly aside: string[];
  edit(title: string): void;
}

/** A tab that shows the notebook. */
async function tab(id = "limpet"): Promise<Tab> {
  const shelf = await Shelf.open(name);
  const made = { states: [] as Keeping[], aside: [] as string[] };
  const shown: { tab?: Tab; notebook?: Notebook } = {};
  const { keeper, notebook } = await shelf.keep(newNotebook(id, "Limpet"), {
    keeping: (state) => made.states.push(state),
    replaced: (other) => {
      shown.notebook = other;
      if (shown.tab) shown.tab.notebook = other;
    },
    aside: (one) => made.aside.push(one),
  });
  // Nobody can edit before, so nothing may be shown before either.
  assert.isUndefined(shown.notebook, "shown before it began");
  const self: Tab = {
    keeper,
    shelf,
    notebook,
    ...made,
    edit(title) {
      self.notebook = { ...self.notebook, title };
      keeper.edited(self.notebook);
    },
  };
  shown.tab = self;
  open.push({ keeper, shelf });
  return self;
}

/** Waits for something that comes by itself. */
async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  for (let n = 0; n < 400; n++) {
    if (await holds()) return;
    await new Promise((done) => setTimeout(done, 20));
  }
  assert.fail("It never came.");
}

/** What lies in the database. */
async function kept(): Promise<{ readonly version: number; readonly notebook: Notebook } | undefined> {
  const database = await openDB(name);
  const found = (await database.get("notebooks", "limpet")) as Awaited<ReturnType<typeof kept>>;
  database.close();
  return found;
}

const keptTitle = async (): Promise<string | undefined> => (await kept())?.notebook.title;

/** What lies in the database, as it would if writes had ended with that. */
async function lies(title: string, version: number): Promise<void> {
  const database = await openDB(name);
  const notebook = newNotebook("limpet", title);
  await database.put("notebooks", { id: "limpet", version, edit: "e", at: "2026-10-03T00:00:00.000Z", notebook });
  database.close();
}

const journal = (): string | null => localStorage.getItem(`${name} limpet`);
const hide = (): void => void dispatchEvent(new Event("pagehide"));

describe("a notebook that is kept", () => {
  beforeEach(() => {
    name = `test ${count++} ${Math.random()}`;
  });
  afterEach(async () => {
    for (const { keeper, shelf } of open.splice(0)) {
      await keeper.close();
      shelf.database?.close();
    }
    localStorage.clear();
  });

  it("is written by itself, and is there in the next tab", async () => {
    const first = await tab();
    assert.deepEqual(first.keeper.state, { is: "saved", at: undefined });
    first.edit("Limpet two");
    assert.equal(first.keeper.state.is, "saving");
    await until(async () => (await keptTitle()) === "Limpet two");
    await first.keeper.close();
    assert.equal((await tab()).notebook.title, "Limpet two");
  });

  it("has one writer: the second tab follows, takes over when asked, and gets the place when the first is closed", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const second = await tab();
    assert.equal(second.keeper.state.is, "following");
    first.edit("two");
    await until(() => second.notebook.title === "two");
    second.keeper.takeOver();
    await until(() => second.keeper.isWriter && first.keeper.state.is === "following");
    second.edit("three");
    await until(() => first.notebook.title === "three");
    await second.keeper.close();
    await until(() => first.keeper.isWriter);
    first.edit("four");
    await until(async () => (await keptTitle()) === "four");
  });

  it("loses nothing of a tab that writes too late: it lies beside, by name", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const second = await tab();
    // As a frozen tab does: it has edited, and writes only after the other has.
    first.edit("from the frozen tab");
    second.keeper.takeOver();
    second.edit("from the other tab");
    await second.keeper.flush();
    await first.keeper.flush();
    await until(() => first.aside.length + second.aside.length === 1);
    const [aside] = await first.shelf.aside("limpet");
    assert.match(aside!.name, /, other tab, \d\d:\d\d$/);
    assert.sameMembers([aside!.notebook.title, (await keptTitle())!], ["from the frozen tab", "from the other tab"]);
  });

  it("is whole after a page that went away before it was written", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    first.edit("just typed");
    hide();
    const written = journal();
    assert.include(written, "just typed");
    // What was begun at hiding never reached the database, as after a kill.
    await first.keeper.close();
    await lies("one", 1);
    localStorage.setItem(`${name} limpet`, written!);
    const again = await tab();
    assert.equal(again.notebook.title, "just typed");
    await until(async () => (await keptTitle()) === "just typed");
    await until(() => journal() === null);
  });

  it("is whole after a page that was gone before it was told so, a moment after an edit", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    first.edit("two");
    await new Promise((done) => setTimeout(done, 20));
    const left = journal()!;
    assert.include(left, "two");
    // Who follows leaves it alone as long as somebody else may still write it.
    const second = await tab();
    assert.equal(second.keeper.state.is, "following");
    await until(async () => (await keptTitle()) === "two");
    await until(() => journal() === null && second.notebook.title === "two");
    assert.isEmpty(await second.shelf.aside("limpet"));
  });

  it("is whole after a page that went away while an edit was written that had been taken back meanwhile", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const written: unknown[] = [];
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...values: Parameters<typeof put>) {
      if (this.name === "notebooks") written.push(values[0]);
      return put.apply(this, values);
    };
    let left: string;
    try {
      first.edit("two");
      void first.keeper.flush();
      await Promise.resolve();
      first.edit("one");
      hide();
      left = journal()!;
      await first.keeper.close();
    } finally {
      IDBObjectStore.prototype.put = put;
    }
    // What was on its way arrived, and nobody was there any more to hear of it.
    const database = await openDB(name);
    await database.put("notebooks", written[0]);
    database.close();
    assert.equal(await keptTitle(), "two");
    localStorage.setItem(`${name} limpet`, left);
    const again = await tab();
    assert.equal(again.notebook.title, "one");
    assert.isEmpty(await again.shelf.aside("limpet"));
    await until(async () => (await keptTitle()) === "one");
  });

  it("is whole where the page that went away wrote its journal last: after the next one had looked for it", async () => {
    const first = await tab();
    first.edit("one");
    // It lies there a moment before the page knows, and until then the journal would be of both.
    await first.keeper.flush();
    assert.equal(await keptTitle(), "one");
    first.edit("its last word");
    hide();
    const left = journal()!;
    await first.keeper.close();
    await lies("one", 1);
    // A tab has the place, one follows, and the page that had it before them had not written yet.
    const second = await tab();
    const third = await tab();
    assert.equal(second.notebook.title, "one");
    localStorage.setItem(`${name} limpet`, left);
    await second.keeper.close();
    await until(() => third.keeper.isWriter);
    await until(() => third.notebook.title === "its last word");
    await until(async () => (await keptTitle()) === "its last word");
    await until(() => journal() === null);
    // Nor has it where the place was free before.
    third.edit("two");
    await third.keeper.flush();
    const later = JSON.stringify({
      ...JSON.parse(left),
      // How often it was written until now is the machine's affair.
      follows: (await kept())!.version,
      edit: "another",
      fields: { title: "later still" },
    });
    localStorage.setItem(`${name} limpet`, later);
    dispatchEvent(new StorageEvent("storage", { key: `${name} limpet`, newValue: later }));
    await until(async () => (await keptTitle()) === "later still");
    assert.equal(third.notebook.title, "later still");
    assert.isEmpty(await third.shelf.aside("limpet"));
  });

  it("loses nothing of what is edited while another page's last word is set aside", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const word = { follows: 0, edit: "of another", at: "2026-10-03T00:00:00.000Z", fields: { title: "late" } };
    dispatchEvent(new StorageEvent("storage", { key: `${name} limpet`, newValue: JSON.stringify(word) }));
    // While that is being read and written.
    for (let n = 0; n < 30; n++) {
      first.edit(`edit ${n}`);
      await new Promise((done) => setTimeout(done, 2));
    }
    await until(async () => (await keptTitle()) === "edit 29");
    assert.equal(first.notebook.title, "edit 29");
    assert.deepEqual(
      (await first.shelf.aside("limpet")).map(({ notebook }) => notebook.title),
      ["late"],
    );
  });

  it("is taken over in the middle of a write, and nothing lies beside it", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const second = await tab();
    first.edit("two");
    void first.keeper.flush();
    first.edit("three");
    hide();
    second.keeper.takeOver();
    await until(() => second.keeper.isWriter && first.keeper.state.is === "following");
    await until(async () => (await keptTitle()) === "three");
    await until(() => second.notebook.title === "three" && journal() === null);
    second.edit("four");
    await until(async () => (await keptTitle()) === "four");
    assert.isEmpty(await second.shelf.aside("limpet"));
    assert.isEmpty([...first.aside, ...second.aside]);
  });

  it("sets a journal aside that another tab's edits have overtaken", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    first.edit("in the journal");
    hide();
    const written = journal()!;
    await first.keeper.close();
    await lies("of another tab", 9);
    localStorage.setItem(`${name} limpet`, written);
    const again = await tab();
    assert.equal(again.notebook.title, "of another tab");
    assert.lengthOf(await again.shelf.aside("limpet"), 1);
    assert.equal((await again.shelf.aside("limpet"))[0]!.notebook.title, "in the journal");
  });

  it("keeps a thousand parts where they lie while a count changes, and all of them with it", async () => {
    const parts = [{ id: "pinion-16", is: "pinion", teeth: 16 }];
    const stage = (driver: number) => ({ id: "gears", kind: "pair", driver, driven: 60 });
    const build = (driver: number) => ({
      format: "meshwright-build/1",
      stages: [],
      outputs: [{ id: "rear", stages: [stage(driver)] }],
      parts,
    });
    const first = await tab();
    const written: string[] = [];
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...values: Parameters<typeof put>) {
      written.push(this.name);
      return put.apply(this, values);
    };
    try {
      for (const driver of [15, 16, 17]) {
        first.notebook = { ...first.notebook, build: build(driver) as unknown as NonNullable<Notebook["build"]> };
        first.keeper.edited(first.notebook);
        await first.keeper.flush();
      }
    } finally {
      IDBObjectStore.prototype.put = put;
    }
    assert.deepEqual(written, ["apart", "notebooks", "notebooks", "notebooks"]);
    await first.keeper.close();
    const { build: kept } = (await tab()).notebook;
    assert.deepEqual(kept!.parts as unknown, parts);
    assert.equal((kept!.outputs[0]!.stages[0] as { driver: number }).driver, 17);
  });

  it("takes over what an earlier page has kept in one piece", async () => {
    const first = await tab();
    first.edit("one");
    await first.keeper.flush();
    await first.keeper.close();
    const shelf = [{ id: "spur-60", is: "spur", teeth: 60 }];
    const database = await openDB(name);
    await database.clear("apart");
    await database.put("notebooks", {
      id: "limpet",
      version: 4,
      edit: "e",
      at: "2026-10-03T00:00:00.000Z",
      notebook: { ...newNotebook("limpet", "of an earlier page"), shelf },
    });
    database.close();
    const again = await tab();
    assert.deepEqual(again.notebook.shelf as unknown, shelf);
    again.edit("and on");
    await again.keeper.flush();
    await again.keeper.close();
    const last = await tab();
    assert.equal(last.notebook.title, "and on");
    assert.deepEqual(last.notebook.shelf as unknown, shelf);
  });

  it("says since when a full device has taken nothing, and goes on when there is room", async () => {
    const first = await tab();
    const { put } = IDBObjectStore.prototype;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    try {
      first.edit("no room");
      await until(() => first.keeper.state.is === "full");
      const { since } = first.keeper.state as { since: string };
      first.edit("still no room");
      await first.keeper.flush();
      assert.equal((first.keeper.state as { since: string }).since, since);
    } finally {
      IDBObjectStore.prototype.put = put;
    }
    await first.keeper.flush();
    assert.equal(first.keeper.state.is, "saved");
    assert.equal(await keptTitle(), "still no room");
  });

  it("can be worked on where the browser keeps nothing, and says so", async () => {
    const { open: openReal } = IDBFactory.prototype;
    IDBFactory.prototype.open = () => {
      throw new DOMException("denied", "SecurityError");
    };
    try {
      const first = await tab();
      first.edit("in this tab only");
      assert.deepInclude(first.keeper.state, { is: "nowhere", why: "absent" });
      await first.keeper.flush();
    } finally {
      IDBFactory.prototype.open = openReal;
    }
  });

  it("steps aside for a newer page that changes the database under it, and says so", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const newer = await openDB(name, 3);
    await until(() => first.keeper.state.is === "nowhere");
    assert.deepInclude(first.keeper.state, { why: "newer-page" });
    first.edit("after it");
    await first.keeper.flush();
    newer.close();
  });

  it("goes by versions, and never by the clock", async () => {
    const first = await tab();
    first.edit("one");
    await until(async () => (await keptTitle()) === "one");
    const database = await openDB(name);
    // The clock was an hundred years ahead when this was written.
    await database.put("notebooks", { ...(await kept()), at: "2126-01-01T00:00:00.000Z" });
    database.close();
    first.edit("two");
    await until(async () => (await keptTitle()) === "two");
  });

  it("comes to what a list of edits says, however tabs come and go", async () => {
    let seed = 7;
    const random = (below: number): number => {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      return Math.floor((seed / 2147483648) * below);
    };
    for (let session = 0; session < 5; session++) {
      name = `session ${session} ${Math.random()}`;
      let writer = await tab();
      let title = "Limpet";
      for (let step = 0; step < 12; step++) {
        const what = random(4);
        if (what < 2) {
          title = `edit ${session}.${step}`;
          writer.edit(title);
        } else if (what === 2) {
          await writer.keeper.close();
          writer = await tab();
        } else {
          await writer.keeper.flush();
          const other = await tab();
          other.keeper.takeOver();
          await until(() => other.keeper.isWriter);
          await writer.keeper.close();
          writer = other;
        }
        assert.equal(writer.notebook.title, title);
      }
      await writer.keeper.flush();
      if (title !== "Limpet") assert.equal(await keptTitle(), title);
      assert.isEmpty(await writer.shelf.aside("limpet"));
    }
  });
});
