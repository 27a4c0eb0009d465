import { memory, quoted, table } from "./table.ts";

/** Resistance of steel wire armour at 20 °C, copper conductors. */
interface ArmourResistance {
  /** Conductor, mm². */
  readonly csa: number;
  /** 2-core armour, Ω/km. */
  readonly cores2: number;
  /** 3-core armour, Ω/km. */
  readonly cores3: number;
  /** 4-core armour, Ω/km. */
  readonly cores4: number;
  /** 5-core armour, Ω/km. */
  readonly cores5: number | null;
}

export const armourResistance = table<ArmourResistance>({
  id: "cond-swa-armour",
  title: "Armour resistance of multicore SWA cables at 20 °C, copper conductors, steel wire armour",
  ref: "Guide to the Wiring Regulations (17th Edition), Table 4.4; BS 5467",
  edition: "17th Edition era; manufacturer data governs",
  applies: "When the armour is the cpc. From 10 mm² on the figures are recalled; the small sizes were seen.",
  units: { csa: "mm²", cores2: "Ω/km", cores3: "Ω/km", cores4: "Ω/km", cores5: "Ω/km" },
  standing: "quoted",
  rows: () => [
    { csa: 1.5, cores2: 10.2, cores3: 9.5, cores4: 8.8, cores5: 8.2 },
    { csa: 2.5, cores2: 8.8, cores3: 8.2, cores4: 7.7, cores5: 6.8 },
    { csa: 4, cores2: 7.9, cores3: 7.5, cores4: 6.8, cores5: 6.2 },
    { csa: 6, cores2: 7, cores3: 6.7, cores4: 4.3, cores5: 3.9 },
    memory({ csa: 10, cores2: 6, cores3: 4, cores4: 3.7, cores5: null }),
    memory({ csa: 16, cores2: 3.7, cores3: 3.6, cores4: 3.1, cores5: null }, { cores4: "quoted" }),
    memory({ csa: 25, cores2: 3.7, cores3: 2.5, cores4: 2.3, cores5: null }),
    memory({ csa: 35, cores2: 2.6, cores3: 2.3, cores4: 2, cores5: null }),
    memory({ csa: 50, cores2: 2.3, cores3: 2, cores4: 1.8, cores5: null }),
    memory({ csa: 70, cores2: 2, cores3: 1.8, cores4: 1.2, cores5: null }),
    memory({ csa: 95, cores2: 1.4, cores3: 1.3, cores4: 1.1, cores5: null }),
    memory({ csa: 120, cores2: 1.3, cores3: 1.2, cores4: 0.76, cores5: null }),
    memory({ csa: 150, cores2: 1.2, cores3: 0.78, cores4: 0.68, cores5: null }),
    memory({ csa: 185, cores2: 0.82, cores3: 0.71, cores4: 0.61, cores5: null }),
    memory({ csa: 240, cores2: 0.73, cores3: 0.63, cores4: 0.54, cores5: null }),
    memory({ csa: 300, cores2: 0.67, cores3: 0.58, cores4: 0.49, cores5: null }),
    memory({ csa: 400, cores2: 0.59, cores3: 0.52, cores4: 0.35, cores5: null }),
  ],
  notes: [
    "Greatest resistances. Cable with 70 °C insulation has rather more steel, and reads less.",
    "Resistance times cross-section comes to one resistivity for every cable, recalled figures and seen ones alike.",
  ],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), Appendix 4 cable resistance data
  // - IET EngX: a sum for 30 m of 16 mm² four-core SWA
  quotedOn: 2,
});

/** Cross-section of the armour wires, copper conductors. */
interface ArmourArea {
  /** Conductor, mm². */
  readonly csa: number;
  /** 2-core, mm². */
  readonly cores2: number;
  /** 3-core, mm². */
  readonly cores3: number;
  /** 4-core, mm². */
  readonly cores4: number;
}

export const armourAreas = table<ArmourArea>({
  id: "swa-area",
  title: "Gross cross-section of the armour wires of multicore SWA cables, copper conductors",
  ref: "BS 5467, cross-section of armour wires",
  edition: "manufacturer data governs",
  applies: "When the armour is the cpc: what is compared with Table 54.7 and the adiabatic equation.",
  units: { csa: "mm²", cores2: "mm²", cores3: "mm²", cores4: "mm²" },
  standing: "memory",
  rows: () => [
    memory({ csa: 1.5, cores2: 15, cores3: 16, cores4: 17 }, { cores2: "quoted" }),
    memory({ csa: 2.5, cores2: 17, cores3: 19, cores4: 20 }, { cores2: "quoted", cores4: "quoted" }),
    memory({ csa: 4, cores2: 19, cores3: 20, cores4: 22 }, { cores2: "quoted" }),
    memory({ csa: 6, cores2: 22, cores3: 23, cores4: 36 }, { cores2: "quoted" }),
    memory({ csa: 10, cores2: 26, cores3: 39, cores4: 42 }, { cores2: "quoted" }),
    memory({ csa: 16, cores2: 42, cores3: 44, cores4: 49 }, { cores2: "quoted" }),
    memory({ csa: 25, cores2: 42, cores3: 62, cores4: 70 }, { cores2: "quoted" }),
    memory({ csa: 35, cores2: 60, cores3: 68, cores4: 78 }, { cores2: "quoted" }),
    memory({ csa: 50, cores2: 68, cores3: 78, cores4: 90 }, { cores2: "quoted" }),
    memory({ csa: 70, cores2: 80, cores3: 90, cores4: 131 }, { cores2: "quoted", cores4: "quoted" }),
    memory({ csa: 95, cores2: 113, cores3: 128, cores4: 147 }, { cores2: "quoted" }),
    memory({ csa: 120, cores2: 125, cores3: 141, cores4: 206 }, { cores2: "quoted" }),
    memory({ csa: 150, cores2: 138, cores3: 196, cores4: 230 }, { cores2: "quoted" }),
    memory({ csa: 185, cores2: 191, cores3: 220, cores4: 255 }, { cores2: "quoted" }),
    memory({ csa: 240, cores2: 215, cores3: 250, cores4: 289 }, { cores2: "quoted" }),
    memory({ csa: 300, cores2: 235, cores3: 269, cores4: 319 }, { cores2: "quoted" }),
    memory({ csa: 400, cores2: 265, cores3: 304, cores4: 452 }, { cores2: "quoted" }),
  ],
  notes: ["Cable with 70 °C insulation has rather more steel than given here."],
  // Quoted on these pages:
  // - Cable seller: SWA cable data sheet, two-core, armour cross-section
  // - ElectriciansForums thread: can the armour of an SWA be the cpc (70 mm² four-core, 131 mm²)
  // - Forum post on an IET article: 2.5 mm² four-core, 20 mm²
  quotedOn: 3,
});

/** What lifts the resistance of an armour that carries alternating fault current. */
interface ArmourEffect {
  /** Short name for look-up. */
  readonly key: string;
  readonly item: string;
  readonly value: number;
}

export const armourEffects = table<ArmourEffect>({
  id: "swa-effect",
  title: "Steel wire armour in an earth fault",
  ref: "PD CLC/TR 50480",
  edition: "2011",
  applies: "Z1 + Z2 = (R1 + 1.1 R2) + j x, each at its temperature. The reactance, 0.3 mΩ/m, is left out here.",
  units: { key: "", item: "", value: "" },
  standing: "quoted",
  rows: () => [quoted({ key: "resistance", item: "Resistance of the armour to alternating current", value: 1.1 })],
  // Quoted on these pages:
  // - IET EngX: a sum for 30 m of 16 mm² four-core SWA
  quotedOn: 1,
});
