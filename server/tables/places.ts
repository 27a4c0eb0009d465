import { memory, practice, quoted, table } from "./table.ts";

/** An RCD that a place asks for beyond the general rules. */
export interface PlaceRcd {
  readonly place:
    | "agricultural"
    | "caravan"
    | "marina"
    | "construction"
    | "pool"
    | "sauna"
    | "exhibition"
    | "fairground"
    | "mobile-unit"
    | "fire-risk";
  /** What the row is of: final circuits, or the supply to the place at its origin. */
  readonly circuits: "sockets" | "other" | "all" | "feeder" | "origin";
  /** Greatest rating of the sockets the row speaks of, A; null without end. */
  readonly upTo: number | null;
  /** Greatest rated residual current, A. */
  readonly residual: number;
  /** Whether each socket has it for itself. */
  readonly own: "each" | "shared";
  readonly clause: string;
}

const edition = "18th Edition, much the same in the 17th; the 16th had other numbers and is not judged by these";

/** The first row that fits a circuit is its own. */
export const placeRcds = table<PlaceRcd>({
  id: "place-rcds",
  title: "RCDs that special locations require",
  ref: "BS 7671:2018+A2:2022, 422.3.9 and Part 7: 702 to 705, 708, 709, 711, 717 and 740",
  edition,
  applies: "Circuits of the place, other than SELV, PELV and reduced low voltage.",
  units: { place: "", circuits: "", upTo: "A", residual: "A", own: "", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    { place: "pool", circuits: "all", upTo: null, residual: 0.03, own: "shared", clause: "702.410.3.4" },
    quoted({
      place: "agricultural",
      circuits: "sockets",
      upTo: 32,
      residual: 0.03,
      own: "shared",
      clause: "705.411.1",
    }),
    quoted({
      place: "agricultural",
      circuits: "sockets",
      upTo: null,
      residual: 0.1,
      own: "shared",
      clause: "705.411.1",
    }),
    quoted(
      { place: "agricultural", circuits: "other", upTo: null, residual: 0.3, own: "shared", clause: "705.411.1" },
      {},
      "Whether distribution circuits are meant is disputed.",
    ),
    { place: "agricultural", circuits: "feeder", upTo: null, residual: 0.3, own: "shared", clause: "705.411.1" },
    quoted(
      { place: "caravan", circuits: "sockets", upTo: null, residual: 0.03, own: "each", clause: "708.415.1" },
      { own: "memory" },
      "708.553.1.13 in the 17th Edition.",
    ),
    quoted(
      { place: "marina", circuits: "sockets", upTo: 63, residual: 0.03, own: "each", clause: "709.531.2" },
      { own: "memory" },
    ),
    { place: "marina", circuits: "sockets", upTo: null, residual: 0.3, own: "each", clause: "709.531.2" },
    { place: "construction", circuits: "sockets", upTo: 32, residual: 0.03, own: "shared", clause: "704.410.3.10" },
    { place: "sauna", circuits: "all", upTo: null, residual: 0.03, own: "shared", clause: "703.411.3.3" },
    { place: "exhibition", circuits: "sockets", upTo: 32, residual: 0.03, own: "shared", clause: "711.411.3.3" },
    { place: "exhibition", circuits: "other", upTo: null, residual: 0.03, own: "shared", clause: "711.411.3.3" },
    { place: "exhibition", circuits: "origin", upTo: null, residual: 0.3, own: "shared", clause: "711.410.3.4" },
    { place: "fairground", circuits: "sockets", upTo: 32, residual: 0.03, own: "shared", clause: "740.415.1" },
    { place: "fairground", circuits: "other", upTo: null, residual: 0.03, own: "shared", clause: "740.415.1" },
    { place: "fairground", circuits: "origin", upTo: null, residual: 0.3, own: "shared", clause: "740.410.3" },
    { place: "mobile-unit", circuits: "sockets", upTo: null, residual: 0.03, own: "shared", clause: "717.415" },
    quoted(
      { place: "mobile-unit", circuits: "other", upTo: null, residual: 0.03, own: "shared", clause: "717.411.1" },
      {},
      "Whether the supply to the unit or each of its circuits is meant is disputed; either is accepted.",
    ),
    { place: "fire-risk", circuits: "all", upTo: null, residual: 0.3, own: "shared", clause: "422.3.9" },
    { place: "construction", circuits: "sockets", upTo: null, residual: 0.5, own: "shared", clause: "704.411.3.2.1" },
  ],
  // Quoted on these pages:
  // - Forum thread on distribution circuits and Section 705, electriciansforums.net
  // - RCD protection, an engineer's training page
  // - Thread on residential park homes and Section 708, IET EngX
  // - Wiring Matters, winter 2011: marinas (IET)
  // - Thread on Section 717 and Regulation 717.411.4, IET EngX
  quotedOn: 5,
});

