// What the compiler has to refuse.
import type {} from "@meshwright/elements/react";

export const refused = (
  <>
    {/* @ts-expect-error: no such figure */}
    <mw-value figure="reducton" />
    {/* @ts-expect-error: no such attribute */}
    <mw-teeth off="primary.driver" />
    {/* @ts-expect-error: no such scope */}
    <mw-overdrive-gauge scope="gear" />
    {/* @ts-expect-error: the event is no text */}
    <mw-edits onmw-copy={({ detail }) => detail.toUpperCase()} />
  </>
);
