import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { at } from "../../scripts/lib/paths.js";

const folder = mkdtempSync(join(tmpdir(), "integrations-eleventy-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const script = 'console.log("a script");';

/** A site of one page; answers what Eleventy says and writes. */
function site(name: string, body: string) {
  const root = join(folder, name);
  mkdirSync(join(root, "script"), { recursive: true });
  writeFileSync(join(root, "package.json"), '{"type":"module"}');
  writeFileSync(join(root, "script", "meshwright.js"), script);
  writeFileSync(
    join(root, "eleventy.config.js"),
    `import meshwright from ${JSON.stringify(at("integrations", "eleventy", "meshwright.js"))};
    export default (config) => { config.addPlugin(meshwright, { script: "script" }); return { pathPrefix: "/blog/" }; };`,
  );
  writeFileSync(join(root, "page.html"), `<html><body>${body}</body></html>`);
  writeFileSync(join(root, "plain.html"), "<html><body>No figure</body></html>");
  const command = at("node_modules", "@11ty", "eleventy", "cmd.cjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [command], { cwd: root, encoding: "utf8" });
  const read = (path: string): string =>
    existsSync(join(root, "_site", path)) ? readFileSync(join(root, "_site", path), "utf8") : "";
  return { status, said: stdout + stderr, read };
}

describe("the Eleventy plugin", () => {
  test("brings the script to pages with a figure, once, under its hash", () => {
    const { status, said, read } = site(
      "sound",
      '<mw-build stages="Ring: 12 to 35"></mw-build><mw-value>2.92</mw-value>',
    );
    expect([status, status === 0 ? "" : said]).toEqual([0, ""]);
    expect(read("meshwright/meshwright.js")).toBe(script);
    const lines = read("page/index.html").match(/<script[^>]*>/g) ?? [];
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/src="\/blog\/meshwright\/meshwright\.js\?v=/);
    expect(lines[0]).toContain(`integrity="sha384-${createHash("sha384").update(script).digest("base64")}"`);
    expect(read("plain/index.html")).not.toContain("script");
  });

  test("a word that is in no table ends the build, with the page and the nearest word", () => {
    const { status, said } = site("wrong", '<mw-value fo="front">44.30</mw-value>');
    expect(status).not.toBe(0);
    expect(said).toMatch(/page\.html.*no attribute fo; the nearest: .*of/s);
  });
});
