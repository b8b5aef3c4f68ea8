import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from "node:fs";
import { spawnSync } from "node:child_process";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { run } from "../src/command.js";
import { readText, replaceText } from "../src/disk.js";
import { version } from "../src/version.js";
import { attributes, document, page, post } from "./pages.js";

const stale = page('<p>Front <mw-value of="front">44.31</mw-value></p>');
const right = stale.replace("44.31", "44.30");

let folder = "";
const at = (name: string) => join(folder, name);
const put = (name: string, text: string | Uint8Array): string => {
  mkdirSync(dirname(at(name)), { recursive: true });
  writeFileSync(at(name), text);
  return at(name);
};
const read = (name: string) => readFileSync(at(name), "utf8");

/** Runs the command: its exit status, what it says, what it complains of. */
function figures(...parameters: string[]) {
  const [said, complained]: [string[], string[]] = [[], []];
  const status = run(
    parameters,
    (line) => said.push(line),
    (line) => complained.push(line),
  );
  return { status, said: said.join("\n").replaceAll(`${folder}/`, ""), complained: complained.join("\n") };
}

beforeEach(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), "figures-")));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe("the exit status", () => {
  it("is 0 where nothing is stale", () => {
    expect(figures(put("a.html", right))).toMatchObject({ status: 0, said: "1 compared; 0 stale", complained: "" });
  });

  it("is 1 where something is stale, and every place is named", () => {
    const { status, said } = figures(put("a.html", stale));
    expect(status).toBe(1);
    expect(said.split("\n")).toEqual([
      "a.html:4:10 <mw-value> front says “44.31”, should say “44.30”",
      "1 compared; 1 stale: 0 mended, 1 left",
    ]);
    expect(read("a.html")).toBe(stale);
  });

  it("is 0 where everything stale is mended, 1 where something is left", () => {
    expect(figures("--write", put("a.html", stale))).toMatchObject({
      status: 0,
      said: "a.html: 1 mended\n1 compared; 1 stale: 1 mended, 0 left",
    });
    expect(read("a.html")).toBe(right);
    put("b.html", stale.replace("</p>", ' <mw-value of="rear">9</p>'));
    const { status, said } = figures("--write", at("b.html"));
    expect([status, said.split("\n").at(-1)]).toEqual([1, "2 compared; 2 stale: 1 mended, 1 left"]);
    expect(said).toContain(
      "b.html:4:48 <mw-value> rear says “9”, should say “43.32” (to be mended by hand: it has no end tag",
    );
  });

  it("is 2 where something cannot be told", () => {
    const { status, said } = figures(put("a.html", "<mw-value>1</mw-value><mw-vlaue></mw-vlaue>"));
    expect(status).toBe(2);
    expect(said).toContain("2 could not be told");
    expect(said).toContain("nearest: mw-value");
  });

  it("is 2 where a file is not there, and the others are looked at all the same", () => {
    const { status, said, complained } = figures("--write", at("no.html"), put("a.html", stale), put("b.txt", "x"));
    expect(status).toBe(2);
    expect(read("a.html")).toBe(right);
    expect(said).toContain("1 mended, 0 left");
    expect(complained).toContain("no.html is not there");
    expect(complained).toContain("b.txt is none of .html");
  });

  it("names what was not looked at, and is 0 for it", () => {
    const { status, said } = figures(put("a.html", page("<mw-pair-finder><p>1.5</p></mw-pair-finder>".repeat(2))));
    expect([status, said]).toEqual([0, "a.html: not checked: 2 mw-pair-finder\n0 compared; 0 stale"]);
  });
});

