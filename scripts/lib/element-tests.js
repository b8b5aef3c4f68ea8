// The element tests as browsers get them. Some four hundred modules a file, one request each, take longer than most tests: a
// whole run has them put together, and what several files share stands in chunks beside them.
import { readFileSync, rmSync } from "node:fs";
import { build } from "esbuild";
import { at, filesBelow, shown } from "./paths.js";

const folder = at("dist", "element-tests");

/** All files of element tests: they lie beside their sources. */
const elementTests = () =>
  filesBelow(at("packages"), (path) => path.endsWith(".test.ts") && /[\\/]src[\\/]/.test(path));

/** What a test fetches lies beside its source, wherever its code is put. */
const addresses = {
  name: "addresses",
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replaceAll(
        "import.meta.url",
        `new URL("/${shown(path)}", location.href).href`,
      ),
      loader: "ts",
    }));
  },
};

/** Puts all of them together; resolves to the pattern of the files that are to be run. */
export async function bundledTests() {
  rmSync(folder, { recursive: true, force: true });
  await build({
    entryPoints: elementTests(),
    outbase: at("packages"),
    outdir: folder,
    bundle: true,
    splitting: true,
    format: "esm",
    target: "es2022",
    conditions: ["browser"],
    // What a package says of its built files is not true of its sources.
    ignoreAnnotations: true,
    tsconfig: at("tsconfig.json"),
    sourcemap: "inline",
    plugins: [addresses],
    logLevel: "warning",
  });
  return `${shown(folder)}/**/*.test.js`;
}
