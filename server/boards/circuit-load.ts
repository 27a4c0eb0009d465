/** What a circuit adds to the demand of its board. */

import { isSource } from "../circuit/circuit-kind.ts";
import { memoOfBoard } from "../circuit/kept.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { BoardHead, Way } from "../model/file.ts";
import type { DiversityPurpose } from "../tables/diversity-shares.ts";
import type { StudiedBoard } from "./network.ts";

export type Line = "L1" | "L2" | "L3" | "L";
export const threeLines: readonly Line[] = ["L1", "L2", "L3"];

/** A way by itself: what is kept of it outlasts its place, which is another after each edit of the supply. */
export interface Circuit {
  readonly way: Way;
  readonly board: BoardHead;
}

export interface CircuitLoad extends LoadFigures, Circuit {}

interface LoadFigures {
  /** A in each of its line conductors, before diversity. */
  readonly current: number;
  readonly basis: "stated" | "loads" | "assumed";
  /** The lines it is on; none where a three-phase board does not say. */
  readonly lines: readonly Line[];
  /** Its row in the published table. */
  readonly purpose: DiversityPurpose | undefined;
  /** A cooker's control unit has a socket-outlet. */
  readonly socket: boolean;
  /** The designer's own diversity, a share. */
  readonly share: number | undefined;
}

interface OwnLoads {
  readonly loads: readonly CircuitLoad[];
  /** Final circuits of which nothing tells what they take. */
  readonly unknown: readonly Circuit[];
}

/** What has no row is taken in full: floor heating, charging points, heat pumps, lifts, alarms, data. */
const purposes: Readonly<Record<string, DiversityPurpose>> = {
  sockets: "sockets",
  "outdoor-sockets": "sockets",
  lighting: "lighting",
  "emergency-lighting": "lighting",
  cooker: "cookers",
  shower: "instantaneous-heaters",
  "water-heater": "thermostatic-heaters",
  appliance: "heating-power",
  laundry: "sockets",
  motor: "motors",
  ventilation: "motors",
  door: "motors",
};

/** The loads of the final circuits of a board. */
export const ownLoads = memoOfBoard(({ board: { head }, studies }: StudiedBoard): OwnLoads => {
  const loads: CircuitLoad[] = [];
  const unknown: Circuit[] = [];
  for (const study of studies) {
    // A source is no load.
    if (!study.isFinal || isSource(study)) continue;
    const circuit = { way: study.way, board: head };
    const load = loadOf(study);
    if (load) loads.push({ ...circuit, ...load });
    else unknown.push(circuit);
  }
  return { loads, unknown };
});

function loadOf(study: WayStudy): LoadFigures | undefined {
  const found = currentOf(study);
  if (!found) return undefined;
  const purpose = purposeOf(study);
  const share = study.facts.one("diversity")?.args.share.value;
  return {
    ...found,
    lines: linesOf(study),
    purpose,
    socket: purpose === "cookers" && study.servesSockets,
    share: share === undefined ? undefined : share / 100,
  };
}

function currentOf(study: WayStudy): Pick<CircuitLoad, "current" | "basis"> | undefined {
  const { designCurrent, device } = study;
  // The table asks for the whole of a cooker; a design current may be what is left of it.
  const loads = purposeOf(study) === "cookers" ? study.loadCurrent : undefined;
  if (loads) return { current: loads.value, basis: "loads" };
  if (designCurrent) return { current: designCurrent.value, basis: designCurrent.stated ? "stated" : "loads" };
  // What will be plugged in nobody knows: the table takes a socket circuit at the rating of its device.
  const sockets = study.servesSockets || (study.isRing && study.uses.size === 0);
  if (sockets && device?.rating !== undefined) return { current: device.rating, basis: "assumed" };
  return undefined;
}

function purposeOf(study: WayStudy): DiversityPurpose | undefined {
  const { uses, isRing } = study;
  const found = new Set([...uses].map((use) => (Object.hasOwn(purposes, use) ? purposes[use] : undefined)));
  if (found.has("cookers") && found.size === (found.has("sockets") ? 2 : 1)) return "cookers";
  if (isRing && (uses.size === 0 || (found.size === 1 && found.has("sockets")))) return "standard-circuits";
  const [only] = found;
  return found.size === 1 ? only : undefined;
}

/** The lines a way is on. */
export function linesOf(study: WayStudy): readonly Line[] {
  if (!study.boardIsThreePhase) return ["L"];
  if (study.threePhase) return threeLines;
  const phase = study.facts.one("phase")?.args.phase.value;
  return phase === undefined || phase === "three" ? [] : [phase];
}