describe("the options", () => {
  it("tell of themselves and of the version", () => {
    const { status, said } = figures("--help");
    expect(status).toBe(0);
    for (const word of ["--write", "--json", "--help", "--version", "Exit status", "  0 ", "  1 ", "  2 "])
      expect(said).toContain(word);
    const manifest = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8")) as {
      version: string;
    };
    expect(figures("--version")).toMatchObject({ status: 0, said: manifest.version });
    expect(version).toBe(manifest.version);
  });

  it.each([
    ["--wirte", "--write"],
    ["--jsno", "--json"],
    ["--hepl", "--help"],
    ["--versoin", "--version"],
    ["-w", "--write"],
    ["--WRITE", "--write"],
  ])("name the nearest where there is none such: %s", (asked, near) => {
    const { status, complained } = figures(asked, put("a.html", stale));
    expect([status, complained.split("\n")[0]]).toEqual([2, `Unknown option ${asked}; the nearest: ${near}.`]);
    expect(read("a.html")).toBe(stale);
  });

  it("take no value, and want a file", () => {
    expect(figures("--write=yes", put("a.html", stale))).toMatchObject({ status: 2 });
    expect(figures()).toMatchObject({ status: 2, said: "" });
    expect(figures("--write")).toMatchObject({ status: 2 });
    expect(read("a.html")).toBe(stale);
  });

  it("end at two dashes", () => {
    const before = process.cwd();
    put("--write.md", post('A <mw-value of="front">44.31</mw-value>'));
    process.chdir(folder);
    try {
      expect(figures("--", "--write.md").status).toBe(1);
      expect(figures("--write", "--", "--write.md").status).toBe(0);
    } finally {
      process.chdir(before);
    }
  });

  it("name the system that an article is for, and say what it would not take", () => {
    const tags = post('With <mw-value of="front">44.30</mw-value>');
    const shortcodes = tags.replace(/<(\/?mw-[^>]*)>/g, "{{< $1 >}}");
    put("tags.md", tags);
    put("shortcodes.md", shortcodes);
    put("wiki.html", right);
    const warnings = (system: string, name: string): readonly string[] => {
      const { status, said } = figures("--for", system, at(name));
      expect(status, said).toBe(0);
      return said.split("\n").filter((line) => line.includes(" warning: "));
    };
    expect(warnings("hugo", "tags.md")).toEqual([
      expect.stringMatching(/tags\.md:\d+:1 <mw-build> warning: Hugo takes tags/),
    ]);
    expect(warnings("hugo", "shortcodes.md")).toEqual([]);
    expect(warnings("jekyll", "tags.md")).toEqual([]);
    expect(warnings("jekyll", "shortcodes.md")).toEqual([expect.stringContaining("Jekyll has no shortcodes")]);
    expect(warnings("dokuwiki", "wiki.html")).toEqual([expect.stringContaining("DokuWiki takes no elements")]);
    expect(figures("--for", "hugoo", at("tags.md"))).toMatchObject({ status: 2 });
    expect(figures("--for", "hugoo", at("tags.md")).complained).toContain("Unknown system hugoo; the nearest: hugo");
    expect(figures("--for", "hugo", "--for", "jekyll", at("tags.md"))).toMatchObject({
      status: 2,
      complained: expect.stringContaining("Found --for hugo and --for jekyll; expected one system.") as unknown,
    });
    expect(figures("--for=jekyll", at("tags.md")).status).toBe(0);
    expect(figures(at("tags.md"), "--for")).toMatchObject({ status: 2 });
  });

  it("say what is odd, which is no failure", () => {
    const odd = right.replace("<mw-value", '<mw-value colour="red"');
    const { status, said } = figures(put("a.html", odd));
    expect(status).toBe(0);
    expect(said.split("\n")[0]).toBe("a.html:4:10 <mw-value> front warning: <mw-value> has no attribute colour.");
    expect(JSON.parse(figures("--json", at("a.html")).said)).toMatchObject({ files: [{ warnings: [{ line: 4 }] }] });
  });

  it("say it all as one object, whose counts add up", () => {
    put("a.html", stale.replace("</p>", ' <mw-value of="rear">9</p><mw-pair-finder>9</mw-pair-finder>'));
    put("b.html", "<mw-value>1</mw-value>");
    const parsed = (...more: string[]) => {
      const { status, said } = figures("--json", ...more, at("a.html"), at("b.html"), at("c.html"));
      const object = JSON.parse(said) as { exit: number; files: { places: { outcome: string }[] }[] };
      expect(object.exit).toBe(status);
      return object;
    };
    expect(parsed()).toMatchObject({
      ...{
        version,
        compared: 2,
        stale: 2,
        mended: 0,
        left: 2,
        untold: 1,
        exit: 2,
        notChecked: { "mw-pair-finder": 1 },
      },
      files: [
        { file: "a.html", compared: 2, stale: 2, mended: 0, left: 2, untold: 0 },
        { file: "b.html", untold: 1 },
        { file: "c.html", trouble: "is not there" },
      ],
    });
    const mended = parsed("--write");
    expect(mended).toMatchObject({ stale: 2, mended: 1, left: 1 });
    expect(mended.files[0]!.places).toMatchObject([
      { line: 4, column: 10, found: "44.31", expected: "44.30", outcome: "mended" },
      { found: "9", expected: "43.32", outcome: "left", reason: "it has no end tag of its own" },
    ]);
  });
});

