/** Readings of the live tests. */

import type { ReadingFigures } from "../../../grammar/traits.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { rcdTripBand } from "../../calc/rcd-time.ts";
import { milliamps, milliseconds, ohms } from "../../calc/result.ts";
import { loopLimits } from "../../circuit/disconnection.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { valueAt } from "../../model/fact-values.ts";
import { exact, isAbsent, quantityOf } from "../../model/values.ts";
import { loopAgreement } from "../../readings/loop.ts";
import { loopBounds } from "../../readings/plan-live.ts";
import { deviceOnWay, type RcdTest, rcdTestsOfWay, windowOf } from "../../readings/rcd-tests.ts";
import { awayFrom, leftTo, row } from "../common/margins.ts";
import { writtenValue } from "../common/written.ts";

export function liveRows(study: WayStudy): string[][] {
  const { Zs, disconnection } = study;
  if (!Zs) return [];
  const limits = disconnection ? loopLimits(disconnection) : [];
  const [first, ...others] = limits.map(({ limit, which }) => ({
    value: limit.value,
    words: `at most ${ohms(limit.value)} ${which}`,
    kind: "limit" as const,
  }));
  const rows = [row("Zs", Zs.fact, Zs.value, first)];
  const read = quantityOf(Zs.value);
  if (read) for (const { value, words } of others) rows.push(["", "", words, leftTo(read, value)]);
  const agreement = loopAgreement(study);
  if (agreement?.expected && !isAbsent(Zs.value))
    rows.push([
      "",
      "",
      `${ohms(agreement.expected.value)} expected, ${agreement.board?.name ?? "board"} + R1+R2`,
      awayFrom(Zs.value, agreement.expected.value),
    ]);
  const points = study.live?.facts.all("at") ?? [];
  const [held] = loopBounds(study);
  for (const fact of points)
    if (fact.args.Zs)
      rows.push(
        row(
          `Zs at ${fact.args.point.value}`,
          fact,
          fact.args.Zs,
          held && { value: held.value, words: held.text, kind: "limit" },
        ),
      );
  return rows;
}

export const rcdRows = (study: WayStudy): string[][] => [
  ...rcdTestsOfWay(study).flatMap((test) => rcdTimeRows(test, study)),
  ...tripCurrentRows(study),
];

/** A time, with the longest it may be and the shortest. */
function rcdTimeRows(test: RcdTest, study: WayStudy): string[][] {
  const { time, noTrip, multiple } = test.fact.args;
  const { least, greatest } = windowOf(test, study.context) ?? {};
  const name = `RCD${multiple ? ` at ${multiple.value} × IΔn` : ""}`;
  const shortest = least && `at least ${milliseconds(least.value)}`;
  const longest = greatest && `at most ${milliseconds(greatest.value)}`;
  if (!time) return [[name, noTrip ? "held" : "no result", [shortest, longest].filter(Boolean).join(", "), ""]];
  const first = row(name, test.fact, time, greatest && { value: greatest.value, words: longest ?? "", kind: "limit" });
  // A delayed one that is too quick does not wait for those behind it.
  if (!least || !shortest || isAbsent(time)) return [first];
  const margin = leftTo(time, least.value, "least");
  return greatest ? [first, ["", "", shortest, margin]] : [[first[0] ?? "", first[1] ?? "", shortest, margin]];
}

function tripCurrentRows(study: WayStudy): string[][] {
  const trip = study.live?.facts.one("trip-current");
  if (!trip) return [];
  const written = writtenValue(trip, trip.args.value);
  const rcd = deviceOnWay(trip, study);
  const band = rcd?.type && rcdTripBand(rcd.type, rcd.sensitivity, trip.args.waveform?.value);
  if (!band) return [["trip current", written, "", ""]];
  const { least, greatest } = band;
  const value = exact(trip.args.value);
  const verdict = value === undefined ? "" : value >= least.value && value <= greatest.value ? "within" : "outside";
  return [["trip current", written, `${milliamps(least.value)} to ${milliamps(greatest.value)}`, verdict]];
}

/** What is seen, or read with nothing to compare it with. */
const plainFigures: ReadonlySet<string> = new Set<ReadingFigures>(["verdict", "voltage"]);

export function verdictRows({ dead, live }: WayStudy): string[][] {
  const facts = [dead, live].flatMap((test) =>
    (test?.facts.list ?? []).map((fact) => [test?.facts.kind, fact] as const),
  );
  return facts.flatMap(([kind = "live", fact]) => {
    const figures = rowOf(kind, fact.word)?.figures;
    if (!figures || !plainFigures.has(figures)) return [];
    const value = valueAt(fact, "verdict") ?? valueAt(fact, "value");
    return value ? [[fact.word.replaceAll("-", " "), writtenValue(fact, value), "", ""]] : [];
  });
}
