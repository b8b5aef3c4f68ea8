import { readEmbedded } from "@meshwright/calc/article";
import type { Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { hasVersion } from "@meshwright/calc/report";
import { findBuild, forgetTexts, lookAgain } from "../shared/element/index.js";
import { page, type BuildHolder, type BuildStore } from "../shared/store/index.js";

/** Draws again what is held against another build, whenever that is another. */
class Relay {
  readonly #to: BuildStore;
  readonly #of: BuildStore;
  #article: Build | undefined;

  constructor(to: BuildStore, of: BuildStore) {
    this.#to = to;
    this.#of = of;
    this.#article = of.article;
    of.followers.add(this);
  }

  stateChanged(): void {
    // What its author has published anew is judged anew.
    if (this.#article !== (this.#article = this.#of.article)) return lookAgain();
    forgetTexts();
    // Two that are held against each other would go on for ever.
    for (const follower of this.#to.followers) if (!(follower instanceof Relay)) follower.stateChanged();
  }
}

const relays = new WeakMap<BuildStore, WeakSet<BuildStore>>();

function follow(to: BuildStore, of: BuildStore): void {
  let known = relays.get(to);
  if (!known) relays.set(to, (known = new WeakSet()));
  if (known.has(of)) return;
  known.add(of);
  new Relay(to, of);
}

const holderWith = (store: BuildStore): BuildHolder | undefined =>
  [...page().holders].find((holder) => holder.store === store);

/** Builds by the addresses of their documents: nothing while one is on its way, or where it cannot be had. */
const documents = new Map<string, Evaluation | undefined>();

/** A reference by address, fetched once somebody is held against it. */
function referred({ src }: { readonly src: string }, home: BuildHolder & { readonly src?: string | null }) {
  const address = new URL(src, new URL(home.src ?? "", home.baseURI)).href;
  if (!documents.has(address)) {
    documents.set(address, undefined);
    void fetch(address)
      .then((answer) => (answer.ok ? answer.text() : undefined))
      .then((text) => {
        const { build } = text === undefined ? { build: undefined } : readEmbedded(text);
        if (!build) return console.warn(`Meshwright: no build could be read at ${address}.`);
        documents.set(address, evaluate(build));
        lookAgain();
      })
      .catch((error: unknown) => console.warn(`Meshwright: ${address} could not be loaded.`, error));
  }
  return documents.get(address);
}

/** Another build of the page by its id, looked for from where a build stands as its elements look for theirs. */
function another(home: BuildHolder, id: string): BuildHolder | undefined {
  const found = home.id === id ? undefined : findBuild(home, id);
  return found === home ? undefined : found;
}

/** What a build is held against by a name which none of its versions has: as it stands now, or as it is published. */
export function elsewhere(of: BuildStore, id: string, at: string): Evaluation | undefined {
  const { article } = of;
  const home = article && !hasVersion(article, id) ? holderWith(of) : undefined;
  if (!home) return undefined;
  const { src } = article!.references?.find((one) => one.id === id) ?? {};
  if (src !== undefined) return referred({ src }, home);
  const other = another(home, id)?.store;
  if (!other) return undefined;
  follow(of, other);
  return other.evaluation(at === "article" ? at : "");
}

/** Whether a change is counted from a build that there is, and whose data are not here yet. */
export function isComing(
  { build }: Evaluation,
  from: string | number | null | undefined,
  version: (id: string) => Evaluation | undefined,
): boolean {
  const id = String(from ?? "");
  if (!id || hasVersion(build, id) || version(id)) return false;
  return (
    [...page().holders].some((holder) => holder.id === id) ||
    !!build.references?.some((one) => one.id === id && one.src !== undefined)
  );
}
