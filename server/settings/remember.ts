/** What headings were stated to mean, written into the settings beside what stands there. */
import { readSettings } from "./read.ts";

/** The text of the settings with further columns; nothing where it has a fault or remarks that would be lost. */
export function withColumns(text: string | undefined, columns: readonly string[]): string | undefined {
  if (text !== undefined && readSettings(text).problems.length > 0) return undefined;
  const before = parsed(text ?? "{}");
  if (before === undefined) return undefined;
  const known = Array.isArray(before.columns) ? before.columns.map(String) : [];
  const headings = new Set(columns.map(headingIn));
  const kept = known.filter((pair) => !headings.has(headingIn(pair)));
  return `${JSON.stringify({ ...before, columns: [...kept, ...columns] }, undefined, 2)}\n`;
}

const headingIn = (pair: string): string => pair.slice(0, pair.lastIndexOf("=")).trim();

function parsed(text: string): Readonly<Record<string, unknown>> | undefined {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
