/**
 * Special locations, rings and surge protection where a check turns: Part 7 of BS 7671 by zone and place, section 443, and
 * for rings what BS EN 60228 gives (7.41 mΩ/m of 2.5 mm²).
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const way = (lines: string, kind = "radial"): string => `way 1 ${kind} "Circuit" {\n${lines}\n}`;
const rcbo = "device BS EN 61009 B16 6 kA 30 mA type A";
const existing = { work: "existing" } as const;
const ring = (ends: string, more = ""): string =>
  way(`cable flat-twin line 2.5 mm² cpc 1.5 mm²\ndead 2026-03-04 {\nends ${ends}\n${more}\n}`, "ring");
const surge = (head: string, supply: string, board: string): string =>
  `wayfile 1\ninstallation "Hall" {\n${head}\nsupply {\nearthing TN-S\n${supply}\n}\nboard A "Board" {\nfed-from supply\n${board}\n}\n}\n`;
const a2 = "standard BS 7671:2018+A2:2022";
const home = (ways: string, board = "main-switch BS EN 61008 100 A 30 mA type A"): string =>
  `wayfile 1\ninstallation "House" {\n${a2}\npremises dwelling\nsupply {\nearthing TN-S\nZe 0.30 Ω\n}\nboard A "Board" {\nfed-from supply\n${board}\n${ways}\n}\n}\n`;
const lights = 'way 2 radial "Lights" {\ndevice BS EN 60898 B6 6 kA\nserves lighting\n}';
const sockets = 'way 1 ring "Sockets" {\ndevice BS EN 60898 B32 6 kA\nserves sockets\n}';
const alarms = 'way 3 radial "Alarms" {\ndevice BS EN 60898 B6 6 kA\nserves alarms\n}';

const limits: readonly Limit[] = [
  // 709.521.1.6, from memory: on or above a jetty no cores without a sheath, no aluminium, no mineral cable, no overhead line.
  {
    check: "place/cable-not-allowed",
    text: way("cable #\nplace marina"),
    found: {
      "singles 70 °C line 4 mm² cpc 4 mm²\nroute conduit method B": [
        "warning",
        "A cable without a sheath may not be used",
      ],
      "mineral line 4 mm² cpc-by sheath": "warning",
      "armoured aluminium line 16 mm² cpc 16 mm²": "warning",
      "multicore line 4 mm² cpc 4 mm²\nroute overhead": ["warning", "An overhead line"],
      "armoured 90 °C line 4 mm² cpc 4 mm²": "",
      "flex 60 °C line 4 mm² cpc 4 mm²": "",
    },
  },
  {
    check: "place/cable-not-allowed",
    text: way("cable singles 70 °C line 4 mm² cpc 4 mm²\nplace #"),
    found: { outdoors: "", "marina indoors": "", marina: "warning" },
  },
  // 711.410.3.4 and 740.410.3: 300 mA at the origin of what feeds a stand or a ride, besides what its circuits have.
  {
    check: "place/show-without-origin-rcd",
    text: way(`${rcbo}\n#`),
    found: {
      "serves lighting\nplace exhibition": "error",
      "serves lighting\nplace fairground": ["error", "needs an RCD of 300 mA or less at its origin"],
      "serves lighting\nplace construction": "",
      "serves lighting": "",
      "serves selv\nplace fairground": "",
    },
  },
  {
    check: "place/show-without-origin-rcd",
    setting: { standard: "BS 7671:2001" },
    text: way(`${rcbo}\nserves lighting\nplace #`),
    found: { fairground: "" },
  },
  ...(["300", "500"] as const).map(
    (residual): Limit => ({
      check: "place/show-without-origin-rcd",
      setting: { board: `fed-from supply\nmain-switch BS EN 61008 100 A ${residual} mA type A delayed` },
      text: way(`${rcbo}\nserves lighting\nplace #`),
      found: { fairground: residual === "300" ? "" : "error" },
    }),
  ),
  // 701.512.3: 2.5 m from zone 1, as remembered, and nothing in a zone but a shaver supply.
  {
    check: "place/sockets-near-bath",
    text: way(`${rcbo}\n#`),
    found: {
      "serves sockets\nplace bathroom zone outside distance 2.5 m": "",
      "serves sockets\nplace bathroom zone outside distance 2.4 m": [
        "warning",
        "The nearest socket is 2.4 m from zone 1; at least 2.5 m is required. Unproven",
      ],
      "serves sockets\nplace bathroom zone outside distance 2.2 m": "error",
      "serves sockets\nplace bathroom zone 2": ["error", "Sockets are not allowed in zone 2"],
      "serves sockets\nplace bathroom zone outside": "",
      "serves sockets lighting\nplace bathroom zone 2": "",
      "serves lighting\nplace bathroom zone 2": "",
      "serves shaver\nplace bathroom zone 2": "",
      "serves sockets\nplace outdoors": "",
    },
  },
  {
    check: "place/sockets-near-bath",
    setting: existing,
    text: way(`${rcbo}\nserves sockets\nplace bathroom zone outside distance #`),
    found: { "2.4 m": "information" },
  },
  {
    check: "place/distance-not-stated",
    text: way(`${rcbo}\n#`),
    found: {
      "serves sockets\nplace bathroom": "information",
      "serves sockets\nplace bathroom distance 3.1 m": "",
      "serves sockets\nplace bathroom zone outside": "information",
      "serves sockets\nplace bathroom zone 2": "",
      "serves sockets lighting\nplace bathroom zone 2": "information",
      "serves lighting\nplace bathroom": "",
    },
  },
  {
    check: "place/distance-not-stated",
    setting: existing,
    text: way(`${rcbo}\n#\nplace bathroom`),
    found: { "serves sockets": "" },
  },
  // 701.512.2: IPX4 in zones 1 and 2, IPX7 in zone 0; in zone 2 a shaver supply needs none.
  {
    check: "place/ip-code-too-low",
    text: way(`${rcbo}\n#`),
    found: {
      "serves lighting\nplace bathroom zone 1\ningress IP44": "",
      "serves lighting\nplace bathroom zone 1\ningress IP43": ["error", "at least IPX4 is required"],
      "serves lighting\nplace bathroom zone 2\ningress IP43": "error",
      "serves lighting\nplace bathroom zone 0\ningress IP67": "",
      "serves lighting\nplace bathroom zone 0\ningress IP66": ["error", "at least IPX7 is required"],
      "serves shaver\nplace bathroom zone 2\ningress IP20": "",
      "serves shaver lighting\nplace bathroom zone 2\ningress IP20": "error",
      "serves shaver\nplace bathroom zone 1\ningress IP20": "error",
      "serves lighting\nplace outdoors\ningress IP20": "warning",
    },
  },
  // 708.533.1 and 709.533.1: a device for each socket.
  {
    check: "place/several-sockets",
    text: "#",
    found: {
      [way(`${rcbo}\nserves sockets\nplace marina\npoints 1`)]: "",
      [way(`${rcbo}\nserves sockets\nplace marina\npoints 2`)]: ["error", "2 sockets share one device"],
      [way(`${rcbo}\nserves sockets\nplace marina`)]: "",
      [way(`${rcbo}\nserves sockets\nplace marina`, "ring")]: ["error", "The sockets of a ring share one device"],
      [way(`${rcbo}\nserves sockets lighting\nplace marina\npoints 2`)]: "",
      // Where nothing counts them, what is drawn and how the way is called may.
      [way(`${rcbo}\nserves sockets\nplace marina\nrun A 9 m P1`)]: "",
      [way(`${rcbo}\nserves sockets\nplace marina\nrun A 9 m P1 8 m P2`)]: [
        "warning",
        "The runs have 2 points: if this way supplies more than one socket",
      ],
      [way(`${rcbo}\nserves sockets\nplace marina\npoints 1\nrun A 9 m P1 8 m P2`)]: "",
    },
  },
  // Each of them is several berths or pitches, or one, by the way people write it.
  ...(
    [
      ["Berths 1 to 4", "warning"],
      ["Berth 1–4", "warning"],
      ["Berths 3 & 4", "warning"],
      ["Bollard 1, 2", "warning"],
      ["Pitches, north row", "warning"],
      ["Berth 12", ""],
      ["Berth B3", ""],
      ["Pitch 7, 16 A", ""],
      ["Pillar 2 socket 1", ""],
      ["Hook-up 4", ""],
    ] as const
  ).map(([title, found]) => ({
    check: "place/several-sockets",
    text: `way 1 radial "${title}" {\n${rcbo}\nserves sockets\nplace marina\n#\n}`,
    found: { "": found, "points 1": "" } as const,
  })),
  // 717.415 of sockets, whatever their rating; 717.411.1 of the rest, unless the unit has a source of its own.
  {
    check: "place/mobile-unit-without-rcd",
    text: way("device BS EN 60898 #\nplace mobile-unit"),
    found: {
      "C63 6 kA\nserves sockets": ["error", "Sockets of a mobile unit need an RCD of 30 mA or less"],
      "B6 6 kA\nserves lighting": ["warning", "Circuits of a mobile unit, or the supply to it, need an RCD of 30 mA"],
      "B6 6 kA\nserves lighting\nrcd BS EN 61008 40 A 30 mA type A": "",
      "B6 6 kA\nserves selv": "",
    },
  },
  ...(
    [
      ["place mobile-unit", "error"],
      ["place mobile-unit outdoors", "error"],
      ["place mobile-unit indoors", ""],
      ["place mobile-unit\nearthing TT\nelectrode rod 80 Ω", ""],
      ["place outdoors", ""],
    ] as const
  ).map(([where, found]) => ({
    check: "place/combined-earth",
    text: way(`${rcbo}\nserves lighting\n#`),
    setting: { supply: "earthing TN-C-S\nZe 0.20 Ω" },
    found: { [where]: found },
  })),
  ...(
    [
      ["", "warning"],
      ["bonding water 10 mm²", "warning"],
      ["bonding structure 10 mm²", ""],
      ['bonding none "Body of plastic"', ""],
    ] as const
  ).map(([line, found]) => ({
    check: "place/chassis-not-bonded",
    text: `${surge(`${a2}\nstage tested`, line, "place mobile-unit")}#`,
    found: { "": found },
  })),
  // An argument of a route that is not in the ground, or of cables that are alone in it.
  {
    check: "design/ground-not-there",
    text: way("cable armoured 90 °C line 10 mm² cpc 10 mm² cores 5 #", "feeder"),
    found: {
      "\nroute tray method E soil 1.5 K·m/W": ["warning", "This route is not in the ground"],
      "\nroute tray method E apart 250 mm": ["warning", "This route is not in the ground"],
      "\nroute buried method D soil 1.5 K·m/W": "",
      "\nroute duct method D apart 250 mm": ["warning", "Apart from what?"],
      "\nroute duct method D grouped 1 apart 250 mm": "warning",
      "\nroute duct method D grouped 2 apart 250 mm": "",
      "parallel 2\nroute duct method D apart 250 mm": "",
    },
  },
  // 433.1.204: 20 A of a ring's cable. 4D1A, in conduit: 2.5 mm² carries 24 A, with a second circuit 0.8 of it.
  {
    check: "design/ring-capacity",
    text: "#",
    found: {
      [way("cable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit method B", "ring")]: "",
      [way("cable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit method B grouped 2", "ring")]: [
        "error",
        "below the required 20 A. Fit 4 mm²",
      ],
      [way("cable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit method B grouped 2")]: "",
      [way("route conduit method B grouped 2", "ring")]: "",
    },
  },
  // Of 32 A: 4 mm² carries 32 A in conduit, and 0.8 of it beside another circuit. A ring and a spare way are no concern of it.
  {
    check: "design/device-over-capacity",
    text: "#",
    found: {
      [way("device BS EN 60898 B32 6 kA\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B")]: "",
      [way("device BS EN 60898 B32 6 kA\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B grouped 2")]: [
        "error",
        "rated above the 25.6 A this cable can carry. Fit 6 mm².",
      ],
      [way(
        "device BS EN 60898 B32 6 kA\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B grouped 2",
        "ring",
      )]: "",
      [way(
        "device BS EN 60898 B32 6 kA\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B grouped 2\nserves motor",
      )]: ["error", "If an overload relay at the motor protects the cable, state its setting"],
      // BS 3036: 0.725 of it.
      [way("device BS 3036 20 A\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B")]: "",
      [way("device BS 3036 30 A\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B")]: [
        "error",
        "23.2 A allowed with a rewirable fuse",
      ],
    },
  },
  // 106 m, warm by 30 °C and with 0.03 Ω of the meter: 0.785 Ω × 1.04 and the meter are 0.847 Ω.
  {
    check: "ring/long-ring",
    text: ring("#"),
    found: {
      "r1 0.84 Ω rn 0.84 Ω r2 1.38 Ω": "",
      "r1 0.85 Ω rn 0.85 Ω r2 1.38 Ω": ["information", "r1 of 0.85 Ω is about 115 m"],
      // Where a joint raises one of the two, the other is the cable's.
      "r1 0.95 Ω rn 0.84 Ω r2 1.38 Ω": "",
      "r1 0.95 Ω rn 0.85 Ω r2 1.38 Ω": ["information", "rn of 0.85 Ω"],
      "r1 0.84 Ω rn 0.95 Ω r2 1.38 Ω": "",
      // Where one of the two was not read, or is open, the other is all there is.
      "r1 N/A rn 0.85 Ω r2 1.38 Ω": ["information", "rn of 0.85 Ω"],
      "r1 N/A rn 0.84 Ω r2 1.38 Ω": "",
      "r1 0.85 Ω rn N/A r2 1.38 Ω": ["information", "r1 of 0.85 Ω"],
      "r1 N/A rn N/A r2 1.38 Ω": "",
      "r1 >99.9 Ω rn >99.9 Ω r2 1.38 Ω": "",
    },
  },
  {
    check: "ring/long-ring",
    text: ring("r1 0.95 Ω rn 0.95 Ω r2 1.38 Ω", "#"),
    found: { "": "information", "temperature 20 °C": "information" },
  },
  {
    check: "ring/long-ring",
    text: "#",
    found: {
      [ring("r1 0.95 Ω rn 0.95 Ω r2 1.38 Ω").replace("2.5 mm²", "4 mm²")]: "",
      [ring("r1 0.95 Ω rn 0.95 Ω r2 1.38 Ω").replace("dead", "length 60 m\ndead")]: "",
      [ring("r1 0.95 Ω rn 0.95 Ω r2 1.38 Ω").replace("ring", "radial")]: "",
    },
  },
  // 60 m of 2.5 mm² are 0.445 Ω: half as much again is 0.667 Ω, 0.7 of it 0.311 Ω. The lower of line and neutral is asked.
  {
    check: "ring/ends-against-length",
    text: ring("#").replace("dead", "length 60 m\ndead"),
    found: {
      "r1 0.66 Ω rn 0.66 Ω r2 1.08 Ω": "",
      "r1 0.67 Ω rn 0.67 Ω r2 1.08 Ω": [
        "warning",
        "r1 reads 0.67 Ω; 60 m of this cable gives 0.44 Ω. Look for a poor joint or a smaller cable",
      ],
      "r1 0.90 Ω rn 0.66 Ω r2 1.08 Ω": "",
      "r1 0.90 Ω rn 0.67 Ω r2 1.08 Ω": ["warning", "rn reads 0.67 Ω"],
      "r1 0.32 Ω rn 0.32 Ω r2 0.50 Ω": "",
      "r1 0.31 Ω rn 0.31 Ω r2 0.50 Ω": ["warning", "Look for a cable that bridges the ring"],
      "r1 4.45 Ω rn 4.45 Ω r2 7.2 Ω": ["warning", "Check the decimal point: was it 0.45 Ω?"],
      "r1 >99.9 Ω rn 0.90 Ω r2 1.08 Ω": "warning",
    },
  },
  // The highest point is R1+R2, within the tolerance of 0.05 Ω; (r1 + r2)/4 is 0.2925 Ω, and end to end 1.17 Ω.
  {
    check: "ring/r1r2-against-ring",
    text: ring("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "at S1 L-N 0.22 Ω L-E 0.29 Ω\nat X1 L-N 0.30 Ω L-E 0.39 Ω\nR1+R2 # Ω"),
    found: {
      "0.34": "",
      "0.33": ["warning", "Record the highest reading to earth: the highest point, X1, reads 0.39 Ω."],
      "0.44": "",
      "1.17": ["warning", "That is about r1 + r2, end to end"],
      "0.58": ["warning", "That is half of r1 + r2, not a quarter"],
    },
  },
  {
    check: "ring/points-missing",
    setting: { stage: "dead-tested" },
    text: "#",
    found: {
      [ring("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "R1+R2 0.31 Ω")]: [
        "information",
        "read each, near 0.22 Ω L-N and 0.29 Ω L-E",
      ],
      [ring("r1 0.44 Ω rn 0.44 Ω", "R1+R2 0.31 Ω")]: ["information", "read each, near 0.22 Ω L-N."],
      [ring("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "at S1 L-N 0.22 Ω")]: "",
      [ring("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "R1+R2 0.31 Ω").replace("ring", "radial")]: "",
      [ring("r1 >99.9 Ω rn 0.44 Ω r2 0.73 Ω", "R1+R2 0.31 Ω")]: "",
      [way("cable flat-twin line 2.5 mm² cpc 1.5 mm²", "ring")]: "",
    },
  },
  { check: "ring/points-missing", text: ring("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", "#"), found: { "R1+R2 0.31 Ω": "" } },
  // 443.4.1, since Amendment 2: stated at the supply or a board, of new work that is tested.
  {
    check: "surge/not-stated",
    text: "#",
    found: {
      [surge(`${a2}\nstage tested\nwork new`, "", "")]: "warning",
      [surge(`${a2}\nstage tested\nwork new`, "spd fitted", "")]: "",
      [surge(`${a2}\nstage tested\nwork new`, "", "spd fitted")]: "",
      [surge(`${a2}\nstage tested\nwork existing`, "", "")]: "",
      [surge(`${a2}\nstage design\nwork new`, "", "")]: "",
      [surge("standard BS 7671:2018\nstage tested\nwork new", "", "")]: "",
      [surge("stage tested\nwork new", "", "")]: "",
    },
  },
  {
    check: "surge/omitted-with-safety-service",
    text: "#",
    found: Object.fromEntries(
      (
        [
          ["premises commercial", "", 'spd not-fitted "Not wanted"', "serves alarms", "error"],
          ["premises commercial", 'spd not-fitted "Not wanted"', "", "serves alarms", "error"],
          ["premises commercial", "spd fitted", 'spd not-fitted "Fitted upstream"', "serves alarms", ""],
          ["premises commercial", "", 'spd not-fitted "Not wanted"', "serves lighting", ""],
          ["premises commercial", "", 'spd not-fitted "Not wanted"', "serves emergency-lighting", "error"],
          ["premises dwelling", "", 'spd not-fitted "Not wanted"', "serves alarms", ""],
          ["premises dwelling", "", 'spd not-fitted "Not wanted"', "place medical", "error"],
          ["premises commercial\nwork existing", "", 'spd not-fitted "Not wanted"', "serves alarms", "information"],
          ["premises commercial", "", "", "serves alarms", ""],
        ] as const
      ).map(([premises, supply, board, lines, found]) => [
        surge(`${a2}\n${premises}`, supply, `${board}\n${way(`device BS EN 60898 B6 6 kA\n${lines}`)}`),
        found,
      ]),
    ),
  },
  // 314.1: one RCD for lights, sockets and a third circuit of a home.
  {
    check: "rcd/protects-everything",
    text: "#",
    found: {
      [home(`${sockets}\n${lights}\n${alarms}`)]: ["warning", "protects all 3 circuits of this home"],
      [home(`${sockets}\n${lights}`)]: "",
      [home(`${sockets}\n${lights}\n${alarms}`).replace("dwelling", "commercial")]: "",
      [home(`${sockets}\n${lights}\n${alarms}`, "main-switch BS EN 61008 100 A 100 mA type A")]: "",
      [home(`${sockets}\n${lights.replace("lighting", "cooker")}\n${alarms}`)]: "",
      [home(`${sockets.replace("serves sockets", "serves cooker").replace("ring", "radial")}\n${lights}\n${alarms}`)]:
        "",
    },
  },
];

holdAtLimits(limits);
