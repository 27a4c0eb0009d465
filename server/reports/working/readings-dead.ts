/** Readings of the dead tests. */

import { megohms, ohms } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isAbsent, type Reading } from "../../model/values.ts";
import { expectedConductorAt, expectedR1R2At, latestDead } from "../../readings/dead.ts";
import { expectedPoint } from "../../readings/expected.ts";
import { insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { continuityBounds } from "../../readings/plan-dead.ts";
import { expectationAt, type Round, rounds, studyRing } from "../../readings/ring.ts";
import { expectation, leftTo, row } from "../common/margins.ts";
import { writtenValue } from "../common/written.ts";

export function deadRows(study: WayStudy): string[][] {
  const ring = studyRing(study);
  const rows: string[][] = [];
  const conductors = [
    ["r1", "line"],
    ["rn", "neutral"],
    ["r2", "cpc"],
  ] as const;
  for (const [name, conductor] of conductors) {
    const value = ring.ends?.args[name];
    if (!ring.ends || !value || !ring.endsTest) continue;
    const expected = expectedConductorAt(study, conductor, ring.endsTest);
    rows.push(row(`${name}, end to end`, ring.ends, value, expectation(expected?.value)));
  }
  for (const point of ring.points) rows.push(...pointRows(study, point));
  const R1R2 = latestDead(study, "R1+R2");
  if (R1R2) {
    const expected = highestOf(study) ?? expectedR1R2At(study, R1R2.test)?.value;
    rows.push(row("R1+R2", R1R2.fact, R1R2.fact.args.value, expectation(expected)));
    rows.push(...limitRows(study, R1R2.fact.args.value));
  }
  const R2 = latestDead(study, "R2");
  if (R2)
    rows.push(
      row(
        "R2",
        R2.fact,
        R2.fact.args.value,
        expectation(study.isRing ? undefined : expectedConductorAt(study, "cpc", R2.test)?.value),
      ),
    );
  return rows;
}

/** What the highest point of a ring should read by its ends, spurs and all. */
function highestOf(study: WayStudy): number | undefined {
  const quarter = studyRing(study).quarter["L-E"]?.value;
  if (!study.isRing || quarter === undefined) return undefined;
  const places = [...(study.runs?.places.keys() ?? [])].flatMap((name) => expectationAt(study, name, "L-E") ?? []);
  return places.length === 0 ? quarter : Math.max(...places.map(({ greatest }) => greatest));
}

/** Below a reading of R1+R2 what it may be. */
const limitRows = (study: WayStudy, value: Reading): string[][] =>
  isAbsent(value) ? [] : continuityBounds(study).map((bound) => ["", "", bound.text, leftTo(value, bound.value)]);

type Point = ReturnType<typeof studyRing>["points"][number];

/** Both rounds of a ring in one line. */
function pointRows(study: WayStudy, point: Point): string[][] {
  const each = rounds.map((round) => pointRow(study, point, round));
  const [LN, LE] = each.map((rows) => (rows.length === 1 ? rows[0] : undefined));
  if (!study.isRing || !LN || !LE) return each.flat();
  const [, read = "", limit = "", away = ""] = LN;
  const [, readE = "", limitE = "", awayE = ""] = LE;
  const both = (one: string, other: string) => (one === other ? one : `${one} / ${other}`);
  return [
    [
      `${point.name} L-N / L-E`,
      `${read} / ${readE}`,
      limit.endsWith(expectedWord) && limitE.endsWith(expectedWord)
        ? `${limit.slice(0, -expectedWord.length)} / ${limitE}`
        : both(limit, limitE),
      both(away, awayE),
    ],
  ];
}

const expectedWord = " expected";

function pointRow(study: WayStudy, { name, fact, expected }: Point, round: Round): string[][] {
  const value = fact.args[round];
  if (!value) return [];
  const span = expected[round];
  const single = span && Math.abs(span.greatest - span.least) < 0.005;
  const drawn = study.isRing ? undefined : expectedPoint(study, name)?.[round]?.value;
  const made = row(`${name} ${round}`, fact, value, expectation(span && single ? span.greatest : drawn));
  if (!study.isRing && round === "L-E") return [made, ...limitRows(study, value)];
  if (!span || single || isAbsent(value)) return [made];
  return [[made[0] ?? "", made[1] ?? "", `${ohms(span.least)} to ${ohms(span.greatest)} expected`, ""]];
}

export function insulationRows(study: WayStudy): string[][] {
  const test = insulationOf(study);
  const least = insulationLimit(study)?.minimum;
  if (!test) return [];
  return [
    ...test.values.map(({ pair, fact, quantity }) => [
      `insulation ${pair}`,
      writtenValue(fact, quantity),
      least ? `at least ${megohms(least.value)}` : "",
      least ? leftTo(quantity, least.value, "least") : "",
    ]),
    ...test.absent.map(({ pair, fact, value }) => row(`insulation ${pair}`, fact, value)),
  ];
}
