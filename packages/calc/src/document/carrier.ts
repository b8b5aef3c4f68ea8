import type { Build } from "../drivetrain/index.js";
import { fromLetters, inLetters, linkFault, opened, sealed } from "./link-text.js";
import { readUnfinished } from "./read-build.js";
import { refused, type Reading } from "./reading.js";

// The whole build in a link is deflated by the platform: browsers, workers and Node all have it, and a library of our own would
// be a dependency. It works in streams, so these two are asynchronous.

const longestLink = 2e6;
/** As long as a document that is read may be. */
const longestText = 5e6;
const piece = 0x8000;

/** Sends bytes through a stream that packs or unpacks them; not more of them than `most`. */
async function through(
  bytes: Uint8Array<ArrayBuffer>,
  { readable, writable }: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array> {
  const writer = writable.getWriter();
  // What is wrong is told by the other end.
  writer.write(bytes).catch(() => undefined);
  writer.close().catch(() => undefined);
  const reader = readable.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    const one = read.value as Uint8Array;
    length += one.length;
    if (length > most) {
      reader.cancel().catch(() => undefined);
      throw new RangeError("too long");
    }
    pieces.push(one);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const one of pieces) {
    whole.set(one, at);
    at += one.length;
  }
  return whole;
}

/** Bytes as text of a character each. */
function charactersOf(bytes: Uint8Array): string {
  let text = "";
  for (let at = 0; at < bytes.length; at += piece) text += String.fromCharCode(...bytes.subarray(at, at + piece));
  return text;
}

/**
 * A link that carries the whole build, words and all: for the notebook and for pages that show nothing else. Letters, digits,
 * - and _, a letter last.
 *
 * @example
 * import { buildFromLink, linkOfBuild, parseBuild } from "@meshwright/calc/document";
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] });
 * const link = await linkOfBuild(build);
 * (await buildFromLink(link)).build; // => build
 */
export async function linkOfBuild(build: Build): Promise<string> {
  const text = new TextEncoder().encode(JSON.stringify(build));
  return sealed("build", inLetters(charactersOf(await through(text, new CompressionStream("deflate-raw"), Infinity))));
}

/** The build that a link carries, read and checked like any other document. Never rejects. */
export async function buildFromLink(link: string): Promise<Reading> {
  const content = opened(link, "build", longestLink);
  if (typeof content !== "string") return refused(content);
  try {
    const bytes = Uint8Array.from(fromLetters(content), (one) => one.charCodeAt(0));
    const text = await through(bytes, new DecompressionStream("deflate-raw"), longestText);
    return readUnfinished(new TextDecoder("utf-8", { fatal: true }).decode(text));
  } catch {
    return refused(linkFault("link-broken"));
  }
}
