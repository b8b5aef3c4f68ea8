// npm start: installs if needed, builds if needed, serves the demo. Standard output is one line: where it is.
import { install } from "./lib/install.js";
import { at } from "./lib/paths.js";

const wanted = process.env.PORT ?? "8080";
const port = Number(wanted);
if (!/^\d{1,5}$/.test(wanted) || port > 65_535) {
  process.stderr.write(`PORT is ${JSON.stringify(wanted)}; a whole number from 0 to 65535 is expected.\n`);
  process.exit(1);
}
if (!(await install())) process.exit(1);
// What stands on packages, only once they are there.
const { listen, staticServer } = await import("./lib/server.js");
const { build } = await import("./build.js");
const { docs, areDocsFresh } = await import("./docs.js");
const [isBuilt] = await Promise.all([build(), areDocsFresh() || docs()]);
// Half a build would be served as if it were whole.
if (!isBuilt) process.exit(1);

const mounts = {
  "/": at("demo"),
  "/meshwright/": at("packages", "elements", "dist"),
  "/notebook/script/": at("packages", "notebook", "dist"),
  "/calc/": at("packages", "calc", "dist"),
  "/seeds/": at("seeds"),
  "/api/": at("dist", "api"),
  "/guide/minisearch/": at("node_modules", "minisearch", "dist", "es"),
};

const server = staticServer(mounts);
process.stdout.write(`Meshwright demo: http://127.0.0.1:${await listen(server, port)}/\n`);

for (const signal of ["SIGINT", "SIGTERM"]) {
  process.once(signal, () => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  });
}
