// Jekyll: a site with its usual theme and feed, as a folder on the author's disk.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { excerptReads, feedReads, readsAlive, readsStill } from "../lib/reading.js";

export const needs = { programs: ["jekyll", "jekyll-theme-minima", "ruby-jekyll-feed", "ruby-jekyll-seo-tag"] };
export const made = "jekyll";

/** The theme's own layout, copied into the site, with a line more before the end of the body. */
const layout = (line) => {
  const files = spawnSync("dpkg", ["-L", "jekyll-theme-minima"], { encoding: "utf8" }).stdout.split("\n");
  const theme = readFileSync(
    files.find((path) => path.endsWith("/_layouts/default.html")),
    "utf8",
  );
  return theme.replace("</body>", `${line}\n</body>`);
};

function site(t, folder, origin, more) {
  t.write(
    `${folder}/_config.yml`,
    `title: The shore log\nurl: "${origin}"\ntheme: minima\nshow_excerpts: true\nplugins: [jekyll-feed]\n`,
  );
  t.write(`${folder}/_layouts/default.html`, layout(more));
  t.write(`${folder}/index.html`, "---\nlayout: home\n---\n");
}

const post = (text) => `---\nlayout: post\ntitle: Limpet\n---\n\n${text}`;
const file = "_posts/2026-10-03-limpet.md";
const built = (t, folder) =>
  t.run("jekyll", ["build", "--quiet", "-s", t.folder(folder), "-d", t.folder("public")], {
    env: { JEKYLL_ENV: "production" },
  });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/2026/10/03/limpet.html`;

  t.step("Copy what lies in dist/integrations/jekyll into the site.");
  t.step(
    "Write {% include meshwright.html %} before </body> in _layouts/default.html, which is the theme’s until you copy it.",
  );
  t.step("Put what the notebook copies for Jekyll below the front matter of a file in _posts.");
  t.step("Run jekyll build.");
  site(t, "site", origin, "{% include meshwright.html %}");
  t.install("jekyll", "site");
  t.write(`site/${file}`, post(written("markdown")));
  await built(t, "site");
  await readsAlive(t, page, { inside: ".post-content" });

  const more = ["A later remark."];
  t.write(`site/${file}`, post(written("markdown", more)));
  for (let n = 0; n < 3; n++) await built(t, "site");
  await readsAlive(t, page, { inside: ".post-content", more, place: "page, edited and made again" });

  await feedReads(t, `${origin}/feed.xml`);
  excerptReads(t, await (await fetch(`${origin}/`)).text());

  site(t, "bare", origin, "");
  t.write(`bare/${file}`, post(written("markdown")));
  await built(t, "bare");
  await readsStill(t, page, { inside: ".post-content", place: "page, nothing installed" });
}
