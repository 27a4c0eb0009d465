/**
 * Earthing and bonding conductors at their limits: Tables 54.1, 54.7 and 54.8 and section 544 of BS 7671 by size, the
 * resistances of BS EN 60228 (1.83 mΩ/m of 10 mm², 1.15 of 16 mm²), and common practice for what clamps may add.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const supply = (lines: string): string =>
  `wayfile 1\ninstallation "Sample" {\n  standard BS 7671:2018+A2:2022\n  stage tested\n  work new\n  supply {\n${lines}\n  }\n  board A "Board" {\n    fed-from supply\n  }\n}\n`;
const tails = (size: number): string => supply(`earthing TN-S\ntails ${size} mm²\nearthing-conductor #`);
const bathroom = (lines: string): string => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
  }
  board A "Board" {
    fed-from supply
    supplementary-bonding bathroom #
    way 1 radial "Shower" {
${lines}
      place bathroom
    }
  }
}
`;

const tooSmall: readonly Limit[] = (
  [
    // Table 54.7: S to 16 mm², 16 mm² to 35 mm², half of S above, at the next size that is made.
    [10, { "6 mm²": "warning", "10 mm²": "" }],
    [16, { "10 mm²": "warning", "16 mm²": "" }],
    [25, { "10 mm²": "warning", "16 mm²": "" }],
    [35, { "10 mm²": "warning", "16 mm²": "" }],
    [50, { "16 mm²": "warning", "25 mm²": "" }],
    [70, { "25 mm²": "warning", "35 mm²": "" }],
    [95, { "35 mm²": "warning", "50 mm²": "" }],
    // Of another metal k1/k2 times as much: k is 115 of a copper line to 300 mm² and 103 above, 95 of aluminium and 52 of steel.
    [25, { "35 mm² steel": "warning", "36 mm² steel": "", "16 mm² aluminium": "warning", "25 mm² aluminium": "" }],
    [400, { "396 mm² steel": "warning", "397 mm² steel": "" }],
  ] as const
).map(([size, found]) => ({ check: "protective/earthing-conductor-too-small", text: tails(size), found }));

const limits: readonly Limit[] = [
  ...tooSmall,
  // Table 54.1. An electrode is earthed through so much that Table 54.7 would ask too much: not in TT.
  {
    check: "protective/earthing-conductor-too-small",
    text: supply("earthing TT\ntails 25 mm²\nearthing-conductor #"),
    found: {
      "2.5 mm²": "",
      "16 mm² buried": "warning",
      "25 mm² buried": "",
      "10 mm² buried protected corrosion": "warning",
      "16 mm² buried protected corrosion": "",
      "16 mm² buried protected damage": "warning",
      "25 mm² buried protected damage": "",
      "2.5 mm² buried protected both": "",
      "49 mm² steel buried": "warning",
      "50 mm² steel buried": "",
      "15 mm² steel buried protected corrosion": "warning",
      "16 mm² steel buried protected corrosion": "",
    },
  },
  // A fuse to BS 88-3 of 63 A, 0.68 Ω at 5 s, opens in that time at 218.5 V / 0.68 Ω = 321 A: √(321² × 5) / 143 is 5.02 mm²,
  // and a greater current lets no more through it. Where that much is shown, the table's 16 mm² is not required.
  ...(
    [
      ["0.33 kA", "63 A", { "5 mm²": "warning", "5.1 mm²": "" }],
      ["2 kA", "63 A", { "5 mm²": "warning", "5.1 mm²": "" }],
      ["0.32 kA", "63 A", { "10 mm²": "warning", "16 mm²": "" }],
      // Of 100 A 0.38 Ω: 575 A and 8.99 mm².
      ["0.95 kA", "100 A", { "8.9 mm²": "warning", "9 mm²": "" }],
      // Of 32 A two times are known, 5 s at 137 A and 0.4 s at 240 A: at 200 A 0.91 s between them, √(200² × 0.91) / 143 is 1.33 mm².
      [
        "0.2 kA",
        "32 A",
        {
          "1.3 mm²": ["error", "an earth fault at the origin, until the cut-out opens, needs 1.33 mm²"],
          "1.4 mm²": "",
        },
      ],
    ] as const
  ).map(
    ([PEFC, rating, found]): Limit => ({
      check: "protective/earthing-conductor-too-small",
      text: supply(`earthing TN-S\nPEFC ${PEFC}\ncutout BS 88-3 ${rating}\ntails 25 mm²\nearthing-conductor #`),
      found,
    }),
  ),
  // Of Ze it is calculated: 230 V / 0.70 Ω is 329 A, / 0.72 Ω 319 A.
  {
    check: "protective/earthing-conductor-too-small",
    text: supply("earthing TN-S\n#\ncutout BS 88-3 63 A\ntails 25 mm²\nearthing-conductor 6 mm²"),
    found: { "Ze 0.70 Ω": "", "Ze 0.72 Ω": "warning", "Ze <0.70 Ω": "warning", "": "warning" },
  },
  // 542.3.1: with PME no smaller than the main bonding of Table 54.8, though the heat is borne.
  {
    check: "protective/earthing-conductor-too-small",
    text: supply("earthing TN-C-S\nPEFC 0.95 kA\ncutout BS 88-3 63 A\ntails # mm²\nearthing-conductor 10 mm²"),
    found: {
      // What a distributor usually requires is said as information.
      "35": "information",
      "50": ["error", "no smaller than the main bonding, 16 mm²; this is 10 mm²"],
    },
  },
  // Table 54.8, by the neutral of the supply.
  ...(
    [
      [25, "6", "10"],
      [35, "6", "10"],
      [50, "10", "16"],
      [70, "16", "25"],
      [95, "16", "25"],
      [120, "25", "35"],
      [150, "25", "35"],
      [185, "35", "50"],
    ] as const
  ).map(
    ([size, less, enough]): Limit => ({
      check: "protective/bonding-too-small",
      text: supply(`earthing TN-C-S\ntails ${size} mm²\nbonding # mm²`),
      found: { [`water ${less}`]: "error", [`gas ${enough}`]: "", [`lightning ${less}`]: "" },
    }),
  ),
  // Without its tails the least of the table.
  {
    check: "protective/bonding-too-small",
    text: supply("earthing TN-C-S\nbonding water # mm²"),
    found: { "6": "error", "10": "" },
  },
  // 544.1.1: half the earthing conductor, 6 mm² at least and no more than 25 mm².
  ...(["TN-S", "TT"] as const).flatMap((earthing) =>
    (
      [
        [6, "4", "6"],
        [10, "4", "6"],
        [16, "6", "10"],
        [25, "10", "16"],
        [50, "16", "25"],
        [95, "16", "25"],
      ] as const
    ).map(
      ([size, less, enough]): Limit => ({
        check: "protective/bonding-too-small",
        text: supply(`earthing ${earthing}\nearthing-conductor ${size} mm²\nbonding water # mm²`),
        found: { [less]: "error", [enough]: "" },
      }),
    ),
  ),
  // Aluminium that conducts as well as 10 mm² of copper, 1.83 mΩ/m: 16 mm² has 1.91, 25 mm² 1.20.
  {
    check: "protective/bonding-too-small",
    text: supply("earthing TN-C-S\ntails 25 mm²\nbonding water # mm² aluminium"),
    found: { "16": ["error", "is 16 mm² of aluminium; this supply requires 25 mm² of aluminium"], "25": "" },
  },
  // Half is taken of an earthing conductor of copper alone; but 6 mm² are the least whatever it is, stated or not (544.1.1).
  ...["earthing TN-S\nearthing-conductor 50 mm² steel", "earthing TN-S", "earthing-conductor 16 mm²", "U0 230 V"].map(
    (lines): Limit => ({
      check: "protective/bonding-too-small",
      text: supply(`${lines}\nbonding water # mm²`),
      found: { "4": ["error", "is 4 mm²; this supply requires 6 mm²"], "6": "" },
    }),
  ),
  {
    check: "protective/bonding-too-small",
    text: supply("#\nbonding water 4 mm²"),
    found: { "earthing IT\nearthing-conductor 16 mm²": "" },
  },
  // 20 m of 10 mm² is 0.037 Ω, and clamps add 0.05 Ω; 60 m is 0.110 Ω, and half as much again counts.
  {
    check: "protective/bonding-reads-high",
    text: supply("earthing TN-S\nbonding water 10 mm² #"),
    found: {
      "length 20 m continuity 0.08 Ω": "",
      "length 20 m continuity 0.09 Ω": ["warning", "20 m of this size should read about 0.037 Ω"],
      "length 20 m continuity >0.05 Ω": "",
      "length 60 m continuity 0.16 Ω": "",
      "length 60 m continuity 0.17 Ω": "warning",
      // Unknown, it is as long as its reading: 100 m, 0.183 Ω, is too much.
      "continuity 0.18 Ω": "",
      "continuity 0.19 Ω": ["warning", "reads 0.19 Ω, as 104 m of this size would"],
    },
  },
  {
    check: "protective/bonding-reads-high",
    text: supply("earthing TN-S\nbonding water #"),
    found: { "16 mm² aluminium continuity 0.19 Ω": "", "16 mm² aluminium continuity 0.20 Ω": "warning" },
  },
  // As much of the earthing conductor; of steel its resistance is not kept.
  {
    check: "protective/earthing-reads-high",
    text: supply("earthing TN-S\nearthing-conductor # Ω"),
    found: {
      "16 mm² continuity 0.11": "",
      "16 mm² continuity 0.12": ["warning", "reads 0.12 Ω, as 104 m of this size would"],
      "16 mm² continuity >0.12": "",
      "50 mm² steel continuity 0.40": "",
    },
  },
  // Section 544.2: 4 mm², 2.5 mm² with protection, and half the protective conductor that it joins.
  {
    check: "protective/supplementary-too-small",
    text: bathroom("device BS EN 61009 B40 6 kA 30 mA type A\ncable flat-twin line 10 mm² cpc 4 mm²"),
    found: {
      "2.5 mm²": ["error", "without mechanical protection it must be 4 mm²: write protected if it is"],
      "2.4 mm²": ["error", "without mechanical protection it must be 4 mm²."],
      "4 mm²": "",
      "2.5 mm² protected": "",
      "2.4 mm² protected": "error",
    },
  },
  {
    check: "protective/supplementary-too-small",
    text: bathroom("device BS EN 61009 B40 6 kA 30 mA type A\ncable singles line 10 mm² cpc 10 mm²"),
    found: {
      "4 mm²": ["warning", "it must be half of that, 6 mm²"],
      "4 mm² protected": ["warning", "it must be half of that, 6 mm²"],
      "6 mm²": "",
    },
  },
  {
    check: "protective/supplementary-too-small",
    text: bathroom("device BS EN 61009 B40 6 kA 30 mA type A\ncable singles line 10 mm² cpc 6 mm²"),
    found: { "4 mm²": "", "4 mm² protected": "", "2.5 mm² protected": ["warning", "it must be half of that, 4 mm²"] },
  },
  // 415.2.2: 50 V over what opens the device, 30 mA of an RCD; else its current at 5 s, 5 × In of type B (Appendix 3): 200 A. The
  // time is known by heart only, to a tenth.
  {
    check: "protective/supplementary-reads-high",
    text: bathroom("device BS EN 61009 B40 6 kA 30 mA type A"),
    found: {
      "4 mm² continuity 1666 Ω": "",
      "4 mm² continuity 1667 Ω": ["error", "for the RCD of way 1"],
      "4 mm² continuity >1667 Ω": "error",
      "4 mm² continuity <1700 Ω": "",
    },
  },
  {
    check: "protective/supplementary-reads-high",
    text: bathroom("device BS EN 60898 B40 6 kA"),
    found: {
      "4 mm² continuity 0.25 Ω": "",
      "4 mm² continuity 0.26 Ω": "warning",
      "4 mm² continuity 0.28 Ω": ["error", "above 0.25 Ω for the B40 BS EN 60898 of way 1"],
    },
  },
];

holdAtLimits(limits);
