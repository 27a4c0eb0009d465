/** One circuit as a row: what is stated of it, and its latest readings. */

import { metres, ohms, plain, squareMillimetres } from "../../calc/result.ts";
import { countWords } from "../../circuit/cable.ts";
import { hasNoLoop, needsNoCpc } from "../../circuit/circuit-kind.ts";
import { makes } from "../../circuit/constructions.ts";
import { isOwnRcd, outletRcds } from "../../circuit/rcds.ts";
import { deadTestsDue, liveTestsDue } from "../../circuit/supply.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import { type Fact, isAbsent, type Quantity } from "../../model/values.ts";
import { latestDead } from "../../readings/dead.ts";
import { insulationLimit, insulationOf } from "../../readings/insulation.ts";
import { type Line, threeLines } from "../../readings/lines.ts";
import { polarityOf } from "../../readings/polarity.ts";
import {
  buttonOnBoard,
  buttonOnWay,
  rcdLabel,
  rcdTestsOfBoard,
  rcdTestsOfWay,
  worstAtRated,
} from "../../readings/rcd-tests.ts";
import type { Fill } from "../common/paper-kinds.ts";
import { type Noted, notApplicable, nothing, readingCell, said, tripCell, type Want } from "./cell.ts";

/** The cells of one row by the key of their column. */
export type Cells = Readonly<Record<string, Noted>>;

const number = (text: string): string => text.replace(/\s*\p{L}+[²³]?$/u, "");

/** `BS EN 60898` as the column headed “BS (EN)” has it. */
const standardNumber = (standard: string): string => standard.replace(/^BS (?:EN )?(?:IEC )?/, "");

export function wayCells(study: WayStudy, fill: Fill): Cells {
  const { way } = study;
  const own = { way: said(way.id), serves: said(way.title || (study.isSpare ? "spare" : "")) };
  if (study.isSpare) return { ...own, notes: nothing };
  return { ...own, ...detailCells(study), ...rcdCells(study), ...deadCells(study, fill), ...liveCells(study, fill) };
}

/** Of each line its pairs with the next and with the neutral. */
const pairsOfLine: Readonly<Record<Line, readonly string[]>> = {
  L1: ["L1-L2", "L1-N"],
  L2: ["L2-L3", "L2-N"],
  L3: ["L1-L3", "L3-N"],
};

/** The rows under a circuit of three lines: what was read on each, or blanks for it on a sheet to be filled in. */
export function lineCells(study: WayStudy, fill: Fill): Cells[] {
  if (!study.threePhase || study.isSpare) return [];
  const R1R2 = latestDead(study, "R1+R2")?.fact;
  const insulation = insulationOf(study)?.facts ?? [];
  const Zs = study.Zs?.fact;
  const rows = threeLines.map((line): { readonly cells: Cells; readonly read: boolean } => {
    const pairs = pairsOfLine[line];
    const between = lowestOf(insulation, (pair) => pairs.includes(pair));
    const toEarth = lowestOf(insulation, (pair) => pair === `${line}-E`);
    const want = fill === "filled" ? "none" : "blank";
    const cell = (fact: Fact | undefined, name: string, unit: string): Noted =>
      fact?.args[name] || fill !== "filled" ? readingCell(fact, name, unit, want, fill) : nothing;
    return {
      cells: {
        way: said(`${study.way.id} ${line}`),
        "R1+R2": cell(R1R2, line, "Ω"),
        "live-live": cell(between?.fact, between?.pair ?? "", "MΩ"),
        "live-earth": cell(toEarth?.fact, toEarth?.pair ?? "", "MΩ"),
        Zs: cell(Zs, line, "Ω"),
      },
      read: [R1R2?.args[line], Zs?.args[line], between, toEarth].some((one) => one !== undefined),
    };
  });
  return fill !== "filled" || rows.some(({ read }) => read) ? rows.map(({ cells }) => cells) : [];
}

const phaseNames: Readonly<Record<string, string>> = { three: "L1–L3" };

function detailCells(study: WayStudy): Cells {
  const { facts, cable, device } = study;
  const phase = facts.one("phase")?.args.phase.value;
  const method = [...new Set(facts.all("route").flatMap(({ args }) => args.method?.value ?? []))].join(", ");
  const { time, limit, by } = study.disconnection ?? {};
  const points = facts.one("points")?.args.count.value ?? study.runs?.places.size;
  return {
    line: said(phase === undefined ? (study.threePhase ? "L1–L3" : "") : (phaseNames[phase] ?? phase)),
    points: said(points === undefined ? "" : String(points)),
    wiring: said(wiringText(study)),
    method: said(method),
    live: said(cable ? `${countWords(cable.parallel.line)}${number(squareMillimetres(cable.line))}` : ""),
    cpc: said(cpcText(study)),
    length: said(study.length ? number(metres(study.length.value)) : ""),
    "device-standard": said(device ? standardNumber(device.standard) : ""),
    device: said(deviceText(study)),
    breaking: said(device?.breaking === undefined ? "" : plain(device.breaking / 1000)),
    disconnect: said(time ? plain(facts.one("disconnect")?.args.time.value ?? time.value) : ""),
    "max-Zs": limit
      ? {
          ...said(number(ohms(limit.value))),
          ...(by === "rcd" ? { note: "Zs limit of the RCD: 50 V divided by IΔn" } : {}),
          ...(limit.source.standing === "memory"
            ? { note: "limit from memory: verify it in your copy of the standard" }
            : {}),
        }
      : nothing,
  };
}

