/** What a file holds, besides what is wrong with it. */
import type { FileModel } from "../model/file.ts";
import type { Facts } from "../model/values.ts";
import { limitationsOf } from "../readings/absences.ts";
import { queriesIn } from "../readings/queries.ts";
import { type Spot, wordSpot } from "../rules/frame/rule.ts";

interface Survey {
  readonly boards: number;
  readonly ways: number;
  readonly queries: readonly { readonly text: string; readonly spot: Spot }[];
  readonly departures: number;
  readonly limitations: number;
}

export function surveyOf(model: FileModel): Survey {
  const boards = [...model.boards, ...model.installations.flatMap((part) => part.boards)];
  const blocks = blocksOf(model).flatMap(withInner);
  const facts = blocks.flatMap((block) => block.list);
  return {
    boards: boards.length,
    ways: boards.reduce((sum, board) => sum + board.ways.length, 0),
    queries: blocks.flatMap(openQueries),
    departures: facts.filter(({ word }) => word === "departure").length,
    limitations: facts.reduce((sum, fact) => sum + limitationsOf(fact), 0),
  };
}

function blocksOf({ facts, installations, boards }: FileModel): Facts[] {
  const all = [...boards, ...installations.flatMap((part) => part.boards)];
  return [
    facts,
    ...installations.map(({ head }) => head.facts),
    ...all.flatMap(({ head, ways }) => [head.facts, ...ways.map((way) => way.facts)]),
  ].filter((block) => block !== undefined);
}

const withInner = (block: Facts): Facts[] => [
  block,
  ...block.list.flatMap(({ inner }) => (inner ? withInner(inner) : [])),
];

const openQueries = (block: Facts): { text: string; spot: Spot }[] =>
  queriesIn(block).open.map((query) => ({ text: query.args.text.value, spot: wordSpot(query) }));
