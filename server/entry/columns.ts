/**
 * Headings that are none of ours: which of them need to be asked about, and what each most likely holds. A guess is
 * offered and never taken: a column of loop impedances that was entered as R1+R2 would be believed.
 */
import { columnNames, keyOf, type Table } from "./table.ts";

export interface ForeignColumn {
  readonly heading: string;
  /** The first values in it. */
  readonly samples: readonly string[];
  /** One of ours, where its words point to one. */
  readonly guess?: string;
}

/** The first that fits: what is more particular stands before what is less. */
const signs: readonly (readonly [RegExp, string])[] = [
  [/r1\s*\+\s*r2/, "R1+R2"],
  [/\b(?:rcd|trip|disconnect\w*)\b.*\b(?:time|ms)\b|\btrip ?time\b|\bt ?[ai]\b/, "rcd-time"],
  [/\brcd\b.*(?:\b1 ?x|\bx ?1\b)/, "rcd-time"],
  [/\b(?:trip|ramp)\b.*\b(?:current|ma)\b|\bramp\b/, "trip-current"],
  [/\bafdd\b/, "afdd-button"],
  [/\b(?:button|push)\b/, "rcd-button"],
  [/\b(?:leak\w*|clamp)\b/, "leakage"],
  [/\b(?:sequence|rotation)\b/, "phase-sequence"],
  [/\bpolarity\b/, "polarity"],
  [/\b(?:pscc|psc|short.?circuit)\b/, "PSCC"],
  [/\b(?:pefc|pfc|earth fault current)\b/, "PEFC"],
  [/\bipf\b|\bfault current\b/, "Ipf"],
  [/\btest (?:volt\w*|v)\b|\b(?:ir|insulation|riso)\b.*\bvolt/, "test-voltage"],
  [/\bl\s*[-/–]\s*n\b|\blive\s*[-/–]\s*neutral\b|\bline\s*[-/–]\s*neutral\b/, "L-N"],
  [/\bn\s*[-/–]\s*(?:e|pe)\b|\bneutral\s*[-/–]\s*earth\b/, "N-E"],
  [/\b(?:zs|loop|z l-?p?e|elfi|efli)\b/, "Zs"],
  [/\bl\s*[-/–]\s*(?:e|pe)\b|\b(?:live|line)\s*[-/–]\s*earth\b/, "L-E"],
  [/\bl\s*[-/–]\s*l\b|\bline\s*[-/–]\s*line\b/, "L-L"],
  [/\br1\b/, "r1"],
  [/\brn\b/, "rn"],
  [/\b(?:r2|cpc)\b/, "R2"],
  [/\b(?:date|day|tested on)\b/, "on"],
  [/\b(?:circuit|cct|way|id|no)\b/, "way"],
  [/\b(?:board|db|panel)\b/, "board"],
  [/\b(?:serial|instrument|meter|device)\b/, "with"],
  [/\b(?:operator|tester|tested by|user|engineer)\b/, "by"],
  [/\bvolt(?:s|age)?\b/, "voltage"],
  [/\bfunction\w*\b/, "function"],
  [/\b(?:test|measurement|type)\b/, "test"],
  [/\b(?:result|value|reading)\b/, "result"],
];

export const guessOf = (heading: string): string | undefined => {
  const text = heading
    .toLowerCase()
    .replace(/[_.#:]/g, " ")
    .replace(/\s+/g, " ")
    .trim();
  return signs.find(([sign]) => sign.test(text))?.[1];
};

/** The columns to be asked about: none where the table has ours, or all that is foreign was answered before. */
export function foreignColumns(
  { head, rows }: Table,
  told: ReadonlyMap<string, string>,
  isOurs: (key: string) => boolean,
): ForeignColumn[] {
  const taken = new Set(head.cells.map((heading) => told.get(heading.trim()) ?? keyOf(heading)).filter(isOurs));
  return head.cells.flatMap((cell, at): ForeignColumn[] => {
    const heading = cell.trim();
    if (heading === "" || told.has(heading) || isOurs(keyOf(heading))) return [];
    const samples = rows
      .map(({ cells }) => (cells[at] ?? "").trim())
      .filter((text) => text !== "")
      .slice(0, 3);
    if (samples.length === 0) return [];
    const guess = guessOf(heading);
    const free = guess !== undefined && columnNames.includes(guess) && !taken.has(guess);
    if (free) taken.add(guess);
    return [{ heading, samples, ...(free ? { guess } : {}) }];
  });
}
