/** What flows in protective conductors in normal service, circuit by circuit and behind each RCD. */

import { leakageLimit } from "../calc/leakage.ts";
import type { Calculated } from "../calc/result.ts";
import { milliamps, step } from "../calc/result.ts";
import { memoByObject, memoOfWhole } from "../circuit/kept.ts";
import { testsOf } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Board } from "../model/file.ts";
import { type FactOf, quantityOf } from "../model/values.ts";
import type { Source } from "../tables/source.ts";
import { type BoardRcd, rcdsAt } from "./board-rcds.ts";
import type { BoardNode } from "./network.ts";

/** The current of one circuit, A. */
interface WayLeakage {
  readonly study: WayStudy;
  readonly fact: FactOf<"way", "leakage"> | FactOf<"live", "leakage">;
  readonly value: number;
}

/** What flows behind a point, and the circuits of which nothing is stated: the sum is then at least this much. */
interface Leakage {
  readonly parts: readonly WayLeakage[];
  readonly silent: readonly WayStudy[];
}

/** Behind one RCD of a board. */
export interface RcdLeakage extends BoardRcd {
  readonly leakage: Leakage;
  readonly sum: Calculated;
  readonly limit: Calculated;
}

const added: Source = { ref: "Sum of the circuits", standing: "computed" };

/** What the latest test of a circuit read by clamp, else what it states; nothing where it is only known from above. */
export function leakageOf(study: WayStudy): WayLeakage | undefined {
  for (const fact of [...study.liveTests.map(({ facts }) => facts.one("leakage")), study.facts.one("leakage")]) {
    const reading = fact && quantityOf(fact.args.value);
    if (fact && reading) return reading.sign === "<" ? undefined : { study, fact, value: reading.value };
  }
  return undefined;
}

/** Whether any way of a board says what leaks, or was tested for it: where none was there is nothing to add. */
const isStated = memoByObject((board: Board) =>
  board.ways.some(
    ({ facts }) => facts.has("leakage") || testsOf<"live">(facts.all("live")).some((test) => test.facts.has("leakage")),
  ),
);

const statedBelow = memoOfWhole((node: BoardNode): boolean => isStated(node.board) || node.children.some(statedBelow));

/** All that leaks behind some ways: of a feeder what it states itself, or all of the board behind it. */
function behind(node: BoardNode, studies: readonly WayStudy[]): Leakage {
  const found = studies.filter((study) => !study.isSpare).map((study) => ofWay(node, study));
  return { parts: found.flatMap(({ parts }) => parts), silent: found.flatMap(({ silent }) => silent) };
}

function ofWay(node: BoardNode, study: WayStudy): Leakage {
  const own = leakageOf(study);
  if (own) return { parts: [own], silent: [] };
  const child = study.isFeeder ? node.children.find(({ feeder }) => feeder?.way === study.way) : undefined;
  return child ? ofBoard(child) : { parts: [], silent: [study] };
}

/** All that leaks on a board and behind it. */
const ofBoard = memoOfWhole((node: BoardNode): Leakage => behind(node, node.studies));

/** The RCDs of a board behind which a circuit states what leaks, each with the sum against its limit. */
export const rcdLeakages = memoOfWhole((node: BoardNode): readonly RcdLeakage[] => {
  if (!statedBelow(node)) return [];
  return rcdsAt(node.studies).flatMap((entry): RcdLeakage[] => {
    const leakage = behind(node, entry.ways);
    if (leakage.parts.length === 0) return [];
    return [{ ...entry, leakage, sum: sumOf(leakage), limit: leakageLimit(entry.rcd.sensitivity) }];
  });
});

/** The currents as they stand: those of one line and of another cancel in part, which nobody may count on. */
function sumOf({ parts, silent }: Leakage): Calculated {
  const value = parts.reduce((sum, part) => sum + part.value, 0);
  const numbers = parts.map((part) => `${nameOf(part.study)} ${milliamps(part.value)}`).join(" + ");
  const name = silent.length === 0 ? "protective conductor currents" : "protective conductor currents, at least";
  return { value, unit: "A", steps: [step(name, numbers, milliamps(value))], source: added };
}

export const nameOf = ({ way, context }: WayStudy): string => `${context.board.name}/${way.id}`;
