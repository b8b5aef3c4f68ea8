import { download } from "../frame/index.js";
import { html, nothing, type TemplateResult } from "lit";
import {
  fileName,
  fileText,
  handedOut,
  usualExport,
  withFields,
  type ExportChoice,
  type Session,
} from "../model/index.js";

const asked: readonly (readonly [keyof ExportChoice, string])[] = [
  ["drivetrain", "the drivetrain, with what was measured and its versions"],
  ["parts", "parts and prices"],
  ["post", "the post"],
  ["history", "the history of every edit"],
];

/**
 * Asks what goes into the file, and saves it.
 *
 * @param saved told when all that makes up the notebook is in a file
 */
export function savePanel(session: Session, close: () => void, saved: () => void): TemplateResult {
  const { notebook } = session;
  const save = (event: Event): void => {
    event.preventDefault();
    const { elements } = event.target as HTMLFormElement;
    const choice = Object.fromEntries(
      asked.map(([name]) => [name, (elements.namedItem(name) as HTMLInputElement).checked]),
    ) as unknown as ExportChoice;
    // Whoever gets the file and this notebook have this state in common.
    const now = new Date().toISOString();
    const handed = handedOut(notebook, crypto.randomUUID?.() ?? now, now);
    session.note(handed);
    download(fileName(notebook), fileText(withFields(notebook, handed), choice), "application/json");
    if (choice.drivetrain && choice.parts && choice.post) saved();
    close();
  };
  return html`<form class="panel" @submit=${save} aria-label="Save a file">
    <p>Into the file <b>${fileName(notebook)}</b> go:</p>
    ${asked.map(
      ([name, text]) =>
        html`<p>
          <label><input type="checkbox" name=${name} ?checked=${usualExport[name]} /> ${text}</label>
        </p>`,
    )}
    <p>
      <button type="submit">Save the file</button>
      <button type="button" @click=${close}>Not now</button>
    </p>
  </form>`;
}

/** Another notebook that lies here, for the list of them. */
export interface Listed {
  readonly id: string;
  readonly title: string;
  readonly at: string;
}

/** The notebooks of this browser, and what lies beside this one. */
export function shelfPanel(
  all: readonly Listed[],
  aside: readonly { readonly key: string; readonly name: string }[],
  on: {
    readonly open: (id: string) => void;
    readonly openAside: (key: string) => void;
    readonly fresh: () => void;
    readonly file: () => void;
    readonly close: () => void;
  },
): TemplateResult {
  return html`<div class="panel" role="region" aria-label="Notebooks">
    <p>Notebooks in this browser:</p>
    <ul>
      ${all.map(({ id, title, at }) => html`<li><button type="button" @click=${() => on.open(id)}>${title}</button> <span class="quiet">${at}</span></li>`)}
    </ul>
    ${
      aside.length
        ? html`<p>Set aside from this one:</p>
            <ul>
              ${aside.map(({ key, name }) => html`<li><button type="button" @click=${() => on.openAside(key)}>${name}</button></li>`)}
            </ul>`
        : nothing
    }
    <p>
      <button type="button" @click=${on.fresh}>Begin another</button>
      <button type="button" @click=${on.file}>Open a file</button>
      <button type="button" @click=${on.close}>Close</button>
    </p>
  </div>`;
}
