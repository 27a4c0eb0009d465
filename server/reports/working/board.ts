/** What is calculated of a board and of the supply, before their ways. */

import { faultLevels } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { supplementaryLimit, supplementaryOfCpc } from "../../boards/supplementary.ts";
import { faultCurrent, prospective } from "../../calc/fault-current.ts";
import { supplementaryBonding } from "../../calc/protective-size.ts";
import { type Calculated, kiloamps, ohms, squareMillimetres, step } from "../../calc/result.ts";
import { boardImpedance } from "../../circuit/board-impedance.ts";
import { faultsAt } from "../../circuit/faults.ts";
import { studySupply } from "../../circuit/supply.ts";
import { studyWay } from "../../circuit/way.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { exact, type FactOf, type Facts } from "../../model/values.ts";
import { bondingNeed, earthingHeat, earthingNeed, pmeBondingNeed, pmeNeed, soilNeed } from "../../readings/earthing.ts";
import { designBoardImpedance, originImpedance } from "../../readings/loop.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import { written } from "../common/written.ts";
import {
  type Block,
  calculate,
  compareWithLimit,
  gap,
  paragraph,
  part,
  particulars,
  type Section,
} from "../setting/document.ts";
import { eachSumOnce } from "./once.ts";
import { closingParts } from "./record.ts";

const noSource = { ref: "", standing: "printed" } as const;

/** Plain lines of a block, without the blocks and words that are not for paper. */
const linesOf = (facts: Facts | undefined): string[][] =>
  (facts?.list ?? [])
    .filter(({ word, inner }) => !inner && !["note", "query", "answer", "departure"].includes(word))
    .map((fact) => [fact.word.replaceAll("-", " "), written(fact)]);

export function installationSections(
  installation: Installation,
  result: CheckResult,
  design: readonly Section[],
): Section[] {
  const { supply, head } = installation;
  const ze = originImpedance({ supply });
  const known = part("Installation and supply", [
    ...particulars([...linesOf(head.facts), ...linesOf(supply)]),
    ...(supply ? [] : [gap("Anything by the supply", "the supply is not described")]),
  ]);
  const place = installation.boards[0];
  const U0 = place ? studySupply(place.context).U0 : undefined;
  const fault = ze && U0 !== undefined && ze.value > 0 ? faultCurrent(U0, ze.value) : undefined;
  const loop = part("Loop and fault current at the origin", [
    calculate(
      "Earth fault current at the origin",
      fault,
      prospective(fault?.value ?? 0),
      ze ? "Ze is zero, or there is no board" : "Ze is not stated as a figure",
    ),
  ]);
  const earthing = part("Earthing and bonding", supply ? earthingBlocks(installation, supply) : []);
  const parts = [...known, ...loop, ...earthing, ...design];
  const own = new Set([
    head.header.segment,
    ...(supply?.list ?? []).map(({ segment }) => segment),
    ...head.facts.list.map(({ segment }) => segment),
  ]);
  return [
    { level: 1, title: `Installation ${head.title}`.trim(), blocks: [] },
    ...parts,
    ...closingParts(result, own, parts),
  ];
}

const earthingBlocks = (installation: Installation, supply: Facts<"supply">): Block[] => [
  ...earthingConductorBlocks(installation, supply),
  ...mainBondingBlocks(supply),
];

function earthingConductorBlocks(installation: Installation, supply: Facts<"supply">): Block[] {
  const own = supply.one("earthing-conductor")?.args.size.value;
  const need = earthingNeed(supply);
  const heat = earthingHeat(supply, installation.edition);
  const soil = soilNeed(supply);
  const leastPme = pmeBondingNeed(supply);
  const pme = pmeNeed(supply);
  const required = (name: string, of: Calculated | undefined): Block[] =>
    of ? [calculate(`Earthing conductor, ${name}`, of, squareMillimetres(of.value), "")] : [];
  // Where the fault has been calculated and the conductor bears it, the table is not compared with it.
  const heatDecides = heat !== undefined && own !== undefined && own >= heat.need.value;
  const limits = [heatDecides ? heat.need : need, soil, leastPme, pme].filter((limit) => limit !== undefined);
  return [
    need
      ? calculate("Earthing conductor by Table 54.7", need, squareMillimetres(need.value), "")
      : gap("The earthing conductor by Table 54.7", whyNoEarthing(supply)),
    ...required(`by the heat of a fault at the origin${heat?.atMost ? ", at most" : ""}`, heat?.need),
    ...required("in the ground by Table 54.1", soil),
    ...required("with PME no thinner than the main bonding", leastPme),
    ...required("as a distributor asks", pme),
    ...(own === undefined ? [] : limits.map((limit) => sizeBlock("Earthing conductor", own, limit))),
  ];
}

function mainBondingBlocks(supply: Facts<"supply">): Block[] {
  const need = bondingNeed(supply);
  const whyNot = "the earthing arrangement or the size it follows from is not stated";
  const services = supply.all("bonding").filter(({ args: { service } }) => !unbonded.includes(service.value));
  return [
    calculate("Main bonding", need, squareMillimetres(need?.value ?? 0), whyNot),
    ...(need ? services.flatMap((fact) => bondingBlocks(supply, fact)) : []),
  ];
}

/** What stands on a line of bonding and is no service of its own: lightning protection, and that none needs it. */
const unbonded: readonly string[] = ["lightning", "none"];

