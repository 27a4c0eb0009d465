/** All figures that follow from a schedule, in plain lines: of the origin, of each board and of each way, and what its tests should read. */
import {
  type DesignLine,
  designOfBoard,
  designOfOrigin,
  designOfWay,
  type Figure,
  lengthsOfWay,
} from "../../../server/boards/design.ts";
import { networkOf } from "../../../server/boards/network.ts";
import { working } from "../../../server/calc/result.ts";
import { installationsOf } from "../../../server/model/installation.ts";
import { planBoard, planSupply } from "../../../server/readings/plan-board.ts";
import { planDead } from "../../../server/readings/plan-dead.ts";
import { planLive } from "../../../server/readings/plan-live.ts";
import type { PlannedTest } from "../../../server/readings/planned.ts";
import { sourceText } from "../../../server/tables/source.ts";
import { fileOfText } from "../../../server/workspace/loaded-file.ts";

/** Nothing where the text is not sound. */
export function figuresIn(text: string): string[] | undefined {
  const file = fileOfText("sample.ways", text);
  if ([...file.model.problems.values()].some((problems) => problems.length > 0)) return undefined;
  return installationsOf([file]).flatMap((installation) => [
    ...under("origin", [...designOfOrigin(installation).flatMap(lineText), ...planSupply(installation).map(testText)]),
    ...networkOf(installation).nodes.flatMap((node) => [
      ...under(`board ${node.board.head.name}`, [
        ...designOfBoard(node).flatMap(lineText),
        ...planBoard(node.context, node.board.ways).map(testText),
      ]),
      ...node.studies.flatMap((study) =>
        under(`way ${node.board.head.name}/${study.way.id}`, [
          ...designOfWay(node, study).flatMap(lineText),
          ...lengthsOfWay(node, study).flatMap(lineText),
          ...[...planDead(study), ...planLive(study)].map(testText),
        ]),
      ),
    ]),
  ]);
}

const under = (name: string, lines: readonly string[]): string[] => lines.map((line) => `${name}: ${line}`);

const figureText = ({ value, unit }: Figure): string => `${Number(value.toPrecision(6))} ${unit}`;

function lineText({ title, verdict, value, limit, reason, steps, source }: DesignLine): string[] {
  const figures = [...(value ? [figureText(value)] : []), ...(limit ? [`of ${figureText(limit)}`] : [])].join(" ");
  return [
    `${title} ${verdict}${figures === "" ? "" : `, ${figures}`}${reason === undefined ? "" : ` (${reason})`}`,
    ...(source && source.ref !== "" ? [`  source: ${sourceText(source)}`] : []),
    ...working(steps)
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => `  ${line}`),
  ];
}

const testText = ({ name, expected, bounds, recorded }: PlannedTest): string =>
  `test ${name}: ${[expected?.text ?? "–", bounds.map(({ text }) => text).join(", ") || "–", recorded?.text ?? "–"].join(" | ")}`;
