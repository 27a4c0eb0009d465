import type { Source, Sourced } from "./source.ts";
import { ruleFrom, sourced } from "./source.ts";

/** What an edition of BS 7671 says where editions differ. Ratings in A, insulation in Ω, dates as ISO. */
export interface Edition {
  /** The number of the standard with its amendments, as a schedule writes it. */
  readonly id: string;
  readonly name: string;
  /** First day on which new work could be certified to it. */
  readonly from: string;
  /** Voltage factor in Zs × Ia ≤ U0 × Cmin. */
  readonly cmin: Sourced<number>;
  /** Largest rating of a final circuit with socket-outlets that must disconnect in the shorter time. */
  readonly socketDisconnectionScope: number;
  /** The same for a final circuit with fixed equipment only; 0 where the edition allowed 5 s to all of them. */
  readonly fixedDisconnectionScope: number;
  /** Socket-outlets up to this rating need 30 mA additional protection; 0 where no general rule stood. */
  readonly socketRcdUpTo: number;
  /** Outside homes such a socket may do without one only by a documented risk assessment; before, by who uses it. */
  readonly socketsByAssessment: boolean;
  readonly lightingRcdInDwellings: boolean;
  /** Consumer units of homes are of non-combustible material: since 2016, by Amendment 3 of the 17th. */
  readonly nonCombustibleUnits: boolean;
  /** Lighting outdoors within the public's reach needs an RCD. */
  readonly publicLightingRcd: boolean;
  /** A cable concealed in a wall needs one even where only skilled people are: no exception since Amendment 3 of the 17th. */
  readonly concealedAlways: boolean;
  /** Type AC only where the load is known to have no d.c. component. */
  readonly typeAcRestricted: boolean;
  /** One a.c. test at IΔn, or the older half, one and five times IΔn. */
  readonly rcdTest: "single" | "half-one-five";
  /** Least insulation resistance of a circuit up to 500 V other than SELV and PELV. */
  readonly insulationMinimum: Sourced<number>;
  /** Whether arc fault detection is unmentioned, recommended, or required in the premises 421.1.7 lists. */
  readonly afdd: "none" | "recommended" | "required-in-listed-premises";
  /** How the need for surge protection is decided. */
  readonly spd: "none" | "risk-assessment" | "consequence";
  /** Whether one-way devices may not serve a circuit fed from both ends (530.3.201). */
  readonly bidirectional: boolean;
  /** Whether a figure is given for what may leak behind an RCD (531.3.2). */
  readonly leakageShare: boolean;
  /** Whether diversity alone no longer counts as overload protection of switches and RCDs (536.4.202). */
  readonly switchOverload: boolean;
  /** Whether further investigation alone makes the outcome of a periodic inspection unsatisfactory, by the practice of its time. */
  readonly investigationFails: boolean;
  readonly inForce: boolean;
  /** Why the edition's own numbers could not be seen. */
  readonly unseen?: string;
  /** What of the edition is not covered here, where it is judged in part. */
  readonly notCovered?: string;
  /** The edition whose numbers stand in for them. */
  readonly takesNumbersFrom?: string;
  /** The source of each rule above that carries none of its own. */
  readonly sources: Readonly<Record<EditionRule, Source>>;
}

type EditionRule =
  | "from"
  | "disconnectionScope"
  | "socketRcd"
  | "lightingRcd"
  | "typeAc"
  | "rcdTest"
  | "afdd"
  | "spd"
  | "bidirectional"
  | "investigation";

const a2 = "BS 7671:2018+A2:2022";
const quoted = (ref: string, note?: string): Source => ruleFrom(ref, "quoted", note);
const memory = (ref: string, note?: string): Source => ruleFrom(ref, "memory", note);
const oneMegohm = 1e6;

