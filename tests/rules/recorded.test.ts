/**
 * All that each check says of its samples, and where it turns, as `recorded/` keeps it. A change that is meant is written
 * there by `node tests/rules/recorded/write.ts`, and its difference is read.
 */
import { describe, expect, it } from "vitest";
import { rules } from "../../server/rules/list.ts";
import { keptOf } from "./recorded/kept.ts";
import { parts, samplesOf } from "./recorded/record.ts";

describe.each(rules.map((rule) => [rule.id, rule] as const))("%s", (id, rule) => {
  const family = id.slice(0, id.indexOf("/"));
  const kept = keptOf(family);
  it.each(Object.entries(parts))("does what is recorded: %s", (part, of) => {
    for (const sample of samplesOf(rule)) {
      const lines = kept.get(`${id} ${sample.name}: ${part}`) ?? [];
      expect(of(rule, sample, lines), `${sample.name}: node tests/rules/recorded/write.ts ${family}`).toEqual(lines);
    }
  });
});
