import { memory, quoted, table } from "./table.ts";

/** Rated breaking capacity of a device. */
interface BreakingCapacity {
  readonly standard: string;
  /** Part, type or category marked. */
  readonly category: string | null;
  /** Rated, as marked, kA. */
  readonly icn: number;
  /** Service, kA. */
  readonly ics: number | null;
  /** Where the capacity depends on it, V. */
  readonly volts: number | null;
}

export const breakingCapacities = table<BreakingCapacity>({
  id: "icn",
  title: "Rated fault current capacities of common devices",
  ref: "BS 7671:2008, Appendix 3, and product standards",
  edition: "17th Edition textbook",
  applies: "Icn marked on the device; Ics is the service capacity.",
  units: { standard: "", category: "", icn: "kA", ics: "kA", volts: "V" },
  standing: "quoted",
  rows: () => [
    { standard: "BS EN 60898", category: null, icn: 1.5, ics: 1.5, volts: null },
    { standard: "BS EN 60898", category: null, icn: 3, ics: 3, volts: null },
    { standard: "BS EN 60898", category: null, icn: 4.5, ics: 4.5, volts: null },
    { standard: "BS EN 60898", category: null, icn: 6, ics: 6, volts: null },
    { standard: "BS EN 60898", category: null, icn: 10, ics: 7.5, volts: null },
    memory({ standard: "BS EN 60898", category: null, icn: 15, ics: 7.5, volts: null }),
    memory({ standard: "BS EN 60898", category: null, icn: 20, ics: 10, volts: null }),
    memory({ standard: "BS EN 60898", category: null, icn: 25, ics: 12.5, volts: null }),
    { standard: "BS 1361", category: "I", icn: 16.5, ics: null, volts: null },
    { standard: "BS 1361", category: "II", icn: 33, ics: null, volts: null },
    { standard: "BS 88", category: "2.1", icn: 50, ics: null, volts: 400 },
    { standard: "BS 88", category: "6", icn: 16.5, ics: null, volts: 230 },
    { standard: "BS 88", category: "6", icn: 80, ics: null, volts: 400 },
    quoted(
      { standard: "BS 3036", category: "S1A", icn: 1, ics: null, volts: null },
      {},
      "Assumed where no category is marked.",
    ),
    { standard: "BS 3036", category: "S2A", icn: 2, ics: null, volts: null },
    { standard: "BS 3036", category: "S4A", icn: 4, ics: null, volts: null },
    { standard: "BS 3871", category: "M1", icn: 1, ics: null, volts: null },
    { standard: "BS 3871", category: "M1.5", icn: 1.5, ics: null, volts: null },
    { standard: "BS 3871", category: "M3", icn: 3, ics: null, volts: null },
    { standard: "BS 3871", category: "M4.5", icn: 4.5, ics: null, volts: null },
    { standard: "BS 3871", category: "M6", icn: 6, ics: null, volts: null },
    { standard: "BS 3871", category: "M9", icn: 9, ics: null, volts: null },
    quoted(
      { standard: "BS EN 61439-3", category: "conditional", icn: 16, ics: null, volts: null },
      {},
      "A consumer unit behind a 100 A fuse to BS 1361 or BS 88.",
    ),
  ],
  notes: ["10 kA is partly cut on the page; its service value, and 15, 20 and 25 kA, are from memory."],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), p.48: fault ratings of devices
  // - MCB catalogue extract: B 3-5, C 5-10, D 10-14 In, 10 kA (seen through a proxy copy)
  // - IET EngX: BS 3036 S1A/S2A/S4A designations
  // - ElectriciansForums post: BS EN 61439-3 Annex ZB, 16 kA conditional
  quotedOn: 4,
});

/** Where a breaker trips. */
interface TripBand {
  /** Short name for look-up. */
  readonly key: string;
  readonly item: string;
  readonly from: number | null;
  readonly to: number | null;
  readonly unit: string;
}

