import { memory, quoted, table } from "./table.ts";

/** What a distributor declares for a public supply. */
interface SupplyValue {
  /** Short name for look-up. */
  readonly key: string;
  readonly item: string;
  /** Number. */
  readonly value: number | string;
  readonly unit: string;
}

/** What public supplies are made for, V. */
export const nominalVoltage = { toEarth: 230, betweenLines: 400 } as const;

/** What they were made for before the voltages of Europe were brought together, V, and the day of that. */
export const formerVoltage = { toEarth: 240, betweenLines: 415, until: "1995-01-01" } as const;

export const supplyValues = table<SupplyValue>({
  id: "supply",
  title: "Supply characteristics (declared values)",
  ref: "ESQCR 2002 and distributors' declared values",
  edition: "current distributor data; TT figure is a declared transformer limit",
  applies: "Public low-voltage supplies in GB. Values are the distributor's maximum, to be verified by measurement.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "voltage",
      item: "Nominal voltage single / three phase",
      value: `${nominalVoltage.toEarth} / ${nominalVoltage.betweenLines}`,
      unit: "V",
    },
    memory({
      key: "former-voltage",
      item: `Nominal voltage single / three phase until ${formerVoltage.until}`,
      value: `${formerVoltage.toEarth} / ${formerVoltage.betweenLines}`,
      unit: "V",
    }),
    { key: "tolerance", item: "Voltage tolerance", value: "+10 % / -6 % (216.2 V to 253 V)", unit: "" },
    { key: "tolerance-high", item: "Voltage tolerance above nominal", value: 10, unit: "%" },
    { key: "tolerance-low", item: "Voltage tolerance below nominal", value: 6, unit: "%" },
    { key: "frequency", item: "Frequency", value: "50 Hz, +/- 1 %", unit: "" },
    { key: "ze-tn-c-s", item: "Ze, TN-C-S (PME)", value: 0.35, unit: "Ω" },
    { key: "ze-tn-s", item: "Ze, TN-S", value: 0.8, unit: "Ω" },
    { key: "ra-tt", item: "TT, supply side (declared); consumer electrode separate", value: 21, unit: "Ω" },
    memory({
      key: "reduced-low-voltage",
      item: "Reduced low voltage (411.8): greatest to earth, 110 V between lines of three phases",
      value: 63.5,
      unit: "V",
    }),
    quoted(
      { key: "touch-voltage", item: "TT RCD rule RA * IΔn ≤ 50 V", value: 50, unit: "V" },
      {},
      "200 Ω would limit IΔn to 250 mA.",
    ),
    { key: "fault-single-phase", item: "PSCC at service, single phase", value: 16, unit: "kA" },
    { key: "fault-three-phase", item: "PSCC, three phase", value: 25, unit: "kA" },
    { key: "service-fuse", item: "Service fuse, typical", value: 100, unit: "A" },
  ],
  notes: [
    "21 Ω is the distributor's side only; the consumer's electrode is added to it.",
    "Declared values are greatest values: measure at each origin.",
    "The planned widening of the lower tolerance to −10 % was not made law by the pages seen.",
  ],
  // Quoted on these pages:
  // - Distribution network operator: supply characteristics for contractors
  // - uk.d-i-y post: distributor data under ESQCR reg. 28 (0.35/0.8/21 ohm, 16/25 kA)
  // - Mailing list quoting UK government: 230 V -6 %/+10 % (216 V to 253 V)
  // - ElectriciansForums post reproducing IET Wiring Matters 54 (2015): reduction in maximum Zs, Cmin 0.95, ESQCR +10/-6 %
  // - ElectriciansForums thread: declared Ze 0.8 (TN) and 0.35 (TN-C-S)
  // - ElectriciansForums thread: max Zs readings for TT
  // - DIYnot thread: 21 ohm; RA x IDn <= 50 V
  // - Training notes: ADS, disconnection times and Zs (Chapter 41)
  // - ElectriciansForums post: BS EN 61439-3 Annex ZB, 16 kA conditional
  quotedOn: 9,
});
