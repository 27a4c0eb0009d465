import { ohms, step } from "../../calc/result.ts";
import { ringTolerance } from "../../calc/ring.ts";
import { memoByObject } from "../../circuit/kept.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Diagnosis, departures, type Explanation } from "../../diagnosis/index.ts";
import { diagnosisInSteps, diagnosisOfWay } from "../../diagnosis/of-way.ts";
import type { ReadSheet } from "../../diagnosis/read.ts";
import { limitOf, type SheetReading } from "../../diagnosis/sheet.ts";
import { areInterchanged } from "../../readings/loop.ts";
import { r2OffLength, r2Share } from "../../readings/r2.ts";
import { diagnosisPractice } from "../../tables/diagnosis-practice.ts";
import { capital } from "../../text/words.ts";
import {
  type Finding,
  factSpot,
  type Related,
  type Report,
  type Severity,
  type Spot,
  severities,
  valueSpot,
  wayRule,
  wordSpot,
} from "../frame/rule.ts";

export default wayRule({
  id: "diagnosis/readings-disagree",
  severity: "error",
  verdict: true,
  since: "0.1",
  title: "The readings of a circuit taken together do not fit a sound circuit.",
  why: "One reading seldom shows what is wrong; all of them together often do, since each fault and each slip in testing leaves its own pattern. Every one that is possible is calculated for the circuit as drawn and compared with all the readings; the likeliest are listed, with the test that tells the leading two apart. What single checks found of these readings is then said here, at the gravest of them, and not again beside it. Some faults leave no trace here. A neutral borrowed from another way shows only where line to neutral is read at the points it serves, never in R1+R2, R2 or the insulation of one way, so its first sign may be an RCD that trips on load. A protective conductor one size too small, or metal in parallel with a short one, stays within what a length and a meter leave open.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  dead 2026-03-04 {
    ends         r1 0.94 Ω  rn 0.44 Ω  r2 0.73 Ω
                    ^^^^^^
    at S1        L-N 0.30 Ω  L-E 0.41 Ω
    at S2        L-N 0.30 Ω  L-E 0.39 Ω
    at S3        L-N 0.30 Ω  L-E 0.40 Ω
  }
}`,
      good: `way 1 ring "Sockets" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 15 m S1 15 m S2 15 m S3 15 m A
  dead 2026-03-04 {
    ends         r1 0.46 Ω  rn 0.44 Ω  r2 0.71 Ω
    at S1        L-N 0.23 Ω  L-E 0.29 Ω
    at S2        L-N 0.22 Ω  L-E 0.31 Ω
    at S3        L-N 0.21 Ω  L-E 0.28 Ω
  }
}`,
    },
    {
      bad: `way 2 radial "Heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 12 m P1 10 m P2
  dead 2026-03-04 {
    at P1        L-E 0.23 Ω
    at P2        L-E 0.91 Ω
                     ^^^^^^
  }
}`,
      good: `way 2 radial "Heater" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  run          A 12 m P1 10 m P2
  dead 2026-03-04 {
    at P1        L-E 0.23 Ω
    at P2        L-E 0.42 Ω
  }
}`,
    },
  ],
  *before(study) {
    if (!isSlipOfRecord(study)) yield* diagnosisInSteps(study);
  },
  check(study, report, found) {
    const verdict = verdictOn(study);
    if (!verdict) return;
    const compared = found.filter(({ spot }) => isOfReading(verdict.sheet, spot));
    const said = findingFor(verdict, [...compared, ...ofLoop(study, verdict, found)]);
    if (said) report(said.spot, said.report);
  },
});

interface Verdict {
  readonly sheet: ReadSheet;
  /** How far the readings lie from those of a sound circuit, Ω. */
  readonly off: readonly number[];
  readonly diagnosis: Diagnosis;
}

const verdictOn = memoByObject((study: WayStudy): Verdict | undefined => {
  const found = isSlipOfRecord(study) ? undefined : diagnosisOfWay(study);
  return found && { ...found, off: departures(found.sheet) };
});

/** Whether a finding stands on a reading that the diagnosis weighed. */
const isOfReading = ({ readings }: ReadSheet, { segment, start, end }: Spot): boolean =>
  readings.some(({ at }) => at && at.fact.segment === segment && start < at.span.end && at.span.start < end);

/** A loop that disagrees with R1+R2 as it is written, and agrees with what it is by the likeliest explanation. */
function ofLoop(study: WayStudy, { sheet, diagnosis }: Verdict, found: readonly Finding[]): Finding[] {
  const [loop] = sheet.evidence?.loops ?? [];
  const board = sheet.evidence?.board;
  const fact = study.Zs?.fact;
  const [first] = diagnosis.explanations;
  if (!loop || loop.open || board === undefined || !fact || !first) return [];
  const far = first.predicted.filter(({ reading }) => reading === "R1+R2" || reading === `L-E at ${loop.place}`);
  const agrees = far.some(({ sound }) => Math.abs(loop.value - board - sound) <= ringTolerance.value);
  if (!agrees || !slips.has(first.id)) return [];
  return found.filter(({ spot }) => spot.segment === fact.segment && spot.start >= fact.start && spot.end <= fact.end);
}

function findingFor(
  { sheet, off, diagnosis }: Verdict,
  compared: readonly Finding[],
): { readonly spot: Spot; readonly report: Report } | undefined {
  // The trade accepts what is within its own tolerance, unless the points differ as one fault makes them; where a check
  // spoke it is not within.
  const accepted = compared.length === 0 && off.every((by) => Math.abs(by) <= ringTolerance.value + 1e-9);
  if (accepted && !diagnosis.isPattern) return undefined;
  const { explanations, nextTest, note } = diagnosis;
  const [first] = explanations;
  if (!first && !note) return undefined;
  const explains = first?.fits ? compared : [];
  const parts = [
    accepted
      ? `Each reading is within ${ohms(ringTolerance.value)} of what a sound ring gives, yet together they follow the pattern of a fault.`
      : "These readings do not fit a sound circuit.",
    first?.fits
      ? `Likeliest: ${first.sentence.replace(/^(?:A|An|The|All|Every) /, (word) => word.toLowerCase())}`
      : undefined,
    note,
  ];
  const next = nextTest && `Next test, isolated and proved dead: ${nextTest.sentence}`;
  return {
    spot: first ? firstOff(sheet, first) : mostOff(sheet, off),
    report: {
      severity: accepted ? "information" : severityOf(explanations, explains),
      message: parts.filter((part) => part !== undefined).join(" "),
      steps: (first?.predicted ?? []).map(({ reading, predicted }, at) =>
        step(reading, `measured ${writtenAs(sheet.readings[at])}`, `${ohms(predicted)} by the first explanation`),
      ),
      source: diagnosisPractice.oneReading.source,
      related: [
        ...explanations.map((explanation, index) => relatedTo(sheet, explanation, index, explanations[0]?.weight ?? 0)),
        ...(next ? [{ spot: wordSpot(sheet.test.header), message: next }] : []),
        ...[...Map.groupBy(explains, ({ check }) => check).values()].flatMap(explainedBy),
      ],
      explains,
      fixes: explains.flatMap(({ fixes }) => fixes),
    },
  };
}

/** What was found of single readings, once for each check: the advice it would give alone is the wrong one here. */
function explainedBy(alike: readonly Finding[]): Related[] {
  const [one] = alike;
  const often = alike.length > 1 ? `, at ${alike.length} readings` : "";
  return one ? [{ spot: one.spot, message: `Explained by the first: ${one.check}${often}.` }] : [];
}

/** Explanations by which the circuit may be sound: the test, or what was written of it, is wrong. */
const slips: ReadonlySet<string> = new Set(["decimal-point", "exchanged-point", "exchanged-column", "exchanged-ends"]);

/** By these the board was not made up as the test wants it, and no reading of the round means anything. */
const isMakeUp = ({ id }: Explanation): boolean => /^(same-leg|one-link|no-link)-/.test(id);

const isDangerous = ({ id }: Explanation): boolean => /^(open|pin|swapped)-/.test(id);

/** What is no fault, or only a drawing that lacks something. */
const isHarmless = ({ id }: Explanation): boolean => ["spur", "metal", "length"].includes(id);

const gravest = (found: readonly Severity[]): Severity =>
  severities.find((severity) => found.includes(severity)) ?? "information";

/**
 * As grave as what it found, at the worst of the explanations that cannot be told from the likeliest, and never less
 * grave than what it speaks for: but where the links at the board alone explain all readings, nothing else was tested.
 */
function severityOf(explanations: readonly Explanation[], explains: readonly Finding[]): Severity {
  const [first] = explanations;
  if (!first?.fits) return "information";
  const alike = explanations.filter((one) => one.alike && one.fits);
  if (alike.every(isMakeUp)) return "warning";
  const own = alike.map((one): Severity => (isDangerous(one) ? "error" : isHarmless(one) ? "information" : "warning"));
  return gravest([...own, ...explains.map(({ severity }) => severity)]);
}

/** What was written down wrongly is no fault of the circuit, and has checks of its own. */
const isSlipOfRecord = (study: WayStudy): boolean => isCopied(study) || areInterchanged(study);

/** One figure in both places is no reading of the circuit: R2 has a check of its own. */
function isCopied(study: WayStudy): boolean {
  const share = r2Share(study);
  return share !== undefined && r2OffLength(study) && Math.abs(share.R2.value - share.R1R2) <= ringTolerance.value;
}

const writtenAs = (reading: SheetReading | undefined): string =>
  reading ? `${reading.offScale ? ">" : ""}${ohms(reading.value)}` : "";

/** By how much an explanation makes a reading differ from a sound circuit's, Ω. */
const accounted = ({ predicted }: Explanation, at: number): number => {
  const own = predicted[at];
  return own === undefined || own.predicted === own.sound ? 0 : Math.abs(own.predicted - own.sound);
};

/** The first reading of the latest tests that the likeliest explanation is about; or the first of them. */
function firstOff(sheet: ReadSheet, first: Explanation): Spot {
  const latest = sheet.readings.flatMap((reading, at) => {
    const isLatest = reading.at && sheet.test.facts.list.includes(reading.at.fact);
    return isLatest ? [{ reading, by: accounted(first, at) }] : [];
  });
  latest.sort((one, other) => startOf(one.reading) - startOf(other.reading));
  const found = latest.find(({ reading, by }) => by > limitOf(sheet.accuracy, reading.value)) ?? latest[0];
  return found?.reading.at ? valueSpot(found.reading.at.fact, found.reading.at.span) : wordSpot(sheet.test.header);
}

/** The reading that lies farthest from what a sound circuit would give. */
function mostOff(sheet: ReadSheet, off: readonly number[]): Spot {
  const by = off.map(Math.abs);
  const at = sheet.readings[by.indexOf(Math.max(...by))]?.at;
  return at ? valueSpot(at.fact, at.span) : wordSpot(sheet.test.header);
}

const startOf = ({ at }: SheetReading): number => at?.span.start ?? 0;

/**
 * How well an explanation fits beside the best and the others tried. Never a share: what was not tried may fit better
 * than all.
 */
function fitWords(weight: number, best: number): string {
  if (weight >= 0.9) return "by far the best fit of those tried";
  if (weight >= 0.5) return "the best fit of those tried";
  if (weight >= best / 2) return "fits about as well as any of those tried";
  return weight >= best / 5 ? "possible" : "less likely";
}

/** An explanation is shown on the line of the reading it most accounts for. */
function relatedTo(sheet: ReadSheet, explanation: Explanation, index: number, best: number): Related {
  const by = sheet.readings.map((_, at) => accounted(explanation, at));
  const fact = sheet.readings[by.indexOf(Math.max(...by))]?.at?.fact;
  return {
    spot: fact ? factSpot(fact) : wordSpot(sheet.test.header),
    message: `${index + 1}. ${explanation.sentence} (${capital(fitWords(explanation.weight, best))}.)`,
  };
}
