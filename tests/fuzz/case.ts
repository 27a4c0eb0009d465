/** One case of the fuzzer: a seed says all of it. */
import { Dice } from "./dice.ts";
import { kindFor, kinds } from "./trials.ts";

export interface Outcome {
  readonly seed: number;
  readonly kind: string;
  /** Texts or edits that were tried. */
  readonly tried: number;
  readonly failure?: { readonly message: string; readonly text: string };
}

export async function runCase(seed: number, wanted?: string): Promise<Outcome> {
  const dice = new Dice(seed);
  const roll = dice.next();
  const kind = wanted ?? kindFor(roll);
  const [, run] = kinds[kind] ?? [];
  if (!run) throw new Error(`There is no kind “${kind}”: there are ${Object.keys(kinds).join(", ")}.`);
  let text = "";
  const trial = {
    dice,
    at: (now: string) => {
      text = now;
    },
  };
  try {
    return { seed, kind, tried: await run(trial) };
  } catch (error) {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { seed, kind, tried: 1, failure: { message, text } };
  }
}
