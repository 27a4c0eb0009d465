/**
 * The places of a schedule that a reading can be entered in: every test of the plan, and what else may be written of a
 * circuit. A sheet to be filled in shows them; a filled one names them, and nothing that is not one of them is written.
 */
import { plain } from "../calc/result.ts";
import { outletRcds, ownRcds, rcdsOfBoard } from "../circuit/rcds.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { BoardInPlace, Installation } from "../model/installation.ts";
import { insulationLimit } from "../readings/insulation.ts";
import { planBoard, planSupply } from "../readings/plan-board.ts";
import { planDead } from "../readings/plan-dead.ts";
import { planLive } from "../readings/plan-live.ts";
import { type PlannedTest, writtenName } from "../readings/planned.ts";
import { possibleSlots } from "./possible.ts";
import type { Slot, SlotPlace } from "./slot.ts";

export type { Slot, SlotPlace } from "./slot.ts";

export const placeName = ({ board, way }: SlotPlace): string =>
  board === undefined ? "supply" : way === undefined ? board : `${board}/${way}`;

/** What distinguishes a slot from others of its place. */
export const slotName = ({ block, line, label }: Pick<Slot, "block" | "line" | "label">): string =>
  [block, line, ...(label === "" ? [] : [label])].join(" ");

export function slotsOf(installation: Installation): Slot[] {
  const first = installation.boards.find(({ context }) => context.upstream.length === 0);
  return [
    ...supplySlots(installation, first?.board.head.name),
    ...installation.boards.flatMap((place) => [
      ...boardSlots(place),
      ...place.board.ways.flatMap((way) => waySlots(studyWay(way, place.context))),
    ]),
  ];
}

const verdict = ["ok", "wrong"] as const;
const press = ["ok", "failed"] as const;
const rotation = ["ok", "reversed"] as const;

/** A line by itself. */
const whole = (
  place: SlotPlace,
  block: Slot["block"],
  line: string,
  unit: Slot["unit"],
  words: readonly string[] = [],
): Slot => ({
  place,
  block,
  line,
  label: "",
  unit,
  words,
});

function supplySlots(installation: Installation, board: string | undefined): Slot[] {
  const place = {};
  const planned = planSupply(installation).flatMap((planned): Slot[] => {
    const of = (slot: Slot): Slot[] => [{ ...slot, planned }];
    const [name = ""] = planned.name.split(/[, ]/);
    if (planned.step === "loop") return of(whole(place, "live", "Ze", "Ω"));
    if (planned.step === "fault") return of(whole(place, "live", name, "kA"));
    if (planned.step === "polarity") return of(whole(place, "live", "polarity", "", verdict));
    if (planned.step === "phase-sequence") return of(whole(place, "live", "phase-sequence", "", rotation));
    if (planned.step === "electrode") return of(whole(place, "live", "electrode", "Ω"));
    const service = /^Bonding of (\S+)$/.exec(planned.name)?.[1];
    // Main bonding is tested again from the board beside the main earthing terminal.
    return service !== undefined && board !== undefined
      ? of({ ...whole({ board }, "dead", `bonding ${service}`, "Ω"), label: "continuity" })
      : [];
  });
  return installation.supply
    ? withPossible(planned, possibleSlots({ kind: "supplyLive", block: "live", place, points: [], rcds: [] }))
    : planned;
}

function boardSlots({ board, context }: BoardInPlace): Slot[] {
  const place = { board: board.head.name };
  const named = new Map(
    rcdsOfBoard(board.head).map(({ name }) => [name, name === undefined ? "" : ` ${writtenName(name)}`]),
  );
  const planned = planBoard(context)
    .flatMap((planned): Slot[] => {
      const of = (slot: Slot): Slot[] => [{ ...slot, planned }];
      const { step, name, write } = planned;
      if (step === "loop") return of(whole(place, "live", "Zdb", "Ω"));
      if (step === "fault") return of(whole(place, "live", "Ipf", "kA"));
      if (step === "polarity") return of(whole(place, "live", "polarity", "", verdict));
      if (step === "phase-sequence") return of(whole(place, "live", "phase-sequence", "", rotation));
      if (step === "rcd" && write !== undefined) {
        const which = [...named].find(([rcd]) => rcd !== undefined && name.startsWith(`${rcd}: `))?.[1] ?? "";
        return of(
          rcdSlot(
            place,
            planned,
            write.replace(/^\S+/, (word) => `${word}${which}`),
          ),
        );
      }
      if (step === "insulation") {
        const pair = /^([LN]\d?-[LNE]\d?),/.exec(name)?.[1] ?? "L-E";
        const joined = name.startsWith("L and N");
        return of({ ...insulation(place, pair), ...(joined ? { tail: "joined" } : {}) });
      }
      return [];
    })
    .concat(voltage(place));
  const rcds = rcdsOfBoard(board.head);
  return withPossible(planned, [
    ...possibleSlots({ kind: "boardLive", block: "live", place, points: [], rcds }),
    ...possibleSlots({ kind: "boardDead", block: "dead", place, points: [], rcds }),
    ...["L-N", "L-E", "N-E", "L-L"].map((pair) => insulation(place, pair)),
  ]);
}

