import type { TestProject } from "vitest/node";

/** Says which seed a run begins from, before it begins. */
export default function told({ config }: TestProject): void {
  const seed = String(config.env.SEED);
  if (!/^\d{1,10}$/.test(seed)) throw new Error(`SEED is ${JSON.stringify(seed)}; a whole number is expected.`);
  process.stdout.write(`seed ${seed}; to repeat: SEED=${seed} npm run test:long\n`);
}
