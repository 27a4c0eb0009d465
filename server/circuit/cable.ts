/** The cable of a way, as its own line or its cable type describes it. */
import type { Conductor } from "../calc/circuit-network.ts";
import type { Metal } from "../calc/conductor-resistance.ts";
import type { Construction } from "../calc/index.ts";
import type { Context } from "../model/installation.ts";
import type { FactOf, Facts } from "../model/values.ts";
import type { Sourced } from "../tables/source.ts";
import { type CableConstruction, isTabledKind } from "./constructions.ts";

type CableFact = FactOf<"way", "cable">;

export interface Cable {
  /** The line the cable is named on. */
  readonly fact: CableFact;
  /** The line that describes it: the same, or that of its cable type. */
  readonly described: CableFact;
  readonly construction: CableConstruction;
  /** 70 °C unless said otherwise. */
  readonly insulation: 70 | 90;
  readonly line: number;
  readonly neutral: number;
  readonly cpc: number | undefined;
  readonly cpcBy: "armour" | "conduit" | "trunking" | "sheath" | "casing" | "none" | undefined;
  readonly material: Metal;
  readonly cores: number | undefined;
  /** How many conductors of each lie in parallel; sizes and figures are those of one. */
  readonly parallel: Readonly<Record<Conductor, number>>;
  /** Made to keep supplying its load in a fire; by its nature mineral cable does without being called so. */
  readonly fireResisting: boolean;
  readonly wire: "solid" | "stranded" | undefined;
  /** Figures of the maker or of a person's own book, which go before every table. */
  readonly own: OwnFigures | undefined;
}

/** `2 × ` before a size of which so many lie in parallel. */
export const countWords = (count: number): string => (count > 1 ? `${count} × ` : "");

/** One conductor of each. */
export const single: Cable["parallel"] = { line: 1, neutral: 1, cpc: 1 };

/** Whether any of its conductors are doubled. */
export const isParallel = ({ parallel }: Cable): boolean => parallel.line > 1;

/** As they stand in the schedule: A, V per A and m, Ω per m at 20 °C. They are judged like printed ones. */
interface OwnFigures {
  readonly carries: Sourced<number> | undefined;
  readonly drop: Sourced<number> | undefined;
  readonly line: Sourced<number> | undefined;
  readonly cpc: Sourced<number> | undefined;
  /** At rated current. */
  readonly lineHot: Sourced<number> | undefined;
  readonly cpcHot: Sourced<number> | undefined;
  /** Of one conductor. */
  readonly reactance: Sourced<number> | undefined;
  readonly cpcReactance: Sourced<number> | undefined;
  readonly withstands: Withstand | undefined;
}

/** The short-circuit current busbar trunking withstands, A. */
export interface Withstand {
  /** For that time, s. */
  readonly Icw: Sourced<number> | undefined;
  readonly time: number;
  /** Behind the device it was tested with. */
  readonly Icc: Sourced<number> | undefined;
}

/** Cable whose resistance, capacity and drop follow from its size by the tables; other kinds have rules of their own. */
export const isTabled = (cable: Cable): cable is Cable & { readonly construction: Construction } =>
  isTabledKind(cable.construction);

/** Whether the resistance of its conductors is known, by size or as it is stated. */
export const hasResistance = (cable: Cable): boolean => isTabled(cable) || cable.own?.line !== undefined;

export function cableOf(facts: Facts<"way">, context: Context): Cable | undefined {
  const fact = facts.one("cable");
  if (!fact) return undefined;
  const typeName = fact.args.use?.value;
  const described = typeName === undefined ? fact : context.names.cableTypes.get(typeName)?.[0];
  return described && describedCable(fact, described);
}

/** A cable as a line describes it; `fact` names it. */
export function describedCable(fact: CableFact, described: CableFact): Cable | undefined {
  const { construction, insulation, line, neutral, cpc, cpcBy, material, cores, wire, fire, parallel, cpcs } =
    described.args;
  if (!construction || !line) return undefined;
  const of = Math.max(1, parallel?.value ?? 1);
  const hot = insulation?.value ?? 70;
  return {
    fact,
    described,
    construction: construction.value,
    insulation: hot >= 90 ? 90 : 70,
    line: line.value,
    neutral: neutral?.value ?? line.value,
    cpc: cpc?.value,
    cpcBy: cpcBy?.value,
    material: material?.value ?? "copper",
    cores: cores?.value,
    parallel: { line: of, neutral: of, cpc: Math.min(of, Math.max(1, cpcs?.value ?? of)) },
    fireResisting: fire !== undefined,
    wire: wire?.value,
    own: ownFigures(described),
  };
}

function ownFigures({ args }: CableFact): OwnFigures | undefined {
  const { carries, drop, r1, r2, r1Hot, r2Hot, x, x2, Icw, withstandTime, Icc, by } = args;
  if (![carries, drop, r1, r2, r1Hot, r2Hot, x, x2, Icw, Icc].some((figure) => figure !== undefined)) return undefined;
  const ref = by ? `As stated, “${by.value}”` : "As stated for this cable";
  const as = (figure: { readonly value: number } | undefined): Sourced<number> | undefined =>
    figure && { value: figure.value, source: { ref, standing: "quoted" } };
  return {
    carries: as(carries),
    drop: as(drop),
    line: as(r1),
    cpc: as(r2),
    lineHot: as(r1Hot),
    cpcHot: as(r2Hot),
    reactance: as(x),
    cpcReactance: as(x2),
    withstands: Icw || Icc ? { Icw: as(Icw), time: withstandTime?.value ?? 1, Icc: as(Icc) } : undefined,
  };
}
