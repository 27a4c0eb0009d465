import { computed, memory, table } from "./table.ts";

/** Voltage drop with its parts, of the sizes whose reactance counts. */
interface Drop4E4B {
  /** Size, mm². */
  readonly csa: number;
  /** Two-core, single-phase: resistance, reactance and both together, mV/A/m. */
  readonly r1: number;
  readonly x1: number;
  readonly phase1: number;
  /** Three- or four-core, three-phase. */
  readonly r3: number;
  readonly x3: number;
  readonly phase3: number;
}

export const drop4E4B = table<Drop4E4B>({
  id: "vd-4E4B",
  title: "Voltage drop by resistance and reactance: armoured 90 °C thermosetting, copper",
  ref: "BS 7671:2018+A2:2022, Table 4E4B",
  edition: "17th Edition",
  applies:
    "From 25 mm², at operating temperature. The reactance is that of cores lying together, whatever their insulation.",
  units: { csa: "mm²", r1: "mV/A/m", x1: "mV/A/m", phase1: "mV/A/m", r3: "mV/A/m", x3: "mV/A/m", phase3: "mV/A/m" },
  standing: "quoted",
  share: 0.05,
  rows: () => [
    { csa: 25, r1: 1.85, x1: 0.16, phase1: 1.9, r3: 1.6, x3: 0.14, phase3: 1.65 },
    computed(
      { csa: 35, r1: 1.35, x1: 0.155, phase1: 1.359, r3: 1.15, x3: 0.135, phase3: 1.15 },
      {
        x1: "quoted",
        r3: "quoted",
        x3: "quoted",
        phase3: "quoted",
      },
    ),
    { csa: 50, r1: 0.99, x1: 0.155, phase1: 1, r3: 0.86, x3: 0.135, phase3: 0.87 },
    { csa: 70, r1: 0.67, x1: 0.15, phase1: 0.69, r3: 0.59, x3: 0.13, phase3: 0.6 },
    computed(
      { csa: 95, r1: 0.5, x1: 0.15, phase1: 0.52, r3: 0.431, x3: 0.13, phase3: 0.45 },
      {
        r1: "quoted",
        x1: "quoted",
        phase1: "quoted",
        x3: "quoted",
        phase3: "quoted",
      },
    ),
    // One page prints 0.38 for three cores, where r and x beside it come to 0.364.
    memory(
      { csa: 120, r1: 0.4, x1: 0.145, phase1: 0.42, r3: 0.34, x3: 0.13, phase3: 0.38 },
      {
        r1: "quoted",
        x1: "quoted",
        phase1: "quoted",
        r3: "quoted",
        x3: "quoted",
      },
    ),
    { csa: 150, r1: 0.32, x1: 0.145, phase1: 0.35, r3: 0.28, x3: 0.125, phase3: 0.3 },
    { csa: 185, r1: 0.26, x1: 0.145, phase1: 0.29, r3: 0.22, x3: 0.125, phase3: 0.26 },
    { csa: 240, r1: 0.2, x1: 0.14, phase1: 0.24, r3: 0.175, x3: 0.125, phase3: 0.21 },
    { csa: 300, r1: 0.16, x1: 0.14, phase1: 0.21, r3: 0.14, x3: 0.12, phase3: 0.185 },
    { csa: 400, r1: 0.13, x1: 0.14, phase1: 0.19, r3: 0.115, x3: 0.12, phase3: 0.165 },
  ],
  notes: [
    "Of 35 mm² two-core and 95 mm² three-core the page prints r and z that rule each other out; r follows from the others.",
  ],
  // Quoted on these pages:
  // - R&M Electrical technical resource: SWA cables, Tables 4E4A/4E4B
  quotedOn: 1,
});

/** A reactance that no table at hand prints. */
interface OtherReactance {
  readonly key: "armour" | "counts-above";
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const otherReactances = table<OtherReactance>({
  id: "reactance",
  title: "Reactance of conductors beside those of the tables",
  ref: "Common practice, reactance of cables",
  edition: "any edition",
  applies: "Loops and fault currents of large cables.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "memory",
  share: 0.33,
  rows: () => [
    memory({ key: "armour", item: "steel wire armour as a protective conductor", value: 0.0003, unit: "Ω/m" }),
    computed({ key: "counts-above", item: "size above which reactance counts in a loop", value: 35, unit: "mm²" }),
  ],
});
