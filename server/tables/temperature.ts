import { computed, memory, table } from "./table.ts";

/** From 20 °C data to the reading expected at a test temperature. */
interface TestTemperatureFactor {
  /** Conductor/ambient temperature during the test, °C. */
  readonly temperature: number;
  /** 1+0.004*(t-20). */
  readonly factor: number;
}

export const testTemperatureFactors = table<TestTemperatureFactor>({
  id: "cond-i2",
  title: "Ambient correction applied to the 20 °C resistance when testing at another temperature",
  ref: "IET On-Site Guide, Table I2",
  edition: "18th Edition OSG",
  applies:
    "Multiply 20 °C data by the factor to get the expected reading at the test temperature; divide a reading by it to get the 20 °C value.",
  units: { temperature: "°C", factor: "" },
  standing: "computed",
  rows: () => [
    { temperature: 5, factor: 0.94 },
    { temperature: 10, factor: 0.96 },
    { temperature: 15, factor: 0.98 },
    { temperature: 20, factor: 1 },
    { temperature: 25, factor: 1.02 },
    { temperature: 30, factor: 1.04 },
    { temperature: 40, factor: 1.08 },
  ],
  notes: [
    "Cable makers print the opposite factors, from a reading back to 20 °C (1.064 at 5 °C). Mixing them doubles the error.",
  ],
  // Quoted on these pages:
  // - ElectriciansForums thread: Max Zs values in the On-Site Guide
  quotedOn: 1,
});

/** From 20 °C to operating temperature. */
interface OperatingFactor {
  /** Operating temperature, °C. */
  readonly celsius: number;
  /** Conductor insulation. */
  readonly insulation: string;
  /** Separate cpc, initial 30 °C. */
  readonly separate: number;
  /** Cpc in cable or bunched. */
  readonly incorporated: number;
}

export const operatingFactors = table<OperatingFactor>({
  id: "cond-i3",
  title: "Conductor operating temperature factor for Zs design and volt drop",
  ref: "IET On-Site Guide, Table I3",
  edition: "18th Edition OSG",
  applies:
    "Multiply 20 °C R1+R2 to get the resistance under fault/operating temperature. 'Table 54.2' case: cpc separate, not incorporated or bunched (initial 30 °C). 'Table 54.3' case: cpc incorporated in the cable or bunched (initial = operating temperature).",
  units: { celsius: "°C", insulation: "", separate: "", incorporated: "" },
  standing: "computed",
  rows: () => [
    computed(
      { celsius: 70, insulation: "70 °C thermoplastic (PVC)", separate: 1.04, incorporated: 1.2 },
      {},
      "The factors follow from a rise of 0.4 % per kelvin.",
    ),
    { celsius: 85, insulation: "85 °C thermosetting", separate: 1.04, incorporated: 1.26 },
    { celsius: 90, insulation: "90 °C thermosetting or thermoplastic", separate: 1.04, incorporated: 1.28 },
  ],
  // Quoted on these pages:
  // - DIYnot thread: Zs figure for type B, C or D
  // - ElectriciansForums thread: Zs values (temperature correction)
  quotedOn: 2,
});

/** Temperature coefficient of resistance at 20 °C. */
interface TemperatureCoefficient {
  /** Short name for look-up. */
  readonly key: string;
  /** Conductor. */
  readonly material: string;
  /** Coefficient at 20 °C, 1/K. */
  readonly alpha20: number;
  /** Where used. */
  readonly use: string;
}

export const temperatureCoefficients = table<TemperatureCoefficient>({
  id: "cond-alpha",
  title: "Temperature coefficients used",
  ref: "BS 7671, Appendix 4, and IEC 60028",
  edition: "n/a",
  applies: "Resistance correction.",
  units: { key: "", material: "", alpha20: "1/K", use: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "simple",
      material: "Copper and aluminium, simplified",
      alpha20: 0.004,
      use: "OSG/GN3 corrections, Zs 80 % rule",
    },
    computed(
      { key: "copper", material: "Copper, physical (IEC 60028)", alpha20: 0.00393, use: "accurate calculations" },
      {},
      "0.00393 itself is from memory; a cable maker's factor at 70 °C gives about 0.0040.",
    ),
    memory({ key: "aluminium", material: "Aluminium, physical", alpha20: 0.00403, use: "accurate calculations" }),
  ],
  // Quoted on these pages:
  // - ElectriciansForums thread: Max Zs values in the On-Site Guide
  // - DIYnot thread: Zs figure for type B, C or D
  // - ElectriciansForums thread: Zs values (temperature correction)
  // - Cable maker: copper conductors to IEC 60228 (class 2 and 5) and temperature factors
  quotedOn: 4,
});
