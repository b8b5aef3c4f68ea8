import { assert } from "@esm-bundle/chai";
import "../index.js";
import type { Session } from "../model/index.js";
import type { MwNotebook } from "./index.js";

// The page as it is worked: what is typed into its fields, and what it says.

const limpet = await (await fetch("/seeds/limpet.json")).text();
let book: MwNotebook;

const frame = (): Promise<void> => new Promise((done) => setTimeout(done, 30));

/** Everything that a page shows of one kind, in whatever part of it. */
function* all(root: ParentNode, selector: string): Generator<HTMLElement> {
  for (const one of root.querySelectorAll<HTMLElement>("*")) {
    if (one.matches(selector)) yield one;
    if (one.shadowRoot) yield* all(one.shadowRoot, selector);
  }
}
const textOf = (): string =>
  [...all(document, "p, li, h1, h2, h3, button, span, .panel")].map((one) => one.textContent).join("\n");

async function until<T>(find: () => T | undefined | false): Promise<T> {
  for (let n = 0; n < 300; n++) {
    const found = find();
    if (found) return found;
    await frame();
  }
  return assert.fail(`It never came: ${String(find)} ${textOf().slice(-3000)}`);
}
const labelled = (label: string): Promise<HTMLInputElement> =>
  until(() => [...all(document, "input, textarea, select")].find((one) => one.ariaLabel === label) as HTMLInputElement);
