/**
 * Our solver against ngspice on as many rings and radials, with spurs and faults, as asked for: every reading of each.
 * Run: node tests/bench/ngspice.ts [circuits]
 */
import fc from "fast-check";
import { networkFor, portOf } from "../../server/calc/circuit-readings.ts";
import { startNgspice } from "../calc/ngspice.ts";
import { anyFaulty } from "../diagnosis/circuits.ts";
import { measurementsOf } from "../diagnosis/helpers.ts";
import { readingOf } from "../helpers/reading.ts";

const count = Number(process.argv[2] ?? 5000);
const measured = await startNgspice();
let [readings, open, worst, wrong] = [0, 0, 0, 0];
for (const { circuit, faults, links } of fc.sample(anyFaulty(), { numRuns: count, seed: 415 })) {
  for (const [, measurement] of measurementsOf(circuit)) {
    const { from, to } = portOf(measurement);
    const there = await measured(networkFor(circuit, measurement, faults, links), from, to);
    const here = readingOf(circuit, measurement, faults, links);
    readings++;
    if (there === Number.POSITIVE_INFINITY) {
      open++;
      if (here !== there) wrong++;
      continue;
    }
    const away = here === there ? 0 : Math.abs(here - there) / there;
    worst = Math.max(worst, away);
    if (!(away <= 1e-9)) wrong++;
  }
}
console.log(
  `${count} circuits, ${readings} readings, ${open} of them open: ${wrong} further away than 1e-9, the worst ${worst.toExponential(1)}`,
);