function wiringText({ cable, facts }: WayStudy): string {
  if (!cable) return "";
  const inside = facts.all("route").flatMap(({ args: { kind, made } }) => {
    const enclosed = kind?.value === "conduit" || kind?.value === "trunking" || kind?.value === "duct";
    return enclosed ? [[made?.value ?? [], kind.value].flat().join(" ")] : [];
  });
  const heat = cable.insulation === 90 ? " 90 °C" : "";
  const metal = cable.material === "copper" ? "" : ` ${cable.material}`;
  const where = inside.length > 0 ? `, ${[...new Set(inside)].join(", ")}` : "";
  const fire = cable.fireResisting ? "fire-resisting " : "";
  return `${fire}${makes[cable.construction].paper}${heat}${metal}${where}`;
}

function cpcText({ cable }: WayStudy): string {
  if (!cable) return "";
  const count = countWords(cable.parallel.cpc);
  const size = cable.cpc === undefined ? [] : [`${count}${number(squareMillimetres(cable.cpc))}`];
  const by = cable.cpcBy === "armour" && cable.cpc === undefined ? `${count}armour` : cable.cpcBy;
  return [...size, ...(by ? [by] : [])].join(" ");
}

function deviceText({ device }: WayStudy): string {
  if (!device) return "";
  const { curve, rating, fact } = device;
  const old = curve !== undefined && Number(curve) > 0 ? `type ${curve} ` : "";
  const letter = old === "" && curve !== undefined ? curve : "";
  const kind = fact.args.class?.value ?? "";
  const poles = fact.args.poles ? ` ${poleSigns[fact.args.poles.value]}` : "";
  return `${old}${kind === "" ? letter : `${kind} `}${rating ?? ""}${poles}`.trim();
}

const poleSigns = { "single-pole": "1P", "double-pole": "2P", "three-pole": "3P", "four-pole": "4P" } as const;

/** The RCDs of a way besides the one in its row: those nearer to the origin, and those in its outlets. */
const furtherRcds = (study: WayStudy): Rcd[] => [...study.rcds.slice(1), ...outletRcds(study.facts)];

const furtherText = (rcd: Rcd): string =>
  rcd.point === undefined && !isOwnRcd(rcd)
    ? `also behind ${rcdLabel(rcd)}`
    : `also ${rcdLabel(rcd)}, in the table of RCDs`;

const withNotes = (cell: Noted, notes: readonly string[]): Noted =>
  notes.length === 0 ? cell : { ...cell, note: notes.join("; ") };

/** The RCD nearest to the load: one that protects other ways too is named in the notes. */
function rcdCells(study: WayStudy): Cells {
  const [rcd] = study.rcds;
  if (!rcd)
    return {
      "rcd-standard": withNotes(notApplicable, furtherRcds(study).map(furtherText)),
      "rcd-type": notApplicable,
      "rcd-sensitivity": notApplicable,
      "rcd-rating": notApplicable,
    };
  return {
    "rcd-standard": withNotes(said(standardNumber(rcd.standard)), [
      ...(isOwnRcd(rcd) ? [] : [sharedText(rcd)]),
      ...furtherRcds(study).map(furtherText),
    ]),
    "rcd-type": said(`${rcd.type ?? ""}${rcd.delayed ? " S" : ""}`.trim()),
    "rcd-sensitivity": said(plain(rcd.sensitivity * 1000)),
    "rcd-rating": said(ratingText(rcd)),
  };
}

const sharedText = ({ at, name }: Rcd): string =>
  at === "board"
    ? `protected by RCD ${name ?? ""}, tested once for all its ways`
    : at === "main-switch"
      ? "protected by the main switch, an RCD, tested once for all ways"
      : "protected by an RCD upstream of this board";

export function ratingText({ fact }: Rcd): string {
  const { rating, curve } = fact.args;
  const value = rating?.value ?? curve?.rating;
  return value === undefined ? "" : plain(value);
}

const wanted = (is: boolean, due: boolean): Want => (is ? (due ? "missing" : "blank") : "none");

function deadCells(study: WayStudy, fill: Fill): Cells {
  const due = deadTestsDue(study.context);
  const ends = latestDead(study, "ends")?.fact;
  const R2 = latestDead(study, "R2")?.fact;
  const R1R2 = latestDead(study, "R1+R2")?.fact;
  const polarity = polarityOf(study);
  const protectedBy = study.cable?.cpcBy !== "none" && !needsNoCpc(study);
  return {
    ...Object.fromEntries(
      (["r1", "rn", "r2"] as const).map((name) => [
        name,
        readingCell(ends, name, "Ω", wanted(study.isRing, due), fill),
      ]),
    ),
    "R1+R2": readingCell(R1R2, "value", "Ω", wanted(protectedBy && !R2, due), fill),
    R2: readingCell(R2, "value", "Ω", "none", fill),
    ...insulationCells(study, fill, due),
    polarity: readingCell(polarity?.fact, polarity?.name ?? "verdict", "", wanted(true, due), fill),
  };
}

