/** Tests as a supervisor counts them: which kinds were made, on how many ways, when, by whom, and with how little left. */

import { testerOf } from "../../circuit/signatories.ts";
import { wordAt } from "../../model/fact-values.ts";
import type { Way } from "../../model/file.ts";
import { isOlder } from "../../model/inspections.ts";
import type { Context, Installation, Names } from "../../model/installation.ts";
import { type Fact, type Facts, isAbsent } from "../../model/values.ts";
import { factsOf, type TestDay } from "../../readings/instruments.ts";
import { type Bound, marginTo, type PlannedTest, type TestStep } from "../../readings/planned.ts";
import { originText } from "../common/written.ts";

/** A test where it stands: `A/3`, `board A` or `supply`. */
export interface PlacedTest {
  readonly where: string;
  readonly test: PlannedTest;
  readonly way: Way | undefined;
  readonly context: Context | undefined;
}

const kinds: Readonly<Record<TestStep, string>> = {
  continuity: "continuity",
  "ring-ends": "ends of a ring",
  "ring-rounds": "rounds of a ring",
  insulation: "insulation",
  polarity: "polarity",
  electrode: "earth electrode",
  loop: "loop impedance",
  fault: "fault current",
  rcd: "RCD and AFDD",
  "phase-sequence": "phase sequence",
  function: "function",
};

const order = Object.keys(kinds) as readonly TestStep[];

/** Read on site: what is declared, calculated or taken from a record was not. */
const isRead = ({ test: { recorded } }: PlacedTest): boolean =>
  recorded !== undefined && !isAbsent(recorded.value) && recorded.fact.provenance === "measured";

type Days = readonly TestDay[];

/** One row for each kind of test of which a reading stands here. */
export function madeRows(tests: readonly PlacedTest[], days: Days, installation: Installation): string[][] {
  return order.flatMap((step) => {
    const ofKind = tests.filter(({ test }) => test.step === step);
    const read = ofKind.filter(isRead);
    if (read.length === 0) return [];
    const all = new Set(ofKind.map(({ where }) => where)).size;
    const dated = read.map((one): Dated => ({ ...one, day: dayOf(one.test.recorded?.fact, days) }));
    const latest =
      dated
        .flatMap(({ day }) => day?.on.value ?? [])
        .sort()
        .at(-1) ?? "";
    // What is of another time stands apart: it was not tested at this visit, nor by those who made it.
    const earlier = dated.filter(({ day }) => day && isOlder(day.on.value, latest));
    const now = dated.filter((one) => !earlier.includes(one));
    return [
      madeRow(kinds[step], now, all, installation),
      ...(earlier.length > 0 ? [madeRow(`${kinds[step]}, earlier`, earlier, all, installation)] : []),
    ];
  });
}

type Dated = PlacedTest & { readonly day: TestDay | undefined };

function madeRow(name: string, read: readonly Dated[], all: number, installation: Installation): string[] {
  const on = read.flatMap(({ day }) => day ?? []);
  const by = read.map(({ way, context, day }) =>
    context && day
      ? testerOf(day.header, way, context)
      : (wordAt(day?.header, "by") ?? installation.head.facts.one("tested")?.args.by.value),
  );
  const names = new Set(on.flatMap((day) => day.with.map(({ value }) => value)));
  return [
    name,
    `${new Set(read.map(({ where }) => where)).size} of ${all}`,
    on
      .map((day) => day.on.value)
      .sort()
      .at(-1) ?? "no day stated",
    [...new Set(by.map((one) => one ?? "not stated"))].join(", "),
    [...names].map((one) => instrumentText(one, installation.names)).join(", ") || "not stated",
  ];
}

const dayOf = (fact: Fact | undefined, days: Days): TestDay | undefined =>
  fact && days.find(({ facts }) => facts !== undefined && holds(facts, fact));

const holds = (facts: Facts, fact: Fact): boolean =>
  facts.list.some((one) => one === fact || (one.inner !== undefined && holds(one.inner, fact)));

function instrumentText(name: string, { instruments }: Names): string {
  const instrument = instruments.get(name)?.[0];
  if (!instrument) return `${name} (not described)`;
  const serial = factsOf(instrument)?.one("serial")?.args.text.value;
  return serial === undefined ? name : `${name} (no. ${serial})`;
}

interface Left {
  readonly placed: PlacedTest;
  readonly bound: Bound;
  readonly share: number;
  readonly text: string;
}

/** Of each kind of reading the one that has least left to its limit. */
export function marginRows(tests: readonly PlacedTest[]): string[][] {
  return order.flatMap((step) => {
    const all = tests.filter(({ test }) => test.step === step).flatMap(leftOf);
    const least = all.toSorted((a, b) => a.share - b.share)[0];
    if (!least) return [];
    const { placed, bound, text } = least;
    const { recorded, name } = placed.test;
    const origin = recorded ? originText(recorded.fact) : "";
    const weak = bound.source.standing === "memory" ? ", from memory" : "";
    return [
      [
        kinds[step],
        placed.where,
        name,
        `${recorded?.text ?? ""}${origin ? ` (${origin})` : ""}`,
        `${bound.text}${weak}`,
        text,
      ],
    ];
  });
}

/** Of all readings the one that has least left to its limit. */
export function leastMargin(
  tests: readonly PlacedTest[],
): { readonly share: number; readonly where: string; readonly name: string; readonly text: string } | undefined {
  const [least] = tests.flatMap(leftOf).sort((a, b) => a.share - b.share);
  if (!least) return undefined;
  const { share, placed, text } = least;
  return { share, where: placed.where, name: placed.test.name, text };
}

function leftOf(placed: PlacedTest): Left[] {
  const { bounds, recorded } = placed.test;
  return bounds.flatMap((bound) => {
    const margin = marginTo(bound, recorded);
    return margin ? [{ placed, bound, share: margin.share, text: margin.text }] : [];
  });
}
