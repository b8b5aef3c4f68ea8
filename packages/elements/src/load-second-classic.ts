import { scriptAddress } from "./shared/page/index.js";

const ours = /\/meshwright[\w.-]*\.js(\?|$)/;
// Known only while the script runs; one that was joined with others or put in as text has none of its own.
const own = globalThis.document?.currentScript as HTMLScriptElement | null | undefined;

/** The build puts the second file's name and hash here. */
declare const meshwrightSecond: readonly [file: string, hash: string];

/** Stands for `load-second.ts` in the self-contained script: brings the second file from beside the first, under the same terms. */
export function loadSecond(): void {
  try {
    const near = own?.src ? own : [...document.scripts].find(({ src }) => ours.test(src))!;
    const [file, hash] = meshwrightSecond;
    const script = document.createElement("script");
    script.nonce = near.nonce;
    script.crossOrigin = near.crossOrigin;
    // A page that pins the first file means all of them.
    if (near.integrity) script.integrity = hash;
    script.onerror = () => console.warn(`Meshwright: ${file} could not be loaded; figures stay alive.`);
    script.src = scriptAddress(new URL(file, near.src).href);
    document.head.append(script);
  } catch {
    // Figures stay alive, and links are not read.
  }
}