const pairs = ["L-N", "L-E", "N-E", "L-L"] as const;
type Pair = (typeof pairs)[number];

/** The conductors of a pair, whichever of three lines it was read on. */
const plainPair = (pair: string): string => pair.replace(/L\d/g, "L");

function insulationCells(study: WayStudy, fill: Fill, due: boolean): Cells {
  const test = insulationOf(study);
  const joined = test?.facts.some(({ args }) => args.joined) ?? false;
  const want: Readonly<Record<Pair, Want>> = {
    "L-N": wanted(!joined, due),
    "L-E": wanted(true, due),
    "N-E": wanted(!joined, due),
    "L-L": wanted(study.threePhase && !joined, due),
  };
  const lowest = Object.fromEntries(
    pairs.map((pair) => [pair, lowestOf(test?.facts ?? [], (one) => plainPair(one) === pair)]),
  );
  const cellOf = (among: readonly Pair[]): Noted => {
    const found = lowestOf(test?.facts ?? [], (one) => among.some((pair) => pair === plainPair(one)));
    const needed = among.map((pair) => want[pair]).find((one) => one !== "none") ?? "none";
    const why = found?.fact.args.why?.value;
    const cell = readingCell(found?.fact, found?.pair ?? "", "MΩ", needed, fill);
    const all = [...(cell.note ? [cell.note] : []), ...(why === undefined || fill !== "filled" ? [] : [why])];
    return all.length > 0 ? { ...cell, note: all.join("; ") } : cell;
  };
  const voltage = test?.facts[0]?.args.voltage;
  const design = insulationLimit(study)?.testVoltage.value;
  return {
    "test-voltage": said(voltage ? plain(voltage.value) : design === undefined ? "" : plain(design)),
    ...Object.fromEntries(
      pairs.map((pair) => {
        const found = lowest[pair];
        return [pair, readingCell(found?.fact, found?.pair ?? "", "MΩ", want[pair], fill)];
      }),
    ),
    "live-live": cellOf(["L-N", "L-L"]),
    "live-earth": cellOf(["L-E", "N-E"]),
  };
}

type InsulationFact = NonNullable<ReturnType<typeof insulationOf>>["facts"][number];

/** Of the readings between such conductors the lowest; one that was not made only where there is no other. */
function lowestOf(
  facts: readonly InsulationFact[],
  isOne: (pair: string) => boolean,
): { readonly fact: InsulationFact; readonly pair: string } | undefined {
  const all = facts.flatMap((fact) =>
    Object.entries(fact.args).flatMap(([pair, value]) =>
      /^[LN]\d?-[LNE]\d?$/.test(pair) && isOne(pair) && value ? [{ fact, pair, value: value as Quantity }] : [],
    ),
  );
  const read = all.filter(({ value }) => !isAbsent(value));
  return read.toSorted((a, b) => a.value.value - b.value.value)[0] ?? all[0];
}

function liveCells(study: WayStudy, fill: Fill): Cells {
  const due = liveTestsDue(study.context);
  const live = study.live?.facts;
  return {
    Zs: readingCell(study.Zs?.fact, "value", "Ω", wanted(!hasNoLoop(study), due), fill),
    ...rcdTestCells(study, fill, due),
    "afdd-button": readingCell(live?.one("afdd-button"), "verdict", "", wanted(study.facts.has("afdd"), due), fill),
  };
}

/** The time of the way's own RCD, or that of the one it shares, which is tested once. */
function rcdTestCells(study: WayStudy, fill: Fill, due: boolean): Cells {
  const [rcd] = study.rcds;
  if (!rcd) return { "rcd-time": notApplicable, "rcd-button": notApplicable };
  const own = isOwnRcd(rcd);
  const tests = own ? rcdTestsOfWay(study) : rcdTestsOfBoard(study.context);
  const fact = worstAtRated(tests, rcd.fact)?.fact;
  if (!own) {
    const pressed = rcd.at === "upstream" ? undefined : buttonOnBoard(rcd, study.context);
    return {
      "rcd-time": shared(tripCell(fact, "none", fill)),
      "rcd-button": shared(readingCell(pressed, "verdict", "", "none", fill)),
    };
  }
  return {
    "rcd-time": tripCell(fact, wanted(true, due), fill),
    "rcd-button": readingCell(buttonOnWay(rcd, study), "verdict", "", wanted(true, due), fill),
  };
}

/** A reading of an RCD that other ways share, in brackets: it is made once, and written in a row of its own. */
const shared = (cell: Noted): Noted => (cell.kind === "measured" ? { ...cell, text: `(${cell.text})` } : nothing);
