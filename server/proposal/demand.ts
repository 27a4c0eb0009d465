/** What a circuit has to carry: stated, from its loads, or what a circuit of its kind is usually made for. */
import type { Circuit } from "../boards/circuit-load.ts";
import { demandOf as demandOfBoard } from "../boards/demand.ts";
import { dropRooms } from "../boards/drop-path.ts";
import { type BoardNode, networkOf } from "../boards/network.ts";
import { exceeds } from "../calc/compare.ts";
import { practiceOf } from "../calc/practice.ts";
import { amps, percent, plain, type Step, step } from "../calc/result.ts";
import { ringRatings } from "../calc/ring.ts";
import type { DesignCurrent } from "../circuit/design-current.ts";
import { loadTerms } from "../circuit/loads.ts";
import { unstatedInput } from "../circuit/motor-input.ts";
import { conventionalRow } from "../circuit/overload.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Installation } from "../model/installation.ts";
import { conventionalCircuits, ringRules } from "../tables/ring.ts";
import { sizingValues } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { cellOf, known, rowOf, sourceOf } from "../tables/table.ts";
import { listed } from "../text/words.ts";
import type { Wants } from "./proposal.ts";

export interface Demand {
  /** Ib, A. */
  readonly value: number;
  /** The current that really flows, for its voltage drop and the heat of its terminals, A: a usual device may be larger. */
  readonly forDrop: number;
  /** The drop up to the board that leaves enough for every circuit behind a feeder, %. */
  readonly room?: number;
  /** The largest device of the board behind a feeder, A: a smaller one before it would open first. */
  readonly behind?: number;
  /** The board a feeder feeds: how it loads the lines decides what they drop. */
  readonly fed?: BoardNode;
  readonly how: "wanted" | "stated" | "loads" | "board" | "assumed";
  readonly words: string;
  /** What the figure leaves out or takes for granted. */
  readonly open?: readonly string[];
  readonly steps: readonly Step[];
  readonly source?: Source;
}

/** The design current; or why there is none to go by. */
export function demandOf(
  study: WayStudy,
  wants: Wants,
  installation?: Installation,
): Demand | { readonly missing: string } {
  const demand = currentOf(study, wants, installation);
  const node =
    study.isFeeder && installation
      ? networkOf(installation).nodes.find(({ feeder }) => feeder?.way === study.way)
      : undefined;
  return "missing" in demand || !node ? demand : { ...demand, ...askedBehind(node) };
}

/** What the circuits of the board behind a feeder ask of it. */
function askedBehind(node: BoardNode): Pick<Demand, "room" | "behind" | "fed"> {
  // The circuit with the least to spare decides what is left for the feeder.
  const [least] = dropRooms(node);
  const ratings = node.studies.flatMap(({ device, isSpare }) => (isSpare ? [] : (device?.rating ?? [])));
  return {
    fed: node,
    ...(least ? { room: least.room } : {}),
    ...(ratings.length > 0 ? { behind: Math.max(...ratings) } : {}),
  };
}

function currentOf(
  study: WayStudy,
  { Ib, power }: Wants,
  installation?: Installation,
): Demand | { readonly missing: string } {
  if (Ib !== undefined) return { ...plainly(Ib), how: "wanted", words: `${amps(Ib)}, as requested` };
  if (power !== undefined) return fromPower(study, power);
  const { designCurrent } = study;
  if (designCurrent?.stated) {
    const board = installation && study.isFeeder ? fromBoard(study, installation) : undefined;
    const more = board && exceeds(board.value, designCurrent.value);
    return {
      ...plainly(designCurrent.value),
      how: "stated",
      words: `${amps(designCurrent.value)}, as written`,
      ...(more ? { open: [`It is sized for what is written; the board it feeds draws more, ${board.words}.`] } : {}),
    };
  }
  if (study.isFeeder) {
    const board = installation && fromBoard(study, installation);
    if (board) return board;
  }
  // A ring shares what is plugged in; its loads stand without diversity and say little of what flows at once.
  if (study.isRing) return ringDemand(study);
  if (designCurrent && designCurrent.value > 0)
    return (
      fromCooker(study, designCurrent) ?? fromPlug(study, designCurrent.value) ?? fromLoads(study, designCurrent.value)
    );
  return conventional(study) ?? fromDevice(study) ?? { missing: "the design current (Ib), or the loads" };
}

const plainly = (value: number) => ({ value, forDrop: value, steps: [step("Ib", "", amps(value))] });

function fromPower(study: WayStudy, power: number): Demand {
  const voltage = study.threePhase ? 3 * study.supply.U0 : study.supply.voltage;
  const share = study.powerFactor || 1;
  const value = power / (voltage * share);
  const numbers = `${plain(power)} W / ${share < 1 ? `(${plain(voltage)} V × ${plain(share)})` : `${plain(voltage)} V`}`;
  const steps = [step(share < 1 ? "Ib = P / (U × cos φ)" : "Ib = P / U", numbers, amps(value))];
  return { value, forDrop: value, how: "wanted", words: `${amps(value)}, for the load requested`, steps };
}

/** Whatever load is named, anything may be plugged into a socket-outlet later. */
function fromPlug(study: WayStudy, value: number): Demand | undefined {
  const plug = practiceOf("plug-socket");
  if (!study.servesSockets || study.threePhase || value >= plug.value) return undefined;
  const words = `${amps(plug.value)}, what one plug may draw; the loads that are named take ${amps(value)}`;
  return { ...plainly(plug.value), how: "loads", words, source: plug.source };
}

