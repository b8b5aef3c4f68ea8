/** A number as a builder wrote it: a JSON number or text. It means exactly its shortest decimal text. */
export type Numeric = number | string;

/** Teeth of one pitch. Angles are in degrees. */
export interface Toothed {
  readonly module?: Numeric;
  readonly diametralPitch?: Numeric;
  readonly pressureAngle?: Numeric;
}
