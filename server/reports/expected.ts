/** What a meter should show before it is put to the circuit. */
import { expectedCircuit } from "../analysis/expected.ts";
import type { WayStudy } from "../analysis/way.ts";
import { type Calculated, ohms } from "../calc/result.ts";
import { whyNoR1R2 } from "./disconnection.ts";
import { type Block, gap, paragraph, part, reckon, type Section, table } from "./document.ts";

export const expectedPart = (study: WayStudy): Section[] => part("Readings to be expected", expectedBlocks(study));

function expectedBlocks(study: WayStudy): Block[] {
  const expected = expectedCircuit(study);
  if (!expected) return [gap("Readings to be expected", whyNone(study))];
  const { ends, points, R1R2, note } = expected;
  const { closed } = expected.network;
  const figure = (name: string, value: Calculated | undefined): Block[] =>
    value ? [reckon(name, value, ohms(value.value), "")] : [];
  const blocks: Block[] = [
    ...figure("r1, end to end", ends.r1),
    ...figure("rn, end to end", ends.rn),
    ...figure("r2, end to end", ends.r2),
  ];
  const r1r2 = closed ? R1R2 : points.map((point) => point.R1R2).sort(higher)[0];
  blocks.push(
    reckon(closed ? "R1+R2, the highest point to earth" : "R1+R2", r1r2, ohms(r1r2?.value ?? 0), whyNoR1R2(study)),
  );
  const cell = (value: Calculated | undefined): string => (value ? ohms(value.value) : "–");
  const rows = points.map((point) => [
    point.name,
    ...(closed ? [cell(point["L-N"]), cell(point["L-E"])] : [cell(point.R1R2)]),
    cell(point.Zs),
  ]);
  blocks.push(...table(["point", ...(closed ? ["L-N crossed", "L-E crossed"] : ["R1+R2"]), "Zs"], rows));
  const temperature = study.dead?.facts.one("temperature")?.args.value.value;
  blocks.push(
    paragraph(
      `${temperature === undefined ? "At 20 °C" : `At ${temperature} °C, as noted at the dead tests`}.${note ? ` ${note}` : ""}`,
    ),
  );
  return blocks;
}

const higher = (one: Calculated | undefined, other: Calculated | undefined): number =>
  (other?.value ?? 0) - (one?.value ?? 0);

function whyNone(study: WayStudy): string {
  const { cable, length, runs, isRing, facts } = study;
  if (!cable) return "the cable is not described";
  if (facts.broken.includes("run") || facts.broken.includes("length")) return "its length or a run could not be read";
  if (!length) return "the length is not stated";
  if (cable.construction === "flex" || cable.construction === "mineral")
    return `no table here gives the resistance of ${cable.construction} cable`;
  if (runs && runs.closed !== isRing) return isRing ? "the runs do not close the ring" : "the runs close a ring";
  if (runs && (runs.detached.length > 0 || runs.twice.length > 0)) return "the runs do not hang together";
  return `no table here gives the resistance of ${cable.material} conductors of these sizes`;
}
