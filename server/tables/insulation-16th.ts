import type { InsulationMinimum } from "./insulation.ts";
import { quoted, table } from "./table.ts";

/** The older minima, for work judged to the 16th Edition. */
export const insulationMinima16 = table<InsulationMinimum>({
  id: "ir-71A",
  title: "Insulation resistance: 16th Edition minima",
  ref: "BS 7671:2001, Table 71A",
  edition: "16th Edition",
  applies: "Work that was certified before July 2008.",
  units: { kind: "", circuit: "", testVoltage: "V d.c.", minimum: "MΩ" },
  standing: "memory",
  rows: () => [
    { kind: "selv-pelv", circuit: "SELV and PELV", testVoltage: 250, minimum: 0.25 },
    quoted({ kind: "up-to-500", circuit: "Up to and including 500 V", testVoltage: 500, minimum: 0.5 }),
    { kind: "above-500", circuit: "Above 500 V", testVoltage: 1000, minimum: 1 },
  ],
  notes: ["The minimum for 230/400 V circuits went from 0.5 to 1.0 MΩ in 2008."],
  // Quoted on these pages:
  // - Notes on insulation resistance, 16th Edition
  quotedOn: 1,
});
