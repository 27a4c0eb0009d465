import type { System } from "../calc/disconnection-time.ts";
import type { Calculated } from "../calc/result.ts";
import type { Context } from "../model/installation.ts";
import { exact, type Fact, type FactOf, type Facts, isAbsent, type Reading } from "../model/values.ts";
import { asWritten } from "../tables/source.ts";
import { nominalVoltage, supplyValues } from "../tables/supply.ts";
import { known } from "../tables/table.ts";
import { inOrder } from "../text/order.ts";

/** What is known of the supply; values left out of a schedule take the usual ones. */
export interface SupplyStudy {
  readonly earthing: System | undefined;
  /** The line that says so: the supply's, or that of a board or way with an electrode of its own. */
  readonly earthingFact: Fact | undefined;
  /** Nominal voltage to earth, V. */
  readonly U0: number;
  readonly threePhase: boolean;
  /** What the voltage makes of it: a public supply, reduced low voltage (411.8), or one that is not judged here. */
  readonly kind: SupplyKind;
  /** Across a load of one phase, V: U0, and between lines at reduced low voltage, where no neutral is run. */
  readonly voltage: number;
}

type SupplyKind = "public" | "reduced" | "other";

const reducedMost = known(supplyValues, { key: "reduced-low-voltage" }, "value").value;
const extraLowMost = 50;

/** By the nominal voltage to earth, V. A public supply is within +10 % and −6 % of its own. */
function kindOf(U0: number): SupplyKind {
  if (U0 >= nominalVoltage.toEarth * 0.94 && U0 <= nominalVoltage.toEarth * 1.1) return "public";
  return U0 > extraLowMost && U0 <= reducedMost ? "reduced" : "other";
}

/** The supply at the origin, whatever a board makes of it. */
export function originSupply(supply: Context["supply"]): SupplyStudy {
  const earthingFact = supply?.one("earthing");
  const U0 = supply?.one("U0")?.args.value.value ?? nominalVoltage.toEarth;
  const threePhase = supply?.one("phases")?.args.count.value === "three";
  const kind = kindOf(U0);
  return {
    earthing: earthingFact?.args.system.value,
    earthingFact,
    U0,
    threePhase,
    kind,
    voltage: kind === "reduced" ? U0 * (threePhase ? Math.sqrt(3) : 2) : U0,
  };
}

/** The supply as it reaches a board, or one way of it: the nearest electrode of one's own counts before the supply's earth. */
export function studySupply(context: Context, way?: Facts<"way">): SupplyStudy {
  const origin = originSupply(context.supply);
  // Where nothing is disconnected, neither the earth nor the voltage of the supply says anything of a fault.
  if (way?.has("protective-measure") || context.board.facts.has("protective-measure"))
    return { ...origin, earthing: undefined, earthingFact: undefined, kind: "other" };
  const own = way?.one("earthing") ?? ownEarthing(context);
  return own ? { ...origin, earthing: own.args.system.value, earthingFact: own } : origin;
}

/** Where a board or one that feeds it leaves the supply's earth behind. */
function ownEarthing({ board, upstream }: Context): FactOf<"board", "earthing"> | undefined {
  const boards = [board, ...upstream.map((above) => above.board)];
  return boards.map(({ facts }) => facts.one("earthing")).find((fact) => fact !== undefined);
}

type Stage = "design" | "installed" | "dead-tested" | "tested";
type Work = "new" | "addition" | "existing";
type PartWork = "new" | "altered" | "existing" | "not-part";

/** What is asked about: a way, a board with its ways, or the installation where neither is named. */
interface PartOfWork {
  readonly installation: Context["installation"];
  readonly board?: Context["board"];
  readonly way?: Facts<"way"> | undefined;
}

/** A way in its place. */
interface PlacedWay {
  readonly context: Context;
  readonly facts: Facts<"way">;
}

type Part = PartOfWork | PlacedWay;

const partOf = (part: Part): PartOfWork =>
  "context" in part ? { installation: part.context.installation, board: part.context.board, way: part.facts } : part;

/**
 * How far the work is. A schedule that does not say is taken as a design, of which the least is asked; one whose line
 * cannot be read is past it and not tested, of which neither a design nor a test is asked.
 */
