import { inOrder } from "@meshwright/calc/article";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import {
  afterPaint,
  composed,
  findBuild,
  install,
  type Subject,
  type Overseen,
  type Overseer,
  type PageFinding,
} from "../element/index.js";
import { page, type BuildStore } from "../store/index.js";
import { whenWordsArrive } from "../words/index.js";
import { findingsOf } from "./judged.js";
import { drawSign } from "./sign.js";
import { strangersIn } from "./strangers.js";
import { warn } from "./warn.js";

/** What is known of one element. */
interface Judged {
  findings: readonly Finding[];
  /** Whose list its findings stand in: its own build's, else the nearest one's. */
  store: BuildStore | undefined;
}

/** How long after a page has loaded what is still undefined counts as forgotten, in milliseconds. */
const rest = 1000;

const isDark = (findings: readonly Finding[]): boolean => findings.some(({ severity }) => severity === "error");

class Findings implements Overseer {
  readonly #judged = new Map<Subject, Judged>();
  readonly #lists = new Set<Overseen>();
  readonly #lost = new Set<Subject>();
  /** Elements that have just come and are not kept waiting. */
  readonly #waiting = new Set<Subject>();
  /** Elements of our names that nothing has defined, and whose list each stands in. */
  readonly #strangers = new Map<Element, BuildStore | undefined>();
  readonly #awaited = new Set<string>();
  #isAtRest = false;
  #soon: Promise<void> | undefined;
  readonly #names = new MutationObserver((records) => {
    for (const target of new Set(records.map((record) => record.target as Subject)))
      if (this.#judged.has(target)) target.judge();
  });

  judge(element: Subject): boolean {
    if (!this.#judged.has(element)) {
      this.#judged.set(element, { findings: [], store: undefined });
      this.#names.observe(element, { attributes: true });
    }
    const judged = this.#judged.get(element)!;
    const own = findingsOf(element);
    judged.findings = own.length || !element.fault || this.#isReaders(element) ? own : [faultOf(element.fault)];
    this.#file(element, judged);
    return isDark(own);
  }

  later(element: Subject): void {
    if (!this.#waiting.size) afterPaint(this.#lookAtWaiting);
    this.#waiting.add(element);
  }

  readonly #lookAtWaiting = (): void => {
    const waiting = [...this.#waiting];
    this.#waiting.clear();
    for (const element of waiting) element.judge();
  };

  /** What cannot be drawn of a reader's version is nothing that the author could mend. */
  #isReaders({ home, at }: Subject): boolean {
    return !at && home !== undefined && home.store.build !== home.store.article;
  }

  /** Puts what was found where it is told. */
  #file(element: Subject, judged: Judged): void {
    const { findings } = judged;
    const store = (element.home ?? (findings.length ? findBuild(element, undefined) : undefined))?.store;
    if (store !== judged.store) judged.store?.complain(element);
    judged.store = store;
    store?.complain(element, findings);
    if (element.home || !findings.length) {
      if (this.#lost.delete(element)) drawSign(element, []);
    } else {
      this.#lost.add(element);
      void this.#tell();
    }
  }

  gone(element: Subject): void {
    this.#judged.get(element)?.store?.complain(element);
    this.#judged.delete(element);
    this.#waiting.delete(element);
    if (this.#lost.delete(element)) drawSign(element, []);
  }

  published(holder: Overseen): void {
    for (const element of [...this.#judged.keys()]) if (element.home === holder) element.judge();
    this.changed(holder);
  }

  changed(holder: Overseen): void {
    this.#lists.add(holder);
    void this.#tell();
  }

  async checked(holder: Overseen): Promise<void> {
    this.#isAtRest ||= document.readyState === "complete";
    this.changed(holder);
    await this.#tell();
    while (!holder.isRead) {
      await holder.read;
      this.changed(holder);
      await this.#tell();
    }
  }

  /** The address may have come to say that the author is here, or no longer; or the words may have come that signs are told in. */
  readonly lookAround = (): void => {
    for (const holder of page().holders) if ("ownFindings" in holder) this.changed(holder as Overseen);
    void this.#tell();
  };

  /** All that was still to come has come: whoever has no build now has none. */
  readonly arrived = (): void => {
    for (const element of [...this.#judged.keys()]) if (!element.home) element.judge();
    this.awaitRest();
  };

  /** What is defined when its turn comes is not told of before. */
  awaitRest(): void {
    setTimeout(() => {
      this.#isAtRest = true;
      void this.#tell();
    }, rest);
  }

  /** Looks which elements nothing has defined, and puts that where it is told. */
  #lookAtStrangers(): void {
    if (!this.#isAtRest) return;
    const roots = new Set<Node>([document]);
    for (const element of this.#judged.keys()) if (element.isConnected) roots.add(element.getRootNode());
    for (const holder of page().holders) roots.add(holder.getRootNode());
    const found = strangersIn(roots);
    for (const [element, store] of this.#strangers) {
      if (found.has(element)) continue;
      this.#strangers.delete(element);
      if (!this.#judged.has(element as Subject)) store?.complain(element);
    }
    for (const [element, findings] of found) {
      const store = findBuild(element, element.getAttribute("build"))?.store ?? findBuild(element, undefined)?.store;
      const before = this.#strangers.get(element);
      if (before !== store) before?.complain(element);
      this.#strangers.set(element, store);
      store?.complain(element, findings);
      if (!store) for (const finding of findings) warn({ ...finding, element }, element);
      if (this.#awaited.has(element.localName)) continue;
      this.#awaited.add(element.localName);
      // It may yet come. A name that can be defined by nobody stays what it is.
      customElements.whenDefined(element.localName).then(
        () => this.#tell(),
        () => undefined,
      );
    }
  }

  /** Tells everything once things have come to rest: what is drawn in this turn is not kept waiting. */
  #tell(): Promise<void> {
    return (this.#soon ??= new Promise<void>((resolve) => {
      const begin = () => setTimeout(resolve, 0);
      if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", begin, { once: true });
      else begin();
    }).then(() => {
      this.#soon = undefined;
      this.#tellAll();
    }));
  }

  #tellAll(): void {
    this.#lookAtWaiting();
    this.#lookAtStrangers();
    for (const holder of [...this.#lists]) {
      // One that is gone says so itself when it comes back, and must not be kept until then.
      if (holder.isConnected && !holder.isRead) continue;
      this.#lists.delete(holder);
      if (!holder.isConnected) continue;
      const findings = listOf(holder);
      for (const finding of findings) warn(finding, finding.element ?? holder);
      holder.told(findings);
      drawSign(holder as unknown as Subject, findings);
    }
    for (const element of this.#lost) {
      const findings = this.#judged.get(element)!.findings.map((finding): PageFinding => ({ ...finding, element }));
      for (const finding of findings) warn(finding, element);
      drawSign(element, findings);
    }
  }
}

const faultOf = (why: string): Finding => errorOf("meaning", "figure-missing", "", { element: "", why });

/** All that is wrong with a build: its own data first, then its elements in the order of the page. */
function listOf({ ownFindings, store }: Overseen): readonly PageFinding[] {
  const { all } = store.complaints;
  const elements = inOrder(composed, [...all.keys()] as Element[]);
  return [
    ...ownFindings,
    ...elements.flatMap((element) => all.get(element)!.map((finding): PageFinding => ({ ...finding, element }))),
  ];
}

/** Begins to look after what is wrong on this page. Does nothing outside a browser. */
export function watchFindings(): void {
  if (!globalThis.customElements || !globalThis.document) return;
  const findings = new Findings();
  install(findings);
  addEventListener("hashchange", findings.lookAround);
  whenWordsArrive(findings.lookAround);
  if (document.readyState === "complete") findings.awaitRest();
  else addEventListener("load", findings.arrived, { once: true });
}
