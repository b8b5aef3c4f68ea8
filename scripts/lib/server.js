// A small server of static files: for the demo, and for tests that need a page.
import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize, sep } from "node:path";
import { pipeline } from "node:stream";

const types = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".md": "text/markdown; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".ico": "image/x-icon",
  ".woff2": "font/woff2",
};

/** The file that an address stands for, or undefined: nothing outside the mounted folders, and no hidden file. */
function fileFor(pathname, mounts) {
  let path;
  try {
    path = decodeURIComponent(pathname);
  } catch {
    return undefined;
  }
  if (path.includes("\0") || path.includes("\\") || path.split("/").some((part) => part.startsWith("."))) {
    return undefined;
  }
  const mount = Object.keys(mounts)
    .filter((prefix) => path.startsWith(prefix) || path + "/" === prefix)
    .sort((a, b) => b.length - a.length)[0];
  if (mount === undefined) return undefined;
  const folder = normalize(mounts[mount] + sep);
  const file = join(folder, path.slice(mount.length));
  return file.startsWith(folder) || file + sep === folder ? file : undefined;
}

function refuse(response, status, text) {
  response.writeHead(status, { "content-type": types[".txt"], "content-length": Buffer.byteLength(text) });
  response.end(text);
}

/**
 * Answers from folders. `mounts` maps the beginning of an address ("/seeds/") to a folder; the longest that fits counts.
 * `headers` are added to every answer.
 */
export function staticServer(mounts, { headers = {} } = {}) {
  return createServer(async (request, response) => {
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    if (request.method !== "GET" && request.method !== "HEAD") {
      response.setHeader("allow", "GET, HEAD");
      return refuse(response, 405, "Only GET and HEAD.\n");
    }
    const [pathname = "/", query] = (request.url ?? "/").split("?", 2);
    let file = fileFor(pathname, mounts);
    let found = file === undefined ? undefined : await stat(file).catch(() => undefined);
    if (found?.isDirectory()) {
      if (!pathname.endsWith("/")) {
        // One slash only: a path that begins with two would name another host.
        const target = `/${pathname.replace(/^\/+/, "")}/${query === undefined ? "" : `?${query}`}`;
        response.setHeader("location", target);
        return refuse(response, 308, `Moved to ${target}\n`);
      }
      file = join(file, "index.html");
      found = await stat(file).catch(() => undefined);
    }
    if (!found?.isFile()) return refuse(response, 404, "Not found.\n");
    const tag = `"${found.size.toString(36)}-${Math.trunc(found.mtimeMs).toString(36)}"`;
    response.setHeader("etag", tag);
    response.setHeader("cache-control", "no-cache");
    response.setHeader("x-content-type-options", "nosniff");
    if (request.headers["if-none-match"] === tag) return response.writeHead(304).end();
    response.writeHead(200, {
      "content-type": types[extname(file).toLowerCase()] ?? "application/octet-stream",
      "content-length": found.size,
    });
    if (request.method === "HEAD") return response.end();
    // A reader who leaves early is no fault of ours.
    pipeline(createReadStream(file, { end: Math.max(0, found.size - 1) }), response, () => {});
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
