import type { Finding } from "../rules/frame/rule.ts";

/** The order of findings within a segment. */
export const byPlace = ({ spot: a }: Finding, { spot: b }: Finding): number => a.start - b.start || a.end - b.end;

/** What makes two findings of one segment the same to a reader. */
export const keyOf = ({ check, severity, message, spot: { start, end } }: Finding): string =>
  `${start} ${end} ${check} ${severity} ${message}`;
