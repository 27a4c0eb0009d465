/** The particulars of the supply, of earthing and bonding, and of the main switch. */

import type { WordRow } from "../../../grammar/params.ts";
import { vocabulary } from "../../../grammar/vocabulary.ts";
import { feedsBack } from "../../circuit/circuit-kind.ts";
import { memoOfPlaces } from "../../circuit/kept.ts";
import { testsOf } from "../../circuit/supply.ts";
import { studyWay } from "../../circuit/way.ts";
import type { Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import { nominalVoltage } from "../../tables/supply.ts";
import { written } from "../common/written.ts";

/** What is stated of a supply by its particulars, in the order in which a schedule states it. */
const rows = Object.entries<WordRow>(vocabulary.supply).flatMap(([word, { particular }]) =>
  particular ? [{ word, ...particular }] : [],
);

/** What takes over from the supply, what is stated besides, and the circuits by which something feeds back. */
function otherSources(installation: Installation): string {
  const { supply } = installation;
  const stated = supply?.list.filter(({ word }) => word === "other-source" || word === "standby") ?? [];
  return [...stated.map(written), ...feedingBack(installation).flat()].join("; ");
}

const feedingBack = memoOfPlaces(({ board, context }) =>
  board.ways
    .filter((way) => feedsBack(studyWay(way, context)))
    .map((way) => `${board.head.name}/${way.id} ${way.title}`),
);

/** What is taken for granted where nothing is stated, and every limit rests on. */
const takenFor: Readonly<Record<string, string>> = {
  phases: "single-phase",
  U0: `${nominalVoltage.toEarth} V, nominal`,
};

/** As a paper says it, which stands by itself: of `phases three` it is no answer to “Live conductors”. */
const shownOf = (fact: Fact): string => (fact.word === "phases" ? `${written(fact)}-phase` : written(fact));

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
    ...rows.flatMap(({ word, name, ifStated }): [string, string][] => {
      const facts = own(word);
      if (facts.length === 0 && ifStated) return [];
      return [[name, facts.map(shownOf).join("; ") || (takenFor[word] ?? "not stated")]];
    }),
    ["Other sources", otherSources(installation) || "none stated"],
    ["Main switch", main ? written(main) : "not stated"],
  ];
}
