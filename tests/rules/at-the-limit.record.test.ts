/**
 * Days, codes and results of a record, where a check turns. Dates of editions are those of BS 7671; for half a year after
 * one comes out the edition before may still be designed to, and a test of a year before may be what is signed: common
 * practice of `tables/comparison.ts` and `model/inspections.ts`.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const file = (head: string, way: string): string =>
  `wayfile 1\ninstallation "Kiln house" {\n${head}\nboard A "Front board" {\nfed-from supply\nway 1 radial "Oven" {\n${way}\n}\n}\n}\n`;
const inspection = (standard: string, lines: string): string =>
  `wayfile 1\ninstallation "Kiln house" {\nstandard ${standard}\ninspection periodic 2026-03-05 {\n${lines}\n}\n}\n`;
const way = (lines: string): string => `way 1 radial "Oven" {\n${lines}\n}`;
const a2 = "BS 7671:2018+A2:2022";
const a4 = "BS 7671:2018+A2:2022+A3:2024+A4:2026";

const limits: readonly Limit[] = [
  // Amendment 2 came out on 28 March 2022.
  {
    check: "record/tests-before-edition",
    text: file(`standard ${a2}\nwork new`, "live # {\nZs 0.62 Ω\n}"),
    found: { "2022-03-27": ["warning", "The last test is dated 2022-03-27"], "2022-03-28": "" },
  },
  {
    check: "record/tests-before-edition",
    text: file(`standard ${a2}\nwork new`, "dead 2021-03-04 {\nR1+R2 0.20 Ω\n}\nlive # {\nZs 0.62 Ω\n}"),
    found: { "2021-03-27": "warning", "2023-03-05": "" },
  },
  // Amendment 1 of the 18th asks for nothing else, so that it supersedes nothing.
  {
    check: "record/edition-superseded",
    text: file('standard #\nwork new\ndesigned by "K.A." 2022-09-27', ""),
    found: { "BS 7671:2018": "", "BS 7671:2018+A1:2020": "", "BS 7671:2008+A3:2015": "warning" },
  },
  {
    check: "record/edition-superseded",
    text: file("standard BS 7671:2018+A1:2020\n#", ""),
    found: {
      'work new\ndesigned by "K.A." 2022-09-28': [
        "warning",
        "when BS 7671:2018+A2:2022 had superseded BS 7671:2018+A1:2020",
      ],
      'work existing\ndesigned by "K.A." 2022-09-28': "",
    },
  },
  {
    check: "record/edition-superseded",
    text: file("standard BS 7671:2008+A3:2015\nwork new", 'designed by "K.A." #'),
    found: { "2019-06-30": "", "2019-07-01": "warning" },
  },
  {
    check: "record/signed-before-tests",
    text: way('tested by "K.A." 2026-03-04\n#'),
    found: {
      "dead 2026-03-04 {\nR1+R2 0.18 Ω\n}": "",
      "dead 2026-03-05 {\nR1+R2 0.18 Ω\n}": "warning",
      "live 2026-03-05 {\nZs 0.60 Ω\n}": "warning",
      "dead 2026-03-03 {\nR1+R2 0.18 Ω\n}\nlive 2026-03-05 {\nZs 0.60 Ω\n}": "warning",
    },
  },
  // For the whole installation, but for a board that signs by itself.
  {
    check: "record/signed-before-tests",
    text: file('tested by "K.A." 2026-03-04', "dead # {\nR1+R2 0.18 Ω\n}"),
    found: { "2026-03-04": "", "2026-03-05": "warning" },
  },
  {
    check: "record/signed-before-tests",
    text: file('tested by "K.A." 2026-03-04', "dead 2026-03-05 {\nR1+R2 0.18 Ω\n}").replace(
      "fed-from supply",
      "fed-from supply\n#",
    ),
    found: { 'tested by "C.P." 2026-03-05': "", "": "warning" },
  },
  {
    check: "record/signed-out-of-order",
    text: way('designed by "K.A." 2026-02-27\ninstalled by "D.O." #'),
    found: {
      "2026-02-27": "",
      "2026-02-26": ["warning", "Installed on 2026-02-26, but designed on 2026-02-27: which date is right?"],
    },
  },
  {
    check: "record/signed-out-of-order",
    text: way('installed by "D.O." 2026-02-27\ntested by "C.P." #'),
    found: { "2026-02-27": "", "2026-02-26": ["warning", "Tested on 2026-02-26, but installed on 2026-02-27"] },
  },
  {
    check: "record/changed-since-tests",
    text: way('work altered\ninstalled by "D.O." 2026-03-01\ndead # { R1+R2 0.22 Ω }'),
    found: {
      "2026-03-01": "",
      "2026-02-28": ["warning", "altered work of 2026-03-01, and its latest readings are of 2026-02-28"],
    },
  },
  {
    check: "record/changed-since-tests",
    text: way('#\ninstalled by "D.O." 2026-03-01\ndead 2026-02-28 { R1+R2 0.22 Ω }'),
    found: { "work new": "warning", "work existing": "", "": "" },
  },
  ...(
    [
      [
        "dead 2026-03-04 {\nR1+R2 0.18 Ω\n}",
        { design: "information", installed: "information", "dead-tested": "", tested: "" },
      ],
      ["live 2026-03-04 {\nZs 0.60 Ω\n}", { installed: "information", "dead-tested": "information", tested: "" }],
      ["", { design: "", installed: "" }],
    ] as const
  ).map(
    ([tests, found]): Limit => ({
      check: "record/stage-behind",
      text: file(`standard ${a2}\nstage #`, tests),
      found,
    }),
  ),
  // Fields that the schedule declares for itself.
  {
    check: "record/detail-against-field",
    text: `wayfile 1
installation "Kiln house" {
standard ${a2}
field asset in board way required
field phase-label in way one-of "brown" "black" "grey"
board A "Front board" {
detail asset "DB-014"
way 1 radial "Oven" {
#
}
}
}
`,
    found: {
      'detail asset "W1"': "",
      'detail asset "W1"\ndetail phase-label "black"': "",
      'detail asset "W1"\ndetail phase-label "red"': "warning",
      'detail asset "W1"\ndetail phase-labl "black"': ["warning", "did you mean “phase-label”?"],
      'detail asset "W1"\ndetail colour "red"': ["warning", "declares no field “colour” for this place."],
      "": ["warning", "The detail “asset” is not recorded here"],
    },
  },
  // Two tests of one day with one instrument.
  {
    check: "record/tests-contradict",
    text: way("live 2026-03-06 {\nZs 0.43 Ω\n}\nlive #\n}"),
    found: {
      "2026-03-06 {\nZs 0.41 Ω": ["warning", "which stands?"],
      "2026-03-06 {\nZs 0.43 Ω": "",
      "2026-03-07 {\nZs 0.41 Ω": "",
      '2026-03-06 {\nZs LIM "Locked"': "",
      "2026-03-06 {\nat S1 Zs 0.41 Ω": "",
    },
  },
  // Appendix 6: C1 and C2 make the outcome unsatisfactory, C3 does not; FI did by practice before Amendment 4.
  ...(
    [
      ["C1", a2, { satisfactory: "error", unsatisfactory: "", 'satisfactory "Old"': "error" }],
      ["C2", a2, { satisfactory: "error", unsatisfactory: "" }],
      ["C3", a2, { satisfactory: "", unsatisfactory: "error", 'unsatisfactory "Half was not tested"': "" }],
      ["FI", a2, { satisfactory: "warning", unsatisfactory: "", 'satisfactory "Settled on the day"': "" }],
      ["FI", a4, { satisfactory: "", unsatisfactory: "warning" }],
    ] as const
  ).map(
    ([code, standard, found]): Limit => ({
      check: "inspection/outcome-contradicted",
      text: inspection(standard, `observation 1 ${code} "No earth at the hall lights"\noutcome #`),
      found,
    }),
  ),
  {
    check: "inspection/outcome-contradicted",
    text: inspection(a2, "outcome #"),
    found: { satisfactory: "", unsatisfactory: "error" },
  },
  // A line of one item goes before the run that it lies in; a result of 5 is that of 5.8 where nothing nearer is stated.
  {
    check: "inspection/item-disagrees",
    text: inspection(a2, '#\nobservation 1 C2 "No earth at the hall lights" item 5.8'),
    found: {
      "inspected 5.1..5.9 ok": ["error", "Item 5.8 is recorded as ok, and C2 is observed of it"],
      "inspected 5.1..5.9 ok\ninspected 5.8 C2": "",
      "inspected 5.8 C2\ninspected 5.1..5.9 ok": "",
      "inspected 5.1..5.7 ok": "",
      "inspected 5.8 N/A": ["error", "recorded as N/A"],
      'inspected 5.8 LIM "Locked"': "",
      "inspected 5 ok": "error",
      "inspected 5.8 ok": "error",
    },
  },
  {
    check: "inspection/item-disagrees",
    text: inspection(a2, "inspected #"),
    found: {
      "5.8 C2": ["error", "C2 of item 5.8 has no observation"],
      "5.8 ok": "",
      "5.8..5.9 C3": ["error", "C3 of item 5.8, 5.9 has no observation"],
      '5.8 C2\nobservation 1 C3 "No earth at the hall lights" item 5.8': "error",
      '5.8 C2\nobservation 1 C2 "No earth at the hall lights" item 5.8': "",
    },
  },
  // Of old work: a circuit of which everything is a limitation has no result.
  ...(["existing", "new"] as const).map(
    (work): Limit => ({
      check: "inspection/nothing-tested",
      setting: { stage: "tested", work },
      text: way('dead 2026-03-05 {\nR1+R2 LIM "Stock in use"\n}\nlive 2026-03-05 {\nZs #\n}'),
      found: {
        'LIM "No access"': work === "existing" ? "warning" : "",
        "N/A": work === "existing" ? "warning" : "",
        "0.62 Ω": "",
      },
    }),
  ),
  // What is signed today was tested within the year.
  {
    check: "inspection/earlier-tests-signed",
    text: file(`standard ${a2}\nstage tested\nwork existing\ntested by "J.I." 2026-03-05`, "live # {\nZs 0.62 Ω\n}"),
    found: { "2025-03-03": "warning", "2025-03-04": "", "2026-03-05": "" },
  },
];

holdAtLimits(limits);