/** Where the earth of a PME supply may not be used. */
interface PlaceEarth {
  readonly place: "caravan" | "marina" | "construction" | "exhibition" | "fairground" | "mobile-unit" | "charger";
  readonly what: string;
  /** What would make it allowable. */
  readonly instead: string;
  readonly clause: string;
}

export const placeEarths = table<PlaceEarth>({
  id: "place-earths",
  title: "Where a combined neutral and earth may not be used",
  ref: "BS 7671:2018+A2:2022, 704.411.3.1, 708.411.4, 709.411.4, 711.411.4, 717.411.4, 722.411.4.1 and 740.411.4; ESQCR 2002, Regulation 9(4)",
  edition,
  applies: "TN-C-S supplies of a network whose neutral is earthed in many places (PME).",
  units: { place: "", what: "", instead: "", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    quoted({
      place: "caravan",
      what: "The sockets of a pitch",
      instead: "an electrode of their own, written earthing TT",
      clause: "BS 7671:2018+A2:2022, 708.411.4; ESQCR 2002, Regulation 9(4)",
    }),
    quoted({
      place: "marina",
      what: "The sockets of a berth",
      instead: "an electrode of their own, written earthing TT",
      clause: "BS 7671:2018+A2:2022, 709.411.4; ESQCR 2002, Regulation 9(4)",
    }),
    {
      place: "construction",
      what: "A construction site",
      instead: "an electrode of its own, written earthing TT, unless it is a fixed building with its main bonding in",
      clause: "BS 7671:2018+A2:2022, 704.411.3.1",
    },
    {
      place: "exhibition",
      what: "A stand",
      instead: "an electrode of its own, written earthing TT, unless it is inside a building with its main bonding in",
      clause: "BS 7671:2018+A2:2022, 711.411.4",
    },
    {
      place: "fairground",
      what: "A ride, a booth or a stall",
      instead: "an electrode of its own, written earthing TT",
      clause: "BS 7671:2018+A2:2022, 740.411.4",
    },
    quoted(
      {
        place: "mobile-unit",
        what: "A mobile or transportable unit outdoors",
        instead:
          "an electrode of its own, written earthing TT, or record as a departure who supervises it and has proved its earthing",
        clause: "BS 7671:2018+A2:2022, 717.411.4",
      },
      {},
      "Allowed where a skilled or instructed person supervises it all the time, and its means of earthing is proved before it is connected.",
    ),
    quoted({
      place: "charger",
      what: "A charging point for a vehicle outdoors",
      instead: "a device that disconnects on an open PEN conductor (open-PEN), or its own electrode (earthing TT)",
      clause: "BS 7671:2018+A2:2022, 722.411.4.1",
    }),
  ],
  // Quoted on these pages:
  // - Thread on residential park homes and Section 708, IET EngX
  // - Wiring Matters, winter 2011: marinas (IET)
  // - EV charging equipment: the new rules explained, Professional Electrician
  // - Thread on Section 717 and Regulation 717.411.4, IET EngX
  // - Thread on Section 717 and refrigeration trailers, IET EngX
  quotedOn: 5,
});

