import { describe, expect, test } from "vitest";
import { withShortcodes, withTags } from "@meshwright/calc/article";
import { checkFigures, mendFigures } from "../src/index.js";

const build = '{{< mw-build stages="Spur and pinion: 16 to 62" rear="Ring: 12 to 35" >}}{{< /mw-build >}}';
const post = (rear: string, count = "16"): string =>
  `---\ntitle: Limpet\n---\n\n${build}\nWith {{< mw-teeth of="spur-and-pinion.driver" >}}${count}{{< /mw-teeth >}} teeth the motor turns {{< mw-value of="rear" >}}${rear}{{< /mw-value >}} times.\n\nWrite \`{{</* mw-value */>}}9{{</* /mw-value */>}}\`, or {{< other of="rear" >}}9{{< /other >}}.\n`;

describe("elements as shortcodes", () => {
  // 62/16 × 35/12 = 11.302…
  test("are compared as tags are", () => {
    const { differences, compared } = checkFigures(post("12.06"), { format: "markdown" });
    expect(compared).toBe(2);
    expect(differences.map(({ found, expected }) => [found, expected])).toEqual([["12.06", "11.30"]]);
    expect(checkFigures(post("11.30"), { format: "markdown" }).differences).toEqual([]);
  });

  test("are mended, and nothing else of the file", () => {
    expect(mendFigures(post("12.06", "15"), { format: "markdown" }).text).toBe(post("11.30", "16"));
  });

  test.each([
    '<mw-value of="front" figure="gap">1.06%</mw-value>',
    '<mw-build json="{&quot;title&quot;:&quot;A &lt; B\'s&quot;}"></mw-build>',
    "<mw-edits></mw-edits>",
    "no tag at all, 3 < 4",
  ])("%s is as long as a tag as it was as a shortcode, and says the same", (tag) => {
    const shortcode = withShortcodes(tag);
    const back = withTags(shortcode);
    expect(back).toHaveLength(shortcode.length);
    const said = (text: string) =>
      text.replace(/\s+>/g, ">").replace(
        /='([^']*)'/g,
        (_, value: string) =>
          `="${value
            .replace(/"/g, "&quot;")
            .replace(/</g, "&lt;")
            .replace(/\\u0027/g, "'")}"`,
      );
    expect(said(back)).toBe(tag);
  });

  test("a wrapper goes with the tags: a site that lets no HTML through would take out what is inside", () => {
    expect(withShortcodes("<div><mw-working><p>62/16</p></mw-working></div>")).toBe(
      "{{< mw-working >}}<p>62/16</p>{{< /mw-working >}}",
    );
  });
});
