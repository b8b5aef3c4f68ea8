import type { Browser, ElementHandle, Page } from "puppeteer-core";
import { staticServer } from "../../scripts/lib/server.js";
import { browserFor, folder } from "../demo/browser.js";
import { shown } from "./shown.js";

// The notebook in a real browser, worked by what a screen reader is told: roles and names.

/** The demo as it is served, under a policy that lets a page use nothing but its own files. */
export const demoServer = () =>
  staticServer(
    {
      "/": folder("demo"),
      "/meshwright/": folder("packages/elements/dist"),
      "/notebook/script/": folder("packages/notebook/dist"),
      "/seeds/": folder("seeds"),
    },
    { headers: { "content-security-policy": "default-src 'self'" } },
  );

export const notebookBrowser = () => browserFor(demoServer());

/** What hangs is given up; how fast a machine is says nothing. */
const mostWaiting = 120_000;

const called = (role: string, name: string): string => `::-p-aria([name="${name}"][role="${role}"])`;

/** Presses what stands still: what is drawn meanwhile may move it, and the press would go elsewhere. */
export async function pressOn(found: ElementHandle<Element> | null, count = 1): Promise<void> {
  await found!.evaluate((one) => one.scrollIntoView({ block: "center" }));
  await found!.asLocator().setTimeout(mostWaiting).click({ count });
}

/** Somebody who works in the notebook: every press, choice and field filled is an action, and is written down. */
export class Hands {
  readonly actions: string[] = [];
  readonly said: string[] = [];
  readonly page: Page;

  constructor(page: Page) {
    this.page = page;
    page.on("pageerror", (error) => this.said.push(String(error)));
  }

  static async open(browser: Browser, address: string, width = 1280): Promise<Hands> {
    const page = await browser.newPage();
    await page.setViewport({ width, height: 900 });
    const hands = new Hands(page);
    await page.goto(address, { waitUntil: "networkidle0" });
    return hands;
  }

  /** What has a role and a name, once it is there. */
  async find(role: string, name: string): Promise<ElementHandle<Element>> {
    const found = await this.page.waitForSelector(called(role, name), { timeout: mostWaiting });
    if (!found) throw new Error(`No ${role} is called ${name}.`);
    return found as ElementHandle<Element>;
  }

  /** The same by role and name: whatever bears them once it stands still. */
  async #click(role: string, name: string, count = 1): Promise<void> {
    const found = await this.find(role, name);
    await found.evaluate((one) => one.scrollIntoView({ block: "center" }));
    await this.page.locator(called(role, name)).setTimeout(mostWaiting).click({ count });
  }

  async press(name: string, role = "button"): Promise<void> {
    this.actions.push(`press ${name}`);
    await this.#click(role, name);
  }

  async fill(name: string, text: string, role = "textbox"): Promise<void> {
    this.actions.push(`${name}: ${text}`);
    await this.#click(role, name, 3);
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Tab");
  }

  async choose(name: string, option: string): Promise<void> {
    this.actions.push(`${name}: ${option}`);
    const select = await this.find("combobox", name);
    await select.evaluate((one, wanted) => {
      const element = one as HTMLSelectElement;
      const found = [...element.options].find(({ text }) => text.includes(wanted));
      if (!found)
        throw new Error(`${wanted} is not offered: ${[...element.options].map(({ text }) => text).join("; ")}`);
      element.value = found.value;
      element.dispatchEvent(new Event("change", { bubbles: true, composed: true }));
    }, option);
  }

  /** Texts of the notebook's own parts that would be heard by the names of their signs: "right-pointing arrow". */
  signsHeard(): Promise<readonly string[]> {
    return this.page.evaluate(() => {
      const found: string[] = [];
      const walk = (node: Node): void => {
        if (node instanceof Text && node.data.includes("→")) found.push(node.parentElement!.outerHTML.slice(0, 120));
        if (!(node instanceof Element)) return void node.childNodes.forEach(walk);
        if (node.matches("[aria-hidden=true], [hidden], script, style")) return;
        node.childNodes.forEach(walk);
        if (node.localName.startsWith("mw-notebook")) node.shadowRoot?.childNodes.forEach(walk);
      };
      walk(document.body);
      return found;
    });
  }

  /** All text that the notebook shows. */
  text(): Promise<string> {
    return this.page.evaluate(shown);
  }

  async until(pattern: RegExp): Promise<string> {
    for (let n = 0; n < 400; n++) {
      // A page that is going away has nothing to say.
      const text = await this.text().catch(() => "");
      if (pattern.test(text)) return text;
      await new Promise((done) => setTimeout(done, 50));
    }
    throw new Error(`${pattern} never came: ${(await this.text()).slice(0, 3000)}`);
  }
}
