import { applyChanges, buildFromLink, linkOfBuild, readUnfinished } from "@meshwright/calc/document";
import { labelAt, valueAt, type Build, type Measurement } from "@meshwright/calc/drivetrain";
import type { Stage } from "@meshwright/calc/stages";
import { emptyTitle, newNotebook, type BenchNote, type Notebook } from "./notebook.js";

// A drivetrain that travels in an address: as a code on the card, as a link with what was measured, out of an article.

/** What a notebook adds to a drivetrain that it sends off, so that what comes back is known. */
interface Sent {
  readonly "x-notebook"?: unknown;
  readonly "x-bench"?: unknown;
}

const withoutFitted = (stages: readonly Stage[]): readonly Stage[] =>
  stages.map((stage) => {
    const { fitted: _, ...bare } = stage;
    const { positions } = bare as { positions?: readonly { stages?: readonly Stage[] }[] };
    if (!positions) return bare as Stage;
    const inside = positions.map((one) => (one.stages ? { ...one, stages: withoutFitted(one.stages) } : one));
    return { ...bare, positions: inside } as unknown as Stage;
  });

/** Counts, mounts and wheels of a drivetrain: what is needed on the bench, and no more. */
function bare(build: Build): Build {
  const {
    parts: _parts,
    alternatives: _alternatives,
    references: _references,
    revisions: _revisions,
    measurements: _measurements,
    ...rest
  } = build;
  return {
    ...rest,
    stages: withoutFitted(build.stages),
    ...(build.branches && {
      branches: build.branches.map((branch) => ({ ...branch, stages: withoutFitted(branch.stages) })),
    }),
    outputs: build.outputs.map((output) => ({ ...output, stages: withoutFitted(output.stages) })),
  };
}

/** The link that opens counts and mounts of a notebook somewhere else. */
export const linkForBench = ({ build, id }: Notebook): Promise<string> =>
  linkOfBuild({ ...bare(build!), "x-notebook": id } as Build);

/** The link that brings back what was measured. */
export const linkWithMeasured = ({ build, id, bench }: Notebook): Promise<string> =>
  linkOfBuild({
    ...bare(build!),
    ...(build!.measurements && { measurements: build!.measurements }),
    "x-notebook": id,
    ...(bench && { "x-bench": bench }),
  } as Build);

/** What came by an address. */
export interface Carried {
  /** A notebook made of it. */
  readonly notebook: Notebook;
  /** The notebook that it was sent from; none: out of an article. */
  readonly from: string | undefined;
  /** What the link holds that cannot be read, in a sentence each. */
  readonly left: readonly string[];
}

const isNote = (one: unknown): one is BenchNote => {
  const { of, text, date, with: counts } = (one ?? {}) as Readonly<Record<string, unknown>>;
  return [of, text, date].every((field) => typeof field === "string") && typeof counts === "object" && counts !== null;
};

/** What is said of centre distances in a link that cannot be read. */
const unreadText = (n: number): string =>
  n === 1
    ? "A centre distance in the link cannot be read: it was changed on its way."
    : `${n} centre distances in the link cannot be read: they were changed on their way.`;

/** Reads the drivetrain that an address carries; a sentence where it cannot be read. */
export async function carriedIn(link: string, freshId: string): Promise<Carried | string> {
  const reading = await buildFromLink(link);
  if (!reading.ok)
    return `The drivetrain in this link cannot be read: it was cut off or changed on its way. ${reading.findings[0]?.message ?? ""}`.trim();
  const { "x-notebook": sender, "x-bench": notes, ...rest } = reading.build as Build & Sent;
  const again = readUnfinished(rest);
  if (!again.ok) return "The drivetrain in this link cannot be read.";
  const { build } = again;
  const from = typeof sender === "string" && /^[\w-]{4,80}$/.test(sender) ? sender : undefined;
  const all: readonly unknown[] = Array.isArray(notes) ? notes : [];
  const bench = all.filter(isNote);
  const notebook = {
    ...newNotebook(from ?? freshId, build.title ?? emptyTitle),
    build,
    ...(bench.length && { bench }),
  };
  const unread = all.length - bench.length;
  return { notebook, from, left: unread ? [unreadText(unread)] : [] };
}

const sameMeasure = (one: object, other: object): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What was measured elsewhere and is not in a notebook yet. */
export interface Brought {
  readonly measurements: readonly Measurement[];
  readonly bench: readonly BenchNote[];
  /** What the notebook is with both taken in. */
  readonly fields: Partial<Pick<Notebook, "build" | "bench">>;
  /** What cannot be taken in, in a sentence each. */
  readonly left: readonly string[];
}

/**
 * Compares what came back with the notebook that it was sent from. What was measured on an axle or a stage that is gone stays
 * out, and so does what goes with nothing here; it is said what that is.
 */
export function broughtTo(here: Notebook, { notebook: there, left: unread }: Carried): Brought {
  const { build } = here;
  const known = build?.measurements ?? [];
  const left = [...unread];
  const isThere = (id: string, what: string): boolean => {
    if (build && (valueAt(build, id) as { readonly id?: string } | undefined)?.id === id) return true;
    const label = there.build ? labelAt(there.build, id) : id;
    left.push(`${what} of ${label} stays in the link: there is no ${label} in this notebook any more.`);
    return false;
  };
  let taken: Build | undefined;
  const measurements = (there.build?.measurements ?? []).filter((one) => {
    if (known.some((other) => sameMeasure(one, other)) || !isThere(one.what, "A count by hand")) return false;
    const now = taken ?? build!;
    const reading = applyChanges(now, { measurements: [...(now.measurements ?? []), one] });
    if (reading.ok) taken = reading.build;
    else left.push(`A count by hand stays in the link: ${reading.findings[0]!.message}`);
    return reading.ok;
  });
  const bench = (there.bench ?? []).filter(
    (one) => !here.bench?.some((other) => sameMeasure(one, other)) && isThere(one.of, "A centre distance"),
  );
  return {
    measurements,
    bench,
    fields: {
      ...(taken && { build: taken }),
      ...(bench.length && { bench: [...(here.bench ?? []), ...bench] }),
    },
    left,
  };
}
