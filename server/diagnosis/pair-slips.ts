/** A fault of the circuit and a slip of the pen in the same readings. */
import { eachInSteps, type Steps } from "../memo/steps.ts";
import { fitScale, priceOf, type Scale, withDecimalSlip } from "./fit.ts";
import type { FittedHypothesis } from "./fitted.ts";
import type { Hypothesis } from "./hypothesis.ts";
import { pairPenalty, placed, sizeOf } from "./pair-fit.ts";
import type { Predictions } from "./predictions.ts";
import { limitOf } from "./sheet.ts";

const slipsTried = 40;
/** How near a figure must come to what is predicted once its decimal point is moved, in limits of accuracy. */
const near = 3;

/** A fault, and a reading with its decimal point out of place. */
export function* withSlips(
  predictions: Predictions,
  scale: Scale,
  leading: readonly FittedHypothesis[],
): Steps<Hypothesis[]> {
  const { sheet } = predictions;
  const bases = leading.filter(({ hypothesis: { kind, reread, links } }) => kind !== "sound" && !reread && !links);
  const each = yield* eachInSteps(bases.slice(0, slipsTried), 1, (base) =>
    sheet.readings.flatMap(({ name, offScale }, at) => {
      const written = scale.values[at] ?? 0;
      const asked = base.fitted.predicted[at] ?? 0;
      return [10, 100, 0.1, 0.01].flatMap((power): Hypothesis[] => {
        const away = Math.abs(written / power - asked);
        if (offScale || away > near * limitOf(sheet.accuracy, written / power)) return [];
        const before = withDecimalSlip(scale, sheet, at, power);
        const { hypothesis } = base;
        const size = sizeOf(before, hypothesis.predict, hypothesis.range) ?? 0;
        const values = hypothesis.predict(size);
        const best = fitScale(before, values);
        const price = hypothesis.range ? priceOf(before, hypothesis.predict, size, best, hypothesis.range) : 0;
        const shown = hypothesis.parameter?.unit === "Ω" ? size * best.scale : size;
        return [
          {
            kind: `fault-and-slip: ${hypothesis.kind}`,
            where: "",
            predict: () => values,
            reread: { at, power },
            penalty: pairPenalty + price + (hypothesis.penalty ?? 0),
            state: () => hypothesis.state(shown),
            say: (_, by) =>
              `${placed(hypothesis, shown, by)} Besides, ${name} is written ${power > 1 ? `${power} times too high` : `${1 / power} times too low`}.`,
          },
        ];
      });
    }),
  );
  return each.flat();
}
