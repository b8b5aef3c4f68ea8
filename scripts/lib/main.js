import { realpathSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** True in the module that was called from the command line, false where it is imported. */
export const isMain = (meta) =>
  process.argv[1] !== undefined && realpathSync(process.argv[1]) === realpathSync(fileURLToPath(meta.url));
