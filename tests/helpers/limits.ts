/** A check at its limit: what it finds of the value that still passes and of the one beside it. */
import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { find } from "./find.ts";

export interface Limit {
  readonly check: string;
  /** Of each value: the severity, or nothing, or that of each of two; a text that is found as well stands behind it. */
  readonly found: Readonly<Record<string, Found | readonly [Found, string]>>;
  /** Holds `#` where the value stands. */
  readonly text: string;
  readonly setting?: Setting;
}

type Found = "" | "error" | "warning" | "information" | "error,warning";

export function holdAtLimits(limits: readonly Limit[]): void {
  const cases = limits.flatMap(({ check, text, setting, found }) =>
    Object.entries(found).map(([value, of]) => {
      const [severity, words] = typeof of === "string" ? [of, ""] : of;
      return { check, value, severity, words, text: text.replaceAll("#", value), setting };
    }),
  );
  describe("at its limit", () => {
    it.each(cases)("$check of $value", ({ check, severity, words, text, setting }) => {
      const findings = find(check, text, setting);
      expect(findings.map((one) => one.severity).join()).toBe(severity);
      expect(findings.map(({ message }) => message).join(" ")).toContain(words);
    });
  });
}
