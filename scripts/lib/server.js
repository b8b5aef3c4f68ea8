// A server of static files: for the demo, and for tests that need a page. sirv knows types, tags and ranges.
import { statSync } from "node:fs";
import { createServer } from "node:http";
import { join } from "node:path";
import sirv from "sirv";

/** The path that an address asks for, or undefined: no hidden file, and nothing that climbs out of a folder. */
function pathOf(pathname) {
  try {
    const path = decodeURIComponent(pathname);
    return /[\0\\]/.test(path) || path.split("/").some((part) => part.startsWith(".")) ? undefined : path;
  } catch {
    return undefined;
  }
}

function refuse(response, status, text) {
  response.writeHead(status, { "content-type": "text/plain;charset=utf-8", "content-length": Buffer.byteLength(text) });
  response.end(text);
}

/**
 * Answers from folders. `mounts` maps the beginning of an address ("/seeds/") to a folder; the longest that fits counts.
 * `headers` are added to every answer.
 */
export function staticServer(mounts, { headers = {} } = {}) {
  const notFound = (_request, response) => refuse(response, 404, "Not found.\n");
  const served = Object.keys(mounts)
    .sort((one, other) => other.length - one.length)
    // Files are looked up as they are asked for: whoever works on a page sees what was written last.
    .map((prefix) => ({ prefix, serve: sirv(mounts[prefix], { dev: true, etag: true, onNoMatch: notFound }) }));
  return createServer((request, response) => {
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    response.setHeader("x-content-type-options", "nosniff");
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.setHeader("allow", "GET, HEAD");
      return refuse(response, 405, "Only GET and HEAD.\n");
    }
    const [pathname = "/", query] = (request.url ?? "/").split("?", 2);
    const path = pathOf(pathname);
    const mount = served.find(({ prefix }) => path?.startsWith(prefix) || `${path}/` === prefix);
    if (mount === undefined) return notFound(request, response);
    const inside = path.slice(mount.prefix.length);
    // The index of a folder names its files from the folder, which its address has to be then.
    const isFolder = statSync(join(mounts[mount.prefix], inside), { throwIfNoEntry: false })?.isDirectory() ?? false;
    if (isFolder && !path.endsWith("/")) {
      // One slash only: a path that begins with two would name another host.
      const target = `/${pathname.replace(/^\/+/, "")}/${query === undefined ? "" : `?${query}`}`;
      response.setHeader("location", target);
      return refuse(response, 308, `Moved to ${target}\n`);
    }
    request.url = `/${encodeURI(inside)}`;
    mount.serve(request, response);
  });
}

/** Listens on 127.0.0.1, on the first free port from `port` on (0: any). Resolves to the port. */
export function listen(server, port) {
  return new Promise((resolve, reject) => {
    const tryPort = (candidate) => {
      const failed = (error) => {
        if (error.code === "EADDRINUSE" && candidate !== 0 && candidate < 65_535) tryPort(candidate + 1);
        else reject(error);
      };
      server.once("error", failed);
      server.listen(candidate, "127.0.0.1", () => {
        server.off("error", failed);
        resolve(server.address().port);
      });
    };
    tryPort(port);
  });
}
