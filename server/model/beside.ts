/**
 * Results that are had at one stroke with another reading may stand on its line: who measures R1+R2 at a point has
 * proved the polarity there, and who times an RCD presses its button. They mean what a line of their own means.
 */
import { asLiteral, type Fact } from "./values.ts";

const besides: Readonly<Record<string, readonly [param: string, word: string]>> = {
  "R1+R2": ["polarity", "polarity"],
  rcd: ["button", "test-button"],
};

/** The word that a fact says beside its own, if it says one. */
export function saidBeside({ word, args }: Pick<Fact, "word" | "args">): string | undefined {
  const [param, other] = besides[word] ?? [];
  return param !== undefined && args[param] ? other : undefined;
}

/** A fact as the lines that it stands for: itself, and what was said beside it. */
export function apart(fact: Fact): readonly Fact[] {
  const beside = besides[fact.word];
  if (!beside) return [fact];
  const [param, word] = beside;
  const { [param]: result, ...args } = fact.args;
  if (!result || Array.isArray(result) || !("start" in result)) return [fact];
  const { start, end } = result;
  const { segment } = fact;
  // A button is that of the RCD that was timed: of the one named, and in an outlet of that outlet.
  const { name, point, sensitivity } = fact.word === "rcd" ? args : {};
  const of = { ...(name ? { name } : {}), ...(point ? { point } : {}), ...(sensitivity ? { sensitivity } : {}) };
  const own: Fact = {
    word,
    wordEnd: start,
    args: { ...of, verdict: result },
    provenance: "measured",
    segment,
    start,
    end,
  };
  return [{ ...asLiteral(fact), args }, own];
}
