/** The version of this package. */
export const version = "0.1.0";