async function press(text: string): Promise<void> {
  (await until(() => [...all(document, "button")].find((one) => one.textContent?.trim() === text))).click();
  await frame();
}
/** Types into a field and leaves it. */
async function fill(label: string, text: string): Promise<HTMLInputElement> {
  const field = await labelled(label);
  field.focus();
  field.value = text;
  field.dispatchEvent(new Event("input", { bubbles: true, composed: true }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
  await frame();
  return field;
}
const session = (): Session => (book as unknown as { session: Session }).session;
const said = (pattern: RegExp): Promise<true> => until(() => pattern.test(textOf()) && (true as const));
const choose = async (of: string): Promise<void> => {
  await until(() => [...all(document, "mw-notebook-drivetrain")][0]);
  book.choose(of);
  await frame();
};

/** A notebook with a drivetrain, in a tab of its own. */
async function begin(build?: string): Promise<void> {
  history.replaceState(null, "", `${location.pathname}?new`);
  book = document.createElement("mw-notebook") as MwNotebook;
  const opened = new Promise<unknown>((done) => session().watchers.add(done));
  document.body.append(book);
  await opened;
  if (!build) return;
  session().put({ build: (await import("@meshwright/calc/document")).parseBuild(build), title: "Limpet" }, "Begun");
  (book as unknown as { isBegun: boolean }).isBegun = true;
  await until(() => [...all(document, "mw-ratio-summary")][0]);
}

describe("the notebook's page", () => {
  afterEach(() => book.remove());

  it("lets whoever took one question by mistake take another, on the line and at each axle", async () => {
    await begin();
    await fill("Teeth of the gear that drives", "13");
    await fill("Teeth of the gear that is driven", "57");
    await press("Belt or chain");
    await fill("Teeth of the wheel that drives", "20");
    await press("Two gears I counted");
    // What both ask for is not asked again.
    assert.equal((await labelled("Teeth of the gear that drives")).value, "20");
    await fill("Teeth of the gear that is driven", "30");
    assert.deepEqual(
      session().build!.stages.map(({ kind }) => kind),
      ["pair", "pair"],
    );
    await press("Rear only");
    await press("Rear: Box with a number");
    await labelled("Rear: the number on the box");
    await press("Rear: Two gears I counted");
    await fill("Rear: teeth of the gear that drives", "11");
    // Going on would lose the half of it.
    await press("Then the wheels");
    await said(/Rear, teeth of the gear that is driven: fill it in, or empty what stands beside it\./);
    await fill("Rear: teeth of the gear that is driven", "33");
    assert.deepInclude(session().build!.outputs[0]!.stages[0], { kind: "pair", driver: 11, driven: 33 });
  });

  it("changes a range from either end", async () => {
    await begin(limpet);
    const low = await fill("Fewest motor turns for one wheel turn", "50");
    assert.equal(low.value, "50");
    await said(
      /From 50 to 46 is no range; expected both ends, the lower one first, or none\. Until then it stays 38 to 46\./,
    );
    await fill("Most motor turns for one wheel turn", "60");
    assert.deepEqual({ ...session().build!.target }, { from: 50, to: 60 });
    await fill("Most motor turns for one wheel turn", "");
    await said(/Only its lower end is given/);
    await fill("Fewest motor turns for one wheel turn", "");
    assert.isUndefined(session().build!.target);
  });

  it("guesses no thousands, and shows the number that it has read", async () => {
    await begin(limpet);
    await choose("motor");
    const turns = await fill("Most turns a minute", "30.000");
    await said(/Found “30\.000”, which may be 30 or 30000; expected the one that is meant, written so\./);
    const before = session().build!.motor?.maxRpm;
    assert.equal(turns.value, String(before ?? ""));
    await fill("Most turns a minute", "31000.50");
    assert.equal(session().build!.motor?.maxRpm, 31000.5);
    assert.equal(turns.value, "31000.5");
    await fill("Most turns a minute", "31000,50");
    assert.equal(turns.value, "31000.5");
    await fill("Turns a minute for each volt", "1,850");
    await said(/which may be 1\.85 or 1850/);
  });

  it("takes a diametral pitch for a module, and the other way round, in one step", async () => {
    await begin(limpet);
    await choose("primary");
    const pitch = () => {
      const { module, diametralPitch } = session().build!.stages[0] as { module?: unknown; diametralPitch?: unknown };
      return [module, diametralPitch];
    };
    const before = pitch();
    await fill("Diametral pitch", "32");
    assert.deepEqual(pitch(), [undefined, 32]);
    await fill("Module", "0.5");
    assert.deepEqual(pitch(), [0.5, undefined]);
    for (const _ of ["module", "diametral pitch"]) session().undo();
    assert.deepEqual(pitch(), before);
  });

  it("calls a box a range only where it is one", async () => {
    const box = (id: string, value: string) => ({ id, kind: "published", value });
    const turned = (id: string, to: unknown) => ({ id, kind: "measured", turnsIn: 57, turnsOut: to });
    const stages = [
      box("fraction", "52/19"),
      box("number", "2.74"),
      turned("met", 11),
      turned("between", { from: 11, to: 12 }),
    ];
    await begin(JSON.stringify({ format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }] }));
    for (const [of, how] of [
      ["fraction", /As printed: exact\./],
      ["number", /As printed: a range, until somebody counts\./],
      ["met", /Turned by hand until both marks met: exact\./],
      ["between", /Turned by hand: a range\./],
    ] as const) {
      await choose(of);
      await said(how);
    }
  });

  it("takes a centre distance only where it is one, and tells in what there is to look at where it is odd", async () => {
    await begin(limpet);
    const label = "Spur and pinion: centre distance as it was set";
    await fill(label, "abc");
    await said(/Found “abc”, Spur and pinion; expected a length/);
    assert.isUndefined(session().notebook.bench);
    const field = await fill(label, "31.9");
    assert.equal(field.value, "31.9 mm");
    await said(/disagrees: 1\.1 mm more than 30\.8 mm that is worked out/);
    await said(/Spur and pinion: 31\.9 mm was read between the axes; 1\.1 mm more .* Read it again/);
    assert.match(session().undoName!, /centre distance 31\.9 mm/);
  });

  it("takes a note on the order back", async () => {
    await begin(limpet);
    const field = (await until(() => [...all(document, "#ordered")][0])) as HTMLTextAreaElement;
    for (const text of ["at the harbour", "at the pier"]) {
      field.value = text;
      field.dispatchEvent(new Event("change", { bubbles: true }));
    }
    await press("Undo: Note on the order changed");
    await until(() => field.value === "at the harbour");
  });

  it("gives its drivetrain the name that it is given", async () => {
    await begin(limpet);
    await fill("Name of this notebook", "Dotterel");
    assert.equal(session().build!.title, "Dotterel");
    await press("Undo: Called Dotterel");
    assert.equal(session().notebook.title, "Limpet");
    assert.match(session().build!.title!, /^Limpet, a 1:8/);
  });

  it("says that it cannot be told whether a pair fits a mount that is not known", async () => {
    await begin(JSON.stringify({ ...JSON.parse(limpet), mounts: undefined }));
    await choose("primary");
    await said(
      /They need 30\.80?\smm between centres\. How the motor is held is not known, and so it cannot be told whether\s+they fit\./,
    );
  });

  it("goes on at the drivetrain's heading when the first questions are answered", async () => {
    await begin();
    await fill("Teeth of the gear that drives", "15");
    await fill("Teeth of the gear that is driven", "60");
    const button = await until(() =>
      [...all(document, "button")].find((one) => one.textContent?.trim() === "Then the wheels"),
    );
    button.focus();
    button.click();
    await until(() => book.shadowRoot!.activeElement?.textContent === "Drivetrain");
  });

  it("asks before it is closed only while it has what is nowhere else", async () => {
    const asks = (): boolean => !dispatchEvent(new Event("beforeunload", { cancelable: true }));
    await begin(limpet);
    await said(/Saved in this browser only/);
    assert.isFalse(asks());
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => {
      throw new DOMException("full", "QuotaExceededError");
    };
    try {
      session().change({ "primary.driver": 16 });
      await said(/Not saved since/);
      assert.isTrue(asks());
    } finally {
      IDBObjectStore.prototype.put = put;
    }
    await press("Try again");
    await said(/Saved in this browser only/);
    assert.isFalse(asks());
  });

  it("works where a page is refused its locks, its address and its worker", async () => {
    const refuse = (): never => {
      throw new DOMException("shut off", "SecurityError");
    };
    const undo: (() => void)[] = [];
    const patch = (holder: object, name: string, descriptor: PropertyDescriptor): void => {
      Object.defineProperty(holder, name, { configurable: true, ...descriptor });
      undo.push(() => void Reflect.deleteProperty(holder, name));
    };
    history.replaceState(null, "", `${location.pathname}?new`);
    patch(navigator.locks, "request", { value: () => Promise.reject(new DOMException("", "SecurityError")) });
    patch(history, "replaceState", { value: refuse });
    patch(navigator, "serviceWorker", { get: refuse });
    try {
      book = document.createElement("mw-notebook") as MwNotebook;
      book.offline = "worker.js";
      document.body.append(book);
      await fill("Teeth of the gear that drives", "13");
      await fill("Teeth of the gear that is driven", "57");
      await said(/4\.38/);
      await said(/Saved in this browser only/);
      assert.notMatch(textOf(), /another tab/);
    } finally {
      for (const one of undo) one();
    }
  });

  it("comes back with all that was typed and not entered, and with a sheet that is being answered", async () => {
    await begin(limpet);
    // Entered by going on to the next field, of the same part of the page: nothing is left of it.
    await choose("primary");
    await fill("Closer", "0.2");
    await fill("Farther", "0.8");
    (await labelled("Known pair, driver")).focus();
    const type = async (label: string, text: string): Promise<void> => {
      const field = await labelled(label);
      field.focus();
      field.value = text;
      field.dispatchEvent(new Event("input", { bubbles: true, composed: true }));
      field.blur();
    };
    await type("Name of the part", "Odd pinion");
    await type("Teeth of the part", "13");
    await type("Temperature of the motor", "61");
    const parts = [...all(document, "mw-notebook-parts")][0] as HTMLElement & { takeIn(text: string): void };
    parts.takeIn("Name;Teeth\nPinion;~16\n");
    await said(/1 part,\s+1 question/);
    await fill("Line 2, Teeth: another answer", "16");
    await said(/1 part,\s+0 questions/);
    await said(/Saved in this browser only/);
    const ordered = [...all(document, "#ordered")][0] as HTMLTextAreaElement;
    ordered.focus();
    ordered.value = "at the harb";
    ordered.dispatchEvent(new Event("input", { bubbles: true, composed: true }));
    dispatchEvent(new Event("pagehide"));
    const address = location.href;
    book.remove();
    history.replaceState(null, "", address.replace("?new", ""));
    book = document.createElement("mw-notebook") as MwNotebook;
    document.body.append(book);
    await said(
      /Typed and not entered: “Odd pinion”, Name of the part; “13”, Teeth of the part; “61”, Temperature of the motor; “at the harb”, Ordered where/,
    );
    await said(/1 part,\s+0 questions/);
    await press("Put it back where it was typed");
    assert.equal((await labelled("Teeth of the part")).value, "13");
    assert.equal((await labelled("Temperature of the motor")).value, "61");
    assert.equal(session().notebook.orders?.[""], "at the harb");
    assert.notMatch(textOf(), /not entered/);
  });
});
