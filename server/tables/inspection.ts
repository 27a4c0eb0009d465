import { table } from "./table.ts";

/** The longest usual time to the next periodic inspection. */
export interface IntervalRow {
  /** The kind of premises, or of the location of a board. */
  readonly of: string;
  readonly years: number;
}

export const inspectionIntervals = table<IntervalRow>({
  id: "inspection-intervals",
  title: "Longest usual interval between periodic inspections",
  ref: "Guidance Note 3, Table 3.2, as common practice has it",
  edition: "An earlier edition, reprinted; the inspector may shorten it",
  applies: "Choosing the day of the next inspection.",
  units: { of: "", years: "" },
  standing: "quoted",
  // Quoted on these pages:
  // - Treadwell Electrical, recommended frequencies of inspection (reprint of an earlier edition's table)
  quotedOn: 1,
  rows: () => [
    { of: "dwelling", years: 10 },
    { of: "let", years: 5 },
    { of: "outbuilding", years: 10 },
    { of: "shared-house", years: 5 },
    { of: "student", years: 5 },
    { of: "care-home", years: 5 },
    { of: "tall-residential", years: 5 },
    { of: "commercial", years: 5 },
    { of: "industrial", years: 3 },
    { of: "agricultural", years: 3 },
    { of: "caravan", years: 1 },
    { of: "marina", years: 1 },
    { of: "pool", years: 1 },
    { of: "construction", years: 0.25 },
  ],
});

/** Items that are inspected by sight, as a run of the numbers they have in the schedule. */
interface InspectionItemRow {
  readonly items: string;
  readonly seen: string;
}

/**
 * The items of a periodic inspection of a dwelling or the like, up to 100 A. Their numbers are those of the second
 * amendment; what is looked at is in words of our own. No list of the fourth amendment has been seen.
 */
export const inspectionItems = table<InspectionItemRow>({
  id: "inspection-items",
  title: "Items inspected by sight, dwellings and similar up to 100 A",
  ref: "BS 7671:2018+A2:2022, Appendix 6",
  edition: "BS 7671:2018+A2:2022; from 4.11 one higher in 2018",
  applies: "Recording what was inspected by sight in a periodic inspection.",
  units: { items: "", seen: "" },
  standing: "memory",
  rows: () => [
    { items: "1.1", seen: "the distributor's cable, head, earth and tails, by eye" },
    { items: "1.2", seen: "the consumer's isolator at the intake" },
    { items: "1.3", seen: "the consumer's tails" },
    { items: "2", seen: "arrangements for other sources of supply" },
    { items: "3.1..3.2", seen: "the means of earthing: the distributor's, or an electrode" },
    { items: "3.3", seen: "labels at earthing and bonding connections" },
    { items: "3.4..3.5", seen: "the earthing conductor, its size and its state at the main terminal" },
    { items: "3.6..3.8", seen: "main bonding, its sizes and connections, and other bonding" },
    { items: "4.1..4.6", seen: "the consumer unit: access, fixing, enclosure, fire rating, damage, main switch" },
    { items: "4.7..4.8", seen: "main switch, breakers and RCDs operated by hand" },
    { items: "4.9..4.12", seen: "circuits identified, notices and labels" },
    { items: "4.13..4.16", seen: "devices and conductors in the consumer unit, and how cables enter" },
    { items: "4.17..4.20", seen: "RCDs and surge protection, connections tight" },
    { items: "4.21..4.22", seen: "a generator, switched or in parallel" },
    { items: "5.1..5.4", seen: "final circuits: identified, supported, insulated, singles enclosed" },
    { items: "5.5..5.8", seen: "final circuits: capacity, device, fault protection, protective conductors" },
    { items: "5.9..5.11", seen: "final circuits: suited to the place, routed safely, protected where concealed" },
    { items: "5.12", seen: "final circuits: additional protection by RCD" },
    { items: "5.13..5.16", seen: "final circuits: fire barriers, apart from other services" },
    { items: "5.17..5.21", seen: "terminations and accessories, their state, access and switching" },
    { items: "6.1..6.8", seen: "rooms with a bath or shower" },
    { items: "7", seen: "other special locations" },
    { items: "8", seen: "prosumer's installation" },
  ],
});
