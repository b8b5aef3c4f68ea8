import type { Turn } from "../stages/index.js";

/** Which way something turns against the motor. */
export type Turns = "same way" | "opposite way" | "not known";

export const turnsOf = (turn: Turn): Turns => (turn ? (turn > 0 ? "same way" : "opposite way") : "not known");
