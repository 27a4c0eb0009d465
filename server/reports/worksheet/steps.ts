/** The words at each step of a worksheet: how it is done, and the caution at the place where it matters. */

import { reducedTestVoltage } from "../../calc/insulation.ts";
import { milliohms, volts } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { expectedCircuit } from "../../readings/expected.ts";
import { insulationLimit } from "../../readings/insulation.ts";
import type { TestStep } from "../../readings/planned.ts";
import { listed } from "../../text/words.ts";

export const stepTitles: Readonly<Record<TestStep, string>> = {
  continuity: "Continuity of protective and bonding conductors",
  "ring-ends": "Ring: the ends",
  "ring-rounds": "Ring: two rounds, cross-connected",
  insulation: "Insulation resistance",
  polarity: "Polarity",
  electrode: "Earth electrode",
  loop: "Earth fault loop impedance",
  fault: "Prospective fault current",
  rcd: "Residual current device",
  "phase-sequence": "Phase sequence",
  function: "Function",
};

export const stepOrder: readonly TestStep[] = [
  "continuity",
  "ring-ends",
  "ring-rounds",
  "insulation",
  "polarity",
  "electrode",
  "loop",
  "fault",
  "rcd",
  "phase-sequence",
  "function",
];

export const proveDead =
  "Caution: isolate, lock off and keep the key. Prove dead with an indicator that is itself proved before and after.";

export const goLive =
  "Caution: live work from here, only by those competent to do it, with leads fit for it, and only once the dead tests are sound.";

const hows: Readonly<Partial<Record<TestStep, string>>> = {
  continuity:
    "Null the leads. Link line and protective conductor at the board and measure at each point; write the highest.",
  "ring-ends":
    "Null the leads and find both legs at the board. Measure each conductor from end to end; line and neutral should read alike.",
  "ring-rounds":
    "Link line of one leg to neutral of the other, both ways, and measure L-N at each point; then the same with the protective conductor for L-E.",
  polarity: "Every single-pole switch and device in the line; every outlet the right way round.",
  function: "Switches, interlocks, isolators and the equipment itself.",
};

/** E14 and E27 holders are made so that the shell is out of reach; older ones are not. */
const lampPolarity =
  "At each light the switch breaks the line; in a screw lampholder the line is on the centre contact, never on a shell that can be touched.";

const originHows: Readonly<Partial<Record<TestStep, string>>> = {
  continuity: "Null the leads. Take one end of each conductor off for its test, and put it back before the next.",
  polarity: "Line, neutral and earth of the incoming supply on their own terminals.",
  electrode:
    "Caution: the installation is without earth while its earthing conductor is off. Keep it isolated until the conductor is back.",
  loop: "Caution: keep the installation isolated while its earthing conductor is off the bonding for this test, and put it back before anything goes on.",
  fault: faultHow(),
};

function faultHow(): string {
  return "Read the fault current line to neutral and line to earth; on a three-phase supply between lines too. Write the larger as Ipf.";
}

/** A long cable keeps the charge of the test. */
const handsOff =
  "Nobody touches a conductor while the test is on, nor before the instrument has discharged what it charged.";

/** The words at a step of the origin or of a board. */
export const originNotes = (step: TestStep): string[] => [originHows[step] ?? []].flat();

export const boardNotes = (step: TestStep): string[] => {
  if (step === "insulation")
    return [
      `The whole board: all ways on and links in, equipment off. Disconnect surge protection and electronics first. ${handsOff}`,
    ];
  if (step === "polarity") return [originHows.polarity ?? ""];
  return step === "rcd" ? [rcdCaution] : step === "fault" ? [faultHow()] : [];
};

export function wayNotes(study: WayStudy, step: TestStep): string[] {
  const how = [hows[step] ?? []].flat();
  if (step === "insulation") return [insulationCaution(study)];
  if (step === "loop") return [loopNote(study)];
  if (step === "continuity") return [...how, ...switchNote(study)];
  if (step === "polarity") return lights(study) ? [...how, lampPolarity] : how;
  return step === "rcd" ? [rcdCaution] : how;
}

/** What holds for a step at all of these ways, or all their lights: on their sheet it stands once, before the tests. */
export function commonNotes(studies: readonly WayStudy[], step: TestStep): string[] {
  if (step === "insulation")
    return [
      `Caution: before the test voltage goes on, disconnect anything with electronics; surge protection too. Where it cannot be, join line and neutral and test to earth, or test at ${volts(reducedTestVoltage().value)}, and write why. ${handsOff}`,
    ];
  if (step === "loop") return [`${loopByCalculation} Behind an RCD, use the no-trip range.`];
  if (step === "rcd") return [rcdCaution];
  return [hows[step] ?? [], step === "polarity" && studies.some(lights) ? lampPolarity : []].flat();
}

/** What a step needs at one way beyond that. */
export function ownNotes(study: WayStudy, step: TestStep): string[] {
  if (step === "continuity") return switchNote(study);
  const found = delicateOf(study);
  return step === "insulation" && found.length > 0
    ? [`Caution: disconnect ${listed(found)} before the insulation test.`]
    : [];
}

const lights = ({ uses }: WayStudy): boolean => uses.has("lighting");

/** What is drawn to a lamp is the way of its protective conductor; its line goes down to the switch and back besides. */
function switchNote(study: WayStudy): string[] {
  const line = expectedCircuit(study)?.network.sources.line;
  if (!line || !lights(study)) return [];
  const drop = `2 × ${milliohms(line.value)} = ${milliohms(2 * line.value)}`;
  return [`Close the switches. Behind a switch a lamp reads more, by ${drop} for each metre down to the switch.`];
}

/** Loads with electronics on their terminals. Words for the caution before a high test voltage. */
const delicate: Readonly<Record<string, string>> = {
  alarms: "the alarm heads",
  data: "the data equipment",
  "ev-charger": "the charging point",
  pv: "the inverter",
  storage: "the battery",
  control: "the controls",
  lighting: "lamps, dimmers and drivers",
};

const delicateOf = ({ uses }: WayStudy): string[] => [...new Set([...uses].flatMap((use) => delicate[use] ?? []))];

function insulationCaution(study: WayStudy): string {
  const full = insulationLimit(study)?.testVoltage.value;
  const found = delicateOf(study);
  const what = found.length > 0 ? `${listed(found)}, and anything else with electronics` : "anything with electronics";
  const before = full === undefined ? "the test voltage" : `${volts(full)} d.c.`;
  const reduced = reducedTestVoltage().value;
  const otherwise =
    full !== undefined && full > reduced
      ? ` Where it cannot be, join line and neutral and test to earth, or test at ${volts(reduced)}, and write why.`
      : "";
  return `Caution: before ${before} goes on, disconnect ${what}; surge protection too.${otherwise} ${handsOff}`;
}

function loopNote(study: WayStudy): string {
  const behind = study.rcds.length > 0 ? " Use the no-trip range behind the RCD." : "";
  return `${loopByCalculation}${behind}`;
}

const loopByCalculation =
  "Zs may be worked from the board's impedance and the R1+R2 that was read, with less live work: write it as calculated.";

const rcdCaution =
  "Caution: the supply will drop out. Tell those who depend on it, and take the loads off. Write the longer time of both half cycles.";
