/** Which cables come into question: how they are made, and in what sizes, the smallest first. */

import { sizes } from "../calc/minimum-size.ts";
import { selectedProtective } from "../calc/protective-size.ts";
import { type Step, squareMillimetres, step } from "../calc/result.ts";
import { describedCable } from "../circuit/cable.ts";
import { methodOf } from "../circuit/route-capacity.ts";
import type { Cable, WayStudy } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import type { FactOf } from "../model/values.ts";
import { flatPairs, usualConstructions } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { cellOf, rowOf } from "../tables/table.ts";
import type { CableChoice } from "./lines.ts";

export interface Construction {
  readonly kind: CableChoice["construction"];
  readonly insulation: 70 | 90;
  readonly cpcBy?: string;
  /** A core of copper beside the armour, conduit or trunking: it stays as it is written. */
  readonly beside?: number;
  readonly cores?: number;
  readonly besides?: string;
  /** Where its figures stand in the schedule: those it gives figures for, and no others. */
  readonly own?: readonly CableChoice[];
  readonly words: string;
  readonly source?: Source;
}

/** As the schedule has it, or as is usual for the route; or what has to be known first. */
export function constructionOf(study: WayStudy): Construction | { readonly missing: string } {
  const { cable } = study;
  const routes = study.facts.all("route");
  if (routes.length === 0) return { missing: "the route: how the cable runs decides what it can carry" };
  const unknown = routes.find((route) => methodOf(route) === undefined);
  if (unknown) return { missing: "the reference method of the route" };
  if (cable) return cable.own ? ownSizes(cable, study.context) : written(cable);
  const usual = usualOn(routes, study.threePhase);
  if (!usual) return { missing: "how the cable is made" };
  const fact = study.facts.one("cable");
  const { construction, insulation, cpcBy, cores } = fact?.args ?? {};
  const spelt = construction?.value;
  const kind = spelt ?? usual.kind;
  return {
    kind,
    insulation: insulation ? (insulation.value === 90 ? 90 : 70) : usual.row.facts.insulation,
    ...(cpcBy ? { cpcBy: cpcBy.value } : {}),
    ...(cores ? { cores: cores.value } : {}),
    ...(fact ? withKept({ described: fact }) : {}),
    words: spelt ? `${kind}, as written` : `${kind}, usual for this route`,
    source: cellOf(usualConstructions, usual.row, "single").source,
  };
}

const ordinary = 70;

/** Where stretches differ one cable serves all: armoured for the ground, else a sheathed one that may go anywhere. */
function usualOn(routes: readonly FactOf<"way", "route">[], threePhase: boolean) {
  const rows = routes.flatMap((route) =>
    usualFor(route.args.kind?.value ?? kindBy[methodOf(route) ?? "C"] ?? "clipped"),
  );
  const hard = rows.find(({ facts }) => facts.insulation > ordinary);
  const row = hard ?? rows[0];
  if (!row) return undefined;
  const kindIn = (one: typeof row) => (threePhase ? one.facts.three : one.facts.single);
  const same = rows.every((one) => kindIn(one) === kindIn(row));
  const sheathed = threePhase ? "multicore" : "flat-twin";
  return { row, kind: hard || same ? kindIn(row) : sheathed };
}

/** What a method says of the route where its kind is not written. */
const kindBy: Readonly<Record<string, string>> = { A: "conduit", B: "conduit", C: "clipped", D: "buried", E: "tray" };

const usualFor = (route: string) => {
  const row = rowOf(usualConstructions, { route });
  return row ? [row] : [];
};

/** What is written of a cable and stays whatever its size: that it is fire-resisting, and how many lie in parallel. */
function keptWords({ described }: Pick<Cable, "described">): string | undefined {
  const { fire, parallel, cpcs, arranged } = described.args;
  if (!fire && !parallel) return undefined;
  return [
    ...(fire ? [fire.value] : []),
    ...(parallel ? [`parallel ${parallel.value}`] : []),
    ...(cpcs ? [`cpcs ${cpcs.value}`] : []),
    ...(arranged ? [`arranged "${arranged.value}"`] : []),
  ].join(" ");
}

function withKept(cable: Pick<Cable, "described">): { readonly besides?: string } {
  const besides = keptWords(cable);
  return besides === undefined ? {} : { besides };
}

const written = (cable: Cable): Construction => ({ ...madeLike(cable), ...withKept(cable) });

const madeLike = ({ construction, insulation, cpc, cpcBy, cores }: Cable): Construction => ({
  kind: construction,
  insulation,
  ...(cpcBy ? { cpcBy } : {}),
  ...(cpcBy && cpc !== undefined ? { beside: cpc } : {}),
  ...(cores === undefined ? {} : { cores }),
  words: `${construction}, as written`,
});

/** Figures of one's own are of one size each: what can be proposed are the cable types that state theirs. */
function ownSizes(cable: Cable, { names }: Context): Construction {
  const base = written(cable);
  const kept = cable.fact === cable.described ? [{ ...choiceOf(cable), kept: true as const }] : [];
  const types = [...names.cableTypes].flatMap(([name, [fact]]): CableChoice[] => {
    const other = fact && describedCable(fact, fact);
    const alike = other?.own && other.construction === cable.construction && other.material === cable.material;
    return alike ? [{ ...choiceOf(other), type: name }] : [];
  });
  const own = [...kept, ...types].toSorted((one, other) => one.line - other.line);
  return { ...base, own, words: `${cable.construction}, of the sizes whose figures the schedule states` };
}

const choiceOf = ({ described, construction, insulation, line, cpc, cpcBy, cores }: Cable): CableChoice => ({
  ...withKept({ described }),
  construction,
  insulation,
  line,
  ...(cpc === undefined ? {} : { cpc }),
  ...(cpcBy ? { cpcBy } : {}),
  ...(cores === undefined ? {} : { cores }),
});

export interface CableCandidate {
  readonly choice: CableChoice;
  /** How its protective conductor was found. */
  readonly steps: readonly Step[];
  readonly source?: Source;
}

/** Fixed wiring begins with this size. */
const least = 1;

/** All sizes the construction is made in, the smallest first, each with the protective conductor that goes with it. */
export function candidatesOf({ kind, insulation, cpcBy, beside, cores, besides, own }: Construction): CableCandidate[] {
  if (own) return own.map((choice) => ({ choice, steps: [] }));
  const made = {
    construction: kind,
    insulation,
    ...(cores === undefined ? {} : { cores }),
    ...(besides === undefined ? {} : { besides }),
  };
  return sizes.flatMap((line): CableCandidate[] => {
    if (line < least) return [];
    if (cpcBy)
      return [{ choice: { ...made, line, cpcBy, ...(beside === undefined ? {} : { cpc: beside }) }, steps: [] }];
    if (kind === "flat-twin") return flatCable(made, line);
    const table = selectedProtective(line);
    if (!table) return [];
    const { steps, source } = table;
    // The cores of one cable are alike; singles are pulled in one by one.
    const cpc = kind === "singles" ? table.value : line;
    return [{ choice: { ...made, line, cpc }, steps, source }];
  });
}

function flatCable(made: Omit<CableChoice, "line" | "cpc">, line: number): CableCandidate[] {
  const row = rowOf(flatPairs, { line });
  if (!row) return [];
  const { value: cpc, source } = cellOf(flatPairs, row, "cpc");
  const steps = [step(`cpc of ${squareMillimetres(line)} flat cable`, "", squareMillimetres(cpc))];
  return [{ choice: { ...made, line, cpc }, steps, source }];
}
