// What content systems do to markup before it reaches a reader.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { autop } from "@wordpress/autop";
import { evaluate } from "@mdx-js/mdx";
import createDOMPurify from "dompurify";
import { JSDOM } from "jsdom";
import { Liquid } from "liquidjs";
import { Readability } from "@mozilla/readability";
import nunjucks from "nunjucks";
import { format } from "prettier";
import * as jsxRuntime from "react/jsx-runtime";
import { renderToStaticMarkup } from "react-dom/server";
import rehypeParse from "rehype-parse";
import rehypeSanitize, { defaultSchema } from "rehype-sanitize";
import rehypeStringify from "rehype-stringify";
import sanitizeHtml from "sanitize-html";
import { unified } from "unified";
import { at, filesBelow } from "../../../scripts/lib/paths.js";
import { run } from "../../../scripts/lib/run.js";
import { hugo, plainly, typographically } from "../lib/markdown.js";
import { fileOf, throughWordPress } from "../lib/software.js";
import {
  article,
  attributeBuild,
  attributes,
  jsonBuild,
  page,
  plainSentence,
  sentence,
  small,
  teeth,
  value,
} from "../lib/snippets.js";

const all = ["chromium", "firefox", "webkit"];
const prose = `With ${teeth} teeth the front turns once for every ${value} turns of the motor.`;
const table = '<table class="mine"><tr><th>As published</th><td>44.30</td></tr></table>';
const summary = `<div><mw-ratio-summary>${table}</mw-ratio-summary></div>`;

/** A post as somebody writes it: paragraphs, and whatever is given in between. */
const post = (...pieces) => ["The first words.", ...pieces, prose, "The last words."].join("\n\n");
const clean = ["The first words.", plainSentence, "The last words."];

/** Opens what a system made of a post; answers what a reader sees, with and without the script. */
async function read(t, markup, { library } = {}) {
  const window = await t.open(page(`<main>${markup}</main>`, { library }));
  await window.run(() => settled());
  return {
    window,
    text: await window.run(() => reads("main")),
    alive: await window.run(() => alive()),
    wrong: await window.run(() => wrong),
    findings: await window.run(() => [...document.querySelectorAll("mw-build")].flatMap((_, n) => findings(n))),
  };
}

/** How often a text stands in another. */
const times = (text, part) => text.split(part).length - 1;

function intact(found, what) {
  for (const piece of clean) assert.equal(times(found.text, piece), 1, `${what}: ${piece} in ${found.text}`);
  assert.deepEqual(found.wrong, [], what);
}

const sanitised = {
  dompurify: (text) => createDOMPurify(new JSDOM("").window).sanitize(text),
  "rehype-sanitize": async (text) =>
    String(await unified().use(rehypeParse, { fragment: true }).use(rehypeSanitize).use(rehypeStringify).process(text)),
  "sanitize-html": (text) => sanitizeHtml(text),
};

/** Every piece of markup that the documentation shows. */
function snippets() {
  const files = [at("README.md"), ...filesBelow(at("demo"), (path) => path.endsWith(".html"))];
  const { document } = new JSDOM("").window;
  return files.flatMap((path) => {
    const text = readFileSync(path, "utf8");
    if (path.endsWith(".md")) return [...text.matchAll(/```html\n([\s\S]*?)```/g)].map((match) => match[1]);
    document.body.innerHTML = text;
    return [...document.querySelectorAll("pre code")].map((code) => code.textContent);
  });
}

export const subject = "What content systems do to markup";

