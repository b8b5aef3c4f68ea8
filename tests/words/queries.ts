// Every word of a figure's query that comes from a closed table: what is asked for with it, and which words there are.
import { figureSpecs, scopes, units, type FigureSpec, type QueryText } from "@meshwright/calc/report";
import { axles, groups, pairs, stages, versions } from "./sample.js";

export interface Asked {
  /** The attribute that the word stands in. */
  readonly field: string;
  readonly word: string;
  readonly words: readonly string[];
  /** What else is asked for. */
  readonly query: QueryText;
}

const idsFor = (of: FigureSpec["of"]): readonly string[] =>
  ({ output: axles, "output-or-stage": [...axles, ...stages], stage: stages, pair: pairs, address: [] })[
    of ?? "address"
  ];

function wordsOf(spec: FigureSpec): Readonly<Record<string, readonly string[]>> {
  return {
    of: idsFor(spec.of),
    with: spec.with ? axles : [],
    group: spec.group ? groups : [],
    base: spec.base ? [...axles, "mean"] : [],
    scope: spec.scope ? scopes : [],
    from: spec.from ? versions : [],
    measure: spec.measure ?? [],
    unit: spec.unit ? units[spec.unit] : [],
    sign: spec.sign ? ["none"] : [],
    drive: spec.drive ?? [],
  };
}

/** What has to be said beside a word, for the query to be whole. */
const beside = (spec: FigureSpec): QueryText =>
  spec.ofNeeded ? { of: spec.of === "address" ? "primary.driver" : "primary" } : {};

const figures = Object.keys(figureSpecs);

/** The fields of each figure; what several figures take alike is asked once. */
export function asked(): readonly Asked[] {
  const all: Asked[] = figures.map((word) => ({ field: "figure", word, words: figures, query: {} }));
  const seen = new Set<string>();
  for (const [figure, spec] of Object.entries(figureSpecs))
    for (const [field, words] of Object.entries(wordsOf(spec)))
      for (const word of words) {
        const key = JSON.stringify([field, word, words, field === "of" && spec.of]);
        if (!seen.has(key)) all.push({ field, word, words, query: { ...beside(spec), figure } });
        seen.add(key);
      }
  return all;
}
