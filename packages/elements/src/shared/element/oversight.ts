import { isPagesOwn } from "@meshwright/calc/document";
import { MeshwrightError } from "@meshwright/calc/exact";
import type { Finding } from "@meshwright/calc/stages";
import type { BuildHolder } from "../store/index.js";

/** Something wrong or odd on a page: of a build's own data, or of an element that belongs to it. */
export interface PageFinding extends Finding {
  /** The element that asks for what there is not; none: the build itself. */
  readonly element?: Element;
}

/** An element that is looked at. */
export interface Subject extends HTMLElement {
  readonly build: string | null;
  readonly at?: string | null;
  readonly locale: string;
  /** The build that it stands with. */
  readonly home: BuildHolder | undefined;
  /** What stood against its last text, though nothing is wrong with how that was asked for. */
  readonly fault: string | undefined;
  /** Looks again whether an error keeps it from saying anything. */
  judge(): void;
}

/** A build whose findings are collected. */
export interface Overseen extends BuildHolder {
  /** Whether its data have been read: while they are loading nothing is said. */
  readonly isRead: boolean;
  /** Settled when its data are there, or cannot be had. */
  readonly read: Promise<void>;
  /** What is wrong with its own data, or with the link that it was opened by. */
  readonly ownFindings: readonly Finding[];
  /** All that is wrong, now that it is known. */
  told(findings: readonly PageFinding[]): void;
}

/**
 * Whoever looks after what is wrong on a page. It may arrive later than the elements, which are right without it: what has an
 * attribute that they do not know leaves the author's text until somebody has looked at it.
 */
export interface Overseer {
  /** Looks at an element, and says whether an error keeps it from saying anything. */
  judge(element: Subject): boolean;
  /** Looks at an element once what is drawn in this turn has been drawn. */
  later(element: Subject): void;
  /** An element is gone. */
  gone(element: Subject): void;
  /** A build has come or has other data: all its elements have to be looked at. */
  published(holder: Overseen): void;
  /** What is wrong with a build may be something else. */
  changed(holder: Overseen): void;
  /** Settled when a build and the elements that are on the page now have been looked at. */
  checked(holder: Overseen): Promise<void>;
}

let overseer: Overseer | undefined;
let arrived: (one: Overseer) => void;
let missed: ((why: MeshwrightError) => void) | undefined;
const arrival = new Promise<Overseer>((resolve, reject) => {
  arrived = resolve;
  missed = reject;
});
// It is no fault that nobody waits.
arrival.catch(() => undefined);

/** The page's overseer, once there is one. */
export const oversight = (): Overseer | undefined => overseer;

/** The same, for whoever can wait; rejected where it cannot be had. */
export const whenOverseen = async (): Promise<Overseer> => overseer ?? arrival;

/** Takes over: whoever was first stays. */
export function install(one: Overseer): void {
  if (overseer) return;
  overseer = one;
  arrived(one);
}

/** A file could not be loaded: the console says so once, of the first, and whoever waits is told. */
export function lack(file: string): void {
  if (!missed) return;
  const error = new MeshwrightError("load-failed", file, `${file} could not be loaded; only builds in JSON are alive.`);
  console.warn(`${error}`);
  missed(error);
  missed = undefined;
}

/** Whether an attribute is the page's own: what begins like a handler of events and is none may be a slip. */
export const isPages = (element: Element, name: string): boolean =>
  isPagesOwn(name) && (!name.startsWith("on") || name in element);

const observed = new WeakMap<object, ReadonlySet<string>>();

/** Whether an element has an attribute that neither it nor the page knows. */
export const isStrange = (element: Element): boolean => {
  const type = element.constructor as unknown as { readonly observedAttributes: readonly string[] };
  let known = observed.get(type);
  if (!known) observed.set(type, (known = new Set(type.observedAttributes)));
  return element.getAttributeNames().some((name) => !known.has(name) && !isPages(element, name));
};
