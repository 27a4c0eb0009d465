import { hash } from "node:crypto";
import type { ResultFinding } from "../../results/result.ts";

/**
 * Tells a finding from any other, also after lines above it came or went: by its check, its file and the text it stands
 * in. Equal ones are distinguished by their number. One maker serves one report.
 */
export function fingerprints(): (finding: ResultFinding) => string {
  const seen = new Map<string, number>();
  return ({ check, at }) => {
    const key = `${check}\0${at.path}\0${at.line.text.trim()}`;
    const count = seen.get(key) ?? 0;
    seen.set(key, count + 1);
    return hash("sha256", `${key}\0${count}`, "hex").slice(0, 32);
  };
}