const seventeenth: Edition = {
  id: "BS 7671:2008",
  name: "17th Edition",
  from: "2008-07-01",
  cmin: sourced(1, "BS 7671:2008, Tables 41.2 to 41.4", "quoted", "Tables before July 2015 were simply U0/Ia."),
  socketDisconnectionScope: 32,
  fixedDisconnectionScope: 32,
  socketRcdUpTo: 20,
  socketsByAssessment: false,
  lightingRcdInDwellings: false,
  publicLightingRcd: false,
  nonCombustibleUnits: false,
  concealedAlways: false,
  typeAcRestricted: false,
  rcdTest: "half-one-five",
  insulationMinimum: sourced(oneMegohm, "BS 7671:2008, Table 61", "quoted"),
  afdd: "none",
  spd: "risk-assessment",
  bidirectional: false,
  leakageShare: false,
  switchOverload: false,
  investigationFails: true,
  inForce: false,
  sources: {
    from: memory("BS 7671:2008, introduction"),
    disconnectionScope: quoted("BS 7671:2008, 411.3.2.2"),
    socketRcd: quoted("BS 7671:2008, 411.3.3"),
    lightingRcd: quoted("BS 7671:2008, 411.3.3"),
    typeAc: quoted("BS 7671:2008, 531.2"),
    rcdTest: quoted("BS 7671:2008, 612.10"),
    afdd: memory("BS 7671:2008"),
    spd: memory("BS 7671:2008, Section 443"),
    // Named by no regulation before that: whoever is told of it is sent to the page that has it.
    bidirectional: quoted("BS 7671:2018+A2:2022+A3:2024, 530.3.201"),
    investigation: ruleFrom("Common practice before A4:2026, Appendix 6", "practice"),
  },
};

/** The edition before concealed cables, bathrooms and Part 7 came under the rules that are kept here; its Zs are for 240 V. */
export const sixteenthId = "BS 7671:2001";

const sixteenth: Edition = {
  ...seventeenth,
  id: sixteenthId,
  name: "16th Edition",
  from: "2002-01-01",
  notCovered:
    "The 16th Edition is covered in part: its times, loops and insulation are judged, and its numbers, its tables of cable and its special locations are not here. What is cited of those is of later editions.",
  cmin: sourced(1, "BS 7671:2001, Tables 41B1 to 41D", "quoted", "The tables of this edition are for 240 V."),
  // No rating limit: every socket-outlet circuit had 0.4 s and every fixed one 5 s.
  socketDisconnectionScope: Number.POSITIVE_INFINITY,
  fixedDisconnectionScope: 0,
  // Only sockets likely to feed portable equipment outdoors.
  socketRcdUpTo: 0,
  insulationMinimum: sourced(0.5 * oneMegohm, "BS 7671:2001, Table 71A", "quoted"),
  spd: "none",
  sources: {
    ...seventeenth.sources,
    from: memory("BS 7671:2001, introduction"),
    disconnectionScope: memory("BS 7671:2001, 413-02-09 and 413-02-13"),
    socketRcd: memory("BS 7671:2001, 471-16-01"),
    lightingRcd: memory("BS 7671:2001"),
    typeAc: memory("BS 7671:2001"),
    rcdTest: memory("BS 7671:2001, 713-13"),
  },
};

const seventeenthA1: Edition = {
  ...seventeenth,
  id: "BS 7671:2008+A1:2011",
  name: "17th Edition, Amendment 1",
  from: "2012-01-01",
  sources: { ...seventeenth.sources, from: memory("BS 7671:2008+A1:2011, introduction") },
};

const seventeenthA3: Edition = {
  ...seventeenth,
  id: "BS 7671:2008+A3:2015",
  name: "17th Edition, Amendment 3",
  from: "2015-07-01",
  cmin: sourced(0.95, "BS 7671:2008+A3:2015, 411.4.5", "quoted"),
  concealedAlways: true,
  nonCombustibleUnits: true,
  sources: { ...seventeenth.sources, from: quoted("BS 7671:2008+A3:2015, introduction") },
};

const eighteenth: Edition = {
  ...seventeenthA3,
  id: "BS 7671:2018",
  name: "18th Edition",
  from: "2019-01-01",
  cmin: sourced(0.95, "BS 7671:2018, 411.4.4", "quoted"),
  socketDisconnectionScope: 63,
  socketRcdUpTo: 32,
  socketsByAssessment: true,
  lightingRcdInDwellings: true,
  publicLightingRcd: true,
  insulationMinimum: sourced(oneMegohm, "BS 7671:2018, Table 64", "quoted"),
  afdd: "recommended",
  leakageShare: true,
  switchOverload: true,
  sources: {
    ...seventeenth.sources,
    from: memory("BS 7671:2018, introduction"),
    disconnectionScope: quoted("BS 7671:2018, 411.3.2.2"),
    socketRcd: quoted("BS 7671:2018, 411.3.3"),
    lightingRcd: quoted("BS 7671:2018, 411.3.4"),
    typeAc: quoted("BS 7671:2018, 531.3.3"),
    rcdTest: quoted("BS 7671:2018, 643.7 and 643.8"),
    afdd: quoted("BS 7671:2018, 421.1.7"),
    spd: quoted("BS 7671:2018, Section 443"),
  },
};