describe("folders and patterns", () => {
  beforeEach(() => {
    for (const name of ["b/x.md", "b/y.MARKDOWN", "a.html", "b/c/z.mdx", "b/d.HTM"])
      put(name, name.includes("h") || /HTM/.test(name) ? stale : post("A"));
    for (const name of ["node_modules/x.html", ".git/x.html", "b/.hidden.html", "b/notes.txt", "b/node_modules/y/z.md"])
      put(name, stale);
  });
  const lookedAt = (...names: string[]) =>
    (JSON.parse(figures("--json", ...names).said) as { files: { file: string }[] }).files.map(({ file }) => file);

  it("lead to every article inside, but for what others put there and what is hidden", () => {
    expect(lookedAt(folder)).toEqual(["a.html", "b/d.HTM", "b/x.md", "b/y.MARKDOWN", "b/c/z.mdx"]);
  });

  it("lead to what they match, each once", () => {
    expect(lookedAt(at("**/*.md*"), at("b/x.md"))).toEqual(["b/c/z.mdx", "b/x.md"]);
    expect(lookedAt(at("{a,b/d}.*"))).toEqual(["a.html", "b/d.HTM"]);
  });

  it("are told where they lead to nothing", () => {
    mkdirSync(at("empty"));
    for (const name of ["empty", "*.nothing", "b/*.txt"])
      expect(figures(at(name))).toMatchObject({
        status: 2,
        complained: expect.stringContaining("leads to no .html") as string,
      });
  });

  it("are not followed over links to folders; a name with brackets is a name", () => {
    symlinkSync(folder, at("b/loop"));
    put("[slug].md", post('A <mw-value of="front">44.31</mw-value>'));
    expect(lookedAt(folder)).toHaveLength(6);
    expect(figures("--write", at("[slug].md")).status).toBe(0);
  });
});

