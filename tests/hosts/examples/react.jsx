// React 19: elements are used as they are. Attributes say the build; events are heard by their own names.
import { StrictMode, useState } from "react";
import { createRoot } from "react-dom/client";

function Article() {
  const [drawn, setDrawn] = useState(0);
  const [changes, setChanges] = useState(0);
  return (
    <article>
      <mw-build
        id="limpet"
        stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45"
        front="Ring: 13 to 38; Hub: 15 to 22"
        rear="Ring: 12 to 35; Hub: 16 to 23"
      />
      <p className="sentence">
        With{" "}
        <mw-teeth of="spur-and-pinion.driver" onmw-change={() => setChanges((before) => before + 1)}>
          15
        </mw-teeth>{" "}
        teeth the front turns once for every <mw-value of="front">44.30</mw-value> turns of the motor.
      </p>
      <p>
        Changes: <output id="changes">{changes}</output>{" "}
        <button id="again" onClick={() => setDrawn(drawn + 1)}>
          Drawn {drawn} times
        </button>
      </p>
    </article>
  );
}

createRoot(document.querySelector("#app")).render(
  <StrictMode>
    <Article />
  </StrictMode>,
);
