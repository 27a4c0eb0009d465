import { exceeds } from "../../calc/compare.ts";
import { nextRatingUp } from "../../calc/minimum-size.ts";
import { overload } from "../../calc/overload.ts";
import { amps, relation as relationStep, squareMillimetres } from "../../calc/result.ts";
import { cookerUnjudged } from "../../circuit/cooker-load.ts";
import { deviceName } from "../../circuit/describe.ts";
import { ratingFor, sizeFor } from "../../circuit/overload.ts";
import { rewritten } from "../../circuit/rewritten.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { designLoop, rcdDisconnects } from "../../readings/loop.ts";
import { asWritten } from "../../tables/source.ts";
import { resizeCable } from "../common/cable-size.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/load-over-device",
  severity: "error",
  since: "0.1",
  title: "The design current exceeds the rating of the device.",
  why: "The device trips in normal service, and sooner or later someone fits a larger one on the same cable. Choose a device rated no less than the load, and a cable that carries no less than the device's rating.",
  clauses: ["433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  Ib           40 A
  ^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B40 6 kA
  Ib           40 A
}`,
    },
  ],
  check(study, report) {
    const { device, designCurrent } = study;
    if (!device?.rating || !designCurrent || study.isSpare) return;
    // Loads alone are without diversity; only a stated design current gives what is drawn at the same time.
    if (!designCurrent.stated && (study.facts.all("load").length > 1 || cookerUnjudged(study))) return;
    const { value } = designCurrent;
    if (!exceeds(value, device.rating)) return;
    const Iz = { value: device.rating, unit: "A", steps: [], source: asWritten };
    const [relation] = overload({ standard: device.standard, Ib: value, In: device.rating, Iz });
    const [fix, words] = remedyFor(study, value);
    report(factSpot(designCurrent.fact), {
      message: `The design current of ${amps(value, device.rating)} exceeds the ${amps(device.rating, value)} of the ${deviceName(device)} device. ${words}${ratedHigher(study, value) ? " If the power is stated at 240 V, write rated 240 V behind it." : ""}`,
      value: amount(value, "A"),
      limit: amount(device.rating, "A"),
      steps: [
        ...(designCurrent.diversity?.steps ?? []),
        relationStep("Ib ≤ In", amps(value, device.rating), amps(device.rating, value)),
      ],
      ...(relation ? { source: relation.margin.source } : {}),
      related: [{ spot: factSpot(device.fact), message: `Rated current of the device: In = ${amps(device.rating)}.` }],
      fixes: fix,
    });
  },
});

/** A larger device is no cure where the loop that was read would not make it open. */
function loopHolds(trial: WayStudy | undefined): boolean {
  const Zs = trial && exactReading(trial.Zs);
  const limit = trial?.overcurrentLimit;
  return !Zs || !limit || Zs.value <= limit.value || rcdDisconnects(trial, Zs.value) !== undefined;
}

function remedyFor(study: WayStudy, value: number): readonly [readonly Fix[], string] {
  if (study.isRing) return [[], "Divide the load between two circuits."];
  const { curve } = study.device?.fact.args ?? {};
  const rating = ratingFor(study);
  if (rating === undefined) return [bothLarger(study, value), "A larger device needs a cable to match."];
  const words = `A ${amps(rating)} device would suit load and cable`;
  const larger = curve && inPlaceOf(curve, `${curve.curve}${rating}`, `Make the device ${curve.curve}${rating}`);
  if (larger && !disconnects(study, larger.edits)) return [[], `${words}, but Zs is too high for it.`];
  return [larger ? [larger] : [], `${words}.`];
}

/** Whether the way as it would read still disconnects by its device; where it did not before, that is another matter. */
function disconnects(study: WayStudy, edits: Fix["edits"]): boolean {
  const passes = (one: WayStudy | undefined): boolean => {
    const loop = one && designLoop(one);
    const limit = one?.disconnection?.limit;
    return loop === undefined || limit === undefined || loop.value <= limit.value;
  };
  const trial = rewritten(study, edits);
  return loopHolds(trial) && (passes(trial) || !passes(study));
}

/** The next device that carries the load, with the cable it needs: neither would do alone. */
function bothLarger(study: WayStudy, current: number): Fix[] {
  const { device, cable } = study;
  const curve = device?.fact.args.curve;
  const rating = device?.family && nextRatingUp(device.family, current);
  const size = rating ? sizeFor(study, rating) : undefined;
  const [larger] = resizeCable(cable, size);
  if (!curve || rating === undefined || size === undefined || !larger || device?.fact.segment !== cable?.fact.segment)
    return [];
  const edits = [{ start: curve.start, end: curve.end, text: `${curve.curve}${rating}` }, ...larger.edits];
  const trial = rewritten(study, edits);
  const title = `Make the device ${curve.curve}${rating} and the cable ${squareMillimetres(size)}`;
  if (!disconnects(study, edits)) return [];
  const carries = trial?.capacity?.value.value;
  return carries !== undefined && carries >= rating ? [{ title, edits, safe: false }] : [];
}

/** What power is often stated at, V, while it is drawn at less. */
const statedAt = 240;

/** Whether the device would carry a power that nobody says the voltage of, were it stated at a higher one. */
function ratedHigher({ designCurrent, device, facts, supply }: WayStudy, current: number): boolean {
  const powers = facts.all("load").filter(({ args }) => args.power);
  if (designCurrent?.stated || powers.length === 0 || powers.some(({ args }) => args.rated)) return false;
  if (supply.kind !== "public" || supply.U0 >= statedAt) return false;
  return device?.rating !== undefined && !exceeds((current * supply.U0) / statedAt, device.rating);
}
