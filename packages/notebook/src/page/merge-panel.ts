import { html, nothing, type TemplateResult } from "lit";
import { dayText, type Brought, type Merging, type Side } from "../model/index.js";

/** What both come to, in motor turns for one wheel turn. */
const totalsBoth = (
  names: readonly [string, string],
  totals: readonly [string | undefined, string | undefined],
): TemplateResult =>
  html`<p>
    Motor turns for one wheel turn:
    ${names.map((name, n) => html`${n ? "; " : ""}“${name}” <b>${totals[n] ?? "no drivetrain yet"}</b>`)}.
  </p>`;

/** What has just been opened beside a notebook, and what can be done with the two. */
export function besidePanel(
  yours: string,
  opened: string,
  totals: readonly [yours: string | undefined, opened: string | undefined],
  on: { readonly compare: () => void; readonly replace: () => void; readonly close: () => void },
): TemplateResult {
  return html`<div class="panel" role="region" aria-label="What was opened">
    <p role="status">${opened}, opened beside yours.</p>
    ${totalsBoth([yours, opened], totals)}
    <p>
      <button type="button" @click=${on.compare}>Compare and merge with “${yours}”</button>
      <button type="button" @click=${on.replace}>Replace “${yours}” (yours is set aside)</button>
      <button type="button" @click=${on.close}>Keep both</button>
    </p>
  </div>`;
}

/** Two notebooks side by side: what was taken over, and a question for each thing that both changed. */
export function mergePanel(
  { since, questions, taken }: Merging,
  {
    yours,
    theirs,
    totals,
    fault,
  }: {
    readonly yours: string;
    readonly theirs: string;
    readonly totals: readonly [yours: string | undefined, theirs: string | undefined];
    readonly fault: string | undefined;
  },
  on: { readonly make: (answers: Readonly<Record<string, Side>>) => void; readonly close: () => void },
): TemplateResult {
  const make = (event: Event): void => {
    event.preventDefault();
    const form = new FormData(event.target as HTMLFormElement);
    on.make(Object.fromEntries([...form].map(([key, side]) => [key, String(side) as Side])));
  };
  const owners = { mine: yours, theirs };
  return html`<form class="panel" aria-label="Two notebooks become one" @submit=${make}>
    ${totalsBoth([yours, theirs], totals)}
    <p>
      ${
        since
          ? html`Both come from the file “${since.title}” of ${dayText(since.at.slice(0, 10))}. What only one of them
            changed is taken over.`
          : "There is no file that both come from, so that nobody can know who changed what: everything that differs is asked about."
      }
    </p>
    ${
      taken.length
        ? html`<ul>
            ${taken.map(({ name, from }) => html`<li>${name}: from “${owners[from]}”</li>`)}
          </ul>`
        : nothing
    }
    ${questions.map(
      ({ key, name, mine, theirs: other }) =>
        html`<fieldset>
          <legend>${name}</legend>
          <label><input type="radio" name=${key} value="mine" required /> ${mine} (“${yours}”)</label><br />
          <label><input type="radio" name=${key} value="theirs" required /> ${other} (“${theirs}”)</label>
        </fieldset>`,
    )}
    ${!questions.length && !taken.length ? html`<p>They do not differ.</p>` : nothing}
    ${fault ? html`<p class="fault" role="alert">${fault}</p>` : nothing}
    <p>
      <button type="submit">Make a third notebook of both</button>
      <button type="button" @click=${on.close}>Leave them as they are</button>
    </p>
  </form>`;
}

/** What a link has brought back for this notebook, and what of it has no place here. */
export function broughtPanel(
  { measurements, bench, left }: Brought,
  on: { readonly take: () => void; readonly apart: () => void; readonly close: () => void },
): TemplateResult {
  const some = (n: number, one: string): readonly string[] => (n ? [`${n} ${one}${n === 1 ? "" : "s"}`] : []);
  const what = [...some(measurements.length, "count by hand"), ...some(bench.length, "centre distance")].join(" and ");
  const nothingNew = left.length ? "can be taken in here" : "this notebook has not";
  return html`<div class="panel" role="region" aria-label="What a link has brought">
    <p role="status">
      ${what ? `This link brings ${what} for this notebook.` : `This link brings nothing that ${nothingNew}.`}
    </p>
    ${
      left.length
        ? html`<ul>
            ${left.map((sentence) => html`<li>${sentence}</li>`)}
          </ul>`
        : nothing
    }
    <p>
      ${what ? html`<button type="button" @click=${on.take}>Take it in</button>` : nothing}
      <button type="button" @click=${on.apart}>Open it as a notebook of its own</button>
      <button type="button" @click=${on.close}>Leave it</button>
    </p>
  </div>`;
}
