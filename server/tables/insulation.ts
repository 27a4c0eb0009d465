import { computed, memory, quoted, table } from "./table.ts";

/** Test voltage and least insulation resistance. */
export interface InsulationMinimum {
  readonly kind: "selv-pelv" | "up-to-500" | "above-500";
  /** Nominal circuit. */
  readonly circuit: string;
  /** Test voltage, V d.c.. */
  readonly testVoltage: number;
  /** Minimum, MΩ. */
  readonly minimum: number;
}

export const insulationMinima = table<InsulationMinimum>({
  id: "ir-64",
  title: "Insulation resistance: test voltages and minima",
  ref: "BS 7671:2018+A2:2022, Table 64",
  edition: "Table 61 / 612.3 in the 17th Edition",
  applies:
    "Between live conductors and between live conductors and earth, circuit isolated, loads and electronics removed.",
  units: { kind: "", circuit: "", testVoltage: "V d.c.", minimum: "MΩ" },
  standing: "quoted",
  rows: () => [
    quoted(
      { kind: "selv-pelv", circuit: "SELV and PELV", testVoltage: 250, minimum: 0.5 },
      {},
      "250 V from a trade forum, 0.5 MΩ from a railway authority's page with the same IEC table.",
    ),
    {
      kind: "up-to-500",
      circuit: "Up to and including 500 V, other than SELV/PELV (includes 230/400 V)",
      testVoltage: 500,
      minimum: 1,
    },
    { kind: "above-500", circuit: "Above 500 V", testVoltage: 1000, minimum: 1 },
  ],
  notes: ["Instrument handbooks that give 0.25 and 0.5 MΩ mix older and foreign limits."],
  // Quoted on these pages:
  // - Rail infrastructure manager technical rules: LV minimum insulation resistance
  // - ElectriciansForums thread: IR test voltages and 250 V reduction
  // - Electrical Wholesaler, May 2023: insulation resistance and 643.3.2/643.3.3
  // - Revision notes: order of dead and live tests
  quotedOn: 4,
});

/** A rule of the insulation test. */
interface InsulationRuleText {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  /** Number. */
  readonly value: number | string;
  readonly unit: string;
}

export const insulationRules = table<InsulationRuleText>({
  id: "ir-notes",
  title: "Insulation resistance: reduced voltage and related rules",
  ref: "BS 7671:2018+A2:2022, 643.3.2 and 643.3.3",
  edition: "18th Edition; 612.3.2/3 in the 17th",
  applies: "Connected equipment or SPDs that could be damaged.",
  units: { key: "", rule: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "reduced-voltage",
      rule: "Reduced test voltage when SPDs or connected equipment would affect or be damaged",
      value: 250,
      unit: "V d.c.",
    },
    { key: "reduced-minimum", rule: "Minimum still required at the reduced voltage", value: 1, unit: "MΩ" },
    {
      key: "connected-equipment",
      rule: "With equipment that may influence the result: live conductors connected together, tested to earth",
      value: "643.3.3",
      unit: "method",
    },
    computed({
      key: "parallel",
      rule: "Parallel circuits: total insulation resistance is lower than any branch (1/Rt = sum 1/Ri)",
      value: "formula",
      unit: "",
    }),
    memory({
      key: "new-installation",
      rule: "Typical expectation for a new installation (guidance, not a limit)",
      value: ">2",
      unit: "MΩ",
    }),
  ],
  // Quoted on these pages:
  // - Electrical Wholesaler, May 2023: insulation resistance and 643.3.2/643.3.3
  // - ElectriciansForums thread: IR test voltages and 250 V reduction
  quotedOn: 2,
});