/** The least protection against water, by the second figure of the IP code. */
interface PlaceWater {
  readonly place: "bathroom" | "pool" | "agricultural" | "caravan" | "marina" | "outdoors";
  readonly zone: "0" | "1" | "2" | "";
  readonly water: number;
  readonly clause: string;
}

export const placeWater = table<PlaceWater>({
  id: "place-water",
  title: "Least protection against water",
  ref: "BS 7671:2018+A2:2022, 701.512.2, 702.512.2, 705.512.2, 708.512.2 and 709.512.2",
  edition,
  applies: "Equipment in the zone or place. Where water jets clean, more is required.",
  units: { place: "", zone: "", water: "", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    quoted({ place: "bathroom", zone: "0", water: 7, clause: "701.512.2" }),
    quoted({ place: "bathroom", zone: "1", water: 4, clause: "701.512.2" }),
    quoted({ place: "bathroom", zone: "2", water: 4, clause: "701.512.2" }),
    { place: "pool", zone: "0", water: 8, clause: "702.512.2" },
    { place: "pool", zone: "1", water: 4, clause: "702.512.2" },
    { place: "pool", zone: "2", water: 2, clause: "702.512.2" },
    { place: "agricultural", zone: "", water: 4, clause: "705.512.2" },
    { place: "caravan", zone: "", water: 4, clause: "708.512.2" },
    quoted({ place: "marina", zone: "", water: 4, clause: "709.512.2" }),
    practice({ place: "outdoors", zone: "", water: 3, clause: "512.2" }, {}, "Rain is spraying water; jets need more."),
  ],
  notes: ["Zone 2 of a pool outdoors requires IPX4."],
  // Quoted on these pages:
  // - Bathroom zones, a manufacturer's guide to ingress protection
  // - Requirements for marinas and similar locations, Professional Electrician
  quotedOn: 2,
});

/** Zones in which nothing but extra-low voltage may be. */
export interface PlaceZone {
  readonly place: "bathroom" | "pool";
  readonly zone: "0" | "1";
  /** Greatest voltage, V a.c. */
  readonly volts: number;
  readonly clause: string;
}

export const placeZones = table<PlaceZone>({
  id: "place-zones",
  title: "Zones for extra-low voltage only",
  ref: "BS 7671:2018+A2:2022, 701.410.3.5, 701.55 and 702.410.3.4.1",
  edition,
  applies: "Zone 0 of a bath or shower; zones 0 and 1 of a pool, other than pumps and the like made for it (702.55.4).",
  units: { place: "", zone: "", volts: "V", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    quoted({ place: "bathroom", zone: "0", volts: 12, clause: "701.55" }),
    { place: "pool", zone: "0", volts: 12, clause: "702.410.3.4.1" },
    { place: "pool", zone: "1", volts: 12, clause: "702.410.3.4.1" },
  ],
  // Quoted on these pages:
  // - Bathroom zones, a manufacturer's guide to ingress protection
  quotedOn: 1,
});

/** What may not stand in a place, or in a zone of it, at all. */
interface PlaceEquipment {
  readonly place: "bathroom" | "sauna";
  /** The zone, empty where all of the place is meant. */
  readonly zone: "" | "1";
  readonly use: "shaver" | "laundry" | "cooker" | "sockets";
  readonly what: string;
  /** Where it may stand. */
  readonly instead: string;
  readonly clause: string;
}

