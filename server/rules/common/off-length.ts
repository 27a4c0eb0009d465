/** What every finding gives of a reading that does not fit its length. */

import type { Calculated } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Quantity } from "../../model/values.ts";
import { bandSource, bandSteps, type LengthMismatch } from "../../readings/dead.ts";
import type { Uncertainty } from "../../readings/uncertainty.ts";
import { amount, amountOf, type Report } from "../frame/rule.ts";
import { lengthRelated } from "./dead-words.ts";
import { uncertaintySteps } from "./uncertainty-words.ts";

export const offLength = (
  study: WayStudy,
  quantity: Quantity,
  expected: Calculated,
  kind: LengthMismatch["kind"],
  meter?: Uncertainty,
): Omit<Report, "message"> => ({
  value: amount(quantity.value, "Ω"),
  limit: amountOf(expected),
  least: kind === "low",
  steps: [...bandSteps(expected), ...uncertaintySteps(meter)],
  source: bandSource(expected),
  related: lengthRelated(study),
});
