import { applyChanges } from "@meshwright/calc/document";
import { oneIn, type Build } from "@meshwright/calc/drivetrain";
import type { Fields, Notebook } from "./notebook.js";

/**
 * What else changes when a count was not swapped, but counted again: what was believed of the same part was wrong, so that
 * earlier versions and what was measured with it change as well, wherever they had the wrong value.
 */
export function countedAgain(notebook: Notebook, address: string, was: unknown, is: unknown): Partial<Fields> {
  const corrected = (build: Build): Build => {
    if (oneIn(build).value(address) !== was) return build;
    const reading = applyChanges(build, { [address]: is });
    return reading.ok ? reading.build : build;
  };
  const { versions, bench, build } = notebook;
  const measurements = build?.measurements?.map((one) =>
    one.with?.[address] === was ? { ...one, with: { ...one.with, [address]: is } } : one,
  );
  const reading = build && measurements ? applyChanges(build, { measurements }) : undefined;
  return {
    ...(versions && { versions: versions.map((version) => ({ ...version, build: corrected(version.build) })) }),
    ...(bench && {
      bench: bench.map((note) =>
        note.with[address] === was ? { ...note, with: { ...note.with, [address]: is } } : note,
      ),
    }),
    ...(reading?.ok && { build: reading.build }),
  };
}
