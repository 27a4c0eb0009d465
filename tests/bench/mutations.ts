/**
 * How many faults of the language one slip of the pen costs, by its kind: every mutation of every example, or as many a
 * kind and example as the argument says. A measurement: `node tests/bench/mutations.ts [most]`.
 */
import { exampleNames, exampleText, kinds, languageFaults, mutationsOf } from "../helpers/mutations.ts";

const most = Number(process.argv[2] ?? Number.POSITIVE_INFINITY);
const show = process.argv.includes("--show");

for (const kind of kinds) {
  const counts: number[] = [];
  let away = 0;
  for (const name of exampleNames) {
    const before = languageFaults(name, exampleText(name)).length;
    const all = mutationsOf(kind, name);
    const step = Math.max(1, all.length / most);
    for (let at = 0; at < all.length; at += step) {
      const mutation = all[Math.floor(at)];
      if (!mutation) continue;
      const found = languageFaults(name, mutation.text);
      const count = found.length - before;
      counts.push(count);
      if (!found.some(({ line }) => Math.abs(line - mutation.line) <= 1)) away++;
      if (show && count > 3) {
        const line = mutation.text.split("\n")[mutation.line - 1];
        console.log(
          `    ${name}:${mutation.line} ${count} ${line}`,
          found.map((f) => `${f.check.slice(9)} ${f.line}`).join(", "),
        );
      }
    }
  }
  counts.sort((a, b) => a - b);
  const at = (share: number) => counts[Math.min(counts.length - 1, Math.floor(counts.length * share))] ?? 0;
  console.log(
    `${kind.padEnd(34)} ${String(counts.length).padStart(5)} texts   median ${at(0.5)}   95 % ${at(0.95)}   most ${at(1)}   none ${counts.filter((count) => count <= 0).length}   not on its line ${away}`,
  );
}
