/** Inspections as events: what each covers, in the order of their days. */
import { daysBetween } from "../text/days.ts";
import { inOrder } from "../text/order.ts";
import type { BoardHead, InstallationHead, Way } from "./file.ts";
import type { FactOf, Facts, Val } from "./values.ts";

export type InspectionKind = "initial" | "periodic" | "minor";
export type ObservationFact = FactOf<"inspection", "observation">;

/** One inspection of an installation, from its block. */
export interface Inspection {
  /** Nothing while the kind is still to be written. */
  readonly kind: InspectionKind | undefined;
  /** Its first and last day as written; the same where it was one. Empty while the day is still to be written. */
  readonly from: string;
  readonly to: string;
  readonly header: FactOf<"installation", "inspection">;
  readonly facts: Facts<"inspection">;
}

/** The inspections of an installation, the earliest first; those of one day in the order of the file. */
export const inspectionsOf = ({ facts }: Pick<InstallationHead, "facts">): readonly Inspection[] =>
  facts
    .all("inspection")
    .map(inspectionOf)
    .sort((a, b) => inOrder(a.to, b.to));

export const latestInspection = (head: InstallationHead): Inspection | undefined => inspectionsOf(head).at(-1);

function inspectionOf(header: FactOf<"installation", "inspection">): Inspection {
  // A header with a fault in it has its block all the same, and lacks what was not understood.
  const { kind, on, to } = header.args;
  const from = on?.value ?? "";
  return { kind: kind?.value, from, to: to?.value ?? from, header, facts: header.inner as Facts<"inspection"> };
}

/** A circuit by its board and its own number. */
export interface Circuit {
  readonly board: Pick<BoardHead, "name">;
  readonly way: Pick<Way, "id">;
}

/** What `covers`, `sampled-out`, `limitation` and `observation` say of circuits. */
export interface OfCircuits {
  readonly args: { readonly board?: Val<string>; readonly ways?: readonly Val<string>[] };
}

/** Whether a line is of a circuit: of those it names, of its whole board, or of all. */
export function isOf({ args: { board, ways } }: OfCircuits, circuit: Circuit): boolean {
  if (board && board.value !== circuit.board.name) return false;
  return !ways || ways.some(({ value }) => value === circuit.way.id);
}

/** Whether a circuit is within what an inspection covers; without a line of `covers` it is of all. */
export function covers({ facts }: Inspection, circuit: Circuit): boolean {
  const lines = facts.all("covers");
  return lines.length === 0 || lines.some((line) => isOf(line, circuit));
}

/**
 * Days before an inspection, or a signature, within which a test may be one of its own. Common practice: a paper follows
 * its tests by weeks, and what is years older was tested for another.
 */
const daysBefore = 366;

/** Whether a test of one day is too old to be of what began, or was signed, on the other. */
export const isOlder = (tested: string, from: string): boolean => daysBetween(tested, from) > daysBefore;

/**
 * The inspection that answers for what was tested on a day: the first that ends then or later and covers the circuit, if
 * the test is not of another time.
 */
export const inspectionFor = (
  inspections: readonly Inspection[],
  on: string,
  circuit: Circuit,
): Inspection | undefined => inspections.find((one) => one.to >= on && covers(one, circuit) && !isOlder(on, one.from));

/** The numbers of a run of items, `4.1..4.6`; the item itself where it is no run. */
export function itemsNamed(written: string): readonly string[] {
  const [, stem = "", first = "", lastStem = "", last = ""] =
    /^((?:\d+\.)*)(\d+)\.\.((?:\d+\.)*)(\d+)$/.exec(written) ?? [];
  const [low, high] = [Number(first), Number(last)];
  if (first === "" || (lastStem !== "" && lastStem !== stem) || high < low || high - low > mostItems) return [written];
  return Array.from({ length: high - low + 1 }, (_, index) => `${stem}${low + index}`);
}

/** No schedule of items has a section of more. */
const mostItems = 99;
