/**
 * The small file that a worksheet gives back once it is filled in. It comes from outside, so every part of it is looked
 * at before it is used; what it names is matched with the schedule, and nothing of it is written as it is.
 */
import { parseAddress } from "../readings/address.ts";
import type { Incoming } from "./blocks.ts";
import type { SlotPlace } from "./slots.ts";

/** The version of the file's layout. */
export const sheetFileVersion = 1;

type SheetReadings =
  | { readonly incoming: readonly Incoming[]; readonly base: string; readonly file: string }
  | { readonly failure: string };

export function readingsOfSheet(text: string): SheetReadings {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return { failure: "It is no file of readings: it cannot be read as JSON." };
  }
  if (!isRecord(file) || file.wayfile !== "readings" || !Array.isArray(file.readings))
    return { failure: "It is no file of readings of a worksheet." };
  if (typeof file.version !== "number" || file.version > sheetFileVersion)
    return { failure: "It is of a newer worksheet: get a newer program." };
  const by = textIn(file.by);
  const incoming = file.readings.map((reading, at) => incomingOf(reading, at, by));
  const broken = incoming.indexOf(undefined);
  if (broken >= 0)
    return { failure: `Reading ${broken + 1} of it is incomplete: place, test, value and day belong to each.` };
  return {
    incoming: incoming.flatMap((one) => one ?? []),
    base: textIn(file.base) ?? "",
    file: textIn(file.file) ?? "",
  };
}

function incomingOf(reading: unknown, at: number, by: string | undefined): Incoming | undefined {
  if (!isRecord(reading)) return undefined;
  const [where, test, value, on] = [reading.at, reading.test, reading.value, reading.on].map(textIn);
  const place = where === undefined ? undefined : placeOf(where);
  if (!place || test === undefined || value === undefined || on === undefined) return undefined;
  const used = Array.isArray(reading.with) ? reading.with.flatMap((name) => textIn(name) ?? []) : [];
  return {
    source: `reading ${at + 1}, ${where} ${test}`,
    place,
    slot: test,
    text: value,
    on,
    with: used,
    ...(by === undefined || by === "" ? {} : { by }),
  };
}

function placeOf(text: string): SlotPlace | undefined {
  if (text === "supply") return {};
  const place = parseAddress(text)?.place;
  if (place?.of === "board") return { board: place.board };
  return place?.of === "way" ? { board: place.board, way: place.way } : undefined;
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** More than any reading or name has is no reading. */
const textIn = (value: unknown): string | undefined =>
  typeof value === "string" && value.length <= 500 ? value : undefined;
