/** What a calculation starts from: the lines of the schedule that say it. */

import { wordsWhere } from "../../../grammar/readings.ts";
import { rowOf } from "../../../grammar/vocabulary.ts";
import { metres, volts } from "../../calc/result.ts";
import { deviceName, rcdName } from "../../circuit/describe.ts";
import type { Rcd } from "../../circuit/rcds.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { written } from "../common/written.ts";
import { type Block, gap, part, particulars, type Section } from "../setting/document.ts";

export function givensPart(study: WayStudy): Section[] {
  const { facts, context, supply } = study;
  const rows: string[][] = [["supply", supplyText(study)], ["board", boardText(study)], ...statedRows(study)];
  if (study.length && !facts.has("length"))
    rows.push([study.isRing ? "all the way round" : "to the far point", `${metres(study.length.value)}, by the runs`]);
  if (context.edition) rows.push(["edition", `${context.edition.id} (${context.edition.name})`]);
  return part("What is known", [
    ...particulars(rows),
    ...(supply.threePhase || context.supply?.has("U0") ? [] : assumed(study)),
    ...unknown(study),
  ]);
}

/** Lines of a way that say what it is: no remark, signature or block of tests. */
const stated = wordsWhere("way", ({ remark, signs, opens }) => !remark && !signs && !opens);

function statedRows(study: WayStudy): string[][] {
  return stated.flatMap((word) => [
    ...lineRows(study, word),
    ...(word === "rcd" ? protectedBy(study) : []),
    ...(word === "cable" ? cableType(study) : []),
    ...(word === "place" && !study.facts.has("place") ? boardPlace(study) : []),
  ]);
}

function lineRows({ facts }: WayStudy, word: string): string[][] {
  const row = rowOf("way", word);
  const name = row?.paper ?? row?.reads?.name ?? word;
  return facts.list.filter((fact) => fact.word === word).map((fact) => [name, written(fact)]);
}

/** What the board says of all its ways. */
function boardPlace({ context }: WayStudy): string[][] {
  const place = context.board.facts.one("place");
  return place ? [["place", `${written(place)}, by the board`]] : [];
}

function supplyText({ supply, context }: WayStudy): string {
  const Ze = context.supply?.one("Ze");
  const parts = [
    supply.earthing ?? "earthing not stated",
    supply.threePhase ? "three-phase" : "single-phase",
    `U0 ${volts(supply.U0)}`,
    ...(Ze ? [`Ze ${written(Ze)}`] : []),
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
  const places: Readonly<Partial<Record<Rcd["at"], string>>> = {
    board: "at the board",
    "main-switch": "at the main switch",
    upstream: "upstream",
  };
  return rcds.flatMap((rcd) => {
    const place = places[rcd.at];
    return place === undefined ? [] : [["RCD that protects it", `${rcdName(rcd)}, ${place}`]];
  });
}

function cableType({ cable }: WayStudy): string[][] {
  return cable && cable.described !== cable.fact ? [["cable type", written(cable.described)]] : [];
}

function assumed({ supply }: WayStudy): Block[] {
  return [
    {
      kind: "paragraph",
      text: `The schedule does not state U0; ${volts(supply.U0)} is taken, the usual voltage to earth.`,
    },
  ];
}

/** As they are written: what they may have been meant for stands among the broken words as well. */
function unreadWords({ way, facts }: WayStudy): string {
  const written = new Set(way.segment.text.split(/[\s{}]+/));
  const words = [...new Set(facts.broken)].filter((word) => written.has(word));
  return words.length > 0 ? `these could not be read: ${words.join(", ")}` : "they could not be read";
}

/** What the schedule leaves out and the working would start from. */
function unknown(study: WayStudy): Block[] {
  const { facts, device, cable, context } = study;
  const missing = (what: string, why: string): Block => gap(what, why);
  return [
    ...(context.edition ? [] : [missing("Anything by an edition", "the installation names no edition that is known")]),
    ...(facts.broken.length === 0 ? [] : [missing("Some lines", unreadWords(study))]),
    ...(device ? [] : [missing("Anything by the device", "no device is described")]),
    ...(device && device.rating === undefined
      ? [missing("Anything by the rating", `${deviceName(device)} is written without a rated current`)]
      : []),
    ...(cable ? [] : [missing("Anything by the cable", "the cable is not described by construction and size")]),
  ];
}
