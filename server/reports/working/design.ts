/** Demand, coordination, the heat of a fault and shared containments, as the design calculates them. */

import type { Circuit } from "../../boards/circuit-load.ts";
import { discrimination, fuseRatio, magneticOverlap, type Overlap, sameRating } from "../../boards/coordination.ts";
import { type BoardDemand, demandOf } from "../../boards/demand.ts";
import { originDemand } from "../../boards/demand-origin.ts";
import { type DesignLine, designOfBoard, designOfOrigin, designOfWay, lengthsOfWay } from "../../boards/design.ts";
import { faultLevels } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { standbyOfWay } from "../../boards/standby.ts";
import { amps, percent, plain, squareMillimetres } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { ContainmentStudy } from "../../conduits/containment.ts";
import { circuitsWords, roomWords, sectionsWords, sharedWords, takenWords, wantedWords } from "../../conduits/words.ts";
import { crossSection } from "../../drawings/cross-section.ts";
import type { Installation } from "../../model/installation.ts";
import { combine } from "../../tables/source.ts";
import {
  type Block,
  calculate,
  compareWithLimit,
  gap,
  paragraph,
  part,
  type Section,
  table,
} from "../setting/document.ts";
import { pictureOf } from "../setting/picture.ts";
import { lineBlocks, verdictBlocks } from "./design-lines.ts";

export const originDemandPart = (installation: Installation): Section[] =>
  installation.boards.length === 0
    ? []
    : part("Demand at the origin", demandBlocks(designOfOrigin(installation), originDemand(installation)));

const mainSwitch = "Main switch against what protects it";

export const boardDemandPart = (node: BoardNode): Section[] =>
  node.studies.length === 0
    ? []
    : part(
        "Demand",
        demandBlocks(
          designOfBoard(node).filter(({ title }) => title.startsWith("Demand")),
          demandOf(node),
        ),
      );

/** The demand line by line with its working; then what it rests on, and what it is compared with. */
function demandBlocks(lines: readonly DesignLine[], demand: BoardDemand | undefined): Block[] {
  if (!demand) return lines.flatMap(lineBlocks);
  const { diverse, assumed, unknown, unplaced, unlined } = demand;
  const how = diverse
    ? "Diversity is accounted for, by the table or by the designer."
    : "No diversity is taken: every circuit counts in full, which is more than will be drawn at the same time.";
  const remark = diverse ? "" : "with every circuit in full";
  const rests: [string, readonly Circuit[]][] = [
    ["taken at the rating of the device", assumed],
    ["not counted, load not given", unknown],
    ["spread evenly over the lines", unplaced],
  ];
  return [
    ...lines.filter(({ limit }) => limit === undefined).flatMap(lineBlocks),
    paragraph(how),
    ...(unlined.length === 0
      ? []
      : [
          paragraph(
            `Counted on every line, the worst case, since the line is not stated: ${unlined.map(({ board }) => `board ${board.head.name}`).join(", ")}.`,
          ),
        ]),
    ...table(
      ["assumed", "ways"],
      rests.flatMap(([what, circuits]) => (circuits.length === 0 ? [] : [[what, circuits.map(nameOf).join(", ")]])),
    ),
    ...lines.filter(({ limit }) => limit !== undefined).flatMap((line) => verdictBlocks(line, remark)),
  ];
}

const nameOf = ({ way, board }: Circuit): string => `${board.name}/${way.id}`;

/** The main switch before its protection, and the device of the feeder before those behind it. */
export function coordinationPart(node: BoardNode): Section[] {
  const above = node.feeder?.device;
  const overlaps = [magneticOverlap(node), fuseRatio(node)].flatMap((one) => one ?? []);
  const same = overlaps.length === 0 ? sameRating(node) : undefined;
  const silent =
    above && overlaps.length === 0 && !same
      ? [
          paragraph(
            `As far as ratings and types tell, nothing shows that the ${deviceName(above)} that feeds the board opens with a device behind it. The makers' tables decide.`,
          ),
        ]
      : [];
  return part("Coordination", [
    ...designOfBoard(node)
      .filter(({ title }) => title === mainSwitch)
      .flatMap((line) => verdictBlocks(line, line.reason)),
    ...overlaps.flatMap(overlapBlocks),
    ...(same
      ? [
          paragraph(
            `The ${same.above.name} and the ${deviceName(same.below)} behind it have one rating: on an overload either may open first.`,
          ),
        ]
      : []),
    ...discriminationBlocks(node),
    ...silent,
  ]);
}

function discriminationBlocks(node: BoardNode): Block[] {
  const found = discrimination(node, faultLevels(node)?.greatest.value);
  if (!found) return [];
  const { kind, upTo, why } = found;
  const how =
    kind === "partial" && upTo ? `partial, up to ${amps(upTo.value)}` : kind === "total" ? "total" : "not known";
  return [paragraph(`Discrimination of the feeder’s device with those of the board: ${how} (${why}).`)];
}

function overlapBlocks({ above, below, value, limit, others }: Overlap): Block[] {
  const more = others.length === 0 ? "" : ` and ${others.length} more`;
  const text = `${above.short} over ${deviceName(below)}${more}: ${amps(value.value)} < ${amps(limit.value)}`;
  return [
    calculate("What the device upstream should have", limit, amps(limit.value), ""),
    compareWithLimit(
      false,
      text,
      { ...limit.source, standing: "practice" },
      { value: value.value, limit: limit.value },
    ),
  ];
}

