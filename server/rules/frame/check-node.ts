/**
 * Checks a board in its network. What is found stays with the board while what stands before and behind it is the same
 * and what it asked of the things it shares with others has the same answers.
 */
import { type BoardNode, boardsAmong, type Neighbours, neighboursOf, sameNeighbours } from "../../boards/network.ts";
import { Memo } from "../../memo/memo.ts";
import type { Board } from "../../model/file.ts";
import { Reads, recordedBy } from "../../model/reads.ts";
import { type KeptFindings, type PartlyKnown, StillKnown } from "./kept-findings.ts";
import type { Finding } from "./rule.ts";
import type { Asked } from "./rule-set.ts";
import { runRules } from "./run-rules.ts";

interface KeptOnNode extends KeptFindings {
  readonly round: Neighbours;
}

const nodesKept = new Memo<Board, readonly KeptOnNode[]>();

/** Of the very node: after most edits nearly all of them are the same, and nothing need be compared. */
const onSameNode = new Memo<BoardNode, KeptFindings>();

type Rules = readonly Asked<BoardNode>[];
type Placed = (finding: Finding) => Finding;

/** What is found on a board in its network, as it is known or else worked out now. */
export function knownOnNode(node: BoardNode, rules: Rules, placed: Placed): KeptFindings {
  const same = onSameNode.get(node);
  if (same) return same;
  const found = knownBySurroundings(node, rules, placed);
  onSameNode.set(node, asBefore(found));
  return found;
}

/** What is new is new once. */
function asBefore({ parts, reads, findings }: KeptFindings): KeptFindings {
  return { parts, reads, findings };
}

function knownBySurroundings(node: BoardNode, rules: Rules, placed: Placed): KeptFindings {
  const { parts } = node.context;
  const round = neighboursOf(node);
  const here = (nodesKept.get(node.board) ?? []).filter((one) => sameNeighbours(one.round, round));
  const known = here.find((one) => one.parts === parts);
  if (known) return known;
  const still = new StillKnown(parts);
  const own = () => new Set(boardsAmong(round).flatMap(({ segments }) => segments));
  // Which fixes are allowed follows from more than what was asked here.
  for (const one of here.filter(({ findings }) => findings.every(({ fixes }) => fixes.length === 0))) {
    const findings = still.still(one, own);
    if (findings) return keep(node, { parts, reads: one.reads, findings, round });
    const before = still.partOf(one, own);
    if (before) return keep(node, { ...checkedNode(node, rules, placed, before), round });
  }
  return keep(node, { ...checkedNode(node, rules, placed), round });
}

function keep(node: BoardNode, fresh: KeptOnNode): KeptOnNode {
  const others = (nodesKept.get(node.board) ?? []).filter(({ parts }) => parts !== fresh.parts);
  nodesKept.set(node.board, [fresh, ...others.slice(0, fresh.parts.mostKept - 1)]);
  return fresh;
}

function checkedNode(node: BoardNode, rules: Rules, placed: Placed, before?: PartlyKnown): KeptFindings {
  const { parts } = node.context;
  const reads = new Reads(parts);
  if (before) reads.add(before.reads);
  const findings = recordedBy(reads, () => foundOnNode(node, rules, before).map(placed));
  return { parts, reads: parts.questions.oneOf(reads.bits), findings, isNew: true };
}

/** What rules find on a board in its network: those that ask nothing that has another answer now are not run again. */
export function foundOnNode(node: BoardNode, rules: Rules, before?: PartlyKnown): readonly Finding[] {
  const { board, context } = node;
  const found: Finding[] = [];
  const { askers } = context.parts.questions;
  const one = { subject: node, header: board.head.header, before, found };
  runRules(rules, [one], { edition: context.edition, askers });
  return found;
}
