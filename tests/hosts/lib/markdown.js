// Markdown by the programs that blogs use, each as it is set up to let HTML through.
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { HtmlRenderer, Parser } from "commonmark";
import MarkdownIt from "markdown-it";
import { marked } from "marked";
import rehypeStringify from "rehype-stringify";
import remarkParse from "remark-parse";
import remarkRehype from "remark-rehype";
import remarkSmartypants from "remark-smartypants";
import { unified } from "unified";
import { run } from "../../../scripts/lib/run.js";
import { once } from "./software.js";

/** A Hugo site of one post; resolves to its parts as its templates give them. */
export const hugo = (markdown) => once(`hugo ${markdown}`, () => runHugo(markdown));

async function runHugo(markdown) {
  const folder = mkdtempSync(join(tmpdir(), "hosts-hugo-"));
  try {
    for (const name of ["content", "layouts/_default"]) mkdirSync(join(folder, name), { recursive: true });
    writeFileSync(
      join(folder, "config.toml"),
      'baseURL = "http://example.invalid/"\ndisableKinds = ["taxonomy", "term", "RSS", "sitemap", "robotsTXT", "404", "home"]\n[markup.goldmark.renderer]\nunsafe = true\n',
    );
    writeFileSync(join(folder, "content", "post.md"), `---\ntitle: Limpet\n---\n${markdown}`);
    writeFileSync(
      join(folder, "layouts", "_default", "single.html"),
      "{{ .Content }}=====PLAIN{{ .Content | plainify }}=====SUMMARY{{ .Summary }}",
    );
    const { code, output } = await run("hugo", ["--quiet", "-s", folder]);
    if (code !== 0) throw new Error(output);
    const [content, plain, summary] = readFileSync(join(folder, "public", "post", "index.html"), "utf8").split(
      /=====(?:PLAIN|SUMMARY)/,
    );
    return { content, plain, summary };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const remark = (...plugins) => {
  const processor = unified().use(remarkParse);
  for (const plugin of plugins) processor.use(plugin);
  return processor.use(remarkRehype, { allowDangerousHtml: true }).use(rehypeStringify, { allowDangerousHtml: true });
};

/** Each resolves to HTML. */
export const plainly = {
  "markdown-it": (text) => new MarkdownIt({ html: true }).render(text),
  marked: (text) => marked(text),
  commonmark: (text) => new HtmlRenderer().render(new Parser().parse(text)),
  remark: async (text) => String(await remark().process(text)),
};

/** Those that set quotes, dashes and dots as typographers do. */
export const typographically = {
  "markdown-it": (text) => new MarkdownIt({ html: true, typographer: true }).render(text),
  commonmark: (text) => new HtmlRenderer().render(new Parser({ smart: true }).parse(text)),
  remark: async (text) => String(await remark(remarkSmartypants).process(text)),
  hugo: async (text) => (await hugo(text)).content,
};
