/** A day in another order: `20/11/2026`, `20.11.26`, `20 Nov 2026`, `2026-3-5`. */
import { isDay } from "../text/days.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, spanOf, writeFix } from "./refusals.ts";

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** As the trade writes a day: day, month, year. */
const inFigures = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$/;
const yearFirst = /^(\d{4})[/.-](\d{1,2})[/.-](\d{1,2})$/;

export const isSpokenDay = (image: string): boolean => inFigures.test(image);

interface Day {
  /** Year-month-day; nothing where there is no such day. */
  readonly text: string | undefined;
  readonly taken: number;
}

export function spokenDay(line: LineBeingRead): Slip | undefined {
  if (!line.free().some(([, { accepts }]) => accepts.kind === "date")) return undefined;
  const { token: first } = line;
  const day = dayIn(line.tokens.slice(line.at, line.at + 3).map(({ image }) => image));
  const last = line.tokens[line.at + (day?.taken ?? 1) - 1];
  if (!last || !day) return undefined;
  const span = spanOf(first, last);
  const { text } = day;
  const message =
    text === undefined ? `${first.image} is not a day in any calendar.` : `A day is written year-month-day: ${text}.`;
  const fixes = text === undefined ? [] : [writeFix(text, span)];
  return { problem: { ...problemAt("not-a-date", message, first, fixes), ...span }, upTo: line.at + day.taken };
}

function dayIn([first = "", second = "", third = ""]: readonly string[]): Day | undefined {
  const [, day = "", month = "", year = ""] = inFigures.exec(first) ?? [];
  if (day !== "") return { text: dated(year, Number(month), Number(day)), taken: 1 };
  const [, firstYear = "", ...rest] = yearFirst.exec(first) ?? [];
  if (firstYear !== "") return { text: dated(firstYear, Number(rest[0]), Number(rest[1])), taken: 1 };
  const named = months.indexOf(second.slice(0, 3).toLowerCase()) + 1;
  const spelled = /^(\d{1,2})(?:st|nd|rd|th)?$/i.exec(first)?.[1];
  if (named === 0 || spelled === undefined || !/^\d{4}$/.test(third)) return undefined;
  return { text: dated(third, named, Number(spelled)), taken: 3 };
}

function dated(year: string, month: number, day: number): string | undefined {
  const text = [year.length === 2 ? `20${year}` : year, two(month), two(day)].join("-");
  return isDay(text) ? text : undefined;
}

const two = (figure: number): string => String(figure).padStart(2, "0");
