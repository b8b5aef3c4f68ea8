// Files that a command writes and the repository keeps: they look as if somebody had written them.
import { writeFileSync } from "node:fs";
import { format, resolveConfig } from "prettier";

/** Writes a text as the project's own settings lay it out. `parser` is what it is: "markdown", "json". */
export async function writeFormatted(file, text, parser) {
  writeFileSync(file, await format(text, { ...(await resolveConfig(file)), parser }));
}
