import { installationsOf } from "../../server/model/installation.ts";
import type { AnyValue, Fact, Facts } from "../../server/model/values.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

/**
 * What a text says, without where it says it: every fact with its values, block by block. Facts of one word keep their
 * sequence; different words may change places, since the order inside a block never matters.
 */
export function meaningOf(text: string): string {
  const { model } = fileOfText("sample.ways", text);
  const said: string[] = [factsText(model.facts)];
  for (const part of model.installations) {
    said.push(`installation ${valuesText(part.head.header)} ${factsText(part.head.facts)}`);
    for (const board of part.boards) said.push(boardText(board));
  }
  for (const board of model.boards) said.push(boardText(board));
  // In the order of their names: lines that are set in order take what is wrong with them along.
  const wrong = [...model.problems.values()].flatMap((problems) => problems.map(({ check }) => check));
  said.push(wrong.sort().join());
  said.push(String(installationsOf([{ path: "sample.ways", model }]).length));
  return said.join("\n");
}

type BoardModel = ReturnType<typeof fileOfText>["model"]["boards"][number];

const boardText = ({ head, ways }: BoardModel): string =>
  [`board ${valuesText(head.header)} ${factsText(head.facts)}`, ...ways.map(({ header }) => factText(header))].join(
    "\n",
  );

const factsText = (facts: Facts): string =>
  facts.list
    .map((fact) => ({ word: fact.word, text: factText(fact) }))
    .sort((a, b) => (a.word < b.word ? -1 : a.word > b.word ? 1 : 0))
    .map(({ text }) => text)
    .join("\n");

const factText = (fact: Fact): string =>
  `${fact.word} ${valuesText(fact)} ${fact.provenance} ${fact.record ?? ""}${fact.inner ? ` {${factsText(fact.inner)}}` : ""}`;

const valuesText = ({ args }: { args: object }): string =>
  JSON.stringify(
    Object.entries(args as Record<string, AnyValue>).sort(([a], [b]) => (a < b ? -1 : 1)),
    (key, value) => (key === "start" || key === "end" || key === "segment" ? undefined : value),
  );
