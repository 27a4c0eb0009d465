/** What stands in the installation itself and in each of its boards. */

import { type DesignLine, designOfBoard, designOfOrigin, designOfWay } from "../../boards/design.ts";
import { type BoardNode, networkOf } from "../../boards/network.ts";
import { blocksWithin, type Block as FactBlock } from "../../circuit/blocks.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { boardTestDays, ownTestDays, type TestDay } from "../../readings/instruments.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { boardTitle } from "../working/working.ts";
import type { Placed } from "./parts.ts";
import type { PlacedTest } from "./tests.ts";

/** A part of the installation with all that stands in it. */
export interface Scope {
  readonly title: string;
  readonly parts: readonly Placed[];
  readonly blocks: readonly { readonly where: string; readonly block: Pick<FactBlock, "facts"> }[];
  readonly tests: readonly PlacedTest[];
  readonly days: readonly TestDay[];
  readonly lines: readonly { readonly where: string; readonly line: DesignLine }[];
  readonly result: CheckResult;
}

export function scopesOf(installation: Installation, result: CheckResult): Scope[] {
  const network = networkOf(installation);
  const found = foundOnBoards(installation, result.findings);
  return [
    ownScope(installation, result),
    ...installation.boards.map((place) =>
      // What a departure suppresses is looked up by the departure.
      boardScope(place, network.nodeOf(place.board), { ...result, findings: found.get(place) ?? [] }),
    ),
  ];
}

/** What is found on each board, gone through once for all of them. */
function foundOnBoards(
  { boards }: Installation,
  findings: readonly Finding[],
): ReadonlyMap<BoardInPlace | undefined, readonly Finding[]> {
  const places = new Map(boards.flatMap((place) => place.board.segments.map((segment) => [segment, place] as const)));
  return Map.groupBy(findings, ({ spot }) => places.get(spot.segment));
}

function ownScope(installation: Installation, { findings, suppressed }: CheckResult): Scope {
  const inBoards = new Set(installation.boards.flatMap(({ board }) => board.segments));
  return {
    title: "Installation and supply",
    parts: ownParts(installation),
    blocks: ownBlocksOf(installation),
    tests: planSupply(installation).map((test) => ({ where: "supply", test, way: undefined, context: undefined })),
    days: [...ownTestDays(installation), ...installation.boards.flatMap(({ board }) => boardTestDays(board))],
    lines: designOfOrigin(installation).map((line) => ({ where: "supply", line })),
    // A departure of the installation is listed here with all that it suppresses in the boards.
    result: { findings: findings.filter(({ spot }) => !inBoards.has(spot.segment)), suppressed },
  };
}

function boardScope(place: BoardInPlace, node: BoardNode | undefined, result: CheckResult): Scope {
  const { board, context } = place;
  const studies = board.ways.map((way) => ({ where: wayName(place, way.id), study: studyWay(way, context) }));
  return {
    title: boardTitle(place),
    parts: partsOf(place),
    blocks: blocksOf(place),
    tests: [...boardTests(place), ...studies.flatMap(({ where, study }) => wayTests(where, study, context))],
    days: boardTestDays(board),
    lines: node
      ? [
          ...designOfBoard(node).map((line) => ({ where: boardName(place), line })),
          ...studies.flatMap(({ where, study }) => designOfWay(node, study).map((line) => ({ where, line }))),
        ]
      : [],
    result,
  };
}

/** Those of its RCDs; besides them a board is read by itself where somebody chose to. */
const boardTests = (place: BoardInPlace): PlacedTest[] =>
  planBoard(place.context, place.board.ways)
    .filter(({ step, recorded }) => step === "rcd" || recorded)
    .map((test) => ({ where: boardName(place), test, way: undefined, context: place.context }));

/** A point beside the far one counts where somebody chose to read it. */
const wayTests = (where: string, study: WayStudy, context: BoardInPlace["context"]): PlacedTest[] =>
  [...planDead(study), ...planLive(study)]
    .filter(({ place, recorded }) => place === undefined || recorded)
    .map((test) => ({ where, test, way: study.way, context }));

const boardName = ({ board }: BoardInPlace): string => `board ${board.head.name}`;
const wayName = ({ board }: BoardInPlace, id: string): string => `${board.head.name}/${id}`;

/** The lines of the files outside any board, and those of the installation itself. */
export const ownParts = ({ head, files }: Installation): Placed[] => [
  ...files.map(({ facts }) => ({ where: "file", facts: facts })),
  { where: "installation", facts: head.facts },
];

export const partsOf = (place: BoardInPlace): Placed[] => [
  { where: boardName(place), facts: place.board.head.facts },
  ...place.board.ways.map((way) => ({ where: wayName(place, way.id), facts: way.facts })),
];

export const ownBlocksOf = ({ head, files }: Installation): Scope["blocks"] => [
  ...files.map(({ facts }) => ({ where: "file", block: { facts } })),
  ...blocksWithin(head.header, head.facts).map((block) => ({ where: "installation", block })),
];

export const blocksOf = (place: BoardInPlace): Scope["blocks"] => [
  ...blocksWithin(place.board.head.header, place.board.head.facts).map((block) => ({ where: boardName(place), block })),
  ...place.board.ways.flatMap((way) =>
    blocksWithin(way.header, way.facts).map((block) => ({ where: wayName(place, way.id), block })),
  ),
];

export function placesIn({ boards }: Installation): ReadonlyMap<Finding["spot"]["segment"], string> {
  const map = new Map<Finding["spot"]["segment"], string>();
  for (const place of boards) {
    for (const segment of place.board.segments) map.set(segment, boardName(place));
    for (const way of place.board.ways) map.set(way.segment, wayName(place, way.id));
  }
  return map;
}
