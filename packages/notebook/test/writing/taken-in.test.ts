// @vitest-environment jsdom
import { describe, expect, it } from "vitest";
import { buildFromAttributes, parseBuild } from "@meshwright/calc/document";
import {
  deadIn,
  handedOut,
  idsOf,
  postFromPage,
  postOf,
  postToHtml,
  postToMarkdown,
  renameIn,
} from "../../src/writing/index.js";

const build = parseBuild({
  format: "meshwright-build/1",
  stages: [{ id: "primary", label: "Primary", kind: "pair", driver: 15, driven: 60 }],
  outputs: [{ id: "drive", label: "Drive", stages: [] }],
});

const taken = (html: string, own: string | null = null) =>
  postFromPage(new DOMParser().parseFromString(html, "text/html").body, own);
/** What is handed out of a post that was taken in, kept, and read again. */
const back = (html: string): string => {
  const { doc } = taken(html);
  const again = postOf(JSON.parse(JSON.stringify(doc.toJSON())));
  expect(again.eq(doc)).toBe(true);
  return postToHtml(again, undefined).trim();
};

describe("a post of one's own that is opened", () => {
  it.each([
    '<p>H<sub>2</sub>O, <del>old</del> and <abbr title="x">y</abbr>, <kbd>Ctrl</kbd>.</p>',
    '<p class="lead" id="top">One <em class="latin">two</em> <span class="big">three</span>.</p>',
    '<h2 id="set-up">With <mw-teeth of="primary.driver">15</mw-teeth></h2>',
    "<table><caption>Runs</caption><thead><tr><th>A</th></tr></thead><tbody><tr><td>1</td></tr></tbody></table>",
    '<details open=""><summary>More</summary><p>Words</p></details>',
    '<figure><img src="a.png" alt="A"><figcaption>What it is</figcaption></figure>',
    '<video src="a.mp4" controls=""></video>',
    '<p>A <video src="a.mp4"></video> in a line</p>',
    '<section class="note">\n<p>One</p>\n<ul class="x">\n<li>two</li>\n</ul>\n</section>',
    '<p><img src="a.png" alt="A" title="T" width="40" height="30" loading="lazy"></p>',
    '<p><a href="https://example.org/" rel="nofollow" class="out">there</a> and <a id="x">here</a></p>',
    '<pre><code class="language-sh">npm start</code></pre>',
    "<dl><dt>One</dt><dd>Two</dd></dl>",
    "<p>One</p>\n<!--more-->\n<p>Two</p>",
    '<p>It is <mw-value of="nobody" class="big">4.00</mw-value>.</p>',
    '<mw-drive-line still=""></mw-drive-line>',
    '<ol start="3" type="a">\n<li class="k">three</li>\n</ol>',
  ])("comes back as it was: %s", (html) => {
    expect(back(html)).toBe(html);
  });

  it("says what is left out, for it would run", () => {
    const { doc, left } = taken(
      '<p onclick="x()">One <a href="javascript:y()">two</a></p><script>z()</script><style>p{}</style><table onload="q()"><tr><td>1</td></tr></table>',
    );
    const html = postToHtml(doc, undefined);
    expect(html).not.toMatch(/onclick|javascript|script|style|onload|q\(\)/);
    expect(html).toContain("<td>1</td>");
    expect(Object.fromEntries(left)).toEqual({ "attribute that would run something": 3, script: 1, "style sheet": 1 });
  });

  it.each([
    "java\nscript:y()",
    "&#106;avascript:y()",
    "\u0001javascript:y()",
    "javascript&colon;y()",
    " JavaScript&#x3a;y()",
  ])("leaves out an address that is a script, however it is written: %j", (address) => {
    for (const html of [
      `<p><a href="${address}">two</a></p>`,
      `<table><tr><td><a href=\'${address}\'>two</a></td></tr></table>`,
    ])
      expect(postToHtml(taken(html).doc, undefined)).not.toContain("href");
    // A saved notebook has it as markup.
    const content = [{ type: "kept_block", attrs: { html: `<p><a href="${address}">two</a></p>` } }];
    expect(postToHtml(postOf({ type: "doc", content }), undefined)).not.toContain("<a");
  });

  it("keeps the figures alive that stand in what is kept", () => {
    const { doc } = taken(
      '<table><tbody><tr><td><mw-value of="primary">3.00</mw-value></td><td><mw-value of="nobody">9.99</mw-value></td></tr></tbody></table>',
    );
    expect(postToHtml(doc, build)).toContain(
      '<td><mw-value of="primary">4.00</mw-value></td><td><mw-value of="nobody">9.99</mw-value></td>',
    );
    expect(deadIn(doc, build).map(({ text }) => text)).toEqual(["9.99"]);
    expect(handedOut(doc, build, "text")).toBe("4.00 · 9.99\n");
  });

  it("puts back what a tag that closed itself has swallowed", () => {
    const { doc } = taken('<p>It is <mw-value of="primary"/> turns of the motor, and <b>more</b>.</p><p>Next.</p>');
    expect(doc.textContent).toMatch(/turns of the motor, and more\..*Next\./);
    expect(postToHtml(doc, build)).toContain(
      '<p>It is <mw-value of="primary">4.00</mw-value> turns of the motor, and <strong>more</strong>.</p>\n<p>Next.</p>',
    );
  });

  it("has figures of its own drivetrain by its name, and leaves those of another as they are", () => {
    const { doc } = taken(
      '<p><mw-value build="plover" of="primary">3.00</mw-value> <mw-value build="knot" of="primary">7.00</mw-value></p>',
      "plover",
    );
    expect(postToHtml(doc, build)).toContain(
      '<p><mw-value of="primary">4.00</mw-value> <mw-value build="knot" of="primary">7.00</mw-value></p>',
    );
  });

  it("has the notebook's own names where its drivetrain is the notebook's", () => {
    const figure = { type: "figure", attrs: { tag: "mw-value", ask: { of: "primary" } } };
    const doc = postOf({ type: "doc", content: [{ type: "paragraph", content: [figure] }] });
    const named = parseBuild({ ...build, stages: [{ ...build.stages[0], label: "Motor gears" }] });
    const html = postToHtml(doc, named);
    expect(html).toContain('of="motor-gears"');
    const page = new DOMParser().parseFromString(html, "text/html").body;
    const holder = page.querySelector("mw-build")!;
    const attributes = Object.fromEntries([...holder.attributes].map(({ name, value }) => [name, value]));
    const reading = buildFromAttributes(attributes);
    const ids = idsOf(named, reading.build!, holder.getAttribute("seal"));
    holder.remove();
    renameIn(page, ids!);
    expect(postFromPage(page).doc.firstChild!.firstChild!.attrs.ask).toEqual({ of: "primary" });
    expect(idsOf(named, parseBuild({ ...named, title: "Another" }), null)).toBeUndefined();
    expect(idsOf(named, parseBuild(JSON.parse(JSON.stringify(named))), null)).toEqual(new Map());
  });

  it("goes out in Markdown with all that it keeps", () => {
    const html =
      '<h1>One</h1><p class="lead">Two</p><p>H<sub>2</sub>O and 2 &lt; 3 &amp;amp;</p><table><tbody><tr><td>1</td></tr></tbody></table>';
    expect(postToMarkdown(taken(html).doc, undefined)).toBe(
      '# One\n\n<p class="lead">Two</p>\n\nH<sub>2</sub>O and 2 \\< 3 \\&amp;\n\n<table><tbody><tr><td>1</td></tr></tbody></table>\n',
    );
  });

  it("has no blank line in what is kept", () => {
    const html = back('<pre class="x">a\n\n\nb</pre>');
    expect(html).not.toMatch(/\n\s*\n/);
    expect(new DOMParser().parseFromString(html, "text/html").body.textContent).toBe("a\n\n\nb");
  });
});
