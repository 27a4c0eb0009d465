/** A reading as people, sheets and meters write it, in the words of the language; or why it is none. */
import { unitOf } from "../../grammar/units.ts";
import type { Slot } from "./slots.ts";

type Read = { readonly text: string } | { readonly failure: string };

export interface ReadOptions {
  /** The highest value the instrument shows of this kind, with its unit, where the schedule states it. */
  readonly range?: { readonly value: number; readonly unit: string } | undefined;
  /** The sign of decimals, where it was stated that it is a comma. */
  readonly comma?: boolean;
  /** Where a figure came from, if it was not read: the last word of its text. */
  readonly origin?: string;
}

const good = /^(?:ok|okay|pass|passed|yes|y|good|correct|✓|✔|true)$/i;
const bad = /^(?:wrong|fail|failed|no|n|bad|incorrect|reversed|✗|✘|x|false)$/i;
const offScale = /^(?:[>+]?\s*(?:O\.?L\.?|OFL|over|over-?range|open|∞|inf(?:inity)?))$/i;
const absent = /^(N\/A|n\/a|LIM|lim)(?:[\s:]+(.+))?$/s;
const figure = /^([<>≥≤+]?)\s*(\d+(?:[.,]\d+)?)\s*(\S*)$/u;

/** Whether two texts say the same of a test whose answer is a word. */
export const sameWord = (one: string, other: string): boolean =>
  (good.test(one) && good.test(other)) || (bad.test(one) && bad.test(other));

/** The value of a slot as it is written in a schedule. */
export function readValue(raw: string, slot: Pick<Slot, "unit" | "words">, options: ReadOptions = {}): Read {
  const text = raw.trim();
  const missing = absent.exec(text);
  if (missing) return absence(missing[1]?.toUpperCase() ?? "", missing[2]);
  if (slot.words.length > 0 && (slot.unit === "" || isNoTrip(text, slot.words))) return word(text, slot.words);
  const [, origin] = /\s(calculated|declared|measured)$/.exec(text) ?? [];
  if (origin !== undefined) {
    const read = readValue(text.slice(0, -origin.length), slot, options);
    return "failure" in read || origin === "measured" ? read : { text: `${read.text} ${origin}` };
  }
  if (offScale.test(text)) return beyondRange(slot, options);
  return number(text, slot, options);
}

/** A time that ran out, or its word, where that is a result of the test. */
const isNoTrip = (text: string, words: readonly string[]): boolean =>
  words.includes("no-trip") && /^no[ -]?trip(?:ped)?$/i.test(text);

function absence(sign: string, why: string | undefined): Read {
  const reason = why?.trim().replace(/^["“]|["”]$/g, "");
  if (sign === "N/A" && !reason) return { text: sign };
  if (!reason) return { failure: "LIM needs its reason behind it: what prevented the test" };
  return { text: `${sign} "${reason.replace(/["\\]/g, "\\$&").replace(/\s+/g, " ")}"` };
}

function word(text: string, words: readonly string[]): Read {
  const [first = "", second] = words;
  if (words.some((one) => one === text.toLowerCase())) return { text: text.toLowerCase() };
  if (first === "no-trip" && /^no[ -]?trip(?:ped)?$|^>\s*\d+(?:\.\d+)?(?:\s*ms)?$/i.test(text)) return { text: first };
  if (first !== "no-trip" && good.test(text)) return { text: first };
  if (second !== undefined && bad.test(text)) return { text: second };
  return { failure: `“${text}” is no result of this test: it is ${words.join(" or ")}` };
}

function beyondRange({ unit }: Pick<Slot, "unit">, { range }: ReadOptions): Read {
  if (!range) return { failure: "it is beyond the instrument's range, and the schedule does not state that range" };
  const factor = (unitOf(range.unit)?.factor ?? 1) / (unitOf(unit)?.factor ?? 1);
  return { text: `>${Number((range.value * factor).toPrecision(6))} ${unit}` };
}

function number(text: string, { unit }: Pick<Slot, "unit">, { comma }: ReadOptions): Read {
  const [, sign = "", digits = "", spelling = ""] = figure.exec(text) ?? [];
  if (digits === "") return { failure: `“${text}” is no figure` };
  if (digits.includes(",") && !comma)
    return { failure: `“${text}” has a comma: say that it is the decimal sign (--decimal comma)` };
  const given = spelling === "" ? unit : spellings(spelling);
  const [own, other] = [unitOf(unit), unitOf(given)];
  if (!other || other.physical !== own?.physical)
    return { failure: `“${text}” is in ${spelling}, and the reading is one in ${unit}` };
  const bound = sign === ">" || sign === "≥" || sign === "+" ? ">" : sign === "<" || sign === "≤" ? "<" : "";
  return { text: `${bound}${digits.replace(",", ".")} ${other.symbol}` };
}

/** Meters and spreadsheets spell units without their signs. */
const spellings = (spelling: string): string =>
  ({
    ohm: "Ω",
    ohms: "Ω",
    R: "Ω",
    mohm: "mΩ",
    Mohm: "MΩ",
    Mohms: "MΩ",
    MOhm: "MΩ",
    MOHM: "MΩ",
    M: "MΩ",
    G: "GΩ",
    Gohm: "GΩ",
    KA: "kA",
    msec: "ms",
    mS: "ms",
    v: "V",
  })[spelling] ?? spelling;
