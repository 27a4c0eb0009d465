/** Readings of a way, each compared with its limit and with what it should be. */

import { insulationRule } from "../../calc/insulation.ts";
import { totalLoop } from "../../calc/loop-impedance.ts";
import { rcdTime, rcdTripBand } from "../../calc/rcd-time.ts";
import { type Calculated, degrees, ohms, plain, volts } from "../../calc/result.ts";
import { quarterLineCpc, quarterLineNeutral, ringTolerance, spurAddition } from "../../calc/ring.ts";
import { supplyVoltage } from "../../calc/supply-voltage.ts";
import { ratioOf } from "../../circuit/cpc.ts";
import { loopLimits } from "../../circuit/disconnection.ts";
import { originSupply, type Test } from "../../circuit/supply.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import { expectedConductor } from "../../circuit/way-resistance.ts";
import { numberAt, wordAt } from "../../model/fact-values.ts";
import type { Context } from "../../model/installation.ts";
import { type AnyValue, exact, type Fact, isAbsent, type Quantity, quantityOf, readingAt } from "../../model/values.ts";
import { expectedConductorAt, expectedR1R2At, latestDead, temperatureOf } from "../../readings/dead.ts";
import { coldBoardImpedance, expectedCircuit } from "../../readings/expected.ts";
import { designLoop, loopAgreement } from "../../readings/loop.ts";
import { continuityBounds } from "../../readings/plan-dead.ts";
import { waveformWords } from "../../readings/plan-rcd.ts";
import { deviceOnBoard, deviceOnWay, type RcdFact, type TripFact } from "../../readings/rcd-tests.ts";
import type { Edition } from "../../tables/editions.ts";
import { boundRows, type Card, card, limitRow, type Read, row, show } from "./card.ts";
import { pointRows } from "./points.ts";

const readingOf = (fact: Fact | undefined, name: string): number | undefined => exact(readingAt(fact, name));

/** A reading as it is compared with a limit: one off the scale has its sign. */
const readAt = (fact: Fact | undefined, name: string): Read => quantityOf(readingAt(fact, name)) ?? {};

export function loopCard(study: WayStudy, fact: Fact | undefined, name: string): Card {
  const { disconnection } = study;
  const cold = disconnection?.cold;
  const agreement = loopAgreement(study);
  const measured = agreement?.expected;
  const designed = designLoop(study);
  const start = coldBoardImpedance(study.context);
  const R1R2 = expectedCircuit(study)?.R1R2 ?? study.expectedR1R2;
  const byLength = !measured && start && R1R2 ? totalLoop(start.value, R1R2.value, start.name) : undefined;
  const point = pointRows(study, name === "Zs" ? pointNameOf(fact) : "");
  const at = point.from.length > 0 ? point : undefined;
  const limits = disconnection ? loopLimits(disconnection) : [];
  return card(
    [
      ...limits.map(({ limit, which }) => limitRow(`limit, ${which}`, limit, readAt(fact, name))),
      ...(at?.rows ?? []),
      row("expected", at ? undefined : measured && start && `${start.name} + R1+R2 = ${show(measured)}`),
      row(
        "expected cold, by length",
        at ? undefined : byLength && start && `${start.name} + R1+R2 = ${show(byLength)}`,
      ),
      row("design, hot", designed && show(designed)),
      row(
        "other published cold limits",
        cold &&
          [...(cold.corrected ? [cold] : []), ...cold.others].map((one) => `${show(one)}, ${one.style}`).join("; "),
      ),
    ],
    ...limits.map(({ limit }) => limit),
    ...(at ? at.from : [measured ?? byLength]),
  );
}

const pointNameOf = (fact: Fact | undefined): string => wordAt(fact, "point") ?? "";

export function continuityCard(study: WayStudy, fact: Fact | undefined): Card | undefined {
  const { isRing, dead } = study;
  const bounds = continuityBounds(study);
  const expectedR1R2 = study.expectedR1R2 ?? (isRing ? undefined : expectedCircuit(study)?.R1R2);
  const ends = dead?.facts.one("ends");
  const r1 = exact(ends?.args.r1);
  const r2 = exact(ends?.args.r2);
  const quarter = isRing && r1 !== undefined && r2 !== undefined ? quarterLineCpc({ r1, rn: r1, r2 }) : undefined;
  if (!expectedR1R2 && !quarter && bounds.length === 0) return undefined;
  const atSpur = isRing ? spurR1R2(study) : undefined;
  return card(
    [
      ...boundRows(bounds, readAt(fact, "value")),
      limitRow("expected by the ends of the ring", quarter),
      limitRow(isRing ? "expected by length, on the ring" : "expected by length, at 20 °C", expectedR1R2),
      isRing ? undefined : warmRow(study, "R1+R2", expectedR1R2At),
      row("highest", isRing ? undefined : highestPoint(study)),
      row("expected by length, at the end of a spur", atSpur && show(atSpur)),
    ],
    ...bounds.map(({ source }) => ({ steps: [], source })),
    quarter,
    expectedR1R2,
    atSpur,
  );
}

