import { memory, table } from "./table.ts";

/** A change an amendment brought. */
interface Amendment {
  /** Edition. */
  readonly amendment: string;
  /** Change. */
  readonly topic: string;
  /** Fact. */
  readonly value: string;
  readonly clause: string;
}

export const amendments = table<Amendment>({
  id: "amendments",
  title: "Amendment dates and headline changes (public sources only)",
  ref: "BS 7671:2018 and its amendments",
  edition: "as stated by each page",
  applies: "Which edition governs. A reading compared with the wrong edition is the commonest mistake.",
  units: { amendment: "", topic: "", value: "", clause: "" },
  standing: "quoted",
  rows: () => [
    {
      amendment: "A3:2015 (17th)",
      topic: "Zs tables recalculated with Cmin = 0.95",
      value: "230*0.95 = 218.5 V",
      clause: "411.4 / Tables 41.2-41.6",
    },
    {
      amendment: "18th:2018",
      topic: "0.4 s rule extended to ≤ 63 A final circuits with sockets",
      value: "63 A with sockets, 32 A fixed",
      clause: "411.3.2.2",
    },
    {
      amendment: "18th:2018",
      topic: "30 mA RCD for lighting circuits in dwellings",
      value: "30 mA",
      clause: "411.3.4",
    },
    {
      amendment: "18th:2018",
      topic: "Socket-outlet RCD rule extended from 20 A to 32 A",
      value: "32 A",
      clause: "411.3.3",
    },
    {
      amendment: "18th:2018",
      topic: "Appendix 4 cable tables changed only typographically; Appendix 3 says use maker's data where possible",
      value: "",
      clause: "Appendices 3, 4",
    },
    { amendment: "A2:2022", topic: "In force / blue book withdrawn", value: "28 Mar 2022 / 27 Sep 2022", clause: "" },
    {
      amendment: "A2:2022",
      topic: "RCD type AC only for fixed equipment known to have no d.c. components",
      value: "531.3.3",
      clause: "531.3.3",
    },
    {
      amendment: "A2:2022",
      topic: "Single a.c. RCD test at IΔn whatever the type; 5x and 0.5x no longer required",
      value: "1 x IΔn, a.c.",
      clause: "643.7.1, 643.8",
    },
    {
      amendment: "A2:2022",
      topic: "AFDD required: socket circuits ≤ 32 A single-phase in HRRB, HMO, student accommodation, care homes",
      value: "BS EN 62606",
      clause: "421.1.7",
    },
    {
      amendment: "A2:2022",
      topic: "SPD: risk assessment removed; protection required where consequence is serious",
      value: "443.4.1",
      clause: "443",
    },
    {
      amendment: "A2:2022",
      topic: "Omission of socket RCDs only where used by skilled/instructed persons",
      value: "411.3.3",
      clause: "411.3.3",
    },
    { amendment: "A3:2024", topic: "Published 31 July 2024, free supplement", value: "", clause: "" },
    {
      amendment: "A3:2024",
      topic: "Bidirectional / unidirectional protective device definitions and regulation",
      value: "530.3.201",
      clause: "530.3.201",
    },
    {
      amendment: "A4:2026",
      topic: "Published 15 April 2026; previous edition withdrawn 15 October 2026",
      value: "six months",
      clause: "",
    },
    {
      amendment: "A4:2026",
      topic: "IET article of April 2026 treats A4:2026 as published",
      value: "quoted",
      clause: "",
    },
    {
      amendment: "A4:2026",
      topic: "Section 710 schedule for recording supplementary-bonding test results",
      value: "Section 710",
      clause: "Section 710",
    },
    {
      amendment: "A4:2026",
      topic: "A free domestic pocket guide to the changes exists (electrical-safety charity)",
      value: "guide",
      clause: "",
    },
    {
      amendment: "A4:2026",
      topic: "New chapter on stationary secondary batteries",
      value: "Chapter 57",
      clause: "Chapter 57",
    },
    {
      amendment: "A4:2026",
      topic: "Power over Ethernet section, functional earthing for ICT, revised Section 710",
      value: "new sections",
      clause: "",
    },
    { amendment: "A4:2026", topic: "Periodic inspection is in scope of the amendment", value: "EICR", clause: "" },
    memory({
      amendment: "A4:2026",
      topic: "Further public detail beyond headlines",
      value: "not established",
      clause: "",
    }),
  ],
  notes: [
    "One training page calls the battery chapter 702, which is swimming pools; 57 is the number given elsewhere.",
    "A draft of Amendment 2 required arc fault detection in every socket circuit; the rule adopted names the premises.",
  ],
  // Quoted on these pages:
  // - ElectriciansForums post reproducing IET Wiring Matters 54 (2015): reduction in maximum Zs, Cmin 0.95, ESQCR +10/-6 %
  // - Electrical Academy: 17th Edition Amendment 3 changes
  // - Schneider Electric FAQ FA175048: Zs values and Cmin
  // - NICEIC: 18th Edition, changes to Part 4 (411.3.2.2, 411.3.3, 411.3.4)
  // - IET EngX: On-Site Guide disconnection times (411.3.2.2)
  // - Training blog: RCD protection in domestic installations
  // - Reference site: 18th Edition appendix changes (Appendix 4 tables unchanged in substance)
  // - ECA: top 10 changes to BS 7671:2018+A2:2022 (seen through a proxy copy)
  // - IET Wiring Matters, July 2022: changes to RCD testing in A2:2022
  // - Trainer blog: 531.3.3 RCD types and A2:2022 test change
  // - IET EngX: RCD testing in A2:2022 (643.7.1, 643.8)
  // - Landlord association: A2:2022 Regulation 421.1.7 AFDD premises list
  // - Landlord association: AFDD update (HMOs)
  // - UK Electrical Forum thread: AFDDs now required in HMOs
  // - Inspection firm article: SPD and AFDD changes in A2:2022
  // - Trade directory article: Section 443 changes in A2:2022
  // - British General: A3:2024 bidirectional/unidirectional devices
  // - Scolmore: bidirectional and unidirectional devices, 530.3.201
  // - Training centre: Amendment 3
  // - Testing contractor: Amendment 4, EICRs and testing
  // - Testing contractor: A4:2026 explained
  // - Documentation distributor: Amendment 4 FAQ
  // - Compliance contractor: Amendment 4 dates
  // - Wholesaler blog: Amendment 4 explained (Chapter 57)
  // - IET Wiring Matters, April 2026: Mythbuster 13
  // - Electrical Safety First: Amendment 4 pocket guide (landing page)
  // - Training centre: Amendment 4 overview
  quotedOn: 27,
});
