/**
 * Loops, fault currents and trip times at their limits. What a distributor declares is 0.35 Ω with PME, 0.80 Ω with a
 * separate earth; loops of devices are Table 41.3 of BS 7671; how far two readings may be apart is common practice of
 * `tables/practice.ts`.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const installation = (supply: string, board = ""): string =>
  `wayfile 1\ninstallation "Sample" {\nstandard BS 7671:2018+A2:2022\nstage tested\nsupply {\n${supply}\n}\nboard A "Board" {\nfed-from supply\n${board}\n}\n}\n`;
/** A board behind another: what is read at the end of its feeder, and at it. */
const behind = (origin: string, feeder: string, board: string, way = ""): string =>
  `wayfile 1\ninstallation "Sample" {\nstandard BS 7671:2018+A2:2022\nstage tested\nsupply {\n${origin}\n}\nboard A "Main" {\nfed-from supply\nway 1 feeder "Annexe" {\nfeeds B\n${feeder}\n}\n}\nboard B "Annexe" {\nfed-from A\n${board}\n${way}\n}\n}\n`;
const tested = { stage: "tested" } as const;
const live = (device: string, lines: string): string =>
  `way 1 radial "Heater" {\n${device}\nlive 2026-03-05 {\n${lines}\n}\n}`;