/** A cooker in a home has the device of its kind, and no larger one than it would take with everything on. */
function fromCooker(study: WayStudy, { value, diversity }: DesignCurrent): Demand | undefined {
  const full = study.loadCurrent?.value;
  if (!diversity || full === undefined) return undefined;
  const usual = Math.max(value, Math.min(full, known(sizingValues, { key: "cooker" }, "value").value));
  const steps = [...fromLoads(study, full).steps, ...diversity.steps];
  const words =
    usual > value
      ? `${amps(usual)}, what a cooker’s circuit is usually made for; its load takes ${amps(value)} with diversity`
      : `${amps(value)}, from its load with the diversity of a cooker in a home`;
  return { value: usual, forDrop: value, how: "loads", words, steps, source: diversity.source };
}

function fromLoads(study: WayStudy, value: number): Demand {
  const loads = study.facts.all("load");
  const only = loads.length === 1 ? "from its load" : `from its ${loads.length} loads, without diversity`;
  const { name, terms } = loadTerms(loads, study);
  const steps = [step(`Ib = ${name}`, terms, amps(value))];
  const unstated = unstatedInput(study);
  const open = unstated && [
    `A motor draws more than it delivers at its shaft: state ${listed(unstated.missing)} from its plate.`,
  ];
  return { value, forDrop: value, how: "loads", words: `${amps(value)}, ${only}`, steps, ...(open ? { open } : {}) };
}

/** A feeder carries what the board behind it draws, on the line that draws most. */
function fromBoard(study: WayStudy, installation: Installation): Demand | undefined {
  const node = networkOf(installation).nodes.find(({ feeder }) => feeder?.way === study.way);
  const demand = node && demandOfBoard(node);
  if (!node || !demand) return undefined;
  const { greatest, diverse, assumed, unknown, unplaced } = demand;
  const share = study.facts.one("diversity")?.args.share.value;
  const value = share === undefined ? greatest.value : (greatest.value * share) / 100;
  const { name } = node.board.head;
  const waysOf = (circuits: readonly Circuit[]): string =>
    circuits.map(({ way, board }) => `${board.name}/${way.id}`).join(", ");
  return {
    value,
    forDrop: value,
    how: "board",
    words: `${amps(value)}, the demand of board ${name}${diverse ? ", with diversity" : ", every circuit in full"}`,
    steps: [
      ...greatest.steps,
      ...(share === undefined
        ? []
        : [step("diversity of the feeder", `${percent(share)} × ${amps(greatest.value)}`, amps(value))]),
    ],
    source: greatest.source,
    open: [
      ...(unknown.length > 0 ? [`No load is given for ${waysOf(unknown)}: the feeder carries more than this.`] : []),
      ...(assumed.length > 0 ? [`Taken at the rating of their device: ${waysOf(assumed)}.`] : []),
      ...(unplaced.length > 0 ? [`Spread evenly, since their line is not stated: ${waysOf(unplaced)}.`] : []),
    ],
  };
}

function ringDemand(study: WayStudy): Demand {
  const value = Math.max(...ringRatings);
  const drop = known(sizingValues, { key: "ring-drop" }, "value");
  const row = rowOf(ringRules, { key: "device" });
  const source = row ? { source: sourceOf(ringRules, row, "value") } : {};
  const load = study.designCurrent;
  const forDrop = Math.max(drop.value, load?.value ?? 0);
  const steps = [
    load && load.value > drop.value
      ? step("for the drop: the whole load at the far point", "", amps(forDrop))
      : step("for the drop: 20 A at the far point and the rest spread evenly", "", amps(forDrop)),
  ];
  // One load alone, or a stated current, is what flows: no ring is made for more than its device.
  const single = load && (load.stated || study.facts.all("load").length === 1);
  if (single && exceeds(load.value, value))
    return { value: load.value, forDrop, how: "loads", words: amps(load.value), steps, ...source };
  const written = study.device?.rating;
  return {
    value: written !== undefined && ringRatings.includes(written) ? written : value,
    forDrop,
    how: "assumed",
    words: `${amps(value)}, assumed: what a ring is made for`,
    steps,
    ...source,
  };
}

/** A radial of socket-outlets is made for its device, and that for the floor it serves. */
function conventional(study: WayStudy): Demand | undefined {
  if (!study.servesSockets || study.isFeeder) return undefined;
  const area = study.facts.one("floor-area")?.args.value.value ?? 0;
  for (const [circuit, value] of [
    ["A3 radial", Number(conventionalRow("A3 radial")?.facts.rating)],
    ["A2 radial", Math.max(...ringRatings)],
  ] as const) {
    const row = conventionalRow(circuit);
    if (!row || row.facts.area < area) continue;
    const { source } = cellOf(conventionalCircuits, row, "area");
    const words = `${amps(value)}, assumed: a conventional radial for up to ${plain(row.facts.area)} m²`;
    return { value, forDrop: value, how: "assumed", words, steps: [step("Ib", "", amps(value))], source };
  }
  return undefined;
}

/** Without any load the device that was written is the only hint of it. */
function fromDevice({ device }: WayStudy): Demand | undefined {
  if (device?.rating === undefined) return undefined;
  const { rating } = device;
  return {
    ...plainly(rating),
    how: "assumed",
    words: `${amps(rating)}, assumed: the rating of the device that is written, since no load is`,
  };
}
