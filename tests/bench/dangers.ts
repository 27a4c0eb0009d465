/**
 * One danger at a time in sound installations: how often the check that should speak of it does, how often it does so
 * less gravely than it must, how often only another does, and how often nothing is said. Run: node tests/bench/dangers.ts [installations] [a kind's name]
 */
import { asGraveAs, dangers, gravest, leastOf } from "../helpers/dangers.ts";
import { generate } from "../helpers/generate.ts";
import { random } from "../helpers/random.ts";
import { findingsOf } from "../helpers/sample.ts";
import { sheetOf } from "../helpers/sheet.ts";

const count = Number(process.argv[2] ?? 60);
const only = process.argv[3];

interface Tally {
  found: number;
  light: number;
  elsewhere: number;
  silent: number;
  others: Map<string, number>;
  example?: string;
}

const tallies = new Map<string, Tally>();
for (let seed = 1; seed <= count; seed++) {
  const text = generate({ ways: 3 + (seed % 10), waysPerBoard: 12, seed: seed * 7919, mix: seed % 2 === 0 });
  const sheet = sheetOf(text);
  const next = random(seed);
  for (const danger of dangers) {
    const { name, spoil } = danger;
    if (only && name !== only) continue;
    const spoilt = spoil(sheet, next);
    if (!spoilt || spoilt.text === text) continue;
    const tally: Tally = tallies.get(name) ?? { found: 0, light: 0, elsewhere: 0, silent: 0, others: new Map() };
    tallies.set(name, tally);
    const findings = findingsOf(spoilt.text);
    const grade = gravest(spoilt, findings);
    if (grade && asGraveAs(grade, leastOf(danger, spoilt))) tally.found++;
    else {
      if (grade) tally.light++;
      else if (findings.length > 0) tally.elsewhere++;
      else tally.silent++;
      tally.example ??= spoilt.text
        .split("\n")
        .slice(spoilt.from - 1, Math.min(spoilt.to, spoilt.from + 24))
        .join("\n");
      for (const check of new Set(findings.map((one) => one.check)))
        tally.others.set(check, (tally.others.get(check) ?? 0) + 1);
    }
  }
}
console.log(`${"danger".padEnd(62)} times  found  light  other silent`);
for (const { name } of dangers) {
  const tally = tallies.get(name);
  if (!tally) {
    if (!only) console.log(`${name.padEnd(62)}     0`);
    continue;
  }
  const { found, light, elsewhere, silent, others, example } = tally;
  const times = found + light + elsewhere + silent;
  console.log(
    `${name.padEnd(62)} ${String(times).padStart(5)} ${String(Math.round((100 * found) / times)).padStart(5)}% ${String(light).padStart(6)} ${String(elsewhere).padStart(6)} ${String(silent).padStart(6)}  ${[...others].map(([check, of]) => `${check} ${of}`).join(", ")}`,
  );
  if (only && example) console.log(example);
}
