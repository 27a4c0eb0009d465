/** The particulars of the supply, of earthing and bonding, and of the main switch. */

import { testsOf } from "../../circuit/supply.ts";
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
  ["other-source", "Other sources"],
  ["electrode", "Earth electrode"],
  ["demand", "Maximum demand"],
  ["tails", "Tails"],
  ["earthing-conductor", "Earthing conductor"],
  ["bonding", "Main bonding"],
  ["spd", "Surge protection"],
] as const;

const onlyWhereStated: ReadonlySet<string> = new Set(["PSCC", "PEFC", "phase-sequence", "electrode"]);

export function supplyRows({ supply, boards }: Installation): [string, string][] {
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
      const shown = facts.map(written).join("; ");
      return [
        [
          name,
          shown === ""
            ? word === "phases"
              ? "single-phase"
              : word === "other-source"
                ? "none stated"
                : "not stated"
            : shown,
        ],
      ];
    }),
    ["Main switch", main ? written(main) : "not stated"],
  ];
}