/** Where a circuit of several points should read the most. */
function highestPoint(study: WayStudy): string | undefined {
  const circuit = expectedCircuit(study);
  const { highest, points = [], network } = circuit ?? {};
  return highest && points.length > 1 && network?.drawn ? `at ${highest.name}, of ${points.length} points` : undefined;
}

/** R1+R2 of a ring with spurs at the worst of their ends, where that is more than the ring itself reads. */
export function spurR1R2(study: WayStudy): Calculated | undefined {
  const worst = expectedCircuit(study)?.R1R2;
  const ring = study.expectedR1R2;
  const more = worst && ring && Number.isFinite(worst.value) && ohms(worst.value) !== ohms(ring.value);
  return more && worst.value > ring.value ? worst : undefined;
}

export function cpcCard(study: WayStudy): Card | undefined {
  const expected = expectedConductor(study, "cpc");
  const warm = warmRow(study, "R2", (of, test) => expectedConductorAt(of, "cpc", test));
  return expected && card([limitRow("expected by length, at 20 °C", expected), warm], expected);
}

/** What the conductors should read as cold or warm as they were stated to be at the test. */
function warmRow(
  study: WayStudy,
  word: "R1+R2" | "R2",
  expected: (study: WayStudy, test: Test<"dead">) => Calculated | undefined,
) {
  const test = latestDead(study, word)?.test;
  const temperature = test && temperatureOf(test);
  return !test || temperature === undefined || temperature === 20
    ? undefined
    : limitRow(`expected at the test, at ${degrees(temperature)}`, expected(study, test));
}

export function endsCard(study: WayStudy, fact: Fact | undefined): Card {
  const r1 = readingOf(fact, "r1");
  const rn = readingOf(fact, "rn");
  const r2 = readingOf(fact, "r2");
  const expected = expectedCircuit(study)?.ends;
  const line = expected?.r1 ?? expectedConductor(study, "line");
  const cpc = expected?.r2 ?? expectedConductor(study, "cpc");
  const { cable } = study;
  const ratio = ratioOf(cable);
  const lineNeutral = r1 !== undefined && rn !== undefined ? quarterLineNeutral({ r1, rn, r2: 0 }) : undefined;
  const lineCpc = r1 !== undefined && r2 !== undefined ? quarterLineCpc({ r1, rn: r1, r2 }) : undefined;
  return card(
    [
      limitRow("r1 and rn expected by length", line),
      limitRow("r2 expected by length", cpc),
      row("r2 / r1", ratio && `${plain(ratio.value)} by the sizes${r1 && r2 ? `, ${plain(r2 / r1)} as read` : ""}`),
      row("r1 and rn agree within", show(ringTolerance)),
      limitRow("L-N at every point", lineNeutral),
      limitRow("L-E half way round", lineCpc),
    ],
    line,
    cpc,
    lineNeutral,
    lineCpc,
    ringTolerance,
  );
}

export function pointCard(study: WayStudy, fact: Fact | undefined): Card | undefined {
  const ends = study.dead?.facts.one("ends");
  const r1 = exact(ends?.args.r1);
  const rn = exact(ends?.args.rn);
  const r2 = exact(ends?.args.r2);
  const name = pointNameOf(fact);
  const drawn = pointRows(study, name, fact);
  if (!study.isRing || r1 === undefined || rn === undefined)
    return drawn.from.length === 0 ? undefined : card(drawn.rows, ...drawn.from);
  const lineNeutral = quarterLineNeutral({ r1, rn, r2: r2 ?? 0 });
  const lineCpc = r2 === undefined ? undefined : quarterLineCpc({ r1, rn, r2 });
  const spur = study.runs?.places.get(name)?.spur;
  const { cable } = study;
  const added =
    spur && cable ? spurAddition({ length: spur.length, line: cable.line, cpc: cable.cpc ?? cable.line }) : undefined;
  const plus = (base: Calculated, more: Calculated | undefined): string =>
    more ? `${ohms(base.value + more.value)}, ${show(more)} of it the spur's` : show(base);
  return card(
    [
      row("L-N expected", plus(lineNeutral, added?.lineNeutral)),
      row(
        "L-E expected half way round",
        lineCpc && plus(lineCpc, cable?.cpc === undefined ? undefined : added?.lineCpc),
      ),
      row("within", show(ringTolerance)),
      ...drawn.rows,
    ],
    lineNeutral,
    lineCpc,
    added?.lineNeutral,
    ringTolerance,
  );
}

