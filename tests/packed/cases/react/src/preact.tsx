/** @jsxImportSource preact */
import type {} from "@meshwright/elements/preact";

export const article = (
  <p>
    <mw-teeth of="spur-and-pinion.driver" onmw-change={({ detail }) => Object.keys(detail)}>
      15
    </mw-teeth>
    <mw-value figure="reduction" of="front" scope="tyres" />
    {/* @ts-expect-error: no such figure */}
    <mw-value figure="reducton" />
    {/* @ts-expect-error: the event is no text */}
    <mw-edits onmw-copy={({ detail }) => detail.toUpperCase()} />
  </p>
);
