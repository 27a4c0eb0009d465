/** What a board adds up, shown where a part of the sum is written. */
import { demandThrough, ratedParts } from "../../boards/board-ratings.ts";
import { leakageOf, rcdLeakages } from "../../boards/leakage.ts";
import { type BoardNode, networkOf } from "../../boards/network.ts";
import { highLeakage } from "../../calc/leakage.ts";
import { amps, milliamps } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import { type Card, card, row } from "./card.ts";

/** The protective conductor current of a circuit, with what flows behind the RCDs that count it. */
export function leakageCard(study: WayStudy, installation: Installation | undefined): Card | undefined {
  const own = leakageOf(study);
  if (!own) return undefined;
  const nodes = installation ? upTo(networkOf(installation), study) : [];
  const behind = installation?.edition?.leakageShare
    ? nodes.flatMap(rcdLeakages).filter(({ leakage }) => leakage.parts.some((part) => part.study.way === study.way))
    : [];
  const high = highLeakage();
  return card(
    [
      ...behind.map(({ rcd, sum, limit, leakage }) =>
        row(
          rcd.name === undefined ? `behind its ${milliamps(rcd.sensitivity)} RCD` : `behind RCD ${rcd.name}`,
          `${leakage.silent.length > 0 ? "at least " : ""}${milliamps(sum.value)}, where ${milliamps(limit.value)} at most should flow`,
        ),
      ),
      row("high from", milliamps(high.value)),
    ],
    ...behind.flatMap(({ sum, limit }) => [sum, limit]),
    high,
  );
}

/** The board of a circuit and those above it. */
function upTo({ nodes }: ReturnType<typeof networkOf>, { context }: WayStudy): readonly BoardNode[] {
  const found: BoardNode[] = [];
  for (let at = nodes.find(({ board }) => board.head === context.board); at; at = at.parent) found.push(at);
  return found;
}

/** Busbars, a main switch or a shared RCD: what lets flow, what is behind it, and what is drawn. */
export function ratingCard(installation: Installation | undefined, fact: Fact | undefined): Card | undefined {
  if (!installation || !fact) return undefined;
  for (const node of networkOf(installation).nodes) {
    const found = ratedParts(node).find((one) => one.fact.segment === fact.segment && one.fact.start === fact.start);
    if (!found) continue;
    const { above, behind } = found;
    const demand = demandThrough(node, found)?.greatest;
    return card(
      [
        row("protected upstream by", above && `${amps(above.rating)}, ${above.name}`),
        row("devices downstream", behind && amps(behind.value)),
        row("drawn at most", demand && amps(demand.value)),
      ],
      behind,
      demand,
    );
  }
  return undefined;
}
