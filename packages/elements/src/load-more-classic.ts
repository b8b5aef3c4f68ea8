import { lack, type Later } from "./shared/element/index.js";
import { scriptAddress } from "./shared/page/index.js";

const ours = /\/meshwright[\w.-]*\.js(\?|$)/;
// Known only while the script runs; one that was joined with others or put in as text has none of its own.
const own = globalThis.document?.currentScript as HTMLScriptElement | null | undefined;

/** The build puts the names and hashes of the files after the first here. */
declare const meshwrightFiles: Readonly<Record<Later, readonly [file: string, hash: string]>>;

/** Stands for `load-more.ts` in the self-contained script: brings a file from beside the first, under the same terms, in order. */
export function loadMore(what: Later): void {
  const [file, hash] = meshwrightFiles[what];
  const failed = (): void => lack(file);
  try {
    const near = own?.src ? own : [...document.scripts].find(({ src }) => ours.test(src))!;
    const script = document.createElement("script");
    script.async = false;
    script.nonce = near.nonce;
    script.crossOrigin = near.crossOrigin;
    // A page that pins the first file means all of them.
    if (near.integrity) script.integrity = hash;
    script.onerror = failed;
    script.src = scriptAddress(new URL(file, near.src).href);
    document.head.append(script);
  } catch {
    failed();
  }
}
