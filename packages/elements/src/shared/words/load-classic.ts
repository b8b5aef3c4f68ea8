import { scriptAddress } from "../page/index.js";

const languages = ["ar", "de", "es", "fr", "ja"];
const ours = /\/meshwright[\w.-]*\.js(\?|$)/;

// Known only while the script runs; one that was joined with others or put in as text has none of its own.
const own = globalThis.document?.currentScript as HTMLScriptElement | null | undefined;

/** The build puts the hashes of the languages' files here. */
declare const meshwrightLanguages: Readonly<Record<string, string>>;

/**
 * Brings `words-de.js` and the like from beside the self-contained script: a file that adds its own table, from disk as
 * well. Where the script cannot be found, or the page refuses, everything stays English.
 */
export const beside =
  (kind: string) =>
  (language: string): undefined => {
    if (!languages.includes(language)) return;
    try {
      const near = own?.src ? own : [...document.scripts].find(({ src }) => ours.test(src))!;
      const script = document.createElement("script");
      script.nonce = near.nonce;
      script.crossOrigin = near.crossOrigin;
      // A page that pins one file means all of them.
      if (near.integrity) script.integrity = `sha256-${meshwrightLanguages[`${kind}-${language}`]}`;
      script.charset = "utf-8";
      script.src = scriptAddress(new URL(`${kind}-${language}.js`, near.src).href);
      document.head.append(script);
    } catch {
      // English, then.
    }
  };

/** Stands for `load.ts` in the self-contained script. */
export const load = beside("words");
export const loadFigures = beside("figures");
export const loadFindings = beside("findings");
export const loadReports = beside("reports");
