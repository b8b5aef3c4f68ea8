import { html, nothing, type TemplateResult } from "lit";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Node } from "prosemirror-model";
import { deadIn, handedOut as written } from "../writing/index.js";
import { places, type Destination, type Place } from "./places.js";

/** The answers that publishing needs. */
export interface Publishing {
  readonly file: "yes" | "no" | undefined;
  readonly place: Place | undefined;
}

/** Where a post can go: a frame is for those who can put no file on their site. */
const placesFor = (file: Publishing["file"]): readonly Place[] =>
  (Object.keys(places) as Place[]).filter((place) => place !== "frame" || file === "no");

/** What is handed out for a place. */
function handedOut(doc: Node, build: Build | undefined, { file, place }: Publishing): string | undefined {
  if (file === undefined || place === undefined) return undefined;
  return written(doc, build, file === "no" ? "text" : places[place].writing);
}

/** The script, and the line that brings it: with its hash where the page can reach it. */
export interface Script {
  readonly address: string;
  readonly integrity: string | undefined;
}

/** Looks for the script beside the page, and works out its hash. */
export async function scriptBeside(): Promise<Script | undefined> {
  try {
    const address = new URL("../meshwright/meshwright.js", document.baseURI).href;
    if (!/^https?:/.test(address)) return undefined;
    const answer = await fetch(address);
    if (!answer.ok) return undefined;
    const digest = await crypto.subtle?.digest("SHA-384", await answer.arrayBuffer());
    const integrity = digest && `sha384-${btoa(String.fromCharCode(...new Uint8Array(digest)))}`;
    return { address, integrity };
  } catch {
    return undefined;
  }
}

const scriptLine = (script: Script | undefined): string =>
  `<script src="meshwright.js"${script?.integrity ? ` integrity="${script.integrity}"` : ""} defer></script>`;

/** The figures that follow nothing, before the post goes out with them. */
function deadView(doc: Node, build: Build): TemplateResult | typeof nothing {
  const dead = deadIn(doc, build);
  if (!dead.length) return nothing;
  return html`<div class="dead">
    <p>
      ${dead.length === 1 ? "One figure follows nothing in the drivetrain. It goes out as it read last:" : `${dead.length} figures follow nothing in the drivetrain. They go out as they read last:`}
    </p>
    <ul>
      ${dead.map(({ text, why }) => html`<li>${text ? `“${text}”` : "a figure without a text"}: ${why}</li>`)}
    </ul>
  </div>`;
}

/** The questions, and what is to be pasted where. */
export function publishView(
  doc: Node,
  build: Build | undefined,
  publishing: Publishing,
  script: Script | undefined,
  on: {
    readonly answer: (answers: Partial<Publishing>) => void;
    readonly copy: (text: string) => void;
    readonly said: string | undefined;
    readonly frame: () => TemplateResult;
  },
): TemplateResult {
  const { file, place } = publishing;
  const isFrame = file === "no" && place === "frame";
  const out = isFrame ? undefined : handedOut(doc, build, publishing);
  const destination: Destination | undefined = place && places[place];
  const isAlive = file === "yes" && destination?.writing !== "text";
  const integration = isAlive ? destination?.integration : undefined;
  return html`<h3>Publish it</h3>
    <p>
      Can you put a file on your site?
      <button type="button" aria-pressed=${String(file === "yes")} @click=${() => on.answer({ file: "yes" })}>
        Yes
      </button>
      <button type="button" aria-pressed=${String(file === "no")} @click=${() => on.answer({ file: "no" })}>No</button>
    </p>
    ${
      file
        ? html`<p>
            It goes into
            ${placesFor(file).map((one) => html`<button type="button" aria-pressed=${String(place === one)} @click=${() => on.answer({ place: one })}>${places[one].name}</button>`)}
          </p>`
        : nothing
    }
    ${isFrame && build ? on.frame() : nothing}
    ${
      out !== undefined && place
        ? html`${build ? deadView(doc, build) : nothing}
            <p>
              ${file === "no" && destination?.writing !== "text" ? "Without the script the figures are text, as they read today. What is pasted stays right, and does not change." : places[place].say}
            </p>
            <p><label for="out">What to paste</label></p>
            <textarea id="out" class="out" rows="8" readonly .value=${out}></textarea>
            <p class="choices">
              <button type="button" class="copy" @click=${() => on.copy(out)}>Copy the post</button>
              ${isAlive && script && !integration ? html`<a class="press" href=${script.address} download="meshwright.js">The script file</a>` : nothing}
              <span role="status">${on.said ?? ""}</span>
            </p>
            ${
              integration
                ? html`<p>
                    Once for the whole site, install what lies in <code>integrations/${integration}</code>: it brings
                    the script. Its README has the steps.
                  </p>`
                : nothing
            }
            ${
              isAlive && !integration
                ? html`<p>
                      Put the script beside your site’s other files, and this line once into every page, or the theme’s
                      footer:
                    </p>
                    <textarea
                      class="out"
                      rows="2"
                      readonly
                      aria-label="The line that brings the script"
                      .value=${scriptLine(script)}
                    ></textarea>
                    ${script ? nothing : html`<p class="quiet">The script lies in the folder of the demo: meshwright/meshwright.js.</p>`}`
                : nothing
            }`
        : nothing
    }`;
}
