/** What a place adds to the rules of a circuit, or of every circuit of a board. */

import { rcdLimit } from "../../calc/practice.ts";
import { amps, metres, milliamps, volts } from "../../calc/result.ts";
import {
  bondingNeed,
  combinedEarth,
  ownRcd,
  placeRcdLimit,
  placeRcdRow,
  placeSource,
  type SpecialLocation,
  socketDistance,
  touchLimit,
  waterNeed,
  zoneForExtraLow,
  zoneSource,
} from "../../circuit/places.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type PlaceRcd, placeBonding, placeEarths, placeRcds, placeWater, placeZones } from "../../tables/places.ts";
import { rcdRequired } from "../../tables/rcd-selection.ts";
import type { Source } from "../../tables/source.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { type Card, type Row, row } from "./card.ts";

type Part = { readonly row: Row | undefined; readonly source: Source };

const cardOf = (parts: readonly (Part | undefined)[]): Card | undefined => {
  const there = parts.flatMap((part) => (part?.row ? [{ row: part.row, source: part.source }] : []));
  if (there.length === 0) return undefined;
  return { rows: there.map(({ row }) => row), steps: [], sources: there.map(({ source }) => source) };
};

/** What the places of a way ask of it as it stands. */
export function placeCard(study: WayStudy): Card | undefined {
  const places: readonly SpecialLocation[] = ["pool", "agricultural", "caravan", "marina", "construction"];
  return cardOf([
    bathroomRcd(study),
    ...places.map((place) => {
      const found = placeRcdRow(study, place);
      const limit = found && placeRcdLimit(found);
      return limit && { row: row("RCD", `${milliamps(limit.value)} or less, ${place}`), source: limit.source };
    }),
    part("each socket", ownRcd(study), () => "an RCD and an overcurrent device of its own"),
    part("PME earth", combinedEarth(study), ({ row: { facts } }) => `not without ${facts.instead}`),
    part("zone", zoned(study), ({ row: { facts } }) => `${facts.zone} is for SELV of ${volts(facts.volts)} at most`),
    distancePart(study),
    part("keeps out water", waterNeed(study), ({ row: { facts } }) => `IPX${facts.water} or better`),
    part("supplementary bonding", bondingNeed(study), ({ row: { facts } }) => omitted[facts.omitted]),
    part("touch voltage in TT", touchLimit(study), ({ row: { facts } }) => `${volts(facts.volts)} at most`),
  ]);
}

const omitted = { never: "required", conditions: "required, unless the conditions for omitting it are met" } as const;

function part<T extends { readonly source: Source }>(
  name: string,
  found: T | undefined,
  text: (found: T) => string,
): Part | undefined {
  return found && { row: row(name, text(found)), source: found.source };
}

function bathroomRcd(study: WayStudy): Part | undefined {
  const found = rowOf(rcdRequired, { key: "bathroom" });
  if (!found || !study.places.has("bathroom")) return undefined;
  const source = placeSource(found.facts.clause, sourceOf(rcdRequired, found, "limit"));
  return { row: row("RCD", `${milliamps(rcdLimit("additional").value)} or less, bathroom`), source };
}

function zoned(study: WayStudy) {
  const found = zoneForExtraLow(study);
  return found && { row: found, source: zoneSource(found) };
}

function distancePart(study: WayStudy): Part | undefined {
  const limit = study.places.has("bathroom") && study.servesSockets ? socketDistance(study) : undefined;
  return limit && { row: row("sockets", `${metres(limit.value)} or more from zone 1`), source: limit.source };
}

/** What a place asks of any circuit of a board: everything the tables hold of it. */
export function boardPlaceCard(places: readonly string[]): Card | undefined {
  const at = <F extends { readonly place: string }>({ facts }: { readonly facts: F }) => places.includes(facts.place);
  return cardOf([
    ...placeRcds.rows.filter(at).map((found) => ({
      row: row(`RCD, ${circuits(found.facts)}`, `${milliamps(found.facts.residual)} or less`),
      source: placeSource(found.facts.clause, sourceOf(placeRcds, found, "residual")),
    })),
    ...placeEarths.rows.filter(at).map((found) => ({
      row: row("PME earth", `not without ${found.facts.instead}`),
      source: placeSource(found.facts.clause, sourceOf(placeEarths, found, "what")),
    })),
    ...placeZones.rows.filter(at).map((found) => ({
      row: row(`zone ${found.facts.zone}`, `SELV of ${volts(found.facts.volts)} at most`),
      source: zoneSource(found),
    })),
    ...placeWater.rows.filter(at).map((found) => ({
      row: row(
        `keeps out water${found.facts.zone && `, zone ${found.facts.zone}`}`,
        `IPX${found.facts.water} or better`,
      ),
      source: placeSource(found.facts.clause, sourceOf(placeWater, found, "water")),
    })),
    ...placeBonding.rows.filter(at).map((found) => ({
      row: row("supplementary bonding", omitted[found.facts.omitted]),
      source: placeSource(found.facts.clause, sourceOf(placeBonding, found, "omitted")),
    })),
  ]);
}

const circuits = ({ circuits: kind, upTo, own }: PlaceRcd): string =>
  [
    {
      sockets: "sockets",
      other: "other circuits",
      all: "every circuit",
      feeder: "distribution circuits",
      origin: "the supply to it",
    }[kind],
    ...(upTo === null ? [] : [`to ${amps(upTo)}`]),
    ...(own === "each" ? ["each its own"] : []),
  ].join(" ");
