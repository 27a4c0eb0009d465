import { memory, quoted, type Row, table } from "./table.ts";

/** Where what an 18th Edition number says stood in the 17th Edition, as it was issued and by its first and third amendments. */
export interface Citation {
  /** In BS 7671:2018+A2:2022. */
  readonly present: string;
  readonly first: string;
  readonly a1: string;
  readonly a3: string;
}

/** Nothing stood there yet. */
const none = "";

const alike = (...numbers: readonly string[]): Row<Citation>[] =>
  numbers.map((present) => memory({ present, first: present, a1: present, a3: present }));
/** The same, where public pages give the number. */
const seen = (present: string, first: string, a1 = first, a3 = present): Row<Citation> =>
  quoted({ present, first, a1, a3 });
const moved = (present: string, first: string, a1 = first, a3 = present): Row<Citation> =>
  memory({ present, first, a1, a3 });

export const citations = table<Citation>({
  id: "citations",
  title: "Numbers of regulations and tables by edition",
  ref: "BS 7671:2008, numbers of regulations and tables",
  edition: "17th Edition",
  applies: "Where a schedule is judged to an earlier edition, its sources are cited as that edition numbers them.",
  units: { present: "", first: "", a1: "", a3: "" },
  standing: "memory",
  rows: () => [
    ...alike("41.1", "41.2", "41.3", "41.4", "41.5", "43.1", "52.2", "52.3"),
    ...alike("54.1", "54.2", "54.3", "54.4", "54.5", "54.6", "54.7", "54.8"),
    ...alike("4B1", "4B2", "4C1", "4C2", "4C3", "4D1A", "4D1B", "4D2A", "4D2B", "4D4A", "4D4B", "4D5"),
    ...alike("4E1A", "4E1B", "4E2A", "4E2B", "4E4A", "4E4B", "4F3A", "4F3B", "Appendix 4"),
    ...alike("411.3.2", "411.3.2.2", "411.3.2.3", "411.3.2.4", "411.3.3", "411.5.2", "411.5.3", "415.1.1", "415.2.2"),
    ...alike("433.1", "433.1.1", "434.1", "434.5.1", "434.5.2", "435.1", "512.1.5", "528.1", "552.1.2"),
    ...alike("543.1.1", "543.1.3", "543.1.4", "544.1.1", "544.2", "560.7.1", "422.3.9"),
    ...alike("701.410.3.5", "701.411.3.3", "701.415.2", "701.512.2", "701.55", "702.410.3.4.1", "702.415.2"),
    ...alike("704.411.3.1", "705.415.2.1", "708.411.4", "709.411.4"),
    moved("411.4.4", "411.4.5", "411.4.5", "411.4.5"),
    moved("411.4.5", "411.4.4", "411.4.4", "411.4.4"),
    moved("433.1.202", "433.1.3", "433.1.101"),
    moved("433.1.203", "433.1.4", "433.1.102"),
    moved("433.1.204", "433.1.5", "433.1.103"),
    quoted(
      { present: "522.6.202", first: "522.6.7", a1: "522.6.102", a3: "522.6.202" },
      { first: "memory", a3: "memory" },
      "The number of Amendment 1 was seen; those before and after it were not.",
    ),
    quoted(
      { present: "522.6.203", first: "522.6.8", a1: "522.6.103", a3: "522.6.203" },
      { a3: "memory" },
      "The number of Amendment 3 was not seen.",
    ),
    moved("523.9", "523.7", "523.9"),
    moved("543.7.1.203", "543.7.1.3", "543.7.1.103"),
    moved("421.1.201", none, none),
    moved("722.411.4.1", none, none),
    moved("Appendix 4, section 6.4", "Appendix 12", "Appendix 4, section 6.4"),
    moved("Appendix 4, section 6.1", none, "Appendix 4, section 6.1"),
    moved("Appendix 4, section 6.2", none, "Appendix 4, section 6.2"),
    moved("Appendix 4, section 5.5, Table 4Aa", none, "Appendix 4, section 5.5, Table 4Aa"),
    moved("64", "61", "61", "61"),
    seen("643.2.1", "612.2.1", "612.2.1", "612.2.1"),
    moved("643.3.2", "612.3.2", "612.3.2", "612.3.2"),
    moved("643.3.3", "612.3.3", "612.3.3", "612.3.3"),
    seen("643.7", "612.9", "612.9", "612.9"),
    moved("643.7.1", "612.10", "612.10", "612.10"),
    seen("643.7.3.201", "612.11", "612.11", "612.11"),
    seen("643.8", "612.10", "612.10", "612.10"),
  ],
  notes: [
    "Figures of these tables are the same in both editions, as far as any was seen; what differs has rows of its own.",
  ],
  // Quoted on these pages:
  // - Part 6 and Part 7 of BS 7671:2008, a copy on a document site: the list of contents of Chapter 61
  // - Forum thread on an inspection and testing examination, electriciansforums.net: 612.9
  // - New or rewired domestic and similar installations, Electrical Safety Council: 522.6.101 to 522.6.103
  // - Forum for installations that are new or rewired, Electrical Safety Council: 522.6.6 and 522.6.8
  quotedOn: 4,
});

/** What came into the 18th Edition by its amendments, with the first that has it. */
export const cameLater: Readonly<Record<string, "BS 7671:2018+A1:2020" | "BS 7671:2018+A2:2022">> = {
  "722.531.3.101": "BS 7671:2018+A1:2020",
  "443.4.1": "BS 7671:2018+A2:2022",
  "826.1.1.2.1": "BS 7671:2018+A2:2022",
};
