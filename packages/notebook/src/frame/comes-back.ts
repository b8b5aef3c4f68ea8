/** A part of the page that has more open than its fields, which a tab that was thrown away brings back. */
export interface ComesBack {
  /** What it has open, as JSON keeps it; nothing where there is none. */
  readonly leftOpen: unknown;
  /** Opens again what `leftOpen` gave, and passes over whatever else it is given. */
  comeBack(left: unknown): Promise<void>;
}
