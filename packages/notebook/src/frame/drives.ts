import { html } from "lit";

/** Between the counts of two gears: an arrow to the eye, a word to the ear. */
export const drives = html`<span aria-hidden="true"> → </span><span class="heard"> to </span>`;
