import { feedsBack } from "../../circuit/circuit-kind.ts";
import { deviceName, laterRule, rcdName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { writtenAt } from "../../model/fact-values.ts";
import type { Fix } from "../../model/problems.ts";
import type { Fact } from "../../model/values.ts";
import { inPlaceOf } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/unidirectional-with-source",
  severity: "error",
  since: "0.1",
  title: "A generator or battery is connected to a device that may be fed from one side only.",
  why: "Fed from its load side, a unidirectional device may burn out when it trips and fail to open the next time. Circuits that can feed back need bidirectional devices.",
  clauses: ["530.3.201"],
  examples: [
    {
      setting: { standard: "BS 7671:2018+A2:2022+A3:2024" },
      bad: `way 1 radial "Roof array" {
  device       BS EN 61009 B20 6 kA 30 mA type A unidirectional
  serves       pv
  ^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Roof array" {
  device       BS EN 61009 B20 6 kA 30 mA type A bidirectional
  serves       pv
}`,
    },
  ],
  check(study, report) {
    const serves = study.facts.one("serves");
    const { edition } = study.context;
    if (!serves || !edition || !feedsBack(study)) return;
    const found = fedFromItsLoad(study);
    if (!found) return;
    const { name, fact, isMarked } = found;
    const later = laterRule(study);
    // Before the rule was printed the danger was the same, but no regulation named it.
    const severity = later.severity ?? (isMarked && edition.bidirectional ? undefined : "warning");
    report(factSpot(serves), {
      message: isMarked
        ? `This circuit can feed back, and the ${name} is unidirectional: fit a bidirectional one.${later.words}`
        : `This circuit can feed back: record whether the ${name} is bidirectional, as marked on it.`,
      source: edition.sources.bidirectional,
      ...(severity ? { severity } : {}),
      related: [{ spot: factSpot(fact), message: `Device that may be fed from its load side: ${name}.` }],
      fixes: turned(fact, serves.segment),
    });
  },
});

interface FedFromItsLoad {
  readonly name: string;
  readonly fact: Fact;
  /** Whether it is marked as unidirectional; else nothing is written of its direction. */
  readonly isMarked: boolean;
}

/** What is fed back flows through every device up to the supply; of those further up nothing need be written. */
function fedFromItsLoad({ rcds, device }: WayStudy): FedFromItsLoad | undefined {
  const oneWay = rcds.find(({ direction }) => direction === "unidirectional");
  if (oneWay) return { name: rcdName(oneWay), fact: oneWay.fact, isMarked: true };
  if (device?.fact.args.direction?.value === "unidirectional")
    return { name: deviceName(device), fact: device.fact, isMarked: true };
  const unsaid = rcds.find(({ at, direction }) => at !== "upstream" && direction === undefined);
  return unsaid && { name: rcdName(unsaid), fact: unsaid.fact, isMarked: false };
}

function turned(fact: Fact, marked: unknown): Fix[] {
  const direction = writtenAt(fact, "direction");
  return direction?.value === "unidirectional" && fact.segment === marked
    ? [inPlaceOf(direction, "bidirectional", "Make it bidirectional")]
    : [];
}
