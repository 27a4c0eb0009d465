import type { Context } from "../model/installation.ts";
import {
  type Fact,
  type Facts,
  isCalledNotApplicable,
  type Quantity,
  quantityOf,
  type Reading,
} from "../model/values.ts";
import { type ExactReading, testsOf } from "./supply.ts";
import type { WayStudy } from "./way.ts";

type FaultName = "Ipf" | "PSCC" | "PEFC";

export interface FaultAt extends ExactReading {
  readonly name: FaultName;
  /** Whether the figure is the board's own or that of the supply it is fed from. */
  readonly at: "board" | "supply";
  /** `>`: the reading went off scale, there is at least this much. `<`: the meter showed nothing, there is no more. */
  readonly sign: Quantity["sign"];
}

const names: readonly FaultName[] = ["Ipf", "PSCC", "PEFC"];

type FaultFact = Fact & { readonly args: { readonly value: Reading } };

function numberOf(fact: FaultFact, name: FaultName, at: FaultAt["at"]): FaultAt[] {
  const reading = quantityOf(fact.args.value);
  if (!reading) return [];
  const { value, decimals, sign } = reading;
  return [{ name, at, value, decimals, sign, fact }];
}

/** What was read to the end; a bound cannot be compared with another figure. */
const whole = ({ sign }: FaultAt): boolean => sign === "=";

const isAtMost = ({ sign }: FaultAt): boolean => sign === "<";
const isShown = ({ sign }: FaultAt): boolean => sign !== "<";

/** The fault currents noted at a board, a tested one before a stated one, A. */
export const boardFaults = (board: Facts<"board">): FaultAt[] => boardNoted(board).filter(whole);

/** Those of a board of which the meter showed nothing, A. */
export const boardFaultsAtMost = (board: Facts<"board">): FaultAt[] => boardNoted(board).filter(isAtMost);

function boardNoted(board: Facts<"board">): FaultAt[] {
  const tests = testsOf<"boardLive">(board.all("live"));
  return names.flatMap((name) => {
    const facts = [...tests.map((test) => test.facts.one(name)), board.one(name)];
    const fact = facts.find((one) => one !== undefined);
    return fact ? numberOf(fact, name, "board") : [];
  });
}

/** The fault current read to the end on a circuit, A. */
export const wayFaults = ({ isSpare, liveTests }: WayStudy): FaultAt[] => {
  const fact = isSpare ? undefined : liveTests.map(({ facts }) => facts.one("Ipf")).find((one) => one !== undefined);
  return fact ? numberOf(fact, "Ipf", "board").filter(whole) : [];
};

/** The fault currents noted at the origin, A. */
export const supplyFaults = (supply: Facts<"supply"> | undefined): FaultAt[] => supplyNoted(supply).filter(whole);

/** Those of the origin of which the meter showed nothing, A. */
export const supplyFaultsAtMost = (supply: Facts<"supply"> | undefined): FaultAt[] =>
  supplyNoted(supply).filter(isAtMost);

function supplyNoted(supply: Facts<"supply"> | undefined): FaultAt[] {
  return names.flatMap((name) => {
    const fact = supply?.one(name);
    return fact ? numberOf(fact, name, "supply") : [];
  });
}

/** The fault currents at a board: its own, or those of the origin where it stands there. */
export const faultsAt = (context: Pick<Context, "board" | "supply">): FaultAt[] => notedAt(context).filter(whole);

/** Where every figure is one below which the meter read: the greatest of them. */
export function greatestAtMost(context: Pick<Context, "board" | "supply">): FaultAt | undefined {
  if (notedAt(context).length > 0) return undefined;
  return notedAt(context, isAtMost).toSorted((one, other) => other.value - one.value)[0];
}

function notedAt({ board, supply }: Pick<Context, "board" | "supply">, which = isShown): FaultAt[] {
  const own = boardNoted(board.facts).filter(which);
  if (own.length > 0) return own;
  return board.facts.one("fed-from")?.args.from.value === "supply" ? supplyNoted(supply).filter(which) : [];
}

/** The greatest fault current a device at a board may have to break. */
export function greatestFault(context: Pick<Context, "board" | "supply">): FaultAt | undefined {
  return notedAt(context).toSorted((one, other) => other.value - one.value)[0];
}

interface Notes {
  has(name: FaultName): boolean;
  one(name: FaultName): FaultFact | undefined;
}

/** Whether a fault current stands in a block, understood or not; one that is called not applicable is none. */
const notes = (facts: Notes): boolean =>
  names.some((name) => facts.has(name) && !isCalledNotApplicable(facts.one(name)?.args.value));

export const faultsNotedAtOrigin = (supply: Facts<"supply">): boolean => notes(supply);

/** Whether one of the words stands there, understood or not, measured or not. */
export function faultsNoted({ board, supply }: Pick<Context, "board" | "supply">): boolean {
  const inTests = testsOf<"boardLive">(board.facts.all("live"));
  if (notes(board.facts) || inTests.some((test) => notes(test.facts))) return true;
  const atOrigin = board.facts.one("fed-from")?.args.from.value === "supply";
  return atOrigin && supply !== undefined && notes(supply);
}
