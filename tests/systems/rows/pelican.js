// Pelican: posts in Markdown, the theme that comes with it. The script is a line at the end of the post.
import { excerptReads, feedReads, previewReads, readsAlive, readsStill } from "../lib/reading.js";

export const needs = { programs: ["pelican", "python3-markdown"] };
export const made = "pelican";

const settings = (origin) => `SITENAME = "The shore log"
SITEURL = "${origin}"
AUTHOR = "A keeper of logs"
TIMEZONE = "UTC"
THEME = "simple"
STATIC_PATHS = ["meshwright"]
FEED_ALL_ATOM = "feeds/all.atom.xml"
FEED_ALL_RSS = "feeds/all.rss.xml"
`;

const line = '<script src="/meshwright/meshwright.js" defer></script>';
const post = (text, more = "") => `Title: Limpet\nDate: 2026-10-03\nSlug: limpet\n\n${text}${more}`;
const built = (t) =>
  t.run("pelican", ["content", "-q", "-d", "-o", t.folder("public"), "-s", "pelicanconf.py"], {
    cwd: t.folder("site"),
  });

export async function run(t, { post: written }) {
  const origin = await t.serve("public");
  const page = `${origin}/limpet.html`;

  t.step(
    "Copy `meshwright.js`, and the files of its languages beside it, into `content/meshwright`, and name that folder in `STATIC_PATHS`.",
  );
  t.step("Put what the notebook copies for Pelican below the metadata of a Markdown file in `content`.");
  t.step("Write the line that brings the script at the end of the post.");
  t.step("Run `pelican content`, or `pelican content --autoreload --listen`, and open the page.");
  t.write("site/pelicanconf.py", settings(origin));
  t.install("mkdocs/script", "site/content/meshwright");
  t.write("site/content/limpet.md", post(written("markdown"), `\n${line}\n`));
  await built(t);
  await readsAlive(t, page, { inside: ".entry-content" });

  const more = ["A later remark."];
  t.write("site/content/limpet.md", post(written("markdown", more), `\n${line}\n`));
  for (let n = 0; n < 3; n++) await built(t);
  await readsAlive(t, page, { inside: ".entry-content", more, place: "page, edited and made again" });
  await feedReads(t, `${origin}/feeds/all.atom.xml`);
  excerptReads(t, await (await fetch(`${origin}/index.html`)).text());

  await previewReads(t, {
    start: (port) => ["pelican", "content", "--autoreload", "--listen", "-p", `${port}`, "-o", t.folder("preview")],
    cwd: t.folder("site"),
    path: "/limpet.html",
    inside: ".entry-content",
    save: (later) => t.write("site/content/limpet.md", post(written("markdown", later), `\n${line}\n`)),
  });

  t.write("site/content/limpet.md", post(written("markdown")));
  await built(t);
  await readsStill(t, page, { inside: ".entry-content", place: "page, nothing installed" });
}
