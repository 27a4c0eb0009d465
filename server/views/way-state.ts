/** How a way stands: its least margin and what is missing. Rows, the tree and the status item are made of it. */
import { designOfWay } from "../boards/design.ts";
import type { BoardNode } from "../boards/network.ts";
import { ohms } from "../calc/result.ts";
import { deadTestsDue, liveTestsDue } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import { gaugeOf, gaugeOfTest } from "../drawings/gauge.ts";
import { type Gauge, tightest } from "../drawings/gauge-shapes.ts";
import type { Mark } from "../drawings/shapes.ts";
import { quantityOf } from "../model/values.ts";
import { aboveBound, boundWords } from "../readings/loop-bound.ts";
import { planDead } from "../readings/plan-dead.ts";
import { planLive } from "../readings/plan-live.ts";
import type { PlannedTest } from "../readings/planned.ts";
import { combine } from "../tables/source.ts";

/** The reading, or failing readings the calculated figure, that comes nearest to its limit. */
export interface LeastMargin extends Gauge {
  readonly name: string;
  readonly calculated: boolean;
  readonly mark: Mark;
}

export interface WayState {
  readonly least: LeastMargin | undefined;
  /** What is not written yet: parts of the design, and tests that the stage requires. */
  readonly missing: readonly string[];
  readonly tests: readonly PlannedTest[];
}

/** Whether a margin may be shown beside what is found: one that is left says nothing beside an error of another kind. */
export const showsMargin = (least: LeastMargin, found: readonly { readonly severity: string }[]): boolean =>
  least.standing === "beyond" || found.every(({ severity }) => severity !== "error");

export function wayState(study: WayStudy, node: BoardNode | undefined): WayState {
  if (study.isSpare) return { least: undefined, missing: [], tests: [] };
  const tests = [...planDead(study), ...planLive(study)];
  return {
    least:
      tightest([beyondAny(study), leastRead(tests)].flatMap((one) => one ?? [])) ??
      (node && leastCalculated(study, node)),
    missing: [...missingParts(study), ...missingTests(study, tests)],
    tests,
  };
}

/** A loop that is too high whatever the device's own limit, which is in no table: nothing else is as near to failing. */
function beyondAny(study: WayStudy): LeastMargin | undefined {
  const above = aboveBound(study);
  if (!above) return undefined;
  const { loop, bound, reading } = above;
  const read = reading && quantityOf(reading.value);
  const shown = read ? ohms(read.value) : `${ohms(loop.value)}, calculated`;
  const gauge = gaugeOf(
    "most",
    loop.value,
    bound.limit.value,
    `${shown} of at most ${boundWords(bound)}`,
    combine(loop.source, bound.limit.source),
  );
  const mark = reading ? { segment: reading.fact.segment, offset: reading.fact.start } : markOf(study);
  return gauge && { ...gauge, name: read ? "Zs" : "Zs hot", calculated: !read, mark };
}

function leastRead(tests: readonly PlannedTest[]): LeastMargin | undefined {
  return tightest(
    tests.flatMap((test): LeastMargin[] => {
      const gauge = gaugeOfTest(test);
      if (!gauge || !test.recorded) return [];
      const { fact } = test.recorded;
      const mark = { segment: fact.segment, offset: fact.start };
      return [{ ...gauge, name: shortName(test), calculated: fact.provenance === "calculated", mark }];
    }),
  );
}

/** Before anything is read: loop impedance hot and voltage drop, as they are calculated. */
function leastCalculated(study: WayStudy, node: BoardNode): LeastMargin | undefined {
  const mark = markOf(study);
  return tightest(
    designOfWay(node, study).flatMap(({ title, verdict, value, limit, source }): LeastMargin[] => {
      const name = /^Loop impedance/.test(title) ? "Zs hot" : title === "Voltage drop from the origin" ? "drop" : "";
      if (name === "" || !value || !limit || !source) return [];
      const unit = value.unit === "%" ? " %" : ` ${value.unit}`;
      const words = `${value.value.toFixed(2)}${unit} of at most ${limit.value.toFixed(2)}${unit}, calculated`;
      const gauge = gaugeOf("most", value.value, limit.value, words, source);
      // What only advises is a question, not a fault.
      const asks = verdict === "ask" ? ({ standing: "unproven" } as const) : {};
      return gauge ? [{ ...gauge, ...asks, name, calculated: true, mark }] : [];
    }),
  );
}

export const markOf = ({ way: { segment, header } }: WayStudy): Mark => ({ segment, offset: header.start });

/** `R1+R2, the far point` is R1+R2 in a narrow place. */
export const shortName = ({ name, step }: Pick<PlannedTest, "name" | "step">): string =>
  step === "rcd"
    ? name.replace(/^Test button.*/, "button").replace(/^.* at (\S+) × IΔn$/, "RCD at $1×")
    : name.replace(/, (?:the|by|line|neutral|protective).*$/, "").replace(/^Polarity.*/, "polarity");

function missingParts({ device, cable, length, facts }: WayStudy): string[] {
  return [
    ...(device || facts.has("device") ? [] : ["device"]),
    ...(cable || facts.has("cable") ? [] : ["cable"]),
    ...(length || facts.has("length") || facts.has("run") ? [] : ["length"]),
  ];
}

function missingTests(study: WayStudy, tests: readonly PlannedTest[]): string[] {
  const { context, facts } = study;
  const due = { dead: deadTestsDue(context), live: liveTestsDue(context) };
  const open = tests.filter(
    ({ live, recorded, step, place }) =>
      !recorded && step !== "function" && place === undefined && (live ? due.live : due.dead),
  );
  const clear = open.filter(
    ({ live }) => !facts.isUnread(live ? "live" : "dead") && !(live ? study.live : study.dead)?.facts?.broken.length,
  );
  return [...new Set(clear.map((test) => (test.step === "insulation" ? "insulation" : kindOf(test))))];
}

/** The rounds of a ring are one thing that is missing, its ends another. */
function kindOf(test: PlannedTest): string {
  if (test.step === "ring-ends") return "ring ends";
  if (test.point !== undefined) return "rounds of the ring";
  if (test.step === "rcd") return test.name.startsWith("Test button") ? "test button" : "RCD time";
  return shortName(test);
}
