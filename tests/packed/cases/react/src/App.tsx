import type {} from "@meshwright/elements/react";
import { useEffect, useState } from "react";

export function App() {
  const [changes, setChanges] = useState(0);
  const [worked, setWorked] = useState("");
  // Elements are registered in the browser only: what the server sends is the author's own text.
  useEffect(() => void import("@meshwright/elements/all"), []);
  useEffect(() => {
    const worker = new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<string>) => setWorked(data);
    return () => worker.terminate();
  }, []);
  return (
    <article>
      <mw-build
        id="limpet"
        stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45"
        front="Ring: 13 to 38; Hub: 15 to 22"
      />
      <p>
        With{" "}
        <mw-teeth
          of="spur-and-pinion.driver"
          onmw-change={({ detail }) => setChanges((n) => n + Object.keys(detail).length)}
        >
          15
        </mw-teeth>{" "}
        teeth the front turns once for every <mw-value of="front">44.30</mw-value> turns of the motor.
      </p>
      <output id="changes">{changes}</output>
      <output id="worked">{worked}</output>
    </article>
  );
}