export const rows = [
  {
    row: 5,
    title: "An automatic paragraph throws block content out of the element",
    software: ["@wordpress/autop", "wordpress", "php-cli"],
    engines: all,
    async run(t) {
      const ways = { autop, wpautop: (text) => throughWordPress(text, "wpautop") };
      for (const [name, way] of Object.entries(ways)) {
        for (const build of [jsonBuild, attributeBuild]) {
          const made = await way(post(build, summary));
          const live = await read(t, made);
          intact(live, name);
          assert.equal(live.alive, true, name);
          assert.equal(times(live.text, "As published"), 0, `${name}: the table stands beside what it stands for`);
          assert.equal(times(live.text, "The exact fractions"), 1, name);
          const still = await read(t, made, { library: "" });
          intact(still, name);
          assert.equal(times(still.text, "As published"), 1, name);
        }
        // A shape that is not offered: the table is thrown out, but nothing is lost.
        const thrown = await read(
          t,
          await way(post(attributeBuild, `<mw-ratio-summary>\n${table}\n</mw-ratio-summary>`)),
        );
        intact(thrown, name);
        assert.ok(thrown.alive, name);
      }
    },
  },
  {
    row: 6,
    title: "A blank line inside JSON ends the HTML block in Markdown",
    software: ["markdown-it", "marked", "commonmark", "remark-parse", "hugo"],
    engines: all,
    async run(t) {
      const loose = JSON.stringify(JSON.parse(small), undefined, 2).replace('  "stages"', '\n  "stages"');
      const build = `<mw-build id="limpet">\n<script type="application/json">\n${loose}\n</script>\n</mw-build>`;
      const ways = { ...plainly, hugo: async (text) => (await hugo(text)).content };
      for (const [name, way] of Object.entries(ways)) {
        const found = await read(t, await way(post(build)));
        intact(found, name);
        assert.ok(found.alive || found.findings.length > 0, `${name}: nobody says that the build is broken`);
        const offered = await read(t, await way(post(jsonBuild, summary)));
        intact(offered, name);
        assert.ok(offered.alive, name);
        const attributesOnly = await read(t, await way(post(attributeBuild)));
        intact(attributesOnly, name);
        assert.ok(attributesOnly.alive, name);
      }
    },
  },
  {
    row: 7,
    title: "Quotes are curled inside JSON on a one-line paragraph",
    software: ["markdown-it", "commonmark", "remark-smartypants", "hugo"],
    engines: all,
    async run(t) {
      const bare = jsonBuild.replace(/^<div>|<\/div>$/g, "");
      for (const [name, way] of Object.entries(typographically)) {
        for (const build of [jsonBuild, bare, `Look: ${bare}`]) {
          const found = await read(t, await way(post(build)));
          intact(found, name);
          assert.ok(found.alive, `${name}: ${found.findings.join(" ")}`);
          assert.deepEqual(found.findings, [], name);
        }
      }
    },
  },
  {
    row: 8,
    title: "Editors without the right to post scripts: tags vanish, JSON becomes visible text",
    software: ["wordpress", "php-cli"],
    engines: all,
    async run(t) {
      for (const filter of ["wp_kses_post", "wp_filter_post_kses"]) {
        const made = await throughWordPress(post(attributeBuild), filter);
        const found = await read(t, await throughWordPress(made.replaceAll("\\", ""), "wpautop"));
        intact(found, filter);
        assert.equal(found.text, clean.join(" "), filter);
      }
    },
  },
  {
    row: 9,
    title: "Sanitisers drop the element and keep its text",
    software: ["dompurify", "rehype-sanitize", "sanitize-html"],
    engines: all,
    async run(t) {
      for (const [name, way] of Object.entries(sanitised)) {
        for (const build of [attributeBuild, jsonBuild]) {
          const found = await read(t, await way(`<p>The first words.</p>${build}${sentence}<p>The last words.</p>`));
          intact(found, name);
          assert.equal(found.text, clean.join(" "), name);
        }
      }
      // In a page, where it is used most.
      const purify = t.site.script(fileOf("dompurify", "dist/purify.js"));
      const window = await t.open(page("<main></main>", { head: `<script src="${purify}"></script>` }));
      await window.run((markup) => {
        document.querySelector("main").innerHTML = DOMPurify.sanitize(markup);
        return settled();
      }, article + jsonBuild);
      assert.equal(await window.run(() => reads("main")), plainSentence);
    },
  },
  {
    title: "Sanitisers that are told to let the elements pass",
    software: ["dompurify", "rehype-sanitize", "sanitize-html"],
    engines: all,
    async run(t) {
      const ours = ["mw-build", "mw-teeth", "mw-value"];
      const theirs = ["id", "of", "stages", "front", "rear", "front-wheel", "rear-wheel", "target"];
      const ways = {
        dompurify: (text) =>
          createDOMPurify(new JSDOM("").window).sanitize(text, {
            CUSTOM_ELEMENT_HANDLING: { tagNameCheck: /^mw-/, attributeNameCheck: /^[a-z-]+$/ },
          }),
        "rehype-sanitize": async (text) =>
          String(
            await unified()
              .use(rehypeParse, { fragment: true })
              .use(rehypeSanitize, {
                ...defaultSchema,
                clobber: [],
                tagNames: [...defaultSchema.tagNames, ...ours],
                attributes: { ...defaultSchema.attributes, ...Object.fromEntries(ours.map((tag) => [tag, theirs])) },
              })
              .use(rehypeStringify)
              .process(text),
          ),
        "sanitize-html": (text) =>
          sanitizeHtml(text, {
            allowedTags: [...sanitizeHtml.defaults.allowedTags, ...ours],
            allowedAttributes: Object.fromEntries(ours.map((tag) => [tag, theirs])),
          }),
      };
      for (const [name, way] of Object.entries(ways)) {
        const found = await read(
          t,
          await way(`<p>The first words.</p>${attributeBuild}${sentence}<p>The last words.</p>`),
        );
        intact(found, name);
        assert.ok(found.alive, `${name}: ${found.findings.join(" ")}`);
      }
    },
  },
  {
    row: 10,
    title: "MDX stops at a brace in a script child or at an HTML comment",
    software: ["@mdx-js/mdx", "react-dom"],
    engines: all,
    async run(t) {
      const builds = {
        attributes: attributeBuild,
        "attribute JSON": `<mw-build id="limpet" json={JSON.stringify(${small})} />`,
        "attribute text": `<mw-build id="limpet" json={\`${small}\`} />`,
        "template literal": `<mw-build id="limpet"><script type="application/json">{\`${small}\`}</script></mw-build>`,
      };
      for (const [name, build] of Object.entries(builds)) {
        const { default: Content } = await evaluate(post(build), jsxRuntime);
        const found = await read(t, renderToStaticMarkup(jsxRuntime.jsx(Content, {})));
        intact(found, name);
        assert.ok(found.alive, `${name}: ${found.findings.join(" ")}`);
      }
    },
  },
  {
    row: 11,
    title: "Double braces break template builds",
    software: ["liquidjs", "nunjucks"],
    engines: ["node"],
    async run() {
      // A component of an app is no post, and is read by its own compiler.
      const posts = snippets().filter((one) => !one.includes("<script setup"));
      const offered = [article, jsonBuild, sentence, summary, ...posts];
      assert.ok(offered.length > 10, "no snippets found");
      for (const snippet of offered) {
        assert.doesNotMatch(snippet, /\{\{|\{%|\{#/);
        assert.equal(await new Liquid().parseAndRender(snippet), snippet);
        assert.equal(nunjucks.renderString(snippet, {}).trimEnd(), snippet.trimEnd());
      }
    },
  },
  {
    row: 12,
    title: "Vue drops a script child",
    software: ["vue"],
    engines: all,
    async run(t) {
      const vue = t.site.script(fileOf("vue", "dist/vue.global.prod.js"));
      const builds = {
        attributes: attributeBuild,
        attribute: '<mw-build id="limpet" :json="text"></mw-build>',
        object: '<mw-build id="limpet" :json="data"></mw-build>',
        property: '<mw-build id="limpet" .json="data"></mw-build>',
        component:
          '<mw-build id="limpet"><component :is="\'script\'" type="application/json">{{ text }}</component></mw-build>',
        "script child": jsonBuild,
      };
      const window = await t.open(page('<main id="app"></main>', { head: `<script src="${vue}"></script>` }));
      for (const custom of [true, false]) {
        for (const [name, build] of Object.entries(builds)) {
          const found = await window.run(
            async (template, json, isCustom) => {
              const app = Vue.createApp({ template, data: () => ({ text: json, data: JSON.parse(json) }) });
              if (isCustom) app.config.compilerOptions.isCustomElement = (tag) => tag.startsWith("mw-");
              app.mount("#app");
              await settled();
              const seen = { text: reads(".sentence"), alive: alive(), said: findings().length > 0, wrong };
              app.unmount();
              return seen;
            },
            build + sentence,
            small,
            custom,
          );
          const what = `${name}, ${custom ? "with" : "without"} isCustomElement`;
          assert.equal(found.text, plainSentence, what);
          assert.deepEqual(found.wrong, [], what);
          // Vue itself drops the script: then the fallback has to do, and somebody has to say so.
          if (name === "script child") assert.ok(found.alive || found.said, what);
          else assert.equal(found.alive, true, what);
        }
      }
    },
  },
  {
    row: 13,
    title: "A self-closed tag swallows the text after it",
    software: [],
    engines: all,
    async run(t) {
      const bodies = {
        value: `${attributeBuild}<p>It takes <mw-value of="front"/> turns of the motor, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
        teeth: `${attributeBuild}<p>It has <mw-teeth of="spur-and-pinion.driver"/> teeth, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
        summary: `${attributeBuild}<mw-ratio-summary/><p>It takes turns, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
        gauge: `${attributeBuild}<mw-overdrive-gauge/><p>It takes turns, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
        edits: `${attributeBuild}<mw-edits/><p>It takes turns, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
        build: `<mw-build ${attributes}/><p>It takes turns, which is <b>deep</b> for a beach.</p><p>The last words.</p>`,
      };
      const window = await t.open(page("<main></main>"));
      for (const [name, body] of Object.entries(bodies)) {
        const { text, wrong } = await window.run(async (markup) => {
          document.querySelector("main").innerHTML = markup;
          await settled();
          return { text: reads("main"), wrong: window.wrong };
        }, body);
        assert.match(text, /which is deep for a beach\./, name);
        assert.match(text, /The last words\./, name);
        assert.deepEqual(wrong, [], name);
      }
    },
  },
  {
    row: 23,
    title: "Excerpts show JSON as text",
    software: ["hugo", "wordpress", "php-cli"],
    engines: ["node"],
    async run() {
      const text = post(attributeBuild);
      const { plain, summary: short } = await hugo(text);
      const { output } = await run("php", [
        "-r",
        `echo strip_tags(base64_decode("${Buffer.from(text).toString("base64")}"));`,
      ]);
      const stripped = {
        "hugo, plain": plain,
        "hugo, summary": short.replace(/<[^>]*>/g, ""),
        strip_tags: output,
        wp_strip_all_tags: await throughWordPress(post(jsonBuild), "wp_strip_all_tags"),
        "by hand": text.replace(/<[^>]*>/g, ""),
      };
      for (const [name, made] of Object.entries(stripped)) {
        assert.doesNotMatch(made, /[{}]|mw-/, name);
        assert.match(made.replace(/\s+/g, " "), new RegExp(plainSentence.replaceAll(".", "\\.")), name);
      }
    },
  },
  {
    title: "A reading view takes the article out of its page",
    software: ["@mozilla/readability", "jsdom"],
    engines: ["node"],
    async run() {
      const long =
        "<p>The tide went out, and the tractor with it, over sand that holds no footprint for long, as far as the poles.</p>".repeat(
          12,
        );
      for (const build of [attributeBuild, jsonBuild]) {
        const { window } = new JSDOM(
          page(`<article><h1>Limpet</h1>${long}${build}${sentence}${summary}${long}</article>`, { library: "" }),
        );
        const read = new Readability(window.document).parse();
        const text = read.textContent.replace(/\s+/g, " ");
        assert.ok(text.includes(plainSentence));
        assert.ok(text.includes("As published"));
        assert.doesNotMatch(text, /[{}]/);
      }
    },
  },
  {
    title: "A feed carries the text only",
    software: ["jsdom"],
    engines: ["node"],
    async run() {
      const { window } = new JSDOM("");
      window.document.body.innerHTML = article + summary;
      assert.ok(window.document.body.textContent.includes(plainSentence));
    },
  },
  {
    title: "A minifier of HTML takes out quotes, blanks and optional tags",
    software: ["rehype-parse", "rehype-stringify"],
    engines: all,
    async run(t) {
      for (const build of [attributeBuild, jsonBuild]) {
        const made = String(
          await unified()
            .use(rehypeParse, { fragment: true })
            .use(rehypeStringify, {
              ...{ omitOptionalTags: true, preferUnquoted: true, quoteSmart: true, closeSelfClosing: false },
              ...{ collapseEmptyAttributes: true, bogusComments: true, tightAttributes: true, tightDoctype: true },
            })
            .process(`<p>The first words.</p>${build}${sentence.replace(/>\s+</g, "><")}<p>The last words.</p>`),
        );
        const found = await read(t, made);
        intact(found, "minified");
        assert.ok(found.alive);
      }
    },
  },
  {
    title: "A formatter lays out the author's file",
    software: ["prettier"],
    engines: all,
    async run(t) {
      for (const build of [attributeBuild, jsonBuild]) {
        for (const printWidth of [40, 120]) {
          const source = `<main><p>The first words.</p>${build}${sentence}${summary}<p>The last words.</p></main>`;
          const found = await read(t, await format(source, { parser: "html", printWidth }));
          intact(found, `${printWidth} columns`);
          assert.ok(found.alive, found.findings.join(" "));
          assert.equal(times(found.text, "As published"), 0);
        }
      }
    },
  },
  {
    title: "A typographer curls what stands in attributes and fallbacks",
    software: ["wordpress", "php-cli"],
    engines: all,
    async run(t) {
      const found = await read(t, await throughWordPress(post(attributeBuild, jsonBuild), "wptexturize"));
      assert.ok(found.alive, found.findings.join(" "));
      assert.ok(found.text.includes(plainSentence));
    },
  },
  {
    title: "An editor rewrites attributes with typographic dashes, quotes and hard spaces",
    software: [],
    engines: all,
    async run(t) {
      const changed = attributeBuild
        .replaceAll(" to ", "\u00a0to\u00a0")
        .replaceAll("; ", ";\u00a0")
        .replace("Gear row", "“Gear row”");
      const found = await read(t, post(changed));
      assert.ok(found.alive, found.findings.join(" "));
      assert.ok(found.text.includes(plainSentence));
    },
  },
  {
    title: "Markup inserted through innerHTML, cloned from a template, written by document.write",
    software: [],
    engines: all,
    async run(t) {
      const ways = {
        innerHTML: (markup) => (document.querySelector("main").innerHTML = markup),
        insertAdjacentHTML: (markup) => document.querySelector("main").insertAdjacentHTML("beforeend", markup),
        fragment: (markup) =>
          document.querySelector("main").append(document.createRange().createContextualFragment(markup)),
        cloned: (markup) => {
          const template = document.createElement("template");
          template.innerHTML = markup;
          for (let n = 0; n < 3; n++) document.querySelector("main").replaceChildren(template.content.cloneNode(true));
        },
        imported: (markup) => {
          const other = new DOMParser().parseFromString(markup, "text/html");
          document
            .querySelector("main")
            .append(...[...other.body.childNodes].map((node) => document.importNode(node, true)));
        },
        adopted: (markup) => {
          const other = new DOMParser().parseFromString(markup, "text/html");
          document.querySelector("main").append(...other.body.childNodes);
        },
        "child by child": (markup) => {
          const template = document.createElement("template");
          template.innerHTML = markup;
          const main = document.querySelector("main");
          for (const node of [...template.content.childNodes].reverse()) main.prepend(node);
        },
        outer: (markup) => (document.querySelector("main").outerHTML = `<main>${markup}</main>`),
      };
      const inserting = await t.open(page("<main></main>"));
      for (const [name, way] of Object.entries(ways)) {
        for (const build of [attributeBuild, jsonBuild]) {
          await inserting.run(() => document.querySelector("main").replaceChildren());
          await inserting.run(way, build + sentence);
          await inserting.run(() => settled());
          assert.equal(await inserting.run(() => alive()), true, name);
          assert.equal(await inserting.run(() => reads("main")), plainSentence, name);
        }
      }
      const writing = t.site.script(`document.write(${JSON.stringify(article)});`);
      const window = await t.open(page(`<main><script src="${writing}"></script></main>`));
      await window.run(() => settled());
      assert.equal(await window.run(() => alive()), true);
      assert.equal(await window.run(() => reads("main")), plainSentence);
    },
  },
];