const limits: readonly Limit[] = [
  {
    check: "loop/ze-above-declared",
    text: installation("earthing #"),
    found: {
      "TN-C-S\nZe 0.35 Ω": "",
      "TN-C-S\nZe 0.36 Ω": ["warning", "above the 0.35 Ω distributors declare for TN-C-S: is it TN-S?"],
      "TN-C-S\nZe 0.80 Ω": ["warning", "is it TN-S?"],
      "TN-C-S\nZe 0.81 Ω": ["warning", "is it TT?"],
      "TN-S\nZe 0.80 Ω": "",
      "TN-S\nZe 0.81 Ω": ["warning", "is it TT?"],
      "TN-S\nZe <0.80 Ω": "",
      "TN-S\nZe <0.90 Ω": [
        "warning",
        "does not prove that the loop of the supply is within the 0.80 Ω declared for TN-S",
      ],
      "TN-S\nZe >0.70 Ω": ["warning", "read it on a higher range"],
      // What a source of one's own has nobody declares.
      "TN-S\nsource private\nZe <0.90 Ω": "",
      "TN-S\nsource private\nZe >0.70 Ω": "",
      "TN-S\nsource private\nZe >9.99 Ω": "error",
      "TN-S\nZe >9.99 Ω": ["error", "the supply has no earth"],
      "TT\nZe 60 Ω": "",
    },
  },
  // No single-phase supply has less than 0.05 Ω, and no electrode as little as a metallic earth.
  {
    check: "loop/ze-too-low",
    text: installation("earthing #"),
    found: {
      "TN-S\nZe 0.05 Ω": "",
      "TN-S\nZe 0.04 Ω": "warning",
      "TN-S\nphases three\nZe 0.04 Ω": "",
      "TN-S\nZe <0.04 Ω": ["warning", "Ze <0.04 Ω"],
      "TN-S\nZe >0.04 Ω": "",
      "TT\nZe 0.80 Ω": "warning",
      "TT\nZe 0.81 Ω": "",
    },
  },
  {
    check: "loop/ze-textbook",
    text: installation("earthing #"),
    found: {
      "TN-C-S\nZe 0.35 Ω": "warning",
      "TN-C-S\nZe 0.34 Ω": "",
      "TN-C-S\nZe 0.35 Ω declared": "",
      "TN-S\nZe 0.80 Ω": "warning",
      "TN-S\nZe 0.35 Ω": "",
      "TT\nZe 21 Ω": "warning",
    },
  },
  // 0.30 Ω at the main board: 0.02 Ω of the meter. Of the feeder 0.60 Ω: a fifth either way.
  {
    check: "loop/board-below-upstream",
    text: behind("earthing TN-S\nZe 0.30 Ω", "", "Zdb # Ω"),
    found: { "0.28": "", "0.27": "warning" },
  },
  {
    check: "loop/board-below-upstream",
    text: behind("earthing TN-S\nZe 0.30 Ω #", "", "Zdb 0.20 Ω"),
    found: { "": "warning", declared: "" },
  },
  {
    check: "loop/board-below-upstream",
    text: behind("earthing TN-S\nZe 0.30 Ω", "#", "Zdb 0.20 Ω"),
    found: { "": "warning", 'parallel-path "Steel frame"': "" },
  },
  {
    check: "loop/board-below-upstream",
    text: installation("earthing TN-S\nZe 0.30 Ω", "Zdb # Ω"),
    found: { "0.28": "", "0.27": "information" },
  },
  // 0.80 Ω is the most that is declared for TN-S: an electrode as good as that is no contradiction.
  {
    check: "loop/low-for-tt",
    text: installation("earthing TT\nelectrode rod # Ω", 'way 1 radial "Oven" {\nlive 2026-03-05 {\nZs 0.62 Ω\n}\n}'),
    found: { "0.80": "", "0.81": "information" },
  },
  {
    check: "loop/board-disagrees",
    text: behind("earthing TN-S\nZe 0.20 Ω", "live 2026-03-05 {\nZs 0.60 Ω\n}", "Zdb # Ω"),
    found: {
      "0.72": "",
      "0.73": ["warning", "Zdb 0.73 Ω is above the 0.60 Ω read at the end of its feeder"],
      "0.48": "",
      "0.47": ["warning", "Zdb 0.47 Ω is below the 0.60 Ω read at the end of its feeder"],
      // What is below the loop upstream as well is reported as that.
      "0.17": "",
    },
  },
  {
    check: "loop/board-disagrees",
    text: behind("earthing TN-S\nZe 0.20 Ω", "#\nlive 2026-03-05 {\nZs 0.60 Ω\n}", "Zdb 0.40 Ω"),
    found: { "": "warning", 'parallel-path "Steel frame"': "" },
  },
  // Where Zs is what the feeder reads with R1+R2, the board's own reading is asked about and not each of its circuits.
  {
    check: "loop/zs-disagrees",
    text: behind(
      "earthing TN-S\nZe 0.20 Ω",
      "live 2026-03-05 {\nZs 0.60 Ω\n}",
      "Zdb 0.30 Ω",
      'way 1 radial "Heater" {\ndead 2026-03-04 {\nR1+R2 0.40 Ω\n}\nlive 2026-03-05 {\nZs # Ω\n}\n}',
    ),
    found: { "1.00": "", "1.14": "", "1.15": "warning" },
  },
  // Of a small loop 0.1 Ω; without a reading of the feeder, what the board above and its R1+R2 come to.
  {
    check: "loop/board-disagrees",
    text: behind("earthing TN-S\nZe 0.20 Ω", "live 2026-03-05 {\nZs 0.30 Ω\n}", "Zdb # Ω"),
    found: { "0.40": "", "0.41": "warning" },
  },
  {
    check: "loop/board-disagrees",
    text: behind("earthing TN-S\nZe 0.20 Ω", "dead 2026-03-04 {\nR1+R2 0.40 Ω\n}", "Zdb # Ω"),
    found: { "0.72": "", "0.73": ["warning", "0.60 Ω its feeder should give"] },
  },
  ...(
    [
      ["TN-S", { ">0.80 Ω": "error", ">0.79 Ω": "warning", "0.90 Ω": "", "<0.90 Ω": "warning", "<0.79 Ω": "" }],
      ["TT", { ">1999 Ω": "warning" }],
    ] as const
  ).map(
    ([earthing, found]): Limit => ({
      check: "loop/board-off-scale",
      text: installation(`earthing ${earthing}`, "Zdb #"),
      found,
    }),
  ),
  // Table 41.3: 1.37 Ω of B32, and 0.80 Ω on the record; a reading beyond both is another check's.
  {
    check: "loop/zs-over-written-limit",
    setting: tested,
    text: live("device BS EN 60898 B32 6 kA\nmax-Zs 0.80 Ω", "Zs # Ω"),
    found: {
      "0.80": "",
      "0.81": ["warning", "above the max-Zs of 0.80 Ω on the record, though within the 1.37 Ω of the standard"],
      "1.36": "warning",
      "1.38": "",
      ">0.80": "warning",
      ">0.79": "",
      "<0.90": "",
    },
  },
  {
    check: "loop/zs-over-written-limit",
    setting: tested,
    text: live("max-Zs 0.80 Ω", "Zs # Ω"),
    found: { "0.80": "", "0.81": "error" },
  },
  // 411.3.2: 0.4 s of a final circuit to 63 A with sockets, 5 s of a distribution circuit; in TT 0.2 s and 1 s.
  ...(
    [
      ["TN-S", "radial", "0.4", "0.41"],
      ["TN-S", "feeder", "5", "5.1"],
      ["TT", "radial", "0.2", "0.21"],
      ["TT", "feeder", "1", "1.1"],
    ] as const
  ).map(
    ([earthing, kind, most, more]): Limit => ({
      check: "loop/disconnection-too-long",
      setting: { supply: `earthing ${earthing}` },
      text: `way 1 ${kind} "Circuit" {\ndevice BS EN 60898 B32 6 kA\nserves sockets\ndisconnect # s\n}`.replace(
        kind === "feeder" ? "serves sockets\n" : "-",
        "",
      ),
      found: { [most]: "", [more]: "error" },
    }),
  ),
  // A tenth more than upstream; where loops are small 0.02 Ω or half as much again: 230 V / 1 kA is 0.23 Ω, / 5 kA 0.046 Ω.
  {
    check: "fault/rises-downstream",
    text: installation("earthing TN-S\nIpf 1.00 kA", "Ipf # kA"),
    found: { "1.10": "", "1.11": ["warning", "Ipf 1.11 kA at this board is above the 1 kA upstream"], "0.50": "" },
  },
  {
    check: "fault/rises-downstream",
    text: installation("earthing TN-S\nIpf 5.00 kA", "Ipf # kA"),
    found: { "7.50": "", "7.51": "warning" },
  },
  {
    check: "fault/rises-downstream",
    text: installation(
      "earthing TN-S\nIpf 1.00 kA",
      'Ipf 0.50 kA\nway 1 radial "Heater" {\nlive 2026-03-05 {\nIpf # kA\n}\n}',
    ),
    found: { "0.55": "", "0.56": ["warning", "Ipf 0.56 kA on way 1 is above the 0.5 kA upstream"] },
  },
  {
    check: "fault/larger-not-recorded",
    text: installation("earthing TN-S\nIpf 1.00 kA\n#"),
    found: {
      "PEFC 1.00 kA": "",
      "PEFC 1.01 kA": ["warning", "Ipf is recorded as 1 kA, but PEFC is 1.01 kA"],
      "PEFC 1.01 kA\nPSCC 1.20 kA": ["warning", "but PSCC is 1.2 kA"],
      "PEFC 1.20 kA\nPSCC 1.01 kA": ["warning", "but PEFC is 1.2 kA"],
    },
  },
  // 230 V / 0.31 Ω is 741.9 A: to hundredths of a kiloampere that is no chance, to tenths it may be.
  {
    check: "fault/short-circuit-from-loop",
    text: installation("earthing TN-S\nZe 0.31 Ω\nPSCC #"),
    found: {
      "742 A": "information",
      "741 A": "",
      "0.742 kA": "information",
      "0.74 kA": "information",
      "0.7 kA": "",
      "742 A calculated": "",
    },
  },
  {
    check: "fault/short-circuit-from-loop",
    text: installation("earthing TN-S\nZe 0.20 Ω\nPSCC #"),
    found: { "1.15 kA": "information", "1.2 kA": "" },
  },
  // 0.30 Ω with 0.02 Ω of the meter: four fifths of 719 A are 575 A, two and a half times 821 A 2054 A.
  {
    check: "fault/disagrees-with-loop",
    text: installation("earthing TN-S\nZe 0.30 Ω\nPEFC # kA"),
    found: {
      "0.575": "",
      "0.574": ["warning", "was it read further out, or A for kA?"],
      "2.05": "",
      "2.06": ["warning", "check the decimal point."],
      "<0.575": "",
      "<0.574": "warning",
    },
  },
  // Where the neutral has a way of its own, more may flow through it; with PME both are one.
  {
    check: "fault/disagrees-with-loop",
    text: installation("earthing #"),
    found: {
      "TN-S\nZe 0.30 Ω\nIpf 2.06 kA": "",
      "TN-C-S\nZe 0.30 Ω\nIpf 2.06 kA": "warning",
      "TN-C-S\nZe 0.30 Ω declared\nIpf 2.06 kA": "",
      "TN-C-S\nZe 0.30 Ω\nIpf 2.06 kA calculated": "",
      "TN-C-S\nphases three\nZe 0.30 Ω\nIpf 4.10 kA": "",
      "TN-C-S\nphases three\nZe 0.30 Ω\nIpf 4.11 kA": "warning",
      "TT\nZe 60 Ω\nIpf 1 kA": "",
    },
  },
  // Between lines at least √3 times, and 1.6 with the tolerance of meters: of 230 V / 0.22 Ω 1673 A.
  {
    check: "fault/one-phase-figure",
    text: installation("earthing TN-S\nphases three\nZe 0.20 Ω\n#"),
    found: {
      "Ipf 1.68 kA": "",
      "Ipf 1.67 kA": "warning",
      "PSCC 1.10 kA\nIpf 1.76 kA": "",
      "PSCC 1.10 kA\nIpf 1.75 kA": "warning",
      // One that is no less than Ipf, or less than the loop gives, is no figure of one phase.
      "PSCC 1.75 kA\nIpf 1.75 kA": "",
      "PSCC 1.00 kA\nIpf 1.70 kA": "",
    },
  },
  // Three times the one downstream, and delayed.
  ...(
    [
      ["90 mA type A delayed", ""],
      ["89 mA type A delayed", ["information", "may trip together: upstream, fit a delayed one of at least 100 mA."]],
      ["30 mA type A delayed", ["information", "upstream trip together"]],
      ["300 mA type A", ["information", "upstream trip together"]],
    ] as const
  ).map(
    ([rcd, found]): Limit => ({
      check: "rcd/no-selectivity",
      text: `way 1 radial "Sockets" {\ndevice BS EN 61009 B20 6 kA 30 mA type A\nbehind main\n}`,
      setting: { board: `fed-from supply\nrcd main BS EN 61008 100 A ${rcd}` },
      found: { [rcd]: found },
    }),
  ),
  // Five times its rating opens it quicker than once.
  {
    check: "rcd/time-columns-swapped",
    setting: tested,
    text: live("device BS EN 61009 B20 6 kA 30 mA type A", "rcd 30 mA 1x 20 ms\nrcd 30 mA 5x # ms"),
    found: { "20": "", "20.1": "warning", "40": "warning", "41": "", "<21": "", "0": "" },
  },
  // BS EN 61008: type AC and A from half its rating to it; with pulsating d.c. to 1.4 times and from 0.35 times.
  {
    check: "rcd/test-trip-current",
    setting: tested,
    text: live("device BS EN 61009 B20 6 kA 30 mA type AC", "trip-current # mA"),
    found: {
      "15": "",
      "14.9": "error",
      "30": "",
      "30.1": "error",
      "<14.9": "error",
      ">14.9": "",
      ">30.1": "error",
      "<31": "",
    },
  },
  {
    check: "rcd/test-trip-current",
    setting: tested,
    text: live("device BS EN 61009 B20 6 kA 30 mA type A", "trip-current #"),
    found: {
      "30 mA": "",
      "30.1 mA": ["warning", "above the 15 mA to 30 mA that an a.c. test allows"],
      "14.9 mA": ["warning", "below the 15 mA to 30 mA that an a.c. test allows"],
      "42 mA pulsating": "",
      "42.1 mA pulsating": "error",
      "10.5 mA pulsating": "",
      "10.4 mA pulsating": "error",
    },
  },
];

holdAtLimits(limits);
