/**
 * Readings beside each other, where a check turns. How far two may be apart is common practice of
 * `tables/dead-test-practice.ts`, `tables/practice.ts` and `tables/comparison.ts`; resistances are those of BS EN 60228:
 * 7.41 mΩ/m of 2.5 mm², 12.1 of 1.5 mm², so that 0.620 of R1+R2 is R2.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const tested = { stage: "tested" } as const;
const dead = (lines: string, readings: string): string =>
  `way 1 radial "Heater" {\n${lines}\ndead 2026-03-04 {\n${readings}\n}\n}`;
const loop = (lines: string, R1R2: string, Zs: string): string =>
  `way 1 radial "Heater" {
device BS EN 60898 B16 6 kA
${lines}
dead 2026-03-04 {
R1+R2 ${R1R2}
}
live 2026-03-05 {
Zs ${Zs}
}
}`;
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
/** A board that is fed from another: Ze 0.20 Ω, Zdb 0.55 Ω. */
const farBoard = (Zs: string): string => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  stage tested
  supply {
    earthing TN-S
    Ze 0.20 Ω
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
    fed-from A
    Zdb 0.55 Ω
    way 1 radial "Heater" {
      device BS EN 60898 B16 6 kA
      dead 2026-03-04 {
        R1+R2 0.40 Ω
      }
      live 2026-03-05 {
        Zs ${Zs}
      }
    }
  }
}
`;

const limits: readonly Limit[] = [
  // A quarter of the ratio either way: of 1.00 Ω that is 0.620 Ω and 0.059 Ω. 0.380 Ω would be R1.
  {
    check: "continuity/r2-ratio",
    text: dead(twin, "R1+R2 1.00 Ω\nR2 # Ω"),
    found: {
      "0.56": ["warning", "Look for a parallel path, or another size than recorded."],
      "0.57": "",
      "0.67": "",
      "0.68": ["warning", "Look for a poor joint in the cpc, or another size than recorded."],
      "0.44": ["warning", "Look for a parallel path"],
      "0.43": ["warning", "Line and cpc seem interchanged."],
      "0.33": ["warning", "Line and cpc seem interchanged."],
      "0.32": ["warning", "Look for a parallel path"],
      // R2 is a part of R1+R2, but for three digits of the meters.
      "1.03": ["warning", "of R1+R2 1.00 Ω;"],
      "1.04": ["warning", "R2 1.04 Ω is more than R1+R2 1.00 Ω, of which it is a part"],
      ">0.30": "",
      "<0.90": "",
    },
  },
  // Of little, 0.045 Ω either way: 0.20 Ω gives 0.124 Ω.
  {
    check: "continuity/r2-ratio",
    text: dead(twin, "R1+R2 0.20 Ω\nR2 # Ω"),
    found: { "0.07": "warning", "0.08": "", "0.16": "", "0.17": "warning" },
  },
  // Of equal conductors nothing can be interchanged.
  {
    check: "continuity/r2-ratio",
    text: dead("cable singles line 2.5 mm² cpc 2.5 mm²", "R1+R2 1.00 Ω\nR2 # Ω"),
    found: { "0.43": ["warning", "Look for a parallel path"], "0.44": "", "0.56": "", "0.57": "warning" },
  },
  // Half of it in metal that lies beside the cable, armour whose own resistance nobody knows, a ring, or nothing of the size.
  {
    check: "continuity/r2-ratio",
    text: dead("#", "R1+R2 1.00 Ω\nR2 0.50 Ω"),
    found: {
      [twin]: "warning",
      [`${twin}\nparallel-path "Pipework"`]: "",
      "cable armoured cores 3 line 2.5 mm² cpc-by armour": "",
      "": "",
    },
  },
  // Length and size tell more of R2 alone: 41 m of 1.5 mm² is 0.50 Ω, 20 m is 0.24 Ω.
  {
    check: "continuity/r2-ratio",
    text: dead(`${twin}\nlength # m`, "R1+R2 1.00 Ω\nR2 0.50 Ω"),
    found: { "41": "warning", "20": "" },
  },
  // Zs 0.71 Ω less Ze 0.30 Ω leaves 0.41 Ω, of which 0.254 Ω is R2; loop readings may be 0.1 Ω apart.
  {
    check: "continuity/r2-against-loop",
    setting: tested,
    text: `way 1 radial "Hot press" {
cable flat-twin line 2.5 mm² cpc 1.5 mm²
#
}
live 2026-03-05 {
Zs 0.71 Ω
}
}`,
    found: {
      "dead 2026-03-04 {\nR2 0.15 Ω": ["warning", "R2 0.15 Ω is far below its 0.25 Ω share of Zs"],
      "dead 2026-03-04 {\nR2 0.16 Ω": "",
      "dead 2026-03-04 {\nR2 <0.15 Ω": "",
      "dead 2026-03-04 {\nR2 0.15 Ω\nR1+R2 0.41 Ω": "",
      'parallel-path "Pipework"\ndead 2026-03-04 {\nR2 0.15 Ω': "",
      // 25 m of 1.5 mm² is 0.30 Ω: then the length speaks of R2.
      "length 25 m\ndead 2026-03-04 {\nR2 0.15 Ω": "",
      "length 12 m\ndead 2026-03-04 {\nR2 0.15 Ω": "warning",
    },
  },
  // Ze 0.30 Ω and R1+R2 1.00 Ω are 1.30 Ω: a fifth of it either way.
  {
    check: "loop/zs-disagrees",
    setting: tested,
    text: loop("", "1.00 Ω", "# Ω"),
    found: {
      "1.56": "",
      "1.57": ["warning", "Zs 1.57 Ω is above the 1.30 Ω that Ze and R1+R2 give: look for a loose joint"],
      "1.04": "",
      "1.03": ["warning", "is below the 1.30 Ω that Ze and R1+R2 give: record metal in parallel"],
      "<1.04": "",
      "<1.03": "warning",
      "<1.57": "",
    },
  },
  // Of little, 0.1 Ω: 0.30 Ω and 0.10 Ω are 0.40 Ω.
  {
    check: "loop/zs-disagrees",
    setting: tested,
    text: loop("", "0.10 Ω", "# Ω"),
    found: { "0.50": "", "0.51": "warning", "0.30": "", "0.29": "warning", "0.28": "warning", "0.27": "" },
  },
  // What a no-trip range may put on it: 0.3 Ω.
  {
    check: "loop/zs-disagrees",
    setting: tested,
    text: loop("", "0.50 Ω", "#").replace("60898 B16 6 kA", "61009 B16 6 kA 30 mA type A"),
    found: {
      "1.10 Ω no-trip": ["information", "a no-trip range may read up to 0.30 Ω high behind an RCD"],
      "1.11 Ω no-trip": ["warning", "look for a loose joint"],
      "1.10 Ω": ["warning", "if it was read on a no-trip range"],
      "1.11 Ω": ["warning", ": look for a loose joint"],
    },
  },
  {
    check: "loop/zs-disagrees",
    setting: tested,
    text: loop("#", "1.00 Ω", "0.80 Ω"),
    found: { "": "", 'parallel-path "Pipework"': "" },
  },
  // BS 7671:2018+A2:2022, Table 41.2: 0.91 Ω for 32 A to BS 88-3; what a 45 A one may have is not known here.
  {
    check: "loop/over-any-limit",
    setting: tested,
    text: loop("serves cooker sockets", "0.30 Ω", "#").replace("BS EN 60898 B16 6 kA", "BS 88-3 45 A"),
    found: {
      "0.91 Ω": "",
      "0.92 Ω": ["error", "Zs 0.92 Ω is above the 0.91 Ω of a 32 A BS 88-3 device in 0.4 s"],
      ">0.91 Ω": ["error", "Zs >0.91 Ω"],
      ">0.90 Ω": "",
      "<9.99 Ω": "",
    },
  },
  {
    check: "loop/over-any-limit",
    setting: tested,
    text: loop("rcd BS EN 61008 63 A 30 mA type A\nserves cooker sockets", "0.30 Ω", "#").replace(
      "BS EN 60898 B16 6 kA",
      "BS 88-3 45 A",
    ),
    found: { "0.92 Ω": ["warning", "only the RCD would disconnect"], "1668 Ω": ["error", "it would not disconnect"] },
  },
  // Ze 0.30 Ω and R1+R2 against the 2.73 Ω of a B16 (Table 41.3), before anything is read live.
  {
    check: "loop/expected-over-limit",
    setting: { stage: "dead-tested" },
    text: loop("", "#", "N/A"),
    found: {
      "2.43 Ω": "",
      "2.44 Ω": ["error", "R1+R2 2.44 Ω and Ze 0.30 Ω make a Zs of 2.74 Ω, above the 2.73 Ω"],
      'LIM "No access"': "",
    },
  },
  {
    check: "loop/expected-over-limit",
    setting: tested,
    text: loop("", "2.44 Ω", "#"),
    // What was read live is judged by itself.
    found: { "2.75 Ω": "", ">1.00 Ω": "", 'LIM "No access"': ["error", "make a Zs of 2.74 Ω"] },
  },
  {
    check: "loop/expected-over-limit",
    setting: { ...tested, supply: "earthing TN-S" },
    text: loop("#", "2.74 Ω", "N/A"),
    found: {
      "": ["error", "R1+R2 2.74 Ω alone is above the 2.73 Ω"],
      "rcd BS EN 61008 63 A 30 mA type A": ["warning", "only the RCD would disconnect"],
    },
  },
  // 60 m of 2.5 and 1.5 mm², 7.41 and 12.1 mΩ/m, a fifth more when warm: 1.40 Ω against 1.37 Ω of B32; 58 m are 1.36 Ω.
  {
    check: "loop/expected-over-limit",
    setting: { supply: "earthing TN-S" },
    text: `way 1 radial "Heater" {\ndevice BS EN 60898 B32 6 kA\n${twin}\nlength # m\n}`,
    found: { "58": "", "60": ["error", "The R1+R2 of the cable alone is 1.40 Ω warm, above the 1.37 Ω"] },
  },
  // The meter apart: 0.02 Ω below what lies upstream.
  {
    check: "loop/zs-below-board",
    setting: tested,
    text: loop("", "0.10 Ω", "# Ω"),
    found: {
      "0.28": "",
      "0.27": ["warning", "Zs 0.27 Ω is below Ze 0.30 Ω"],
      "<0.28": "",
      "<0.27": ["warning", "Zs <0.27 Ω"],
    },
  },
  {
    check: "loop/zs-below-conductors",
    setting: tested,
    text: loop("", "0.60 Ω", "# Ω"),
    found: {
      "0.58": "",
      "0.57": ["warning", "Zs 0.57 Ω is below the circuit's own R1+R2 0.60 Ω"],
      "<0.58": "",
      "<0.57": "warning",
      "0.27": "",
    },
  },
  {
    check: "loop/zs-below-conductors",
    setting: tested,
    text: loop("#", "0.60 Ω", "0.50 Ω"),
    found: { "": "warning", 'parallel-path "Pipework"': "" },
  },
  // Ze 0.20 Ω and R1+R2 0.40 Ω are 0.60 Ω to the last digit; from the board it is 0.95 Ω.
  {
    check: "loop/feeder-left-out",
    text: farBoard("#"),
    found: {
      "0.60 Ω": [
        "warning",
        "Zs 0.60 Ω is exactly Ze + (R1+R2), without the feeder: from Zdb 0.55 Ω it is about 0.95 Ω.",
      ],
      "0.61 Ω": "",
      "0.59 Ω": "",
      "<0.60 Ω": "",
    },
  },
  // 62 Ω of an electrode twice, and 21 Ω for that of the supply.
  {
    check: "loop/zs-disagrees",
    setting: { stage: "tested", supply: "earthing TT\nIpf 1.2 kA\nelectrode rod 62 Ω" },
    text: `way 1 radial "Pump" {
device BS EN 61009 B16 6 kA 30 mA type A
live 2026-03-05 {
Zs # Ω
}
}`,
    found: { "145": "", "146": "information" },
  },
  // 0.02 Ω of the meter.
  {
    check: "loop/point-over-limit",
    text: `way 1 radial "Lights" {
device BS EN 60898 B32 6 kA
run A 9 m S1 8 m S2
live 2026-03-05 {
at S1 Zs 0.50 Ω
at S2 #
}
}`,
    // 230 V × 0.95 / 160 A is 1.37 Ω hot, and 0.8 of that 1.09 Ω cold. Below what a scale begins with is nothing read.
    found: {
      "Zs 1.09 Ω": "",
      "Zs 1.10 Ω": ["warning", "Zs 1.10 Ω at S2 is above 1.09 Ω for a cold reading"],
      "Zs 1.37 Ω": "warning",
      "Zs 1.38 Ω": ["error", "Zs 1.38 Ω at S2 is above the 1.37 Ω of this circuit"],
      "Zs <1.50 Ω": [
        "warning",
        "does not prove that the loop is within the 1.37 Ω of this circuit: read it on a lower range",
      ],
      "Zs <1.37 Ω": "",
      "Zs >1.50 Ω": "error",
      'Zs LIM "Locked"': "",
    },
  },
  {
    check: "loop/highest-not-recorded",
    setting: tested,
    text: `way 1 radial "Lights" {
device BS EN 60898 B6 6 kA
run A 9 m S1 8 m S2
live 2026-03-05 {
Zs 0.60 Ω
at S2 Zs # Ω
}
}`,
    found: { "0.62": "", "0.63": ["warning", "S2 reads 0.63 Ω, above the Zs of 0.60 Ω recorded"], "0.40": "" },
  },
  // R1+R2 of 20 m is 0.39 Ω: half as much again is 0.585 Ω, and 0.7 of it 0.273 Ω. Zs has Ze 0.30 Ω besides.
  {
    check: "loop/zs-against-length",
    setting: tested,
    text: `way 1 radial "Heater" {
device BS EN 60898 B16 6 kA
${twin}
length 20 m
#
}`,
    found: {
      "live 2026-03-05 {\nZs 0.88 Ω\n}": "",
      "live 2026-03-05 {\nZs 0.89 Ω\n}": [
        "warning",
        "leaves 0.59 Ω for the cable; its length gives 0.39 Ω: look for a poor joint",
      ],
      "live 2026-03-05 {\nZs 0.58 Ω\n}": "",
      "live 2026-03-05 {\nZs 0.57 Ω\n}": ["warning", "was it read at the far point? Record R1+R2"],
      "live 2026-03-05 {\nZs 0.29 Ω\n}": ["warning", "leaves 0.00 Ω for the cable"],
      "live 2026-03-05 {\nZs 0.27 Ω\n}": "",
      "dead 2026-03-04 {\nR1+R2 0.39 Ω\n}\nlive 2026-03-05 {\nZs 0.57 Ω\n}": "",
      "dead 2026-03-04 {\nR2 0.24 Ω\n}\nlive 2026-03-05 {\nZs 0.57 Ω\n}": "",
      'parallel-path "Pipework"\nlive 2026-03-05 {\nZs 0.57 Ω\n}': "",
    },
  },
];

holdAtLimits(limits);