/** What a fault heats, besides the protective conductor, and what flows least at the end. */
export function energyPart(node: BoardNode | undefined, study: WayStudy): Section[] {
  const lines = node ? designOfWay(node, study) : [];
  const least = lines.filter(({ title }) => title === leastShort);
  const shown = new Set(least.flatMap(({ steps }) => steps.map(stepKey)));
  const heat = lines
    .filter(({ title }) => ofHeat.has(title))
    .map((line) => ({ ...line, steps: line.steps.filter((step) => !shown.has(stepKey(step))) }));
  return part("Heat of a fault", [...least.flatMap(lineBlocks), ...heat.flatMap(heatBlocks)]);
}

/** How the circuit stands on a source that takes over. */
export function standbyPart(node: BoardNode | undefined, study: WayStudy): Section[] {
  const lines = node ? designOfWay(node, study).filter(({ on }) => on !== undefined) : [];
  return part("On the second source", lines.flatMap(lineBlocks));
}

/** What may flow at the board on a source that takes over, and which circuits it supplies there. */
export function standbyOfBoardPart(node: BoardNode): Section[] {
  const lines = designOfBoard(node).filter(({ on }) => on !== undefined);
  const rows = lines.map(({ on = "" }) => [
    on,
    node.studies
      .filter((study) => standbyOfWay(study).some(({ args }) => args.what.value === on))
      .map(({ way }) => nameOf({ way, board: node.board.head }))
      .join(", "),
  ]);
  return part("On the second source", [
    ...lines.flatMap(lineBlocks),
    ...table(["source", "circuits it supplies here"], rows),
  ]);
}

/** How long the circuit may be by each limit, and how long its reading says that it is. */
export function lengthPart(node: BoardNode | undefined, study: WayStudy): Section[] {
  return part("Length", node ? lengthsOfWay(node, study).flatMap(lineBlocks) : []);
}

const stepKey = ({ formula, numbers, result }: DesignLine["steps"][number]): string =>
  [formula, numbers, result].join("|");

const leastShort = "Least short-circuit current at the end";
const ofHeat: ReadonlySet<string> = new Set([
  "Live conductors in a fault",
  "Let-through energy at the board",
  "Short-circuit current the busbar trunking withstands",
]);

/** What no table states is no gap of the schedule: the reader is sent elsewhere. */
const heatBlocks = (line: DesignLine): Block[] =>
  line.verdict === "open" && line.reason !== undefined && elsewhere.test(line.reason)
    ? [paragraph(`${line.title}: ${line.reason}.`)]
    : lineBlocks(line);

const elsewhere = /the maker's I²t decides$|^the device also protects/;

/** How full the conduits and trunkings are; of one way, those it runs in. */
export function containmentPart(
  studies: readonly ContainmentStudy[],
  { way, drawings = true }: { readonly way?: WayStudy; readonly drawings?: boolean } = {},
): Section[] {
  const own = way ? studies.filter(({ contents }) => contents.some(({ study }) => study === way)) : studies;
  return part(
    "Shared containment",
    own.flatMap((study) => [...containmentBlocks(study), ...(drawings ? drawn(study) : [])]),
  );
}

function containmentBlocks(study: ContainmentStudy): Block[] {
  const { name, title, fullest, contents, missing, isWhole, percent: full } = study;
  const head = `${name}, ${title}`;
  if (contents.length === 0) return [paragraph(`${head}: empty, no route names it.`)];
  const rows = contents.map(({ study: one, cables, missing: why }) => [
    nameOf({ way: one.way, board: one.context.board }),
    why ?? cables.map(({ count, csa }) => `${count} × ${squareMillimetres(csa)}`).join(", "),
  ]);
  const gaps = [...new Set(missing)].map((why) => gap(`All that is in ${name}`, why));
  const within = table([`in ${head}`, "cables"], rows);
  if (!fullest || full === undefined) return [...within, ...gaps];
  const { total, room, fits } = fullest.fill;
  const steps = [...total.steps, ...room.steps];
  const text = `${head}: ${plain(total.value, 1)} ${fits ? "≤" : ">"} ${plain(room.value)}`;
  return [
    ...within,
    calculate(`Sum of factors in ${name}`, { steps, source: total.source }, plain(total.value, 1), ""),
    compareWithLimit(
      fits,
      text,
      combine(total.source, room.source),
      { value: total.value, limit: room.value },
      isWhole ? `${percent(Math.round(full))} full` : `at least ${percent(Math.round(full))} full`,
    ),
    ...table(["between draw-in points", "sum", "full"], sectionsWords(study)),
    ...table(["further", ""], furtherRows(study)),
    ...gaps,
  ];
}

const furtherRows = (study: ContainmentStudy): string[][] =>
  [
    ["still goes in", roomWords(study)],
    ["least size that holds them", wantedWords(study)],
    ["grouped", circuitsWords(study)],
    ["share a protective conductor", sharedWords(study)],
    ["taken as", takenWords(study).join("; ") || undefined],
  ].flatMap(([name = "", text]) => (text === undefined ? [] : [[name, text]]));

/** What is in it, cut across. */
function drawn(study: ContainmentStudy): Block[] {
  const drawing = crossSection(study);
  const caption =
    "To scale. How the cables lie is chance; whether they go in is judged by the factors, not by the drawing. Their diameters and the wall are from memory.";
  return drawing ? [{ kind: "figure", ...pictureOf(drawing), drawing, caption }] : [];
}