/** What is planned, and behind it what else may be entered; a planned slot takes over how its value may be stated. */
function withPossible(planned: readonly Slot[], possible: readonly Slot[]): Slot[] {
  const others = new Map(possible.map((slot) => [slotName(slot), slot]));
  const own = planned.map((slot): Slot => {
    const { qualifiers, words = [] } = others.get(slotName(slot)) ?? {};
    const said = slot.unit !== "" && words.length > 0 ? { words } : {};
    return { ...slot, ...said, ...(qualifiers ? { qualifiers } : {}) };
  });
  const names = new Set(own.map(slotName));
  return [...own, ...[...others.values()].filter((slot) => !names.has(slotName(slot)))];
}

/** Surge protection that could not be taken off is stated behind the value. */
const insulation = (place: SlotPlace, label: string): Slot => ({
  ...whole(place, "dead", "insulation", "MΩ"),
  label,
  qualifiers: ["spd-in"],
});
const voltage = (place: SlotPlace): Slot => ({ ...whole(place, "dead", "insulation", "V"), label: "at" });

function rcdSlot(place: SlotPlace, planned: PlannedTest, line: string): Slot {
  if (planned.unit === "ms") return whole(place, "live", line, "ms");
  return whole(place, "live", line, "", line.startsWith("rcd") ? ["no-trip"] : press);
}

function waySlots(study: WayStudy): Slot[] {
  if (study.isSpare) return [];
  const place = { board: study.context.board.name, way: study.way.id };
  const planned = [...planDead(study), ...planLive(study)].flatMap((test) =>
    plannedSlot(study, place, test).map((slot) => ({ ...slot, planned: test })),
  );
  const points = [
    ...new Set([...(study.runs?.places.keys() ?? []), ...outletRcds(study.facts).flatMap(({ point }) => point ?? [])]),
  ];
  const rcds = ownRcds(study);
  return withPossible(planned, [
    ...pairSlots(study, place),
    ...possibleSlots({ kind: "dead", block: "dead", place, points, rcds }),
    ...possibleSlots({ kind: "live", block: "live", place, points, rcds }),
  ]);
}

function plannedSlot(study: WayStudy, place: SlotPlace, test: PlannedTest): Slot[] {
  const { step, name, point, place: at, write } = test;
  switch (step) {
    case "ring-ends":
      return [{ ...whole(place, "dead", "ends", "Ω"), label: name.split(",")[0] ?? "" }];
    case "ring-rounds":
      if (point === "every point") return [];
      return point === undefined
        ? [whole(place, "dead", "R1+R2", "Ω")]
        : [{ ...whole(place, "dead", `at ${writtenName(point)}`, "Ω"), label: name.slice(0, 3) }];
    case "continuity":
      if (at !== undefined) return [{ ...whole(place, "dead", `at ${writtenName(at)}`, "Ω"), label: "L-E" }];
      return [whole(place, "dead", name.startsWith("R2") ? "R2" : "R1+R2", "Ω")];
    case "insulation": {
      const joined = name.startsWith("L and N");
      return [{ ...insulation(place, joined ? "L-E" : name), ...(joined ? { tail: "joined" } : {}) }];
    }
    case "polarity":
      return [whole(place, "dead", "polarity", "", verdict)];
    case "loop":
      return at === undefined
        ? [whole(place, "live", "Zs", "Ω")]
        : [{ ...whole(place, "live", `at ${writtenName(at)}`, "Ω"), label: "Zs" }];
    case "rcd":
      return write === undefined ? [] : [rcdSlot(place, test, write)];
    case "phase-sequence":
      return [whole(place, "live", "phase-sequence", "", rotation)];
    case "function":
      return [whole(place, "live", "function", "", verdict)];
    default:
      return study.isSpare ? [] : [];
  }
}

/** Every pair of the circuit's conductors, and the voltage they were tested at. */
function pairSlots(study: WayStudy, place: SlotPlace): Slot[] {
  const lines = study.threePhase ? ["L1", "L2", "L3"] : [];
  const pairs = [
    "L-N",
    "L-E",
    "N-E",
    "N-N",
    ...(study.threePhase ? ["L-L", "L1-L2", "L2-L3", "L1-L3"] : []),
    ...lines.flatMap((line) => [`${line}-N`, `${line}-E`]),
  ];
  return [...pairs.map((pair) => insulation(place, pair)), voltage(place)];
}

/** The test voltage where none is given: the one the circuit calls for. */
export const usualVoltage = (study: WayStudy | undefined): string =>
  plain((study && insulationLimit(study)?.testVoltage.value) ?? 500);