export const tripBands = table<TripBand>({
  id: "trip-bands",
  title: "Instantaneous and conventional tripping",
  ref: "BS EN 60898-1, operating characteristics",
  edition: "product standard",
  applies: "Type B/C/D. Reference ambient 30 °C.",
  units: { key: "", item: "", from: "", to: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "B", item: "Instantaneous trip, type B", from: 3, to: 5, unit: "× In" },
    { key: "C", item: "Instantaneous trip, type C", from: 5, to: 10, unit: "× In" },
    { key: "D", item: "Instantaneous trip, type D", from: 10, to: 20, unit: "× In" },
    { key: "no-trip", item: "Conventional non-tripping current", from: null, to: 1.13, unit: "× In" },
    { key: "trip", item: "Conventional tripping current", from: 1.45, to: null, unit: "× In" },
    quoted(
      { key: "at-2.55-to-32A", item: "Time at 2.55 In, up to 32 A", from: 1, to: 60, unit: "s" },
      {},
      "Illegible at its lower end where it is quoted; 1 s is taken, as for the larger ratings.",
    ),
    { key: "at-2.55-to-63A", item: "Time at 2.55 In, above 32 A up to 63 A", from: 1, to: 120, unit: "s" },
  ],
  notes: [
    "The conventional time is 1 h up to 63 A and 2 h above.",
    "A maker may narrow the band of type D to 10 to 14; the standard allows 10 to 20.",
  ],
  // Quoted on these pages:
  // - RCBO maker data: trip tests and RCD break times
  // - Hager protection devices catalogue: B 3-5 In, C 5-10 In
  // - MCB catalogue extract: B 3-5, C 5-10, D 10-14 In, 10 kA (seen through a proxy copy)
  quotedOn: 3,
});

/** Where a breaker of the withdrawn standard trips, in multiples of In. */
interface LegacyTripBand {
  readonly curve: string;
  /** × In. */
  readonly from: number;
  /** × In. */
  readonly to: number;
}

export const legacyTripBands = table<LegacyTripBand>({
  id: "trip-3871",
  title: "Instantaneous tripping of BS 3871 breakers",
  ref: "BS 3871-1, instantaneous tripping",
  edition: "BS 3871-1, withdrawn 1994",
  applies: "Existing installations only.",
  units: { curve: "", from: "× In", to: "× In" },
  standing: "quoted",
  rows: () => [
    { curve: "1", from: 2.7, to: 4 },
    { curve: "2", from: 4, to: 7 },
    { curve: "3", from: 7, to: 10 },
    { curve: "4", from: 10, to: 50 },
    { curve: "B", from: 3, to: 5 },
    { curve: "C", from: 5, to: 10 },
    { curve: "D", from: 10, to: 20 },
  ],
  notes: ["Types B, C and D came in with the last amendment, with the same bands as BS EN 60898."],
  // Quoted on these pages:
  // - IET forum thread 54092: older circuit-breaker types (2.7 to 4, 4 to 7, 7 to 10, 10 to 50 times In)
  // - ElectriciansForums thread 47805: time/current figures of BS 3871 types 1 and 2
  quotedOn: 2,
});

/** Greatest let-through energy by energy limiting class. */
interface EnergyClass {
  /** Rated capacity, kA. */
  readonly icn: number;
  readonly class: number;
  /** Type B, In ≤ 16 A, A²s. */
  readonly b16: number;
  /** Type C, In ≤ 16 A, A²s. */
  readonly c16: number;
  /** Type B, 16 < In ≤ 32 A, A²s. */
  readonly b32: number;
  /** Type C, 16 < In ≤ 32 A, A²s. */
  readonly c32: number;
}

export const energyClasses = table<EnergyClass>({
  id: "energy-class",
  title: "Maximum let-through energy (I²t) by energy limiting class",
  ref: "BS EN 60898-1, Annex ZA",
  edition: "product standard; class 3 is the common modern marking",
  applies: "Type B and type C; the current designer compares with k^2*S^2.",
  units: { icn: "kA", class: "", b16: "A²s", c16: "A²s", b32: "A²s", c32: "A²s" },
  standing: "memory",
  rows: () => [
    quoted(
      { icn: 10, class: 2, b16: 240000, c16: 290000, b32: 310000, c32: 370000 },
      { b32: "memory", c32: "memory" },
      "The page gives the figure without a current band; taken as 16 A and below.",
    ),
    quoted(
      { icn: 10, class: 3, b16: 70000, c16: 84000, b32: 90000, c32: 110000 },
      { b32: "memory", c32: "memory" },
      "The page gives the figure without a current band; taken as 16 A and below.",
    ),
    { icn: 3, class: 2, b16: 31000, c16: 37000, b32: 40000, c32: 50000 },
    { icn: 3, class: 3, b16: 15000, c16: 18000, b32: 18000, c32: 22000 },
    { icn: 6, class: 2, b16: 100000, c16: 120000, b32: 130000, c32: 160000 },
    { icn: 6, class: 3, b16: 35000, c16: 42000, b32: 45000, c32: 55000 },
  ],
  notes: [
    "For 40 A multiply the 32 A figures by 1.2 (from memory).",
    "Makers' data give lower let-through; these are upper limits.",
  ],
  // Quoted on these pages:
  // - ElectriciansForums post: energy limiting class figures from BS EN 60898
  quotedOn: 1,
});
