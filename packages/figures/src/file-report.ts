import { resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { checkFigures, type Difference, type Warning } from "./check.js";
import { readText, replaceText, sentenceOf } from "./disk.js";
import { formatOf, type FoundFile } from "./files.js";
import { mendFigures } from "./mend.js";
import { notTakenBy, type SystemName } from "./systems.js";

/** A difference and what became of it. */
export interface Place extends Omit<Difference, "edit"> {
  /** Whether it can be mended, or is. */
  readonly outcome: "mendable" | "mended" | "left" | "untold";
}

/** What became of one file. */
export interface FileReport {
  readonly file: string;
  /** Elements that were compared. */
  readonly compared: number;
  /** Stale figures, as many as were mended and left together. */
  readonly stale: number;
  readonly mended: number;
  readonly left: number;
  /** Places of which it could not be told what they should say. */
  readonly untold: number;
  /** What says figures and was not looked at. */
  readonly notChecked: Readonly<Record<string, number>>;
  /** What is odd and keeps no figure from being told, such as an attribute that nobody reads. */
  readonly warnings: readonly Warning[];
  /** Every place that is stale or could not be told. */
  readonly places: readonly Place[];
  /** What kept the file from being read or written. */
  readonly trouble: string | undefined;
}

/** Reads what a build's `src` names, where it is a file beside the article. */
function loadBeside(file: string): (src: string) => string | undefined {
  const page = pathToFileURL(resolve(file));
  return (src) => {
    try {
      // Where a site's own root lies is not known here.
      if (/^(?:[a-z][a-z0-9+.-]*:|[/\\])/i.test(src)) return undefined;
      const address = new URL(src, page);
      address.search = address.hash = "";
      return readText(fileURLToPath(address)).text;
    } catch {
      return undefined;
    }
  };
}

/** The places of a file, mended or not. */
const placesFrom = (differences: readonly Difference[], mended: "mended" | "mendable"): readonly Place[] =>
  differences.map(({ edit, ...one }) => ({
    ...one,
    outcome: one.kind === "untold" ? "untold" : edit ? mended : "left",
  }));

/** Looks at one file, and mends it where that is asked for; says what a system would not take, where one is named. */
export function reportOf({ path: file, trouble }: FoundFile, write: boolean, system?: SystemName): FileReport {
  const nothing = {
    file,
    compared: 0,
    stale: 0,
    mended: 0,
    left: 0,
    untold: 0,
    notChecked: {},
    warnings: [],
    places: [],
  };
  if (trouble !== undefined) return { ...nothing, trouble };
  try {
    const { text: source, seen } = readText(file);
    const options = { format: formatOf(file), load: loadBeside(file) };
    const mended = write ? mendFigures(source, options) : undefined;
    const { compared, differences, warnings: odd, notChecked } = mended ?? checkFigures(source, options);
    const warnings = system ? [...notTakenBy(system, source, options.format ?? "html"), ...odd] : odd;
    const stale = differences.filter(({ kind }) => kind === "stale").length;
    const untold = differences.length - stale;
    const report = { file, compared, stale, untold, notChecked, warnings, trouble: undefined };
    const asItWas = { ...report, mended: 0, left: stale, places: placesFrom(differences, "mendable") };
    if (!mended?.mended) return asItWas;
    try {
      replaceText(file, mended.text, seen);
    } catch (error) {
      return { ...asItWas, trouble: `${sentenceOf(error)}; it stays as it was` };
    }
    return { ...report, mended: mended.mended, left: mended.left, places: placesFrom(differences, "mended") };
  } catch (error) {
    return { ...nothing, trouble: error instanceof RangeError ? "is nested too deep to be read" : sentenceOf(error) };
  }
}
