/** The tests of an RCD, by the waveform of the test current: what is required, and what its type lets be tested further. */
import { rcdName } from "../../circuit/describe.ts";
import type { Rcd } from "../../circuit/way.ts";
import { type RcdTestByWaveform, testsByWaveform } from "../../readings/plan-rcd.ts";
import { rcdLabel } from "../../readings/rcd-tests.ts";
import type { Edition } from "../../tables/editions.ts";
import { capital } from "../../text/words.ts";
import { type Card, card, type Row, row } from "./card.ts";

/** Of several RCDs each has its rows under its own name. */
export function rcdPlanCard(rcds: readonly Rcd[], edition: Edition | undefined): Card | undefined {
  const all = rcds.map((rcd) => ({ rcd, tests: testsByWaveform(rcd, edition) }));
  const rows = all.flatMap(({ rcd, tests }) => rowsOf(rcd, tests, rcds.length > 1));
  return rows.length === 0
    ? undefined
    : card(rows, ...all.flatMap(({ tests }) => tests.flatMap(({ figures }) => figures)));
}

const rowsOf = (rcd: Rcd, tests: readonly RcdTestByWaveform[], several: boolean): (Row | undefined)[] => [
  several ? row(capital(rcdLabel(rcd)), rcdName(rcd)) : undefined,
  ...tests.map(({ name, text, required }) => row(`RCD test ${name}`, `${text}${required ? "; required" : ""}`)),
];
