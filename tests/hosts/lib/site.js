// A server of pages that are made up in a test, with the library beside them.
import { createServer } from "node:http";
import { readdirSync, readFileSync } from "node:fs";
import { at } from "../../../scripts/lib/paths.js";

const built = (name) => readFileSync(at("packages", "elements", "dist", name), "utf8");

/** The library as it would be in another version: same code, another number. */
function otherVersion(code) {
  const changed = code.replaceAll('"0.1.0"', '"0.2.0"');
  if (changed === code) throw new Error("The version was not found in the script.");
  return changed;
}

/** Starts the server; `page(markup, headers)` gives the address of a page. */
export async function startSite() {
  const files = new Map();
  const set = (path, body, { type = "text/html; charset=utf-8", headers = {}, pause } = {}) =>
    files.set(path, { body, headers: { "content-type": type, ...headers }, pause });
  const js = { type: "text/javascript; charset=utf-8" };
  set("/probe.js", readFileSync(at("tests", "hosts", "lib", "probe.js")), js);
  // The scripts, and the languages that they fetch from beside themselves.
  for (const name of readdirSync(at("packages", "elements", "dist")).filter((file) => file.endsWith(".js")))
    set(`/${name}`, built(name), js);
  set("/meshwright-other.js", otherVersion(built("meshwright.js")), js);
  const server = createServer((request, response) => {
    const file = files.get(request.url.split("?")[0]);
    if (!file) return response.writeHead(404).end();
    response.writeHead(200, { ...file.headers });
    const parts = [file.body].flat();
    // A list is sent piece by piece, with a pause between.
    const next = () => {
      response.write(parts.shift());
      if (parts.length > 0) setTimeout(next, file.pause ?? 500);
      else response.end();
    };
    if (file.pause && parts.length === 1) setTimeout(next, file.pause);
    else next();
  });
  await new Promise((resolve) => server.listen(0, "127.0.0.1", resolve));
  const origin = `http://127.0.0.1:${server.address().port}`;
  let made = 0;
  return {
    origin,
    set,
    /** A script under an address of its own. */
    script(code) {
      const path = `/script-${++made}.js`;
      set(path, code, js);
      return path;
    },
    /** Adds a page and answers its address. */
    page(markup, options) {
      const path = `/page-${++made}.html`;
      set(path, markup, options);
      return origin + path;
    },
    stop() {
      const closed = new Promise((resolve) => server.close(resolve));
      server.closeAllConnections();
      return closed;
    },
  };
}
