import { MeshwrightError } from "../../exact/index.js";

const marks: readonly (readonly [string, readonly number[]])[] = [
  ["utf-8", [0xef, 0xbb, 0xbf]],
  ["utf-16le", [0xff, 0xfe]],
  ["utf-16be", [0xfe, 0xff]],
];

/** How far into the bytes is looked for the zeros that two bytes a letter leave. */
const looked = 1000;

/** Where every other byte is mostly zero, the letters take two bytes each. */
function widthOf(bytes: Uint8Array): string | undefined {
  const zeros = [0, 0];
  const end = Math.min(bytes.length, looked);
  for (let n = 0; n < end; n++) if (!bytes[n]) zeros[n % 2]! += 1;
  if (zeros[1]! > end / 8 && zeros[1]! > 4 * zeros[0]!) return "utf-16le";
  return zeros[0]! > end / 8 && zeros[0]! > 4 * zeros[1]! ? "utf-16be" : undefined;
}

/** What Windows-1252 has where Latin-1 has controls; not every decoder of that name knows it. */
const windows = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

function decoded(bytes: Uint8Array, encoding: string, fatal = false): string | undefined {
  try {
    return new TextDecoder(encoding, { fatal }).decode(bytes);
  } catch {
    return undefined;
  }
}

const windowsText = (bytes: Uint8Array): string =>
  decoded(bytes, "windows-1252")!.replace(/[\x80-\x9f]/g, (control) => windows[control.charCodeAt(0) - 0x80]!);

/**
 * The text of a file. Its encoding is what its first bytes say, else what two bytes a letter look like, else UTF-8 where
 * that is possible, else Windows-1252; it is told, so that it can be set where it was wrong.
 *
 * @param encoding a label of the Encoding Standard, where it is known
 * @throws MeshwrightError `encoding-unknown`
 *
 * @example
 * import { textOf } from "@meshwright/calc/parts";
 * textOf(Uint8Array.of(0x5a, 0xe4, 0x68, 0x6e, 0x65)); // => { text: "Zähne", encoding: "windows-1252" }
 */
export function textOf(
  source: Uint8Array | ArrayBuffer,
  encoding?: string,
): { readonly text: string; readonly encoding: string } {
  const bytes = source instanceof Uint8Array ? source : new Uint8Array(source);
  const marked = marks.find(([, mark]) => mark.every((byte, n) => bytes[n] === byte))?.[0];
  const known = encoding ?? marked ?? widthOf(bytes);
  if (known === "windows-1252") return { text: windowsText(bytes), encoding: known };
  const text = decoded(bytes, known ?? "utf-8", known === undefined);
  if (text !== undefined) return { text, encoding: known ?? "utf-8" };
  if (known === undefined) return { text: windowsText(bytes), encoding: "windows-1252" };
  throw new MeshwrightError(
    "encoding-unknown",
    "encoding",
    `Found "${known.slice(0, 40)}"; expected an encoding such as utf-8.`,
  );
}
