// Nothing moves under a hand. A press begins by leaving the field that was typed in, and what was typed there is taken at once: drawn in
// the middle of the press, it would move the button from under the hand, and the press would be lost.

let held: Promise<void> | undefined;
let letGo: () => void;
let isDown = false;
let isWatched = false;

/** Signs that nothing is pressed any more; some come when a press ends out of the page's sight. */
const ends = ["pointerup", "mouseup", "pointercancel", "contextmenu", "dragend", "keydown", "pointermove"] as const;

/** What was pressed has been told of it: now the page is drawn. */
const free = (): void => {
  for (const type of ends) removeEventListener(type, released, { capture: true });
  removeEventListener("click", free);
  isDown = false;
  held = undefined;
  letGo();
};

/** The click comes after this, if there is one. */
function released(event: Event): void {
  if (event.type === "pointermove" && (event as PointerEvent).buttons) return;
  isDown = false;
  const now = held;
  setTimeout(() => {
    if (!isDown && held && held === now) free();
  });
}

const pressed = (event: MouseEvent): void => {
  const [target] = event.composedPath();
  // A menu that opens takes the rest of the press.
  if (event.button || target instanceof HTMLSelectElement) return;
  isDown = true;
  if (held) return;
  held = new Promise((done) => (letGo = done));
  for (const type of ends) addEventListener(type, released, { capture: true });
  addEventListener("click", free);
};

/** Waits until nothing is pressed; nothing to wait for where no hand is on the page. */
export const untilLetGo = (): Promise<void> | undefined => held;

/** From now on, hands are seen. */
export function watchHands(): void {
  if (isWatched) return;
  isWatched = true;
  // A finger is told of as a mouse after it has left.
  for (const type of ["pointerdown", "mousedown"] as const) addEventListener(type, pressed, { capture: true });
}
