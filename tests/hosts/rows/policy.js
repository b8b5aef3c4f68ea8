// Content security policies and trusted types.
import assert from "node:assert/strict";
import { until } from "../lib/engine.js";
import { bundled } from "../lib/software.js";
import { article, jsonBuild, page, plainSentence, sentence } from "../lib/snippets.js";
import { everyElement } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const policy = (text) => ({ headers: { "content-security-policy": text } });
const self = "script-src 'self'; style-src 'self'";

/** Opens a page and answers what went wrong in it and what its sentence reads. */
async function outcome(t, markup, options) {
  const window = await t.open(markup, options);
  await window.run(() => settled());
  return {
    window,
    reads: await window.run(() => reads(".sentence")),
    alive: await window.run(() => alive()),
    wrong: await window.run(() => wrong),
    exceptions: await window.run(() => wrong.filter((one) => !one.startsWith("policy "))),
  };
}

/** Another bundle with Lit inside, whose policy call is as Lit wrote it. */
const otherLit = () =>
  bundled(`import { LitElement, html } from "lit";
    customElements.define("other-bundle", class extends LitElement { render() { return html\`<b>other</b>\`; } });`);

export const subject = "Policies that a page sets";

export const rows = [
  {
    row: 1,
    title: "A policy that allows only other trusted types kills the script",
    software: [],
    engines: all,
    async run(t) {
      for (const types of ["other", "'none'", "dompurify default"]) {
        const found = await outcome(
          t,
          page(article),
          policy(`${self}; require-trusted-types-for 'script'; trusted-types ${types}`),
        );
        assert.deepEqual(found.exceptions, [], types);
        assert.equal(found.reads, plainSentence, types);
      }
    },
  },
  {
    title: "Trusted types with a policy of one's own, and with Lit's",
    software: [],
    engines: all,
    async run(t) {
      for (const types of ["meshwright", "lit-html", "meshwright lit-html other"]) {
        const found = await outcome(
          t,
          page(article),
          policy(`${self}; require-trusted-types-for 'script'; trusted-types ${types}`),
        );
        assert.deepEqual(found.exceptions, [], types);
        assert.equal(found.alive, true, types);
        assert.equal(found.reads, plainSentence, types);
      }
    },
  },
  {
    row: 2,
    title: "A second Lit bundle dies because the policy's name is taken",
    software: ["lit"],
    engines: all,
    async run(t) {
      const other = t.site.script(await otherLit());
      const ours = "/meshwright.js";
      for (const scripts of [
        [ours, "/meshwright-other.js"],
        [ours, other],
        [other, ours],
      ]) {
        const found = await outcome(
          t,
          page(
            `<other-bundle></other-bundle>${article}${scripts.map((src) => `<script src="${src}"></script>`).join("")}`,
            { library: "" },
          ),
          policy(`${self}; trusted-types lit-html`),
        );
        assert.deepEqual(found.exceptions, [], scripts.join(" "));
        assert.equal(found.alive, true, scripts.join(" "));
        assert.equal(found.reads, plainSentence);
        if (scripts.includes(other)) assert.equal(await found.window.run(() => reads("other-bundle")), "other");
      }
    },
  },
  {
    row: 3,
    title: "A style attribute in a template breaks the page's policy",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page(everyElement), policy(self));
      await window.run(() => settled());
      assert.equal(await window.run(() => alive()), true);
      await window.run(() => step(3));
      await window.run(() => typed("0"));
      await window.run(() => settled());
      assert.deepEqual(await window.run(() => wrong), []);
    },
  },
  {
    title: "A policy of nonces with strict-dynamic",
    software: [],
    engines: all,
    async run(t) {
      const nonce = "c2hvcmU";
      const markup = page(jsonBuild + sentence, { library: "" })
        .replaceAll("<script src", `<script nonce="${nonce}" src`)
        .replace("</body>", `<script nonce="${nonce}" src="/meshwright.js"></script></body>`);
      const found = await outcome(
        t,
        markup,
        policy(
          `default-src 'none'; img-src 'self'; script-src 'nonce-${nonce}' 'strict-dynamic'; object-src 'none'; base-uri 'none'`,
        ),
      );
      assert.deepEqual(found.wrong, []);
      assert.equal(found.alive, true);
      assert.equal(found.reads, plainSentence);
    },
  },
  {
    title: "The strictest policy there is: nothing but one script",
    software: [],
    engines: all,
    async run(t) {
      const found = await outcome(
        t,
        page(everyElement),
        policy("default-src 'none'; img-src 'self'; script-src 'self'; sandbox allow-scripts"),
      );
      assert.deepEqual(found.exceptions, []);
      assert.equal(found.alive, true);
      await found.window.run(() => step(1));
      await until(() => found.window.run(() => count() === "16"));
      assert.deepEqual(await found.window.run(() => wrong), []);
    },
  },
  {
    title: "A page's own default policy mends or refuses markup",
    software: ["dompurify"],
    engines: all,
    async run(t) {
      const { fileOf } = await import("../lib/software.js");
      const purify = t.site.script(fileOf("dompurify", "dist/purify.min.js"));
      const setUp = t.site.script(
        'window.trustedTypes?.createPolicy("default", { createHTML: (text) => DOMPurify.sanitize(text) });',
      );
      const found = await outcome(
        t,
        page(article, { head: `<script src="${purify}"></script><script src="${setUp}"></script>` }),
        policy(`${self}; require-trusted-types-for 'script'; trusted-types default dompurify`),
      );
      assert.deepEqual(found.exceptions, []);
      assert.equal(found.reads, plainSentence);
    },
  },
];
