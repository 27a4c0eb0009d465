import { memory, quoted, table } from "./table.ts";

/** What a type of RCD detects. */
interface RcdTypeRow {
  readonly type: "AC" | "A" | "F" | "B";
  /** Responds to. */
  readonly residual: string;
  /** Smooth d.c. tolerated, mA. */
  readonly dc: number | null;
  readonly frequency: string;
  /** Where allowed. */
  readonly use: string;
}

export const rcdTypes = table<RcdTypeRow>({
  id: "rcd-types",
  title: "RCD types",
  ref: "BS 7671:2018+A2:2022, 531.3.3",
  edition: "Type AC restriction since A2:2022",
  applies: "Selecting the residual-current characteristic for the load.",
  units: { type: "", residual: "", dc: "mA", frequency: "", use: "" },
  standing: "quoted",
  rows: () => [
    {
      type: "AC",
      residual: "sinusoidal a.c. only",
      dc: null,
      frequency: "50 Hz",
      use: "only fixed equipment where load current has no d.c. components (A2:2022)",
    },
    {
      type: "A",
      residual: "a.c. and pulsating d.c.",
      dc: 6,
      frequency: "50 Hz",
      use: "circuits whose load may give pulsating d.c. (most domestic electronics)",
    },
    {
      type: "F",
      residual: "as A plus composite currents from single-phase drives",
      dc: 10,
      frequency: "composite",
      use: "circuits with composite residual currents (single-phase frequency converters)",
    },
    quoted(
      {
        type: "B",
        residual: "as F plus smooth d.c. and 1 kHz a.c.",
        dc: null,
        frequency: "to 1 kHz",
        use: "three-phase drives, EV without RDC-DD, some PV",
      },
      {},
      "smooth d.c. value in the standard is 0.4 IΔn or 10 mA; not seen",
    ),
  ],
  // Quoted on these pages:
  // - IET Wiring Matters, July 2022: changes to RCD testing in A2:2022
  // - Trainer blog: 531.3.3 RCD types and A2:2022 test change
  quotedOn: 2,
});

/** Where a 30 mA RCD is required. */
interface RcdRequired {
  /** Short name for look-up. */
  readonly key: string;
  readonly situation: string;
  /** Number. */
  readonly limit: string;
  readonly clause: string;
}

export const rcdRequired = table<RcdRequired>({
  id: "rcd-required",
  title: "Where 30 mA RCD additional protection is required",
  ref: "BS 7671:2018+A2:2022, 411.3.3, 411.3.4, 522.6.202, 701.411.3.3 and Section 722",
  edition: "Scope widened in the 18th Edition and A2:2022",
  applies: "New work; additions must meet the current rule.",
  units: { key: "", situation: "", limit: "", clause: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "sockets",
      situation: "Socket-outlets up to 32 A (exception for skilled/instructed-only areas in A2)",
      limit: "30 mA",
      clause: "411.3.3",
    },
    { key: "outdoors", situation: "Mobile equipment up to 32 A used outdoors", limit: "30 mA", clause: "411.3.3" },
    {
      key: "dwelling-lighting",
      situation: "Final circuits supplying luminaires in dwellings",
      limit: "30 mA",
      clause: "411.3.4",
    },
    quoted(
      {
        key: "concealed",
        situation: "Cables in walls or partitions < 50 mm deep without earthed metallic cover",
        limit: "30 mA",
        clause: "522.6.202",
      },
      {},
      "The 17th Edition numbers were 522.6.6 and 522.6.7.",
    ),
    {
      key: "bathroom",
      situation: "All circuits serving a bath/shower room, and others passing zones 1 and 2",
      limit: "30 mA",
      clause: "701.411.3.3",
    },
    quoted(
      {
        key: "metal-frame",
        situation: "Cables at any depth in a wall with metal parts, without earthed metallic cover",
        limit: "30 mA",
        clause: "522.6.203",
      },
      {},
      "522.6.103 in the 17th Edition.",
    ),
    quoted(
      {
        key: "park-home",
        situation: "The supply to a park home, each by itself",
        limit: "30 mA",
        clause: "708.415.1",
      },
      {},
      "Distribution circuits to park homes are meant as well.",
    ),
    memory({
      key: "floor-heating",
      situation: "Heating cables and units in floors and ceilings",
      limit: "30 mA",
      clause: "753.411.3.2",
    }),
    quoted({
      key: "public-lighting",
      situation: "Outdoor lighting within reach of the public",
      limit: "30 mA",
      clause: "714.411.3.4",
    }),
    {
      key: "ev",
      situation: "Electric vehicle charging point, individually protected",
      limit: "30 mA, and d.c. detection >6 mA unless type B",
      clause: "722.531.3.101",
    },
    { key: "ev-dc", situation: "EV: RDC-DD d.c. detection threshold", limit: "6 mA d.c.", clause: "722.531.3.101" },
    { key: "tt", situation: "TT final circuits (fault protection)", limit: "RCD", clause: "411.5.2" },
  ],
  notes: [
    "Socket-outlets went from 20 A (17th Edition) to 32 A (18th); Amendment 2 narrows the omission to skilled or instructed persons.",
    "Lighting in dwellings is required since the 18th Edition.",
  ],
  // Quoted on these pages:
  // - NICEIC: 18th Edition, changes to Part 4 (411.3.2.2, 411.3.3, 411.3.4)
  // - ECA: top 10 changes to BS 7671:2018+A2:2022 (seen through a proxy copy)
  // - Wholesaler page: 17th Edition Amendment 3 (sockets 20 A, outdoor mobile equipment 32 A)
  // - Training blog: RCD protection in domestic installations
  // - Training page: where BS 7671 requires RCDs (17th Edition)
  // - Contractor page: 17th Edition RCD changes
  // - Electrical Contracting News: RCD requirements for EV charging
  // - Trade magazine 2018: EV charging RCD selection, 6 mA DC
  // - IET EngX: EV charging point individually RCD protected
  // - Voltimum: EV charging, selectivity between RCDs
  // - ElectriciansForums thread: max Zs readings for TT
  quotedOn: 11,
});
