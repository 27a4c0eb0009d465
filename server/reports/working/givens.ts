/** What a calculation starts from: the lines of the schedule that say it. */

import { metres, volts } from "../../calc/result.ts";
import { deviceName, rcdName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { written } from "../common/written.ts";
import { type Block, gap, part, type Section, table } from "../setting/document.ts";

export function givensPart(study: WayStudy): Section[] {
  const { facts, context, supply } = study;
  const lines = (words: readonly Parameters<typeof facts.all>[0][]): string[][] =>
    words.flatMap((word) => facts.all(word).map((fact) => [labels[word] ?? word, written(fact as Fact)]));
  const rows: string[][] = [
    ["supply", supplyText(study)],
    ["board", boardText(study)],
    ...lines(["phase", "device", "rcd", "behind", "afdd"]),
    ...protectedBy(study),
    ...cableRows(study),
    ...lines(["route", "length", "run", "points", "spurs", "fused", "floor-area"]),
    ...lines(["serves", "place"]),
    ...(facts.has("place") ? [] : boardPlace(study)),
    ...lines(["ingress", "supplementary-bonding", "earthing", "electrode", "open-PEN"]),
    ...lines([
      "load",
      "Ib",
      "leakage",
      "duplicate-cpc",
      "feeds",
      "disconnect",
      "max-Zs",
      "parallel-path",
      "shared-neutral",
      "class-II",
    ]),
  ];
  if (study.length && !facts.has("length"))
    rows.push([study.isRing ? "all the way round" : "to the far point", `${metres(study.length.value)}, by the runs`]);
  if (context.edition) rows.push(["edition", `${context.edition.id} (${context.edition.name})`]);
  return part("What is known", [
    ...table(["item", "as the schedule has it"], rows),
    ...(supply.threePhase || context.supply?.has("U0") ? [] : assumed(study)),
    ...unknown(study),
  ]);
}

const labels: Readonly<Record<string, string>> = {
  rcd: "RCD",
  behind: "behind RCD",
  afdd: "arc fault detection",
  fused: "fused spur",
  "floor-area": "floor area",
  load: "load",
  Ib: "design current Ib",
  leakage: "protective conductor current",
  "duplicate-cpc": "second protective conductor",
  disconnect: "must disconnect",
  "max-Zs": "greatest Zs, as written",
  "parallel-path": "parallel path",
  "shared-neutral": "neutral shared with",
  "class-II": "class II",
  ingress: "IP code",
  "supplementary-bonding": "supplementary bonding",
  "open-PEN": "open PEN disconnection",
};

/** What the board says of all its ways. */
function boardPlace({ context }: WayStudy): string[][] {
  const place = context.board.facts.one("place");
  return place ? [["place", `${written(place as Fact)}, by the board`]] : [];
}

function supplyText({ supply, context }: WayStudy): string {
  const Ze = context.supply?.one("Ze");
  const parts = [
    supply.earthing ?? "earthing not stated",
    supply.threePhase ? "three-phase" : "single-phase",
    `U0 ${volts(supply.U0)}`,
    ...(Ze ? [`Ze ${written(Ze as Fact)}`] : []),
  ];
  return parts.join(", ");
}

function boardText({ context }: WayStudy): string {
  const { board, upstream } = context;
  const above = upstream.map(
    ({ board: one, feeder }) => `fed from ${named(one.name, one.title)}${feeder ? ` by way ${feeder.id}` : ""}`,
  );
  return [named(board.name, board.title), ...above].join(", ");
}

const named = (name: string, title: string): string => (title === "" ? name : `${name} “${title}”`);

/** Only where the RCD is not on the way's own lines. */
function protectedBy({ rcds }: WayStudy): string[][] {
  const places = { board: "at the board", "main-switch": "at the main switch", upstream: "upstream" } as const;
  return rcds.flatMap((rcd) =>
    rcd.at in places ? [["RCD that protects it", `${rcdName(rcd)}, ${places[rcd.at as keyof typeof places]}`]] : [],
  );
}

function cableRows({ cable, facts }: WayStudy): string[][] {
  const stated = facts.one("cable");
  if (!stated) return [];
  const rows = [["cable", written(stated as Fact)]];
  if (cable && cable.described !== cable.fact) rows.push(["cable type", written(cable.described)]);
  return rows;
}

function assumed({ supply }: WayStudy): Block[] {
  return [
    {
      kind: "paragraph",
      text: `The schedule does not state U0; ${volts(supply.U0)} is taken, the usual voltage to earth.`,
    },
  ];
}

/** What the schedule leaves out and the working would start from. */
function unknown(study: WayStudy): Block[] {
  const { facts, device, cable, context } = study;
  const missing = (what: string, why: string): Block => gap(what, why);
  return [
    ...(context.edition ? [] : [missing("Anything by an edition", "the installation names no edition that is known")]),
    ...(facts.broken.length === 0
      ? []
      : [missing("Some lines", `these could not be read: ${[...new Set(facts.broken)].join(", ")}`)]),
    ...(device ? [] : [missing("Anything by the device", "no device is described")]),
    ...(device && device.rating === undefined
      ? [missing("Anything by the rating", `${deviceName(device)} is written without a rated current`)]
      : []),
    ...(cable ? [] : [missing("Anything by the cable", "the cable is not described by construction and size")]),
  ];
}
