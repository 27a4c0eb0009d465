/** Statements and values as the schedule has them. */
import type { Fact, Span } from "../../model/values.ts";
import { factSpot } from "../../rules/frame/rule.ts";

/** Blanks of layout do not matter on paper. */
const tidied = (text: string): string => text.replace(/\s+/g, " ").trim();

/** What stands after the word of a statement, its block left out. */
export function written(fact: Fact): string {
  const { segment, end } = factSpot(fact);
  return tidied(segment.text.slice(fact.wordEnd, end));
}

/** One value of a statement, with the stated reason why it is missing. */
export const writtenValue = ({ segment }: Fact, { start, end }: Span): string => tidied(segment.text.slice(start, end));

/** Where a figure came from, when it was not read on the day. */
export const originText = ({ provenance, record }: Fact): string =>
  provenance === "measured"
    ? ""
    : provenance === "from-record"
      ? `from record${record ? ` ${record}` : ""}`
      : provenance;