export const stageOf = ({ installation: { facts } }: Pick<PartOfWork, "installation">): Stage =>
  facts.one("stage")?.args.stage.value ?? (facts.isUnread("stage") ? "installed" : "design");

const statedWork = ({ installation }: PartOfWork): Work | undefined => installation.facts.one("work")?.args.work.value;

/** What a way or its board says that the work is to it; the nearest line counts. */
export function partWorkOf(part: Part): PartWork | undefined {
  const { board, way } = partOf(part);
  return orNone(way?.one("work"), way) ?? orNone(board?.facts.one("work"), board?.facts);
}

/** Of a part whose line cannot be read it may be none, of which the least is asked. */
const orNone = (
  line: FactOf<"way", "work"> | undefined,
  facts: Facts<"way"> | Facts<"board"> | undefined,
): PartWork | undefined => line?.args.work.value ?? (facts?.isUnread("work") ? "not-part" : undefined);

const asWork: Readonly<Record<PartWork, Work>> = {
  new: "new",
  altered: "addition",
  existing: "existing",
  "not-part": "existing",
};

/** The work to a part: its own where it says, else the installation's. */
export function workOf(part: Part): Work | undefined {
  const own = partWorkOf(part);
  if (own) return asWork[own];
  const { facts } = partOf(part).installation;
  // What was there before is asked least.
  return statedWork(partOf(part)) ?? (facts.isUnread("work") ? "existing" : undefined);
}

/** Whether the work leaves this part as it was: existing, in a schedule that is not of an existing installation. */
export function isOutsideWork(part: Part): boolean {
  const own = partWorkOf(part);
  return own === "not-part" || (own === "existing" && statedWork(partOf(part)) !== "existing");
}

export const premisesOf = (context: Context): string | undefined =>
  context.installation.facts.one("premises")?.args.premises.value;

/** Whether dead tests should be there, and live tests. */
export const deadTestsDue = (part: Part): boolean =>
  ["dead-tested", "tested"].includes(stageOf(partOf(part))) && !isOutsideWork(part);
export const liveTestsDue = (part: Part): boolean => stageOf(partOf(part)) === "tested" && !isOutsideWork(part);

/** A reading with the fact it stands in and, for tests, the block round it. */
export interface ReadingAt {
  readonly value: Reading;
  readonly fact: Fact;
  /** The day of the test, if it stands in a dated block. */
  readonly on?: string;
}

/** A number that was read, bounds and absences left out. */
export interface ExactReading {
  readonly value: number;
  readonly decimals: number;
  readonly fact: Fact;
}

export function exactReading(reading: ReadingAt | undefined): ExactReading | undefined {
  const value = reading && exact(reading.value);
  if (!reading || value === undefined || isAbsent(reading.value)) return undefined;
  return { value, decimals: reading.value.decimals, fact: reading.fact };
}

/** A loop as it stands in the schedule, Ω: nothing was calculated of it. */
export const asRead = (value: number): Calculated => ({ value, unit: "Ω", steps: [], source: asWritten });

/** A source of one's own in place of a distributor's, which is earthed at one place. */
export const hasOwnSource = (supply: Facts<"supply"> | undefined): boolean =>
  supply?.one("source")?.args.of.value === "private";

type TestBlock = "dead" | "live" | "boardDead" | "boardLive" | "supplyLive";

/** A dated block of tests. */
export interface Test<B extends TestBlock> {
  readonly on: string;
  readonly header: Fact;
  readonly with: readonly string[];
  readonly facts: Facts<B>;
}

interface TestHeader {
  readonly args: {
    readonly on: { readonly value: string };
    readonly with?: readonly { readonly value: string }[];
  };
  readonly inner?: Facts;
}

/** All blocks of one kind, the latest first. Two of one day keep the order of the file, the later counting. */
export function testsOf<B extends TestBlock>(headers: readonly (Fact & TestHeader)[]): Test<B>[] {
  return headers
    .map((header) => ({
      on: header.args.on?.value ?? "",
      header,
      with: (header.args.with ?? []).map((name) => name.value),
      facts: header.inner as Facts<B>,
    }))
    .reverse()
    .sort((a, b) => inOrder(b.on, a.on));
}
