/** What the special locations of Part 7 ask of a way. */

import type { Calculated } from "../calc/result.ts";
import { looked, milliamps } from "../calc/result.ts";
import type { Fact } from "../model/values.ts";
import { editions, sixteenthId } from "../tables/editions.ts";
import {
  type PlaceRcd,
  type PlaceZone,
  placeBonding,
  placeDistances,
  placeEarths,
  placeEquipment,
  placeRcds,
  placeTouch,
  placeWater,
  placeZones,
} from "../tables/places.ts";
import type { Source } from "../tables/source.ts";
import { type Row, rowOf, sourceOf } from "../tables/table.ts";
import { extraLow, socketRating } from "./circuit-kind.ts";
import { hasOwnSource } from "./supply.ts";
import type { WayStudy } from "./way.ts";

export type SpecialLocation = PlaceRcd["place"];

/** Whether the sections of Part 7 as they are here apply to the work at all. */
const partSeven = ({ context }: WayStudy): boolean =>
  context.edition !== undefined && context.edition.id !== sixteenthId;

/** Where a finding about a place stands: on the way's own line of it, or what the circuit serves, or its first line. */
export function placeSpot(study: WayStudy, place: string): Fact {
  const { facts, way } = study;
  const own = facts.one("place");
  return own && study.placeLine(place) === own ? own : (facts.one("serves") ?? way.header);
}

/** The row of the RCD a place asks for. Nothing for feeders, spares and extra-low voltage. */
export function placeRcdRow(study: WayStudy, place: SpecialLocation): Row<PlaceRcd> | undefined {
  // The heater itself is excepted: its leakage when cold would trip an RCD without a fault.
  if (place === "sauna" && study.uses.size === 1 && study.uses.has("heating")) return undefined;
  // What a unit is supplied by decides: with a source of its own it need not be an RCD that disconnects.
  if (place === "mobile-unit" && !study.servesSockets && hasOwnSource(study.context.supply)) return undefined;
  if (!study.places.has(place) || !study.isFinal || !partSeven(study) || extraLow(study)) return undefined;
  const rating = study.servesSockets ? socketRating(study) : undefined;
  // Sockets whose rating is not known are in none of the rows that go by it.
  if (study.servesSockets && study.device?.rating === undefined) return undefined;
  return placeRcds.rows.find(
    ({ facts }) =>
      facts.place === place &&
      (facts.circuits === "all" || facts.circuits === (study.servesSockets ? "sockets" : "other")) &&
      (facts.upTo === null || rating === undefined || rating <= facts.upTo),
  );
}

export const placeSource = (clause: string, source: Source): Source => ({
  ...source,
  ref: clause.includes("BS 7671") ? clause : `BS 7671:2018+A2:2022, ${clause}`,
});

/** The residual current a place allows at most. */
export function placeRcdLimit(row: Row<PlaceRcd>): Calculated {
  const { residual, clause } = row.facts;
  const source = placeSource(clause, sourceOf(placeRcds, row, "residual"));
  return {
    value: residual,
    unit: "A",
    steps: [looked("Greatest IΔn in this place", source.ref, milliamps(residual))],
    source,
  };
}

/** What a show or fair wants of the supply to it, for a final circuit that is in one. */
export function originRcd(study: WayStudy) {
  const row = placeRcds.rows.find(({ facts }) => facts.circuits === "origin" && study.places.has(facts.place));
  if (!row || !study.isFinal || !partSeven(study) || extraLow(study)) return undefined;
  const limit = placeRcdLimit(row);
  return { place: row.facts.place, limit, source: limit.source };
}

/** What a distribution circuit on a farm is to have, if "all other circuits" means it. */
export function farmFeederRcd(study: WayStudy): Calculated | undefined {
  if (!study.isFeeder || study.isSpare || !partSeven(study) || !study.places.has("agricultural")) return undefined;
  const row = placeRcds.rows.find(({ facts }) => facts.circuits === "feeder" && facts.place === "agricultural");
  return row && placeRcdLimit(row);
}

/** Whether the place wants an RCD for each socket, with where that is said. */
export function ownRcd(study: WayStudy): { readonly place: SpecialLocation; readonly source: Source } | undefined {
  if (!study.servesSockets) return undefined;
  for (const place of ["caravan", "marina"] as const) {
    const row = placeRcdRow(study, place);
    if (row?.facts.own === "each")
      return { place, source: placeSource(row.facts.clause, sourceOf(placeRcds, row, "own")) };
  }
  return undefined;
}