const eighteenthA1: Edition = {
  ...eighteenth,
  id: "BS 7671:2018+A1:2020",
  name: "18th Edition, Amendment 1",
  from: "2020-02-01",
  sources: { ...eighteenth.sources, from: memory("BS 7671:2018+A1:2020, introduction") },
};

const eighteenthA2: Edition = {
  ...eighteenth,
  id: a2,
  name: "18th Edition, Amendment 2",
  from: "2022-03-28",
  cmin: sourced(0.95, `${a2}, 411.4.4`, "quoted"),
  typeAcRestricted: true,
  rcdTest: "single",
  insulationMinimum: sourced(oneMegohm, `${a2}, Table 64`, "quoted"),
  afdd: "required-in-listed-premises",
  spd: "consequence",
  sources: {
    ...eighteenth.sources,
    from: quoted(a2),
    disconnectionScope: quoted(`${a2}, 411.3.2.2`),
    socketRcd: quoted(`${a2}, 411.3.3`, "Omission only where sockets are for skilled or instructed persons."),
    lightingRcd: quoted(`${a2}, 411.3.4`),
    typeAc: quoted(`${a2}, 531.3.3`),
    rcdTest: quoted(`${a2}, 643.7.1 and 643.8`),
    afdd: quoted(`${a2}, 421.1.7`),
    spd: quoted(`${a2}, 443.4.1`),
  },
};

const eighteenthA3: Edition = {
  ...eighteenthA2,
  id: "BS 7671:2018+A2:2022+A3:2024",
  name: "18th Edition, Amendments 2 and 3",
  from: "2024-07-31",
  bidirectional: true,
  sources: {
    ...eighteenthA2.sources,
    from: quoted("BS 7671:2018+A2:2022+A3:2024"),
    bidirectional: quoted("BS 7671:2018+A2:2022+A3:2024, 530.3.201"),
  },
};

const eighteenthA4: Edition = {
  ...eighteenthA3,
  id: "BS 7671:2018+A4:2026",
  name: "18th Edition, Amendment 4",
  from: "2026-04-15",
  investigationFails: false,
  inForce: true,
  unseen: "No public page prints the numbers of Amendment 4; those of Amendments 2 and 3 stand in for them.",
  takesNumbersFrom: eighteenthA3.id,
  sources: {
    ...eighteenthA3.sources,
    from: quoted("BS 7671:2018+A4:2026"),
    investigation: memory("BS 7671:2018+A4:2026, Appendix 6"),
  },
};

/** Every edition a schedule may be judged to, oldest first. */
export const editions: readonly Edition[] = [
  sixteenth,
  seventeenth,
  seventeenthA1,
  seventeenthA3,
  eighteenth,
  eighteenthA1,
  eighteenthA2,
  eighteenthA3,
  eighteenthA4,
];

/** Shorter or reordered ways of writing an edition, as they are met on schedules. */
const otherNames: Readonly<Record<string, string>> = {
  "BS7671:2018+A3:2024": eighteenthA3.id,
  "BS7671:2018+A2:2022+A3:2024+A4:2026": eighteenthA4.id,
  "BS7671:2018+A1:2020+A2:2022": eighteenthA2.id,
};

/** The edition a text names, whatever its spacing, case and order of amendments; undefined when it names none known. */
export function editionOf(text: string): Edition | undefined {
  const wanted = canonical(text);
  const id = otherNames[wanted];
  return editions.find((edition) => edition.id === id || canonical(edition.id) === wanted);
}

function canonical(text: string): string {
  const [base = "", ...amendments] = text
    .toUpperCase()
    .replace(/\s+/g, "")
    .replace(/,|AMD/g, "+A")
    .replace(/\+A?A/g, "+A")
    .split("+");
  return [base, ...amendments.filter((part) => part !== "").sort()].join("+");
}
