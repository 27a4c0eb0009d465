/**
 * The tests of a way that are still to be made, written out ready to fill. The language has no blanks: a statement
 * without its reading is an error, and an empty block would pass for a test that was made. So they are comments, laid out
 * as the lines they become once the sign before them is taken away and a figure put in.
 */
import { parse } from "../../grammar/parser.ts";
import { plain } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import { insulationLimit } from "../readings/insulation.ts";
import { planDead } from "../readings/plan-dead.ts";
import { planLive } from "../readings/plan-live.ts";
import type { PlannedTest } from "../readings/planned.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { studyAt } from "./cursor.ts";
import { definedNames } from "./names.ts";

export const blanksTitle = "Add the tests of this way, ready to fill";

const gap = "…";

interface BlankLine {
  readonly text: string;
  readonly aside: string;
}

/** The edit that adds them as the last lines of the way a segment holds; nothing where none is left. */
export function blankTests(snapshot: Snapshot, segment: Segment): TextEdit | undefined {
  const spot = spotFor(snapshot, segment);
  if (!spot || segment.text.includes(headline)) return undefined;
  const { start, indent, sign, blocks } = spot;
  const lines = blocks.flatMap(({ kind, lines: own }) => [`${kind} DATE {`, ...laidOut(own), "}"]);
  const text = [headline, ...lines].map((line) => `${indent}  # ${line}${sign}`).join("");
  return { start, end: start, text };
}

/**
 * The same for an editor with stops: no comments but lines to be filled, the day and the instrument written once for
 * all of them. A stop that is left empty is an error until it is filled or its line is taken out.
 */
export function blankSnippet(snapshot: Snapshot, segment: Segment): TextEdit | undefined {
  const spot = spotFor(snapshot, segment);
  if (!spot) return undefined;
  const { start, indent, sign, blocks } = spot;
  const instruments = definedNames(snapshot, "instrument", undefined, undefined);
  const meter = instruments[0] ? ` with \${2:${instruments[0].name.value}}` : "";
  let stop = 2;
  const lines = blocks.flatMap(({ kind, lines: own }, index) => {
    const day = index === 0 ? `\${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE}` : "$1";
    const body = laidOut(own).map((line) => line.replace(/…|POINT/g, () => `\${${++stop}}`));
    return [`${kind} ${day}${index === 0 ? meter : meter && " with $2"} {`, ...body, "}"];
  });
  return { start, end: start, text: `${lines.map((line) => `${indent}  ${line}`).join(sign)}$0${sign}` };
}

interface BlankSpot {
  readonly start: number;
  readonly indent: string;
  readonly sign: string;
  readonly blocks: readonly { readonly kind: "dead" | "live"; readonly lines: readonly BlankLine[] }[];
}

/** Where they go, and what they are. */
function spotFor(snapshot: Snapshot, segment: Segment): BlankSpot | undefined {
  const study = studyAt(snapshot, segment);
  const close = parse(segment.text).statements[0]?.block?.close;
  if (!study || study.isSpare || !close || study.facts.broken.length > 0) return undefined;
  const start = segment.text.lastIndexOf("\n", close.startOffset - 1) + 1;
  const indent = segment.text.slice(start, close.startOffset);
  // A way on one line has no line of its own to give.
  if (indent.trim() !== "") return undefined;
  const blocks = (["dead", "live"] as const)
    .map((kind) => ({ kind, lines: linesOf(study, kind) }))
    .filter(({ lines }) => lines.length > 0);
  if (blocks.length === 0) return undefined;
  return { start, indent, sign: segment.text.includes("\r\n") ? "\r\n" : "\n", blocks };
}

const headline = "To be filled: take the # away, write the day and the readings.";

function linesOf(study: WayStudy, kind: "dead" | "live"): BlankLine[] {
  const plan = kind === "dead" ? planDead(study) : planLive(study);
  const open = plan.filter(({ recorded }) => !recorded);
  return kind === "dead" ? deadLines(study, open) : liveLines(open);
}

/** Each with what it should read behind it. */
function laidOut(lines: readonly BlankLine[]): string[] {
  const width = Math.max(...lines.map(({ text }) => text.length));
  return lines.map(({ text, aside }) => (aside === "" ? `  ${text}` : `  ${text.padEnd(width)}  # ${aside}`));
}

function deadLines(study: WayStudy, open: readonly PlannedTest[]): BlankLine[] {
  const of = (step: PlannedTest["step"]) => open.filter((test) => test.step === step);
  const ends = of("ring-ends");
  const rounds = Map.groupBy(
    open.filter(({ point }) => point !== undefined),
    ({ point }) => point,
  );
  const R1R2 = open.find(({ name, place }) => name.startsWith("R1+R2") && place === undefined);
  const insulation = of("insulation");
  return [
    ...(ends.length > 0 ? [{ text: `ends r1 ${gap} Ω rn ${gap} Ω r2 ${gap} Ω`, aside: aside(ends) }] : []),
    ...[...rounds].map(([point, tests]) => ({
      text: `at ${point === "every point" ? "POINT" : point} L-N ${gap} Ω L-E ${gap} Ω polarity ${gap}`,
      aside: aside(tests),
    })),
    ...of("continuity").flatMap((test) =>
      test.place === undefined ? [] : [{ text: `at ${test.place} L-E ${gap} Ω polarity ${gap}`, aside: aside([test]) }],
    ),
    ...(R1R2 ? [{ text: `R1+R2 ${gap} Ω`, aside: aside([R1R2]) }] : []),
    ...(insulation.length > 0 ? [insulationLine(study, insulation)] : []),
    ...(of("polarity").length > 0 ? [{ text: `polarity ${gap}`, aside: "" }] : []),
  ];
}

function insulationLine(study: WayStudy, tests: readonly PlannedTest[]): BlankLine {
  const voltage = insulationLimit(study)?.testVoltage.value;
  const pairs = tests.map(({ name }) => `${name} ${gap} MΩ`).join(" ");
  return {
    text: `insulation ${voltage === undefined ? gap : plain(voltage)} V ${pairs}`,
    aside: aside(tests.slice(0, 1)),
  };
}

function liveLines(open: readonly PlannedTest[]): BlankLine[] {
  return open.flatMap((test): BlankLine[] => {
    const { step, write, place } = test;
    if (place !== undefined) return [{ text: `at ${place} Zs ${gap} Ω`, aside: aside([test]) }];
    if (step === "loop") return [{ text: `Zs ${gap} Ω`, aside: aside([test]) }];
    return write === undefined
      ? []
      : [{ text: `${write} ${gap}${test.unit === "" ? "" : ` ${test.unit}`}`, aside: aside([test]) }];
  });
}

/** What is expected of a line, and the limit of its last reading. */
function aside(tests: readonly PlannedTest[]): string {
  const expected = tests.flatMap((test) => test.expected?.text ?? []);
  const bounds = tests.at(-1)?.bounds.map(({ text }) => text) ?? [];
  const whole = expected.length === tests.length ? [`expected ${expected.join(" / ")}`] : [];
  return [...whole, ...bounds].join(", ");
}
