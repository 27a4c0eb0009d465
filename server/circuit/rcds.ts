/** The RCDs a circuit is protected by, from its own device up to the origin. */

import type { BoardHead, Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import type { AnyValue, Fact, FactOf, Facts, Quantity, Shorthand, Val } from "../model/values.ts";
import { memoOfContext } from "./kept.ts";

/** An RCD that protects a way, and where it is. */
export interface Rcd {
  readonly at: "device" | "way" | "outlet" | "board" | "main-switch" | "upstream";
  readonly fact: Fact & { readonly args: RcdArgs };
  readonly name: string | undefined;
  /** Of one in a socket-outlet: the point. */
  readonly point?: string;
  readonly standard: string;
  /** Rated residual current IΔn, A. */
  readonly sensitivity: number;
  readonly type: "AC" | "A" | "F" | "B" | undefined;
  readonly delayed: boolean;
  readonly direction: "bidirectional" | "unidirectional" | undefined;
}

/** Whether it protects one way alone: in its device, or written as the way's own. */
export const isOwnRcd = ({ at }: Rcd): boolean => at === "device" || at === "way";

/** The RCDs in outlets of a way. They protect what is plugged in there, and not the circuit. */
export const outletRcds = (facts: Facts<"way">): Rcd[] =>
  facts
    .all("outlet-rcd")
    .flatMap((fact) => rcdFrom("outlet", fact).map((rcd) => ({ ...rcd, point: fact.args.point.value })));

/** The RCDs that are tested on a way itself: in its device, its own, and those in its outlets. */
export const ownRcds = (study: { readonly rcds: readonly Rcd[]; readonly facts: Facts<"way"> }): Rcd[] => [
  ...study.rcds.filter(isOwnRcd),
  ...outletRcds(study.facts),
];

/** What every statement that can name an RCD says of it. */
interface RcdArgs {
  readonly standard: Val<string>;
  readonly sensitivity?: Quantity;
  readonly type?: Val<Rcd["type"] & string>;
  readonly delay?: AnyValue;
  readonly direction?: Val<Rcd["direction"] & string>;
  readonly rating?: Quantity;
  readonly curve?: Shorthand;
}

/** The RCD of a statement; none where it has no residual current, as a device without one has not. */
function rcdFrom<A extends RcdArgs>(at: Rcd["at"], fact: (Fact & { readonly args: A }) | undefined): Rcd[] {
  if (!fact) return [];
  const { standard, sensitivity, type, delay, direction }: RcdArgs = fact.args;
  if (!sensitivity) return [];
  return [
    {
      at,
      fact,
      name: undefined,
      standard: standard.value,
      sensitivity: sensitivity.value,
      type: type?.value,
      delayed: delay !== undefined,
      direction: direction?.value,
    },
  ];
}

/** One RCD of a board, by the name its ways know it by. */
const namedRcd = (fact: FactOf<"board", "rcd"> | undefined): Rcd[] =>
  rcdFrom("board", fact).map((rcd) => ({ ...rcd, name: fact?.args.name.value }));

/** The one of a board that a way says it is behind. */
const rcdBefore = (way: Facts<"way"> | undefined, board: Facts<"board">): FactOf<"board", "rcd"> | undefined =>
  board.all("rcd").find((rcd) => rcd.args.name.value === way?.one("behind")?.args.rcd.value);

/** The RCD of its board that a way is behind. */
export const boardRcdOf = ({ facts, context }: { readonly facts: Facts<"way">; readonly context: Context }) =>
  rcdBefore(facts, context.board.facts);

/** The RCDs that several ways of a board share: those it names, and a main switch that is one. */
export const rcdsOfBoard = ({ facts }: BoardHead): Rcd[] => [
  ...facts.all("rcd").flatMap(namedRcd),
  ...rcdFrom("main-switch", facts.one("main-switch")),
];

/** Those a circuit is behind, nearest to the load first. */
export function rcdsOf(facts: Facts<"way">, context: Context): Rcd[] {
  const { board } = context;
  return [
    ...rcdFrom("device", facts.one("device")),
    ...rcdFrom("way", facts.one("rcd")),
    ...namedRcd(rcdBefore(facts, board.facts)),
    ...rcdFrom("main-switch", board.facts.one("main-switch")),
    ...rcdsUpstream(context),
  ];
}

/** The same for all ways of a board. */
const rcdsUpstream = memoOfContext(({ upstream }: Context): readonly Rcd[] =>
  upstream.flatMap(({ board, feeder }) => upstreamRcds(board.facts, feeder)),
);

function upstreamRcds(board: Facts<"board">, feeder: Way | undefined): Rcd[] {
  const facts = feeder?.facts;
  return [
    ...rcdFrom("upstream", facts?.one("device")),
    ...rcdFrom("upstream", facts?.one("rcd")),
    ...rcdFrom("upstream", rcdBefore(facts, board)),
    ...rcdFrom("upstream", board.one("main-switch")),
  ];
}