export const placeEquipment = table<PlaceEquipment>({
  id: "place-equipment",
  title: "Equipment that may not stand in a special location, or in a zone of it",
  ref: "BS 7671:2018+A2:2022, 701.512.3, 701.55 and 703.537.5",
  edition,
  applies: "Equipment other than SELV. Sockets near a bath or shower are judged by their distance.",
  units: { place: "", zone: "", use: "", what: "", instead: "", clause: "" },
  standing: "memory",
  // Nothing here is a figure: what is from memory is the rule.
  share: 0,
  rows: () => [
    quoted({
      place: "bathroom",
      zone: "1",
      use: "shaver",
      what: "A shaver supply unit",
      instead: "in zone 2, away from the spray, or beyond it",
      clause: "701.512.3",
    }),
    {
      place: "bathroom",
      zone: "1",
      use: "laundry",
      what: "A washing machine or dryer",
      instead: "outside zone 1",
      clause: "701.55",
    },
    {
      place: "bathroom",
      zone: "1",
      use: "cooker",
      what: "Cooking equipment",
      instead: "outside zone 1",
      clause: "701.55",
    },
    quoted({
      place: "sauna",
      zone: "",
      use: "sockets",
      what: "A socket-outlet",
      instead: "outside the room of the heater",
      clause: "703.537.5",
    }),
  ],
  // Quoted on these pages:
  // - Thread on a shaver unit in a small bathroom, diynot.com
  // - Sauna installation, a guide for electricians
  quotedOn: 2,
});

/** How far sockets keep from zone 1 of a bath or shower. */
interface PlaceDistance {
  /** The edition from which it holds. */
  readonly from: string;
  /** Level distance, m. */
  readonly distance: number;
}

/** Oldest first: the last that is not later than the edition holds. */
export const placeDistances = table<PlaceDistance>({
  id: "place-distances",
  title: "Distance of socket-outlets from zone 1 of a bath or shower",
  ref: "BS 7671, 701.512.3",
  edition: "since the 17th Edition; less since Amendment 2 of the 18th",
  applies: "Socket-outlets other than SELV and shaver supply units to BS EN 61558-2-5.",
  units: { from: "", distance: "m" },
  standing: "memory",
  rows: () => [
    quoted({ from: "BS 7671:2008", distance: 3 }),
    memory({ from: "BS 7671:2018+A2:2022", distance: 2.5 }, {}, "Seen in the draft for comment of Amendment 2."),
  ],
  // Quoted on these pages:
  // - Locations containing a bath or shower, an electrical contractor's page
  quotedOn: 1,
});

/** Where local bonding is asked for. */
interface PlaceBonding {
  readonly place: "bathroom" | "pool" | "agricultural";
  /** Whether it may be left out where the conditions for that hold. */
  readonly omitted: "conditions" | "never";
  readonly clause: string;
}

export const placeBonding = table<PlaceBonding>({
  id: "place-bonding",
  title: "Supplementary bonding in special locations",
  ref: "BS 7671:2018+A2:2022, 701.415.2, 702.415.2 and 705.415.2.1",
  edition,
  applies: "Metal that can be touched simultaneously in the place.",
  units: { place: "", omitted: "", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    { place: "bathroom", omitted: "conditions", clause: "701.415.2" },
    { place: "pool", omitted: "never", clause: "702.415.2" },
    { place: "agricultural", omitted: "never", clause: "705.415.2.1" },
  ],
});

/** The voltage that may stay on exposed metal of a place in TT, where it is less than elsewhere. */
interface PlaceTouch {
  readonly place: "agricultural" | "construction";
  readonly edition: string;
  readonly volts: number;
  readonly clause: string;
}

export const placeTouch = table<PlaceTouch>({
  id: "place-touch",
  title: "Touch voltage in special locations",
  ref: "BS 7671:2001, 604-05 and 605-06",
  edition: "16th Edition only",
  applies: "TT: earth resistance times the rated residual current.",
  units: { place: "", edition: "", volts: "V", clause: "" },
  standing: "memory",
  // Ratings and codes are steps of a scale: what is from memory is the rule, and no figure that could be a little off.
  share: 0,
  rows: () => [
    { place: "construction", edition: "BS 7671:2001", volts: 25, clause: "604-05" },
    { place: "agricultural", edition: "BS 7671:2001", volts: 25, clause: "605-06" },
  ],
});
