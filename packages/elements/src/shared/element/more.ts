import type { Build, GearSet } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import { fetchBy } from "../tables/index.js";
import { page, runOn, type BuildHolder, type BuildStore, type Engine } from "../store/index.js";
import { lookAgain, type MeshwrightElement } from "./element.js";
import { sayBy, type SayFigure } from "./texts.js";

/** What was found where a build was looked for. */
export interface Found {
  readonly build?: Build | undefined;
  readonly findings: readonly Finding[];
}

/** Where the data of a build come from: JSON, attributes by name, or an address where nothing could be had. */
export type Source =
  | { readonly json: unknown }
  | { readonly notation: Readonly<Record<string, string>> }
  | { readonly address: string; readonly found: string | number }
  | undefined;

/** Looks after what an address says about a build, and what it is to say. */
export interface Linking {
  /** Takes in what the address says, if it says anything new. */
  look(): void;
  /** The build as it stands is another. */
  changed(): void;
  /** Draws what there is to say of a version that a link has brought. */
  draw(): void;
  /** The build leaves the page. */
  left(): void;
  /** A link that opens the article with the reader's changes in it. */
  link(): string;
  /** What of the reader's changes a link leaves out. */
  leftOut(): readonly Finding[];
  /** What is wrong with the link that the page was opened by. */
  readonly refused: readonly Finding[];
}

/** What a count tells of itself to what stands around it. */
export interface CountState {
  readonly element: MeshwrightElement;
  readonly root: ShadowRoot;
  /** Hosts that are left empty: for the keys, and for a choice among sets in the place of the field. */
  readonly keys: HTMLElement;
  readonly choice: HTMLElement;
  readonly name: string;
  readonly text: string;
  readonly open: "tray" | "strip" | undefined;
  readonly message: string | undefined;
  readonly build: Build | undefined;
  readonly store: BuildStore | undefined;
  /** The address; of a set, where its counts may not be changed one by one, `isSet`. */
  readonly address: string;
  readonly isSet: boolean;
  /** Whether the tab key passes it by. */
  readonly passed: boolean;
  step(by: number): void;
  undo(): void;
  take(set: GearSet): void;
}

/** What stands around a count while somebody changes it. */
export interface Tray {
  /** Draws it as the count's state is. */
  draw(): void;
  /** What the last change came to, for those who listen. */
  outcome(): string;
}

/** What comes after an article's first file, by the name of what it is for. Each may be missing. */
export interface More {
  /** Works builds out: whole layers, steps, groups, findings. */
  readonly engine?: Engine;
  /** Reads the data of a build, and says what is wrong with them. */
  readonly check?: (source: Source, element: BuildHolder & { readonly mode: string | null }) => Found;
  /** Makes the text of every figure. */
  readonly figures?: SayFigure;
  /** Fetches a language's strings. */
  readonly words?: (kind: string, language: string) => Promise<object | undefined> | undefined;
  /** Versions that arrive by the address, and links. */
  readonly link?: (build: BuildHolder) => Linking;
  /** Keys beside a count, and choices among sets. */
  readonly tray?: (state: CountState) => Tray;
  /** What was found, in the language that stands there. */
  readonly findingText?: (finding: Finding, locale: string) => string;
  /** What a value at an address is called; the count itself knows it without its axle. */
  readonly nameOf?: (build: Build, address: string, locale: string) => string;
  /** The counts of a set, as they stand in a sentence. */
  readonly setText?: (set: GearSet, locale: string) => string;
  /** Marks what differs from the article's, with what the article has; or, with nothing, no longer. */
  readonly mark?: (element: MeshwrightElement, mark: HTMLElement, article: string | undefined) => void;
  /** Says something to those who listen. */
  readonly announce?: (root: ShadowRoot, text: () => string) => void;
}

/** The number of what the files of a page say to each other by. */
export const contract = 1;

let known: More = {};

/** What has come by now. */
export const more = (): More => known;

/** A build that reads its data again once more can be read. */
interface Renewed extends BuildHolder {
  renew?(): void;
}

/** Takes in what has come; everything on the page looks again. Another contract's leaves the page as it is. */
export function extend(part: More, number: number): void {
  if (number !== contract) {
    console.warn(
      `Meshwright's files do not belong together: contract ${number} met ${contract}. The page stays as it is.`,
    );
    return;
  }
  known = { ...known, ...part };
  if (part.engine) runOn(part.engine);
  if (part.figures) sayBy(part.figures);
  if (part.words) fetchBy(part.words);
  for (const holder of page().holders as Set<Renewed>) holder.renew?.();
  lookAgain();
}
