/** A number as a builder wrote it: a JSON number or text. It means exactly its shortest decimal text. */
export type Numeric = number | string;

/** Teeth of one pitch. Angles are in degrees. */
export interface Toothed {
  /**
   * The pitch as a module, in millimetres: reference diameter over the count of teeth (ISO 54); of helical teeth the normal module. One
   * of this and `diametralPitch`.
   */
  readonly module?: Numeric;
  /** The pitch as teeth for each inch of reference diameter; of helical teeth the normal one. */
  readonly diametralPitch?: Numeric;
  /** In degrees; 20 where it is not given; of helical teeth the normal one. */
  readonly pressureAngle?: Numeric;
}
