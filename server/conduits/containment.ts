/**
 * Conduits and trunkings that several circuits share: which one a route means, and what runs in each. Checks and hovers
 * read the same study.
 */

import { conductorsOf } from "../circuit/conductors.ts";
import { memoByObject, memoInPlace } from "../circuit/kept.ts";
import { studyWay } from "../circuit/way.ts";
import type { Board, BoardHead, InstallationHead } from "../model/file.ts";
import type { Context, Installation } from "../model/installation.ts";
import { asBlock, type Facts } from "../model/values.ts";
import type { Content } from "./contents.ts";
import type { ContainmentFact } from "./sections.ts";
import { ContainmentStudy } from "./study.ts";

export type { ContainmentStudy } from "./study.ts";

/** Every containment of a block that has a name. One still being typed has none. */
export const allContainments = (facts: Facts<"installation"> | Facts<"board">): readonly ContainmentFact[] =>
  asBlock<"board">(facts)
    .all("containment")
    .filter(({ args }) => args.name && args.kind && args.size);

type Named = ReadonlyMap<string, ContainmentFact>;

const named = memoByObject((facts: Facts<"installation"> | Facts<"board">): Named => {
  const found = new Map<string, ContainmentFact>();
  for (const fact of allContainments(facts))
    if (!found.has(fact.args.name.value)) found.set(fact.args.name.value, fact);
  return found;
});

/** The containments a board's ways can name; nothing where a broken line may have defined more. */
export function containmentNames(board: BoardHead | undefined, head: InstallationHead): Named | undefined {
  const blocks = [head.facts, ...(board ? [board.facts] : [])];
  const unclear = (facts: Facts<"installation"> | Facts<"board">): boolean =>
    facts.isUnread("containment") ||
    asBlock<"board">(facts)
      .all("containment")
      .some(({ misread }) => misread);
  if (blocks.some(unclear)) return undefined;
  return board ? new Map([...named(head.facts), ...named(board.facts)]) : named(head.facts);
}

/** What a way's route means by a name: the board's own containment before the installation's. */
export const containmentOf = ({ board, installation }: Context, name: string): ContainmentFact | undefined =>
  named(board.facts).get(name) ?? named(installation.facts).get(name);

type ByContainment = ReadonlyMap<ContainmentFact, readonly Content[]>;

interface BoardInContext {
  readonly board: Board;
  readonly context: Context;
}

/** What each containment holds of one board's ways. */
const contentsOn = memoInPlace(({ board, context }: BoardInContext): ByContainment => {
  const found = new Map<ContainmentFact, Content[]>();
  for (const way of board.ways) {
    for (const route of way.facts.all("route")) {
      const fact = route.args.in && containmentOf(context, route.args.in.value);
      if (!fact) continue;
      const study = studyWay(way, context);
      if (study.isSpare) continue;
      found.set(fact, [...(found.get(fact) ?? []), { study, route, ...conductorsOf(study, route) }]);
    }
  }
  return found;
});

/** The containments of a board, with what runs in them. */
export const containmentsOn = memoInPlace((place: BoardInContext): readonly ContainmentStudy[] => {
  const own = allContainments(place.board.head.facts);
  if (own.length === 0) return [];
  const contents = contentsOn(place);
  // Settled here, so that whatever is asked for it is asked by this answer and not by whoever looks at it first.
  return own.map((fact) => new ContainmentStudy(fact, contents.get(fact) ?? []).settled());
});

/** The containments of the installation itself, with what runs in them from all boards. */
export function containmentsOf({ head, boards }: Installation): ContainmentStudy[] {
  const own = allContainments(head.facts);
  if (own.length === 0) return [];
  return own.map((fact) => {
    const contents = boards.flatMap((place) => contentsOn(place).get(fact) ?? []);
    return new ContainmentStudy(fact, contents);
  });
}
