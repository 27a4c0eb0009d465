/** Sources in the words of the edition a schedule is judged to. */
import { type Citation, cameLater, citations } from "./citations.ts";
import type { Edition } from "./editions.ts";
import { rowOf } from "./table.ts";

/** What the tables and rules here are cited by. */
const present = /BS 7671:2018(?:\+A2:2022)?, ([^;()\n]*)/g;

/** A number in such a citation: of a regulation, a table, or a part of an appendix. */
const numbers =
  /Appendix \d+(?:, section [\d.]*\d)?(?:, Table \w+)?|\b\d{3}(?:\.\d+)+\b|\b\d{2}\.\d\b|\b4[A-Z]\d?[A-Za-z]?\b|\b64\b/g;

const columns: Readonly<Record<string, keyof Citation>> = {
  "BS 7671:2008": "first",
  "BS 7671:2008+A1:2011": "a1",
  "BS 7671:2008+A3:2015": "a3",
};

const early18th: readonly string[] = ["BS 7671:2018", "BS 7671:2018+A1:2020"];

/**
 * Cites what follows from the edition's own numbers. Where one is not known the whole citation stays that of the edition it
 * was found in: half of it would lead a reader to the wrong page.
 */
export function citedIn(edition: Edition | undefined): (text: string) => string {
  const id = edition?.id ?? "";
  const column = columns[id];
  if (column === undefined && !early18th.includes(id)) return asFound;
  return (text) =>
    text.replace(present, (whole, cited: string) => {
      const changed = column ? by(column, cited) : bySame(id, cited);
      return changed === undefined ? whole : `${id}, ${changed}`;
    });
}

/** The later editions and those whose numbers are not known are cited as they were found. */
export const asFound = (text: string): string => text;

function by(column: keyof Citation, cited: string): string | undefined {
  let known = false;
  let missing = false;
  const changed = cited.replace(numbers, (number) => {
    const then = rowOf(citations, { present: number })?.facts[column];
    if (then) known = true;
    else missing = true;
    return then || number;
  });
  return known && !missing ? changed : undefined;
}

/** The 18th Edition kept its numbers; what an amendment brought is left to it. */
const bySame = (id: string, cited: string): string | undefined =>
  (cited.match(numbers) ?? []).every((number) => (cameLater[number] ?? id) <= id) ? cited : undefined;