describe("a file", () => {
  it("keeps the mark of its encoding, its line ends, its mode bits, and every other byte", () => {
    const bytes = Buffer.from(`\uFEFF${stale}<p>é 漢 😀</p>\r\n`);
    put("a.html", bytes);
    for (const mode of [0o600, 0o644, 0o755, 0o4750]) {
      writeFileSync(at("a.html"), bytes);
      chmodSync(at("a.html"), mode);
      expect(figures("--write", at("a.html")).status).toBe(0);
      expect(statSync(at("a.html")).mode & 0o7777).toBe(mode);
      expect(readFileSync(at("a.html"))).toEqual(Buffer.from(bytes.toString("utf8").replace("44.31", "44.30")));
    }
  });

  it("is mended where its link leads, and the link stays", () => {
    put("real/a.html", stale);
    symlinkSync(at("real/a.html"), at("link.html"));
    expect(figures("--write", at("link.html")).status).toBe(0);
    expect([lstatSync(at("link.html")).isSymbolicLink(), read("real/a.html")]).toEqual([true, right]);
  });

  it("is left alone where its mode bits forbid writing, whoever asks", () => {
    for (const mode of [0o444, 0o400, 0o555]) {
      put("a.html", stale);
      chmodSync(at("a.html"), mode);
      const { status, said, complained } = figures("--write", at("a.html"));
      expect([status, read("a.html"), statSync(at("a.html")).mode & 0o777]).toEqual([2, stale, mode]);
      expect(complained).toContain("mode bits forbid it; it stays as it was");
      expect(said).toContain("1 stale: 0 mended, 1 left");
      chmodSync(at("a.html"), 0o644);
    }
  });

  it("is left alone where it has other names, which would keep the old text", () => {
    linkSync(put("a.html", stale), at("b.html"));
    expect(figures("--write", at("a.html"))).toMatchObject({
      status: 2,
      complained: expect.stringContaining("hard links") as string,
    });
    expect([read("a.html"), read("b.html")]).toEqual([stale, stale]);
  });

  it("is left alone where somebody changed it meanwhile", () => {
    const { seen } = readText(put("a.html", stale));
    put("a.html", `${stale}<p>more</p>`);
    expect(() => replaceText(at("a.html"), right, seen)).toThrow(/meanwhile/);
    expect(read("a.html")).toBe(`${stale}<p>more</p>`);
  });

  it("is refused where it is no text, not in UTF-8, or larger than any article", () => {
    const refused: Readonly<Record<string, [string | Uint8Array, RegExp]>> = {
      "a.html": [Buffer.from([0x3c, 0x6d, 0, 0x77]), /is not text/],
      "b.html": [Buffer.from(`\uFEFF${stale}`, "utf16le"), /is UTF-16/],
      "c.html": [Buffer.from(`${stale}é`, "latin1"), /is not UTF-8/],
      "d.html": ["", /more than 10 MB/],
    };
    for (const [name, [bytes, message]] of Object.entries(refused)) {
      put(name, bytes);
      if (!bytes.length) truncateSync(at(name), 50_000_000);
      const before = readFileSync(at(name));
      const { status, complained } = figures("--write", at(name));
      expect([status, complained]).toEqual([2, expect.stringMatching(message)]);
      expect(readFileSync(at(name)).equals(before)).toBe(true);
    }
  });

  it("is refused where it would keep its reader waiting", () => {
    if (spawnSync("sh", ["-c", `mkfifo "$0"`, at("a.html")]).status !== 0) mkdirSync(at("a.html"));
    expect(figures(at("a.html")).status).toBe(2);
  });

  it("is refused with a sentence where it cannot be read as what it is said to be", () => {
    const { status, complained } = figures(put("a.mdx", `<mw-build ${attributes}`));
    expect([status, complained]).toEqual([2, expect.stringContaining("A tag cannot be read")]);
  });

  it("finds the file that its build names beside it, and no other", () => {
    put("builds/a b.json", document);
    const linked = (src: string) => `<mw-build src="${src}"></mw-build><mw-value of="rear">15.60</mw-value>`;
    for (const src of ["builds/a%20b.json", "./builds/a b.json?v=2#x"])
      expect(figures(put("a.html", linked(src))).status).toBe(0);
    for (const src of ["https://example.org/a.json", "/builds/a b.json", "//example.org/a", "builds/c.json", "data:,1"])
      expect(figures(put("a.html", linked(src))).status).toBe(2);
  });

  it("is not touched where nothing is to be written", () => {
    put("a.html", right);
    const before = statSync(at("a.html"));
    figures("--write", at("a.html"));
    expect(statSync(at("a.html"))).toMatchObject({ mtimeMs: before.mtimeMs, ino: before.ino });
  });
});