/** On the word the least of the line's readings is compared with the limit, on a reading that one. */
export function insulationCard(
  edition: Edition | undefined,
  extraLow: boolean,
  fact: Fact | undefined,
  named: string | undefined,
): Card | undefined {
  if (!edition) return undefined;
  const { minimum, testVoltage } = insulationRule(extraLow ? "selv-pelv" : "up-to-500", edition);
  const readings = Object.entries(fact?.args ?? {}).flatMap(([name, value]) => {
    const one = name === "voltage" || Array.isArray(value) ? undefined : (value as AnyValue | undefined);
    if (!one || isAbsent(one) || !("sign" in one)) return [];
    return named === undefined || named === name ? [one as Quantity] : [];
  });
  const [reading] = readings.toSorted((one, other) => one.value - other.value);
  return card(
    [
      limitRow("at least", minimum, { ...reading, least: true }),
      row("to be tested at", `${volts(testVoltage.value)} d.c.`),
    ],
    minimum,
    testVoltage,
  );
}

export const rcdCard = (study: WayStudy, fact: RcdFact | undefined): Card | undefined =>
  tripCard(fact ? deviceOnWay(fact, study) : study.rcds[0], study.context.edition, fact);

/** A test noted with the board, of the RCD it names. */
export const boardRcdCard = (context: Context, fact: RcdFact | undefined): Card | undefined =>
  tripCard(fact && deviceOnBoard(fact, context), context.edition, fact);

function tripCard(
  rcd: Pick<Rcd, "standard" | "delayed"> | undefined,
  edition: Edition | undefined,
  fact: Fact | undefined,
): Card | undefined {
  if (!rcd || !edition) return undefined;
  const multiple = numberAt(fact, "multiple") ?? 1;
  const window = rcdTime({ standard: rcd.standard, delayed: rcd.delayed, multiple, edition });
  if (!window) return undefined;
  const read = readAt(fact, "time");
  return card(
    [
      limitRow(`at most, at ${plain(multiple)} × IΔn`, window.greatest, read),
      limitRow(multiple < 1 ? "must hold for" : "not sooner than", window.least, { ...read, least: true }),
      row("this test", window.required ? "required by this edition" : "not required by this edition"),
    ],
    window.greatest,
    window.least,
  );
}

/** The band of the waveform that is written, or of each that its type detects. */
export function rampCard(rcd: Rcd | undefined, fact: TripFact | undefined): Card | undefined {
  const type = rcd?.type;
  if (!rcd || !type) return undefined;
  const written = fact?.args.waveform?.value;
  const bands = (written === undefined ? (["sinusoidal", "pulsating", "smooth"] as const) : [written]).flatMap(
    (waveform) => {
      const band = rcdTripBand(type, rcd.sensitivity, waveform);
      return band ? [{ waveform, band }] : [];
    },
  );
  const read = readAt(fact as Fact | undefined, "value");
  const rows = bands.flatMap(({ waveform, band }) =>
    written === undefined
      ? [row(`trips with ${waveformWords[waveform]}`, `between ${show(band.least)} and ${show(band.greatest)}`)]
      : [limitRow("not below", band.least, { ...read, least: true }), limitRow("by", band.greatest, read)],
  );
  return rows.length === 0 ? undefined : card(rows, ...bands.flatMap(({ band }) => [band.least, band.greatest]));
}

export function voltageCard(supply: Context["supply"], fact: Fact | undefined): Card {
  const { least, greatest } = supplyVoltage(originSupply(supply).U0);
  const read = readAt(fact, "value");
  return card(
    [limitRow("at least", least, { ...read, least: true }), limitRow("at most", greatest, read)],
    least,
    greatest,
  );
}
