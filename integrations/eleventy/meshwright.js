// A plugin for Eleventy: brings the script to the site, names it once in every page that has a living figure, and checks the
// elements of every page as it is made.
import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { faultsIn } from "./marks.js";

const here = dirname(fileURLToPath(import.meta.url));

/**
 * @param eleventy what Eleventy hands to a configuration
 * @param options `script`: the folder in which meshwright.js lies, else the one beside this file; `address`: where the site has it;
 *   `strict`: whether a fault ends the build, which it does unless the site is only served
 */
export default function meshwright(eleventy, options = {}) {
  const { script = join(here, "script"), address = "/meshwright/", strict } = options;
  const file = join(script, "meshwright.js");
  if (!existsSync(file)) throw new Error(`Meshwright: ${file} is not there. It is the script that makes figures live.`);
  const hash = createHash("sha384").update(readFileSync(file)).digest("base64");
  eleventy.addPassthroughCopy({ [relative(process.cwd(), script)]: address.replace(/^\/|\/$/g, "") });

  let isServed = false;
  eleventy.on("eleventy.before", ({ runMode }) => void (isServed = runMode !== "build"));

  eleventy.addTransform("meshwright", function (content) {
    const { outputPath, inputPath } = this.page;
    if (!outputPath || !String(outputPath).endsWith(".html") || !/<mw-/i.test(content)) return content;
    const faults = faultsIn(content);
    if (faults.length > 0) {
      const told = `Meshwright: ${inputPath}: ${faults.join("; ")}`;
      if (strict ?? !isServed) throw new Error(told);
      console.warn(told);
    }
    const source = eleventy.getFilter("url")(`${address}meshwright.js`);
    if (content.includes(source)) return content;
    const line = `<script src="${source}?v=${encodeURIComponent(hash.slice(0, 8))}" integrity="sha384-${hash}" defer></script>`;
    return /<\/body\s*>(?![^]*<\/body\s*>)/i.test(content)
      ? content.replace(/<\/body\s*>(?![^]*<\/body\s*>)/i, (end) => `${line}${end}`)
      : `${content}${line}`;
  });
}
