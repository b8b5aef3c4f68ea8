// Properties and whatever else draws by chance begin from the seed that the run printed.
import fc from "fast-check";

/** The seed of this run. */
export const seed = Number(process.env.SEED);

fc.configureGlobal({ seed });
