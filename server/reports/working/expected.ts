/** What a meter should show before it is put to the circuit. */

import { marginOf } from "../../calc/margin.ts";
import { type Calculated, ohms } from "../../calc/result.ts";
import { hasResistance } from "../../circuit/cable.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { isAbsent } from "../../model/values.ts";
import { type ExpectedCircuit, type ExpectedPoint, expectedCircuit } from "../../readings/expected.ts";
import { loopBounds } from "../../readings/plan-live.ts";
import { awayFrom } from "../common/margins.ts";
import { writtenValue } from "../common/written.ts";
import { type Block, calculate, gap, paragraph, part, type Section, table } from "../setting/document.ts";
import { whyNoR1R2 } from "./disconnection.ts";

export const expectedPart = (study: WayStudy): Section[] => part("Readings to be expected", expectedBlocks(study));

function expectedBlocks(study: WayStudy): Block[] {
  const expected = expectedCircuit(study);
  if (!expected) return [gap("Readings to be expected", whyNone(study))];
  const { ends, points, R1R2, note } = expected;
  const { closed } = expected.network;
  const figure = (name: string, value: Calculated | undefined): Block[] =>
    value ? [calculate(name, value, ohms(value.value), "")] : [];
  const blocks: Block[] = [
    ...figure("r1, end to end", ends.r1),
    ...figure("rn, end to end", ends.rn),
    ...figure("r2, end to end", ends.r2),
  ];
  const r1r2 = closed ? R1R2 : points.map((point) => point.R1R2).sort(higher)[0];
  blocks.push(
    calculate(closed ? "R1+R2, the highest point to earth" : "R1+R2", r1r2, ohms(r1r2?.value ?? 0), whyNoR1R2(study)),
  );
  blocks.push(...pointTable(study, expected));
  const temperature = study.dead?.facts.one("temperature")?.args.value.value;
  blocks.push(
    paragraph(
      `${temperature === undefined ? "At 20 °C" : `At ${temperature} °C, as noted at the dead tests`}.${note ? ` ${note}` : ""}`,
    ),
  );
  return blocks;
}

const cell = (value: Calculated | undefined): string => (value ? ohms(value.value) : "–");

interface Column {
  readonly name: string;
  readonly of: (point: ExpectedPoint) => string;
  /** Left out where it would be empty. */
  readonly spare?: boolean;
}

/** A line a point. Columns of readings stand only where something was read, the limit's where there is one. */
function pointTable(study: WayStudy, circuit: ExpectedCircuit): Block[] {
  const { points, network } = circuit;
  const [limit] = loopBounds(study);
  const read = (round: "L-N" | "L-E"): Column => ({
    name: "read",
    of: (point) => readText(study, point, round),
    spare: true,
  });
  const columns: Column[] = [
    { name: "point", of: (point) => `${point.name}${markOf(point, circuit)}` },
    ...(network.closed
      ? [
          { name: "L-N crossed", of: (point: ExpectedPoint) => cell(point["L-N"]) },
          read("L-N"),
          { name: "L-E crossed", of: (point: ExpectedPoint) => cell(point["L-E"]) },
        ]
      : [{ name: "R1+R2", of: (point: ExpectedPoint) => cell(point.R1R2) }]),
    read("L-E"),
    { name: "Zs", of: (point) => cell(point.Zs) },
    {
      name: limit?.text ?? "",
      of: ({ Zs }) => (limit && Zs ? leftOf(Zs.value, limit.value) : ""),
      spare: true,
    },
  ];
  const shown = columns.filter(({ of, spare }) => !spare || points.some((point) => of(point) !== ""));
  return table(
    shown.map(({ name }) => name),
    points.map((point) => shown.map(({ of }) => of(point))),
  );
}

/** A reading with how far it is from what is expected. */
function readText(study: WayStudy, point: ExpectedPoint, round: "L-N" | "L-E"): string {
  const fact = study.deadTests
    .flatMap(({ facts }) => facts.all("at"))
    .find(({ args }) => args.point.value === point.name && args[round]);
  const value = fact?.args[round];
  if (!fact || !value) return "";
  const read = writtenValue(fact, value);
  const expected = point[round]?.value;
  if (isAbsent(value) || expected === undefined) return read;
  const away = awayFrom(value, expected);
  return `${read} (${away === "none" ? "as expected" : away})`;
}

const leftOf = (value: number, limit: number): string => marginOf("most", value, limit)?.text ?? "";

function markOf(point: ExpectedPoint, { points, highest, farthest }: ExpectedCircuit): string {
  const marks = [...(point === highest ? ["highest"] : []), ...(point === farthest ? ["farthest"] : [])];
  return points.length > 1 && marks.length > 0 ? `, ${marks.join(" and ")}` : "";
}

const higher = (one: Calculated | undefined, other: Calculated | undefined): number =>
  (other?.value ?? 0) - (one?.value ?? 0);

function whyNone(study: WayStudy): string {
  const { cable, length, runs, isRing, facts } = study;
  if (!cable) return "the cable is not described";
  if (facts.isUnread("run") || facts.isUnread("length")) return "its length or a run could not be read";
  if (!length) return "the length is not stated";
  if (!hasResistance(cable)) return `no table here gives the resistance of ${cable.construction} cable`;
  if (runs && runs.closed !== isRing) return isRing ? "the runs do not close the ring" : "the runs close a ring";
  if (runs && (runs.detached.length > 0 || runs.twice.length > 0)) return "the runs do not hang together";
  return `no table here gives the resistance of ${cable.material} conductors of these sizes`;
}
