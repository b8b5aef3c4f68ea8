/** Whether a wheel is known in one way. */
export const isClear = (wheel: object): boolean =>
  Object.keys(wheel).filter((key) => !key.startsWith("x-")).length === 1;