/** One service: by the resistance of copper, where its conductor is of aluminium. */
function bondingBlocks(
  supply: Facts<"supply">,
  { args: { size, service, metal } }: FactOf<"supply", "bonding">,
): Block[] {
  const name = `Bonding of ${service.value}`;
  const least = bondingNeed(supply, metal?.value);
  const aluminium =
    metal?.value === "aluminium"
      ? [
          calculate(
            `${name}, of aluminium`,
            least,
            squareMillimetres(least?.value ?? 0),
            "no size of aluminium conducts so well",
          ),
        ]
      : [];
  if (!size) return [...aluminium, gap(name, "its size is not stated")];
  return [...aluminium, ...(least ? [sizeBlock(name, size.value, least)] : [])];
}

function whyNoEarthing(supply: Facts<"supply">): string {
  const system = supply.one("earthing")?.args.system.value;
  if (system === "TT")
    return "the fault current through an electrode is so low that the table would require far too much";
  if (!system) return "the earthing arrangement is not stated";
  return "the size of the tails is not stated";
}

function supplementaryBlocks({ board, context }: BoardInPlace): Block[] {
  const studies = board.ways.map((way) => studyWay(way, context));
  return board.head.facts.all("supplementary-bonding").flatMap((fact): Block[] => {
    const { place, title, size, shielded, continuity } = fact.args;
    const name = `Supplementary bonding, ${title?.value ?? place.value}`;
    const least = supplementaryBonding(shielded !== undefined);
    const found = supplementaryLimit(fact, studies);
    const reading = exact(continuity);
    const byCpc = supplementaryOfCpc(fact, studies)?.need;
    const sized = size && sizeBlock(name, size.value, least);
    const measured = reading !== undefined && "limit" in found && resistanceBlock(`${name}, R`, reading, found.limit);
    return [
      calculate(`${name}, least size`, least, squareMillimetres(least.value), ""),
      sized || gap(`${name}, its size`, "its size is not stated"),
      ...(byCpc ? [calculate(`${name}, by the cpc it joins`, byCpc, squareMillimetres(byCpc.value), "")] : []),
      ...(byCpc && size ? [sizeBlock(name, size.value, byCpc)] : []),
      "limit" in found
        ? calculate(`${name}, R at most`, found.limit, ohms(found.limit.value), "")
        : gap(`${name}, R at most`, found.missing),
      ...(measured ? [measured] : []),
    ];
  });
}

/** The size of a conductor, mm², beside the least that is required. */
function sizeBlock(name: string, size: number, least: Calculated): Block {
  const holds = size >= least.value;
  const text = `${name} ${squareMillimetres(size)} ${holds ? "≥" : "<"} ${squareMillimetres(least.value)}`;
  return compareWithLimit(holds, text, least.source, { value: size, limit: least.value });
}

/** A resistance that was read, Ω, beside the most that is allowed. */
function resistanceBlock(name: string, reading: number, most: Calculated): Block {
  const holds = reading <= most.value;
  const text = `${name} ${ohms(reading)} ${holds ? "≤" : ">"} ${ohms(most.value)}`;
  return compareWithLimit(holds, text, most.source, { value: reading, limit: most.value });
}

/** What may flow at the board, of every kind of fault: by calculation where none is noted. */
function levelBlocks(node: BoardNode | undefined, noted: boolean): Block[] {
  const levels = node && faultLevels(node);
  if (!levels)
    return noted ? [] : [gap("Fault current", "none is noted for this board, and none follows from upstream")];
  const one = (name: string, found: Calculated | undefined): Block[] =>
    found ? [calculate(`Greatest fault current, ${name}`, found, prospective(found.value), "")] : [];
  return [
    ...one("line to neutral", levels.neutral),
    ...one("three-phase", levels.three),
    ...one("line to earth", levels.earth),
  ];
}

/** `network` is what follows for the board from all boards together. */
export function boardSections(
  place: BoardInPlace,
  node: BoardNode | undefined,
  result: CheckResult,
  network: readonly Section[],
): Section[] {
  const { board, context } = place;
  const loop = boardImpedance(context);
  const design = designBoardImpedance(context);
  const steps = loop ? [step(`${loop.name}, as the schedule has it`, "", ohms(loop.value))] : (design?.steps ?? []);
  const faults = faultsAt(context);
  const parts = eachSumOnce([
    ...part("What is known of the board", particulars(linesOf(board.head.facts))),
    ...part("Loop and fault current at the board", [
      calculate(
        "Loop impedance",
        design && { steps, source: loop ? noSource : design.source },
        ohms(design?.value ?? 0),
        "it is not noted, and nothing above the board gives it",
      ),
      ...levelBlocks(node, faults.length > 0),
      ...faults.map(({ name, value, at }) =>
        calculate(`${name}, noted at the ${at}`, { steps: [], source: noSource }, kiloamps(value), ""),
      ),
    ]),
    ...part("Supplementary bonding", supplementaryBlocks(place)),
    ...network,
  ]);
  const ways = new Set(board.ways.map(({ segment }) => segment));
  const own = new Set(board.segments.filter((segment) => !ways.has(segment)));
  const empty = board.ways.length === 0 ? part("Ways", [paragraph("The board has no ways.")]) : [];
  return [...parts, ...empty, ...closingParts(result, own, parts)];
}
