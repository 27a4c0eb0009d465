/** The working of a way, a board or an installation as a person sets it out on paper. */

import { type Network, networkOf } from "../../boards/network.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { containmentsOf, containmentsOn } from "../../conduits/containment.ts";
import type { Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { checkInstallation } from "../../rules/frame/check.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import type { Target } from "../common/target.ts";
import { citedReport } from "../setting/cited.ts";
import { paragraph, part, type Report, type Section } from "../setting/document.ts";
import { boardSections, installationSections } from "./board.ts";
import { leakagePart, ratingsPart } from "./board-sums.ts";
import { cablePart, loadPart } from "./currents.ts";
import {
  boardDemandPart,
  containmentPart,
  coordinationPart,
  energyPart,
  lengthPart,
  originDemandPart,
  standbyOfBoardPart,
  standbyPart,
} from "./design.ts";
import { disconnectionPart } from "./disconnection.ts";
import { dropPart } from "./drop.ts";
import { expectedPart } from "./expected.ts";
import { faultPart } from "./fault.ts";
import { givensPart } from "./givens.ts";
import { eachSumOnce } from "./once.ts";
import { protectivePart } from "./protective.ts";
import { readingsPart } from "./readings.ts";
import { closingParts, memoryPart } from "./record.ts";
import { ringPart } from "./ring.ts";

export function workingOf(installation: Installation, { place, way }: Target = {}): Report {
  const result = checkInstallation(installation);
  const name = installation.head.title || "an installation without a name";
  const edition = installation.edition;
  const lead = [
    `Installation: ${name}`,
    edition
      ? `Worked to ${edition.id} (${edition.name}): “BS 7671” below is that edition.`
      : "The installation names no edition that is known.",
    ...(edition?.unseen ? [edition.unseen] : []),
  ];
  const report: Report = {
    title: `Working: ${place && way ? wayTitle(place, way) : place ? boardTitle(place) : name}`,
    lead,
    sections: sectionsOf(installation, { ...(place ? { place } : {}), ...(way ? { way } : {}) }, result),
    close: true,
    cautions,
  };
  return citedReport(report, edition, true);
}

const cautions =
  "This working follows from what the schedule says and from the sources named beside each figure. It does not see the installation, and it replaces neither the standard nor the judgement of the person who signs. Figures marked as from memory have to be checked in your own copy.";

function sectionsOf(installation: Installation, { place, way }: Target, result: CheckResult): Section[] {
  if (place && way) return withMemory(waySections(installation, place, way, result, true));
  if (place) return withMemory(wholeBoard(installation, place, result));
  return withMemory([
    ...installationSections(installation, result, [
      ...originDemandPart(installation),
      ...containmentPart(containmentsOf(installation)),
    ]),
    ...installation.boards.flatMap((one) => wholeBoard(installation, one, result)),
  ]);
}

/** What is to be looked up stands once at the end, a source a line: each is opened once. */
const withMemory = (sections: Section[]): Section[] => [...sections, ...memoryPart(sections)];

const wholeBoard = (installation: Installation, place: BoardInPlace, result: CheckResult): Section[] => [
  { level: 1, title: boardTitle(place), blocks: [] },
  ...boardSections(place, networkOf(installation).nodeOf(place.board), result, boardDesign(installation, place)),
  ...place.board.ways.flatMap((way) => waySections(installation, place, way, result)),
];

function boardDesign(installation: Installation, place: BoardInPlace): Section[] {
  const node = networkOf(installation).nodeOf(place.board);
  return [
    ...(node
      ? [
          ...standbyOfBoardPart(node),
          ...boardDemandPart(node),
          ...coordinationPart(node),
          ...ratingsPart(node),
          ...leakagePart(node),
        ]
      : []),
    ...containmentPart(containmentsOn(place)),
  ];
}

/** What a board shows once is not drawn again for each of its ways. */
function waySections(
  installation: Installation,
  place: BoardInPlace,
  way: Way,
  result: CheckResult,
  alone = false,
): Section[] {
  const study = studyWay(way, place.context);
  const head: Section = { level: 1, title: wayTitle(place, way), blocks: [] };
  const own = new Set([way.segment]);
  if (study.isSpare)
    return [
      head,
      ...part("What is known", [paragraph("The way is spare: there is nothing to calculate.")]),
      ...closingParts(result, own, []),
    ];
  const parts = eachSumOnce([
    ...calculation(study, networkOf(installation), place),
    ...containmentPart([...containmentsOf(installation), ...containmentsOn(place)], { way: study, drawings: alone }),
    ...expectedPart(study),
    ...readingsPart(study),
  ]);
  return [head, ...parts, ...closingParts(result, own, parts)];
}

/** In the order of the trade: what is known, currents, drop, disconnection, protection. The meter comes after it. */
const calculation = (study: WayStudy, network: Network, { board }: BoardInPlace): Section[] => [
  ...givensPart(study),
  ...loadPart(study, network.nodeOf(board)),
  ...cablePart(study, network.nodeOf(board)),
  ...ringPart(study),
  ...dropPart(study, network, network.nodeOf(board)),
  ...disconnectionPart(study),
  ...protectivePart(study),
  ...faultPart(study, network.nodeOf(board)),
  ...energyPart(network.nodeOf(board), study),
  ...standbyPart(network.nodeOf(board), study),
  ...lengthPart(network.nodeOf(board), study),
];

const wayTitle = ({ board }: BoardInPlace, { id, kind, title }: Way): string =>
  `Way ${board.head.name}/${id}${title === "" ? "" : ` “${title}”`}${kind ? `, ${kind}` : ""}`;

export const boardTitle = ({ board: { head } }: BoardInPlace): string =>
  `Board ${head.name}${head.title === "" ? "" : ` “${head.title}”`}`;