/** Where the supply's combined conductor may not earth this circuit, and what would make it allowable. */
export function combinedEarth(
  study: WayStudy,
): { readonly row: (typeof placeEarths.rows)[number]; readonly source: Source } | undefined {
  const { supply, uses, facts } = study;
  if (supply.earthing !== "TN-C-S" || !study.isFinal || extraLow(study) || !partSeven(study)) return undefined;
  // A source of one's own is earthed at one place.
  if (hasOwnSource(study.context.supply)) return undefined;
  const found =
    (["caravan", "marina"] as const).find((place) => study.servesSockets && study.places.has(place)) ??
    (["construction", "exhibition", "fairground"] as const).find((place) => study.places.has(place)) ??
    // Indoors the bonding of the building raises everything with it.
    (study.places.has("mobile-unit") && !study.places.has("indoors") ? "mobile-unit" : undefined);
  const place = found ?? (uses.has("ev-charger") ? "charger" : undefined);
  const row = place && rowOf(placeEarths, { place });
  if (!row || (place === "charger" && (facts.has("open-PEN") || beforeChargers(study)))) return undefined;
  return { row, source: placeSource(row.facts.clause, sourceOf(placeEarths, row, "what")) };
}

/** Charging points came with Amendment 1 of the 17th Edition. */
const beforeChargers = ({ context }: WayStudy): boolean => context.edition?.id === "BS 7671:2008";

/** Zones the circuit reaches, as its own line says. */
export const zonesOf = (study: WayStudy): readonly string[] =>
  (study.facts.one("place")?.args.zone ?? []).map((zone) => zone.value);

/** The innermost zone in which only extra-low voltage may be, if this circuit reaches it. */
export function zoneForExtraLow(study: WayStudy): Row<PlaceZone> | undefined {
  if (!partSeven(study) || study.isSpare) return undefined;
  const zones = zonesOf(study);
  return placeZones.rows.find(({ facts }) => study.places.has(facts.place) && zones.includes(facts.zone));
}

export const zoneSource = (row: Row<PlaceZone>): Source =>
  placeSource(row.facts.clause, sourceOf(placeZones, row, "volts"));

/** What this circuit supplies that may not stand where it does. One that serves other things as well may have it elsewhere. */
export function equipmentNotAllowed(study: WayStudy) {
  if (!partSeven(study) || study.isSpare || extraLow(study)) return undefined;
  const zones = zonesOf(study);
  const rows = [...study.uses].map((use) =>
    placeEquipment.rows.find(
      ({ facts }) =>
        facts.use === use && study.places.has(facts.place) && (facts.zone === "" || zones.includes(facts.zone)),
    ),
  );
  const [row] = rows;
  if (!row || rows.includes(undefined)) return undefined;
  return { row, source: placeSource(row.facts.clause, sourceOf(placeEquipment, row, "what")) };
}

/** The greatest protection against water that the place or a zone of it asks for. */
export function waterNeed(study: WayStudy) {
  if (!partSeven(study) || study.isSpare) return undefined;
  const zones = zonesOf(study);
  const rows = placeWater.rows.filter(
    ({ facts }) => isIn(study, facts.place) && (facts.zone === "" || zones.includes(facts.zone)),
  );
  const row = rows.toSorted((one, other) => other.facts.water - one.facts.water)[0];
  return row && { row, source: placeSource(row.facts.clause, sourceOf(placeWater, row, "water")) };
}

/** Sockets outdoors are outdoors whatever the place says, and so is what stands within reach of the public. */
const isIn = ({ places, uses }: WayStudy, place: string): boolean =>
  places.has(place) || (place === "outdoors" && (places.has("public") || uses.has("outdoor-sockets")));

/** The second figure of an IP code; nothing where it is not stated. */
export const waterOf = (code: string): number | undefined => {
  const figure = /^IP.(\d)$/.exec(code)?.[1];
  return figure === undefined ? undefined : Number(figure);
};

/** How far sockets keep from zone 1 by the edition of the work, m. */
export function socketDistance({ context }: WayStudy): Calculated | undefined {
  const order = editions.map(({ id }) => id);
  const now = order.indexOf(context.edition?.id ?? "");
  const row = placeDistances.rows.findLast(({ facts }) => now >= order.indexOf(facts.from));
  if (!row) return undefined;
  const source = { ...sourceOf(placeDistances, row, "distance"), ref: `${row.facts.from}, 701.512.3` };
  const { distance } = row.facts;
  return {
    value: distance,
    unit: "m",
    steps: [looked("Least distance from zone 1", source.ref, `${distance} m`)],
    source,
  };
}

/** Where a place asks for local bonding. */
export function bondingNeed(study: WayStudy) {
  if (!partSeven(study) || !study.isFinal || extraLow(study)) return undefined;
  const row = placeBonding.rows.find(({ facts }) => study.places.has(facts.place));
  return row && { row, source: placeSource(row.facts.clause, sourceOf(placeBonding, row, "omitted")) };
}

/** The voltage that may stay on exposed metal in TT, where the place allows less than is usual. */
export function touchLimit(study: WayStudy) {
  const id = study.context.edition?.id;
  const row = placeTouch.rows.find(({ facts }) => facts.edition === id && study.places.has(facts.place));
  const source = row && { ...sourceOf(placeTouch, row, "volts"), ref: `${row.facts.edition}, ${row.facts.clause}` };
  return row && source && { row, source };
}
