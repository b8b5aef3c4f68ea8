import { startEngine } from "../hosts/lib/engine.js";
import { shown } from "./shown.js";

// Somebody who works in the notebook in any of the three engines: by the pointer, or by the keyboard alone. What there is to press or to
// fill is found as a screen reader names it.

/** One window of an engine. */
export interface Opened {
  run<T>(action: (...values: never[]) => T | Promise<T>, ...values: unknown[]): Promise<T>;
  press(key: string): Promise<void>;
  type(text: string): Promise<void>;
  click(x: number, y: number): Promise<void>;
  go(url: string): Promise<void>;
  url(): Promise<string> | string;
}

export interface Engine {
  open(url: string, options?: object): Promise<Opened>;
  stop(): Promise<void>;
}

export type EngineName = "chromium" | "firefox" | "webkit";

export const engineCalled = async (name: EngineName): Promise<Engine> => (await startEngine(name)) as unknown as Engine;

/** Where something is, and where the focus is of it. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly hasFocus: boolean;
  /** Whether the keyboard has gone past it. */
  readonly isBefore: boolean;
}

/** In the page: what has a role and a name, or the first that has the role, in its own roots too. */
function looked(role: string, name: string | null): Place | null {
  const plain = (text: string | null | undefined): string => (text ?? "").replace(/\s+/g, " ").trim();
  const heard = (node: Node): string => {
    if (node instanceof Text) return node.data;
    if (!(node instanceof Element)) return "";
    if (node.getAttribute("aria-hidden") === "true") return "";
    return [...node.childNodes].map(heard).join("");
  };
  const roleOf = (one: Element): string => {
    const said = one.getAttribute("role");
    if (said) return said;
    if (one instanceof HTMLInputElement)
      return /^(radio|checkbox|button)$/.test(one.type) ? one.type : one.type === "file" ? "" : "textbox";
    const roles: Record<string, string> = { A: "link", BUTTON: "button", SELECT: "combobox", TEXTAREA: "textbox" };
    return roles[one.tagName] ?? "";
  };
  const nameOf = (one: Element): string => {
    const said = one.getAttribute("aria-label");
    if (said) return plain(said);
    const { labels } = one as HTMLInputElement;
    if (labels?.length) return plain([...labels].map(heard).join(" "));
    return plain(heard(one));
  };
  // In the order in which the keyboard comes by: as it is drawn, slots and all.
  const all: Element[] = [];
  const walk = (root: Node): void => {
    const inside = root instanceof HTMLSlotElement ? root.assignedElements() : [];
    for (const one of inside.length ? inside : (root as ParentNode).children) {
      all.push(one);
      walk(one.shadowRoot ?? one);
    }
  };
  walk(document);
  const there = all.find((one) => {
    if (roleOf(one) !== role || (name !== null && nameOf(one) !== name)) return false;
    const { width, height } = one.getBoundingClientRect();
    return width && height && !(one as HTMLButtonElement).disabled;
  });
  if (!there) return null;
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  const hasFocus = active === there || there.contains(active);
  if (!hasFocus) there.scrollIntoView({ block: "center", behavior: "instant" });
  const { left, top, width, height } = there.getBoundingClientRect();
  const isBefore = active !== null && all.indexOf(there) < all.indexOf(active);
  return { x: left + width / 2, y: top + height / 2, hasFocus, isBefore };
}

const later = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds));

/** In the page: the option that has these words is chosen, and told. */
function chosen(label: string, wanted: string): void {
  const walk = (root: ParentNode): HTMLSelectElement | undefined => {
    for (const one of root.querySelectorAll("*")) {
      if (one instanceof HTMLSelectElement && one.getAttribute("aria-label") === label) return one;
      const inside = one.shadowRoot && walk(one.shadowRoot);
      if (inside) return inside;
    }
    return undefined;
  };
  const select = walk(document)!;
  const found = [...select.options].find(({ text }) => text.includes(wanted));
  if (!found) throw new Error(`${wanted} is not offered: ${[...select.options].map(({ text }) => text).join("; ")}`);
  select.focus();
  select.value = found.value;
  select.dispatchEvent(new Event("change", { bubbles: true, composed: true }));
}

