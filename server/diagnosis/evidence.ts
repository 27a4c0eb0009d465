/** What other tests say of an explanation: a loop that was measured, an RCD that tripped, insulation that is low. */
import { type CircuitFault, type CircuitRuns, type Conductor, legStart } from "../calc/circuit-network.ts";
import { megohms, ohms } from "../calc/result.ts";
import { soundReading, standings } from "../calc/sound-readings.ts";
import { diagnosisPractice } from "../tables/diagnosis-practice.ts";
import type { Hypothesis } from "./hypothesis.ts";
import type { LoopSeen, Sheet } from "./sheet.ts";

const practice = diagnosisPractice;

/** What it costs to suppose this beside what the other tests show, in the measure of a score. */
export function costBeside(sheet: Sheet, hypothesis: Hypothesis): number {
  const { circuit, evidence } = sheet;
  if (!evidence) return 0;
  if (hypothesis.reread && isBorneOut(sheet, hypothesis.reread.at)) return practice.contradicted.value;
  const { faults } = hypothesis.state(1);
  const lineBroken = (place: string) => faults.some((fault) => breaks(circuit, fault, "line", place));
  const earthBroken = (place: string) => faults.some((fault) => breaks(circuit, fault, "cpc", place));
  const far = circuit.places.at(-1);
  if (evidence.tripped && evidence.loops.length === 0 && far !== undefined && lineBroken(far))
    return practice.contradicted.value;
  return evidence.loops.reduce((sum, loop) => {
    const { place, open } = loop;
    if (open) return lineBroken(place) || earthBroken(place) ? sum : sum + practice.besides.value;
    if (lineBroken(place)) return sum + practice.contradicted.value;
    if (earthBroken(place)) return sum + practice.besides.value;
    // A circuit that is sound shows the loop that its cable gives, however the dead test was made.
    return isOfTheDeadTest(hypothesis) && !isAsDrawn({ circuit, evidence }, loop)
      ? sum + 2 * practice.besides.value
      : sum;
  }, 0);
}

/** Whether it lies in how the dead test was made, by its links or its leads, and leaves the circuit sound. */
const isOfTheDeadTest = ({ links, parameter }: Hypothesis): boolean =>
  links !== undefined || parameter?.name === "leads";

/** Whether a loop is what the board and the cable as drawn come to. */
function isAsDrawn({ circuit, evidence }: Pick<Sheet, "circuit" | "evidence">, loop: LoopSeen): boolean {
  if (evidence?.board === undefined) return true;
  const { place } = loop;
  const own = soundReading(circuit, standings(circuit), { kind: "round", other: "cpc", place });
  return agrees(loop, evidence.board + own);
}

/** Whether a loop reads what its parts come to, or more by what its range puts on it. */
function agrees({ value, excess }: LoopSeen, expected: number): boolean {
  const tolerance = Math.max(practice.loopLeast.value, practice.loopShare.value * expected);
  return value >= expected - tolerance && value <= expected + tolerance + excess;
}

/** Whether a reading of line and earth to a place is what the loop there has beyond the board: it was not written wrongly. */
function isBorneOut({ readings, evidence }: Sheet, at: number): boolean {
  const reading = readings[at];
  const measurement = reading?.measurement;
  if (!reading || measurement?.kind !== "round" || measurement.other !== "cpc") return false;
  const loop = evidence?.loops.find(({ place, open }) => !open && place === measurement.place);
  return loop !== undefined && evidence?.board !== undefined && agrees(loop, evidence.board + reading.value);
}

/** Whether a fault keeps a conductor from reaching a place. Round a ring one break keeps it from nowhere. */
function breaks(circuit: CircuitRuns, fault: CircuitFault, conductor: Conductor, place: string): boolean {
  if (fault.kind === "open")
    return !circuit.closed && fault.conductors.includes(conductor) && pathTo(circuit, place).includes(fault.leg);
  if (fault.kind === "swapped") return fault.place === place && fault.pair.includes(conductor);
  return (
    fault.kind === "contact" && fault.place === place && fault.conductor === conductor && !Number.isFinite(fault.ohms)
  );
}

/** The legs from the board to a place of a radial. */
function pathTo({ legs }: Pick<CircuitRuns, "legs">, place: string): number[] {
  const leg = legs.findIndex(({ to }) => to === place);
  const from = legs[leg]?.from;
  return leg < 0 ? [] : [leg, ...(from === undefined || from === legStart ? [] : pathTo({ legs }, from))];
}

/** What else is reported of it: what carried the loop, and damage that more than one test shows. */
export function evidenceWords({ circuit, evidence }: Sheet, faults: readonly CircuitFault[]): string {
  if (!evidence) return "";
  const carried = evidence.loops.find(
    ({ place, open }) => !open && faults.some((fault) => breaks(circuit, fault, "cpc", place)),
  );
  const parts = [
    carried &&
      `The Zs of ${ohms(carried.value)} then comes back through other metal, such as pipes, steel or another circuit, and not through its own protective conductor.`,
    evidence.leaks && faults.some(isInCable)
      ? `The low insulation, ${evidence.leaks.pair} ${megohms(evidence.leaks.value)}, may have the same cause: a cable that is damaged there.`
      : undefined,
  ];
  return parts.flatMap((part) => (part ? [` ${part}`] : [])).join("");
}

const isInCable = ({ kind }: CircuitFault): boolean => kind === "open" || kind === "joint";
