/** What the loop of a device cannot be allowed to be above, where the device's own limit is in no table. */
import { alike } from "../memo/alike.ts";
import { familyOf } from "../tables/standard-values.ts";
import { type LoopLimit, type LoopQuestion, loopLimit } from "./loop-limit.ts";
import { ratings } from "./minimum-size.ts";

/** A limit that no device of the question can be above, and the device and time it is printed for. */
export interface LoopBound {
  readonly limit: LoopLimit;
  readonly of: Pick<LoopQuestion, "standard" | "curve" | "rating" | "time">;
}

/** The times fuses have limits for, s. */
const tabledTimes = [0.4, 5];

/**
 * Of fuses to one standard the larger needs more current to open in the same time, and each needs more to open sooner: so
 * the limit of a smaller one, or of a longer time, is above that of the one in question. Where a device does not state
 * what it is (BS 88 without its part, a breaker without its type), the most lenient that it could be is taken.
 * Undefined where nothing bounds it.
 */
export const loopBound = alike(loopLimit.keyOf, (question: LoopQuestion): LoopBound | undefined => {
  const bounds = variants(question).map(boundOf);
  return bounds.reduce((one, other) => (one && other && other.limit.exact > one.limit.exact ? other : other && one));
});

/** What the device could be, by what it states. */
function variants(question: LoopQuestion): readonly [LoopQuestion, ...LoopQuestion[]] {
  if (/^BS ?88$/i.test(question.standard))
    return [
      { ...question, standard: "BS 88-2" },
      { ...question, standard: "BS 88-3" },
    ];
  const family = question.curve === undefined ? familyOf(question.standard) : undefined;
  if (family === "breaker") return [{ ...question, curve: "B" }];
  return [family === "legacy-breaker" ? { ...question, curve: "1" } : question];
}

function boundOf(question: LoopQuestion): LoopBound | undefined {
  const own = limitOf(question);
  if (own) return own;
  const family = familyOf(question.standard);
  if (family === undefined) return undefined;
  const smaller = ratings(family)
    .filter((rating) => rating < question.rating)
    .toReversed()
    .map((rating) => limitOf({ ...question, rating }))
    .find((found) => found !== undefined);
  const slower = tabledTimes.filter((time) => time > question.time).map((time) => boundOf({ ...question, time }));
  return [smaller, ...slower].reduce(lower);
}

const lower = (one: LoopBound | undefined, other: LoopBound | undefined): LoopBound | undefined =>
  one && other ? (other.limit.exact < one.limit.exact ? other : one) : (one ?? other);

function limitOf(question: LoopQuestion): LoopBound | undefined {
  const limit = loopLimit(question);
  return limit && { limit, of: question };
}