/** In the page: whether what has the focus has an option chosen that has these words. */
function isChosen(wanted: string): boolean {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  const { selectedOptions } = active as HTMLSelectElement;
  if (!selectedOptions) throw new Error(`The focus has left what is chosen from, for ${String(active?.tagName)}.`);
  return [...selectedOptions].some(({ text }) => text.includes(wanted));
}

/** How often the next place to stop at is asked for before somebody gives up. */
const mostStops = 500;

export class EngineHands {
  readonly page: Opened;
  /** Never touches the pointer. */
  readonly byKeys: boolean;

  constructor(page: Opened, byKeys = false) {
    this.page = page;
    this.byKeys = byKeys;
  }

  /** What the page answers, once it has an answer. */
  async seen<T>(what: string, look: (...values: never[]) => T, ...values: unknown[]): Promise<NonNullable<T>> {
    for (let n = 0; n < 300; n++) {
      const found = await this.page.run(look, ...values).catch(() => null);
      if (found) return found;
      await later(50);
    }
    throw new Error(`${what} never came: ${(await this.text()).slice(0, 2000)}`);
  }

  find(role: string, name: string | null): Promise<Place> {
    return this.seen(`${role} ${name ?? ""}`, looked, role, name);
  }

  /** Puts the focus on something: with the pointer, or going on, or back, until it is there. */
  async reach(role: string, name: string | null): Promise<void> {
    let found = await this.find(role, name);
    if (!this.byKeys) {
      // What comes in sight is drawn, and may move what stands below it: nobody presses what still moves.
      for (let n = 0, isStill = false; n < 40 && !isStill; n++) {
        await later(60);
        const { x, y } = found;
        found = await this.find(role, name);
        isStill = found.x === x && found.y === y;
      }
      return this.page.click(found.x, found.y);
    }
    // Never out of the page: beyond its end lie the browser's own bars.
    for (let n = 0; n < mostStops && !found.hasFocus; n++) {
      await this.page.press(found.isBefore ? "Shift+Tab" : "Tab");
      found = await this.find(role, name);
    }
    if (!found.hasFocus) throw new Error(`The keyboard never comes to the ${role} ${name ?? ""}.`);
  }

  async press(name: string | null, role = "button"): Promise<void> {
    await this.reach(role, name);
    if (this.byKeys) await this.page.press(role === "radio" ? " " : "Enter");
  }

  /** Writes into a field, and stays in it. */
  async write(name: string, text: string, role = "textbox"): Promise<void> {
    await this.reach(role, name);
    await this.page.run(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      (active as HTMLInputElement).select?.();
    });
    await this.page.type(text);
  }

  async fill(name: string, text: string, role = "textbox"): Promise<void> {
    await this.write(name, text, role);
    await this.page.press("Tab");
  }

  /** Chooses an option: going through them, as keys do. Menus of the system itself, which a pointer opens, are no page's. */
  async choose(name: string, option: string): Promise<void> {
    if (!this.byKeys) {
      await this.find("combobox", name);
      return this.page.run(chosen, name, option);
    }
    await this.reach("combobox", name);
    for (let n = 0; n < mostStops && !(await this.page.run(isChosen, option)); n++) await this.page.press("ArrowDown");
  }

  /** Puts a text into the clipboard's place: what a page is told when something is pasted. */
  async paste(name: string, text: string): Promise<void> {
    await this.reach("textbox", name);
    await this.page.run((pasted: string) => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      (active as HTMLTextAreaElement).value = pasted;
      active!.dispatchEvent(new Event("input", { bubbles: true, composed: true }));
    }, text);
  }

  /** Drops a file on the page. */
  async drop(name: string, content: string): Promise<void> {
    await this.page.run(
      (called: string, text: string) => {
        const data = new DataTransfer();
        data.items.add(new File([text], called));
        document
          .querySelector("mw-notebook")!
          .shadowRoot!.querySelector(".book")!
          .dispatchEvent(new DragEvent("drop", { dataTransfer: data, bubbles: true, cancelable: true }));
      },
      name,
      content,
    );
  }

  text(): Promise<string> {
    return this.page.run(shown);
  }

  async until(pattern: RegExp): Promise<string> {
    let text = "";
    for (let n = 0; n < 400; n++) {
      text = await this.text().catch(() => "");
      if (pattern.test(text)) return text;
      await later(50);
    }
    throw new Error(`${pattern} never came: ${text.slice(0, 3000)}`);
  }
}
