/**
 * Writes anew what is recorded of the checks: `node tests/rules/recorded/write.ts [family …]`. Read the difference before
 * it is committed: each limit is to be right by its source, and the program only says what it does.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { rules } from "../../../server/rules/list.ts";
import { fileOf, recordText } from "./kept.ts";
import { parts, samplesOf } from "./record.ts";
import { turnsOf } from "./turns.ts";

const wanted = process.argv.slice(2);
const families = Map.groupBy(rules, ({ id }) => id.slice(0, id.indexOf("/")));
for (const [family, all] of families) {
  if (wanted.length > 0 && !wanted.includes(family)) continue;
  const sections = all.flatMap((rule) =>
    samplesOf(rule).flatMap((sample) =>
      Object.entries(parts).map(([part, of]) => ({
        rule: rule.id,
        sample: sample.name,
        part,
        lines: part === "turns" ? turnsOf(rule, sample) : of(rule, sample, []),
      })),
    ),
  );
  writeFileSync(fileOf(family), recordText(sections));
  console.log(`${family}: ${readFileSync(fileOf(family), "utf8").split("\n").length} lines`);
}
