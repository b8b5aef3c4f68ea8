import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { connect } from "node:net";
import type { Server } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { listen, staticServer } from "../../scripts/lib/server.js";

let folder: string;
let server: Server;
let port: number;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "meshwright-server-"));
  mkdirSync(join(folder, "site", "inner"), { recursive: true });
  mkdirSync(join(folder, "seeds"));
  writeFileSync(join(folder, "secret.txt"), "secret");
  writeFileSync(join(folder, "site", "index.html"), "<p>start");
  writeFileSync(join(folder, "site", "inner", "index.html"), "<p>inner");
  writeFileSync(join(folder, "site", ".hidden"), "hidden");
  writeFileSync(join(folder, "site", "empty.txt"), "");
  writeFileSync(join(folder, "site", "large.txt"), "x".repeat(4_000_000));
  writeFileSync(join(folder, "seeds", "a.json"), "{}");
  writeFileSync(join(folder, "site", "inner", "grün 1.js"), "1");
  const headers = { "content-security-policy": "default-src 'self'" };
  server = staticServer({ "/": join(folder, "site"), "/seeds/": join(folder, "seeds") }, { headers });
  port = await listen(server, 0);
});

afterAll(() => {
  server.closeAllConnections();
  server.close();
  rmSync(folder, { recursive: true });
});

/** The status line and the rest of an answer to a request target that fetch would tidy up first. */
function raw(target: string, method = "GET"): Promise<string> {
  return new Promise((resolve) => {
    let text = "";
    const socket = connect(port, "127.0.0.1", () => {
      socket.write(`${method} ${target} HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n`);
    });
    socket.setEncoding("utf8").on("data", (part: string) => (text += part));
    socket.on("close", () => resolve(text));
  });
}

const get = (path: string, init?: RequestInit) => fetch(`http://127.0.0.1:${port}${path}`, init);

describe("the server of static files", () => {
  it("answers with the index of a folder, and with files of other mounted folders", async () => {
    const page = await get("/?x=1");
    expect(page.headers.get("content-type")).toBe("text/html;charset=utf-8");
    expect(await page.text()).toBe("<p>start");
    const json = await get("/seeds/a.json");
    expect(json.headers.get("content-type")).toBe("application/json");
    expect(await (await get("/empty.txt")).text()).toBe("");
  });

  it("finds names beyond ASCII, and says that a script is one", async () => {
    const script = await get(`/inner/${encodeURIComponent("grün 1.js")}`);
    expect(script.headers.get("content-type")).toMatch(/^text\/javascript/);
    expect(await script.text()).toBe("1");
  });

  it("shows what was written since it began", async () => {
    writeFileSync(join(folder, "site", "later.txt"), "first");
    expect(await (await get("/later.txt")).text()).toBe("first");
    writeFileSync(join(folder, "site", "later.txt"), "second and longer");
    expect(await (await get("/later.txt")).text()).toBe("second and longer");
  });

  it.each(["/", "/missing.txt", "/inner"])("lays its policy on the answer to %s", async (path) => {
    const { headers } = await get(path, { redirect: "manual" });
    expect(headers.get("content-security-policy")).toBe("default-src 'self'");
    expect(headers.get("x-content-type-options")).toBe("nosniff");
  });

  it("sends a part of a file where one is asked for", async () => {
    const part = await get("/seeds/a.json", { headers: { range: "bytes=1-1" } });
    expect(part.status).toBe(206);
    expect(part.headers.get("content-range")).toBe("bytes 1-1/2");
    expect(await part.text()).toBe("}");
    expect((await get("/seeds/a.json", { headers: { range: "bytes=9-" } })).status).toBe(416);
  });

  it("sends a folder without its slash to the one with it, never to another host", async () => {
    expect((await get("/inner", { redirect: "manual" })).headers.get("location")).toBe("/inner/");
    expect((await get("/seeds?a=b", { redirect: "manual" })).headers.get("location")).toBe("/seeds/?a=b");
    expect(await raw("//inner")).not.toMatch(/location: \/\//i);
  });

  it.each([
    "/../secret.txt",
    "/inner/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "/..%5csecret.txt",
    "/seeds/..%2f..%2fsecret.txt",
    "/.hidden",
    "/%00",
    "/%E0%A4%A",
    "/missing.txt",
  ])("holds back %s", async (target) => {
    const answer = await raw(target);
    expect(answer).toMatch(/^HTTP\/1\.1 404 /);
    expect(answer).not.toMatch(/secret|hidden$/);
  });

  it("answers 304 for what the client has, and 405 for what it cannot do", async () => {
    const tag = (await get("/")).headers.get("etag") ?? "";
    expect((await get("/", { headers: { "if-none-match": tag } })).status).toBe(304);
    expect((await get("/", { method: "POST" })).status).toBe(405);
    expect(await (await get("/", { method: "HEAD" })).text()).toBe("");
  });

  it("goes on after a client that leaves in the middle", async () => {
    await new Promise<void>((resolve) => {
      const socket = connect(port, "127.0.0.1", () => {
        socket.write("GET /large.txt HTTP/1.1\r\nhost: x\r\n\r\n");
        socket.once("data", () => socket.destroy());
      });
      socket.on("close", () => resolve());
    });
    expect((await get("/")).status).toBe(200);
  });

  it("takes the next free port where the wanted one is in use", async () => {
    const second = staticServer({});
    try {
      expect(await listen(second, port)).toBeGreaterThan(port);
    } finally {
      second.close();
    }
  });
});
