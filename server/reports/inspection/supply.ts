/** The particulars of the supply, of earthing and bonding, and of the main switch. */

import { feedsBack } from "../../circuit/circuit-kind.ts";
import { testsOf } from "../../circuit/supply.ts";
import { studyWay } from "../../circuit/way.ts";
import type { Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import { written } from "../common/written.ts";

const rows = [
  ["earthing", "Earthing"],
  ["phases", "Live conductors"],
  ["U0", "U0"],
  ["Ipf", "Prospective fault current Ipf"],
  ["PSCC", "PSCC"],
  ["PEFC", "PEFC"],
  ["Ze", "Ze"],
  ["polarity", "Supply polarity"],
  ["phase-sequence", "Phase sequence"],
  ["cutout", "Supply protective device"],
  ["electrode", "Earth electrode"],
  ["demand", "Maximum demand"],
  ["tails", "Tails"],
  ["earthing-conductor", "Earthing conductor"],
  ["bonding", "Main bonding"],
  ["spd", "Surge protection"],
] as const;

const onlyWhereStated: ReadonlySet<string> = new Set(["PSCC", "PEFC", "phase-sequence", "electrode"]);

/** What takes over from the supply, what is stated besides, and the circuits by which something feeds back. */
function otherSources({ supply, boards }: Installation): string {
  const stated = supply?.list.filter(({ word }) => word === "other-source" || word === "standby") ?? [];
  const ways = boards.flatMap(({ board, context }) =>
    board.ways
      .filter((way) => feedsBack(studyWay(way, context)))
      .map((way) => `${board.head.name}/${way.id} ${way.title}`),
  );
  return [...stated.map(written), ...ways].join("; ");
}

export function supplyRows(installation: Installation): [string, string][] {
  const { supply, boards } = installation;
  const later = supply ? testsOf<"supplyLive">(supply.all("live")) : [];
  const own = (word: string): Fact[] => {
    const tested = later.flatMap(({ facts }) => facts.list.filter((fact) => fact.word === word));
    const plain = supply?.list.filter((fact) => fact.word === word) ?? [];
    return tested[0] ? [tested[0]] : plain;
  };
  const main = boards.find(({ context }) => context.upstream.length === 0)?.board.head.facts.one("main-switch");
  return [
    ...rows.flatMap(([word, name]): [string, string][] => {
      const facts = own(word);
      if (facts.length === 0 && onlyWhereStated.has(word)) return [];
      return [[name, facts.map(written).join("; ") || (word === "phases" ? "single-phase" : "not stated")]];
    }),
    ["Other sources", otherSources(installation) || "none stated"],
    ["Main switch", main ? written(main) : "not stated"],
  ];
}
