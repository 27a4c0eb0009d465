/** What a board adds up besides its demand: ratings without overload protection, and currents in protective conductors. */

import { demandThrough, isGuarded, type RatedPart, ratedParts } from "../../boards/board-ratings.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import { nameOf, type RcdLeakage, rcdLeakages } from "../../boards/leakage.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { amps, milliamps, step } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import { quotedIn } from "../../tables/source.ts";
import { capital } from "../../text/words.ts";
import {
  type Block,
  calculate,
  compareWithLimit,
  gap,
  paragraph,
  part,
  type Section,
  table,
} from "../setting/document.ts";

const noSource = { ref: "", standing: "printed" } as const;
const ofRatings = quotedIn("536.4.202");

/** Busbars and shared RCDs; the main switch is covered by the coordination. */
export const ratingsPart = (node: BoardNode): Section[] =>
  part(
    "Busbars and RCDs against overload",
    ratedParts(node)
      .filter(({ kind }) => kind !== "switch")
      .flatMap((one) => ratingBlocks(node, one)),
  );

function ratingBlocks(node: BoardNode, one: RatedPart): Block[] {
  const { name, rating, above, behind } = one;
  const title = `${capital(name)}, ${amps(rating.value)}`;
  const steps = [
    ...(above ? [step(`In upstream, ${above.name}`, "", amps(above.rating))] : []),
    ...(behind?.steps ?? []),
  ];
  const blocks: Block[] = [calculate(`${title}: protection against overload`, { steps, source: noSource }, "", "")];
  if (above === undefined && behind === undefined)
    return [gap(`${title} against overload`, "neither the device upstream nor every device downstream is known")];
  const guarded = isGuarded(one);
  const text = `${title} ${guarded ? "≥" : "<"} In upstream, or the devices downstream`;
  if (guarded || above)
    blocks.push(compareWithLimit(guarded, text, ofRatings, { value: above?.rating ?? 0, limit: rating.value }));
  else blocks.push(gap(`${title} against overload`, "the device upstream is not known"));
  const demand = demandThrough(node, one);
  if (!demand) return blocks;
  const holds = !exceeds(demand.greatest.value, rating.value);
  const drawn = `${amps(demand.greatest.value)} drawn ${holds ? "≤" : ">"} ${amps(rating.value)}`;
  // What busbars carry is the demand of the board, which stands above.
  const own =
    one.kind === "rcd"
      ? [
          calculate(`Drawn through ${name}`, demand.greatest, amps(demand.greatest.value), ""),
          paragraph(`${demandNotes(demand)}.`),
        ]
      : [];
  return [
    ...blocks,
    ...own,
    compareWithLimit(
      holds,
      drawn,
      demand.greatest.source,
      { value: demand.greatest.value, limit: rating.value },
      `${amps(rating.value - demand.greatest.value)} left`,
    ),
  ];
}

/** The currents in normal service behind each RCD, circuit by circuit. */
export const leakagePart = (node: BoardNode): Section[] =>
  part(
    "Protective conductor currents",
    rcdLeakages(node).flatMap((found) => leakageBlocks(node, found)),
  );

function leakageBlocks(node: BoardNode, { rcd, leakage, sum, limit }: RcdLeakage): Block[] {
  const { parts, silent } = leakage;
  const name = `Behind ${rcd.name === undefined ? "" : `${rcd.name}, `}${rcdName(rcd)}`;
  const rows = parts.map(({ study, value }) => [nameOf(study), milliamps(value)]);
  const blocks = [
    ...table([name, "in normal service"], [...rows, ...silent.map((study) => [nameOf(study), "not stated"])]),
    calculate(`${name}, together`, sum, `${silent.length > 0 ? "at least " : ""}${milliamps(sum.value)}`, ""),
  ];
  if (!node.context.edition?.leakageShare)
    return [...blocks, paragraph("The edition the work is judged by gives no figure for it.")];
  const holds = !exceeds(sum.value, limit.value);
  if (holds && silent.length > 0)
    return [...blocks, gap(`${name} against ${milliamps(limit.value)}`, "not every circuit states what leaks")];
  const text = `${milliamps(sum.value)} ${holds ? "≤" : ">"} ${milliamps(limit.value)}`;
  return [
    ...blocks,
    calculate("At most", limit, milliamps(limit.value), ""),
    compareWithLimit(
      holds,
      text,
      limit.source,
      { value: sum.value, limit: limit.value },
      `${milliamps(limit.value - sum.value)} left`,
    ),
  ];
}
