import { html, type TemplateResult } from "lit";
import { linkOfBuild } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { frameAddress, framed, type Framed } from "../embed/index.js";
import { frames } from "../frame/index.js";

/** What each element of a frame is called here. */
const names: Record<Framed, string> = {
  "drive-line": "the line of drive",
  "ratio-summary": "totals, stage by stage",
  "overdrive-gauge": "front against rear",
  "train-drawing": "the gears, to scale",
  "wheel-speed": "speeds",
  "change-table": "other ways to build it",
  "parts-list": "every part",
  "order-list": "what to buy",
  "bench-card": "the card for the workshop",
  working: "the working",
};

/** The widths that a frame may get: a phone's, a column's, a page's. */
const widths = [320, 480, 720];

/** A frame that can be pasted: its address, and how high it has to be. */
export interface Framing {
  readonly of: Build;
  readonly show: Framed;
  readonly address: string;
  /** In pixels, for the narrowest and the widest; none: it could not be measured. */
  readonly height: number | undefined;
}

const once = (target: EventTarget, type: string): Promise<unknown> =>
  new Promise((done) => target.addEventListener(type, done, { once: true }));

/** How high a page has to be at the widths that a frame may get: laid out in a frame of its own, out of sight. */
async function heightOf(address: string, place: ParentNode & Node): Promise<number | undefined> {
  const frame = document.createElement("iframe");
  frame.setAttribute("aria-hidden", "true");
  frame.tabIndex = -1;
  frame.style.cssText = "position:fixed;inset-inline-start:-2000px;top:0;height:40px;border:0;visibility:hidden";
  frame.src = address;
  place.append(frame);
  try {
    await Promise.race([once(frame, "load"), new Promise((_, late) => setTimeout(late, 15_000))]);
    let height = 0;
    for (const width of widths) {
      frame.style.width = `${width}px`;
      const { documentElement, querySelector } = frame.contentDocument!;
      for (let n = 0; n < 100 && !querySelector.call(frame.contentDocument!, "[data-drawn]"); n++) await frames(3);
      await frames(12);
      height = Math.max(height, documentElement.scrollHeight);
    }
    return Math.ceil(height / 10) * 10;
  } catch {
    return undefined;
  } finally {
    frame.remove();
  }
}

/** What a page elsewhere has to be like; nothing where this one lies on a disk, which no frame reaches. */
export async function framingOf(build: Build, show: Framed, place: ParentNode & Node): Promise<Framing | undefined> {
  const page = new URL("embed.html", document.baseURI);
  if (!/^https?:$/.test(page.protocol)) return undefined;
  const { parts, alternatives, references: _, revisions: _revisions, measurements: _measurements, ...rest } = build;
  const needsParts = show === "parts-list" || show === "order-list";
  const carried = {
    ...rest,
    ...((needsParts || stagesNameParts(build)) && parts && { parts }),
    ...(show === "change-table" && alternatives && { alternatives }),
  };
  const address = frameAddress(page.href, await linkOfBuild(carried), [{ name: show }]);
  return { of: build, show, address, height: await heightOf(address, place) };
}

/** Whether a stage says which parts are fitted to it. */
const stagesNameParts = (build: Build): boolean => JSON.stringify(build).includes('"fitted"');

/** The line to paste. */
const frameLine = ({ address, height }: Framing, title: string): string =>
  `<iframe src="${address}" title="${title.replace(/&/g, "&amp;").replace(/"/g, "&quot;")}" width="100%" height="${height ?? 600}" loading="lazy"></iframe>`;

/** Which element goes into the frame, and what is pasted. */
export function frameView(
  framing: Framing | undefined,
  { build, show, isLooking }: { readonly build: Build; readonly show: Framed; readonly isLooking: boolean },
  on: {
    readonly choose: (show: Framed) => void;
    readonly copy: (text: string) => void;
    readonly said: string | undefined;
  },
): TemplateResult {
  const line = framing && frameLine(framing, build.title ?? "A drivetrain");
  return html`<p>
      The frame shows
      <select
        aria-label="What the frame shows"
        @change=${(event: Event) => on.choose((event.target as HTMLSelectElement).value as Framed)}
      >
        ${framed.map((one) => html`<option value=${one} ?selected=${one === show}>${names[one]}</option>`)}
      </select>
    </p>
    ${
      line
        ? html`<p>
              This line brings a page from where this notebook lies, with the drivetrain in its address. Its height fits
              from ${widths[0]} to ${widths.at(-1)} pixels of width.
            </p>
            <p><label for="out">What to paste</label></p>
            <textarea id="out" class="out" rows="4" readonly .value=${line}></textarea>
            <p class="choices">
              <button type="button" class="copy" @click=${() => on.copy(line)}>Copy the frame</button>
              <a class="press" href=${framing.address} target="_blank" rel="noopener">Look at it</a>
              <span role="status">${on.said ?? ""}</span>
            </p>`
        : isLooking
          ? html`<p role="status">The frame is being measured …</p>`
          : html`<p>From disk no page can be framed: put the folder of the notebook on any site, and open it there.</p>`
    }`;
}
