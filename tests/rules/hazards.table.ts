/**
 * What a schedule can show against Parts 3 to 8 of the standard, ranked by how often it is met and how dangerous it is:
 * the fault with the check that finds it, its line and its least severity, and beside it the same circuit made right,
 * which raises nothing. What no check judges stands below with the reason.
 */
import type { Setting, Severity } from "../../server/rules/frame/rule.ts";

interface Hazard {
  readonly name: string;
  readonly check: string;
  readonly least: Severity;
  /** The line the finding stands at, without its blanks at the ends. */
  readonly at: string;
  readonly fault: string;
  readonly right: string;
  readonly setting: Setting;
  /** What stands round the right one, where the fault is not in the circuit. */
  readonly rightSetting: Setting;
}

export const hazards: Hazard[] = [];

interface Pair {
  readonly at: string;
  readonly fault: string;
  readonly right: string;
  readonly setting?: Setting;
  /** What of the setting is another for the right one. */
  readonly but?: Setting;
}

const add = (name: string, check: string, least: Severity, pair: Pair): void => {
  const { at, fault, right } = pair;
  const setting = { premises: "dwelling", supply: TNS, ...pair.setting };
  hazards.push({ name, check, least, at, fault, right, setting, rightSetting: { ...setting, ...pair.but } });
};

const TNS = [
  "earthing TN-S",
  "Ze 0.20 Ω",
  "Ipf 1.2 kA",
  "earthing-conductor 16 mm²",
  "bonding water 10 mm² continuity 0.02 Ω",
  "spd fitted",
  "polarity ok",
].join("\n");
const PME = TNS.replace("TN-S", "TN-C-S");
const shop = { premises: "commercial" } as const;
const farm = { premises: "agricultural" } as const;
const existing = { work: "existing" } as const;

const rcbo = (curve = "B16", tail = "30 mA type A"): string => `device BS EN 61009 ${curve} 6 kA ${tail}`;
const mcb = (curve = "B16"): string => `device BS EN 60898 ${curve} 6 kA`;
const twin = (line = "2.5", cpc = "1.5"): string =>
  `cable flat-twin line ${line} mm² cpc ${cpc} mm²\nroute clipped method C\nlength 12 m`;
const armoured = "cable armoured 90 °C line 6 mm² cpc 6 mm² cores 3\nroute clipped method C\nlength 12 m";
const way = (body: string, title = "Load", kind = "radial", number = 1): string =>
  `way ${number} ${kind} "${title}" {\n${body}\n}`;

const sockets = `${rcbo()}\n${twin()}\nserves sockets\nIb 5 A`;
const lights = `${rcbo("B6")}\n${twin("1.5", "1.0")}\nserves lighting\nIb 1 A`;
const charger = `device BS EN 61009 B40 6 kA 30 mA type A\n${twin("6", "2.5")}\nserves ev-charger\nIb 32 A\nload-control "Meter clamp"\ndc-detection "In the unit"\nopen-PEN "In the unit"`;
const pv = `device BS EN 61009 B20 double-pole 6 kA 30 mA type A bidirectional\n${twin()}\nserves pv\nIb 14 A\ninverter separated`;

/** The lines with one of them as another. */
const but = (lines: string, line: string, by: string): string => {
  if (!lines.split("\n").includes(line)) throw new Error(`No line “${line}” in:\n${lines}`);
  return lines
    .split("\n")
    .flatMap((one) => (one === line ? (by === "" ? [] : [by]) : [one]))
    .join("\n");
};
/** One circuit, wrong by one line. */
const slip = (body: string, line: string, by: string, setting: Setting = {}, at = by): Pair => ({
  at,
  fault: way(but(body, line, by)),
  right: way(body),
  setting,
});

const east = "fed-from supply\nmain-switch BS EN 60947-3 100 A double-pole\nrcd east BS EN 61008 80 A 30 mA type A";
const behind = (body: string): string => but(body, rcbo(), `${mcb()}\nbehind east`);

const dead = (insulation = "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ", R1R2 = "0.23"): string =>
  `dead 2026-03-04 {\nR1+R2 ${R1R2} Ω\n${insulation}\npolarity ok\n}`;
const live = (rcd = "rcd 30 mA 1x 24.1 ms", zs = "Zs 0.43 Ω"): string =>
  `live 2026-03-05 {\n${zs}\n${rcd}\ntest-button ok\n}`;
const tested: Setting = { stage: "tested" };

// Where people stand in water.
add(
  "a socket in zone 1 of a bath",
  "place/sockets-near-bath",
  "error",
  slip(
    `${sockets}\nplace bathroom zone outside distance 3 m`,
    "place bathroom zone outside distance 3 m",
    "place bathroom zone 1",
  ),
);
add(
  "a socket a metre from a bath",
  "place/sockets-near-bath",
  "error",
  slip(
    `${sockets}\nplace bathroom zone outside distance 3 m`,
    "place bathroom zone outside distance 3 m",
    "place bathroom zone outside distance 1 m",
  ),
);
add(
  "a shaver socket in zone 1 of a bath",
  "place/equipment-not-allowed",
  "error",
  slip(
    `${rcbo("B6")}\n${twin("1.5", "1.0")}\nserves shaver\nIb 1 A\nplace bathroom zone 2`,
    "place bathroom zone 2",
    "place bathroom zone 1",
  ),
);
add(
  "a washing machine in zone 1 of a bath",
  "place/equipment-not-allowed",
  "error",
  slip(
    `${rcbo()}\n${twin()}\nserves laundry\nIb 9 A\nplace bathroom zone 2\ningress IPX4`,
    "place bathroom zone 2",
    "place bathroom zone 1",
  ),
);
add(
  "a socket in a sauna",
  "place/equipment-not-allowed",
  "error",
  slip(
    `${rcbo()}\n${twin()}\nserves lighting\nIb 1 A\nplace sauna`,
    "serves lighting",
    "serves sockets",
    shop,
    "place sauna",
  ),
);
add(
  "mains lighting in zone 1 of a pool",
  "place/zone-not-selv",
  "error",
  slip(
    `${lights}\nplace pool zone 2\ningress IPX5\nsupplementary-bonding fitted`,
    "place pool zone 2",
    "place pool zone 1",
    shop,
  ),
);
add(
  "a pool behind 100 mA",
  "rcd/sensitivity-too-high",
  "error",
  slip(
    `${sockets}\nplace pool zone 2\ningress IPX5\nsupplementary-bonding fitted`,
    rcbo(),
    rcbo("B16", "100 mA type A"),
    shop,
    "serves sockets",
  ),
);
add(
  "an open enclosure above a bath",
  "place/ip-code-too-low",
  "error",
  slip(`${lights}\nplace bathroom zone 1\ningress IPX4`, "ingress IPX4", "ingress IP20"),
);
add(
  "lights of a sauna without an RCD",
  "place/sauna-without-rcd",
  "error",
  slip(`${lights}\nplace sauna`, rcbo("B6"), mcb("B6"), shop, "place sauna"),
);

// Cable and where it lies.
add("flat twin direct in the ground", "design/cable-not-for-ground", "error", {
  at: "route buried method D",
  fault: way(
    `${rcbo()}\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute buried method D\nlength 12 m\nserves heating\nIb 5 A`,
  ),
  right: way(
    `${rcbo()}\ncable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3\nroute buried method D\nlength 12 m\nserves heating\nIb 5 A`,
  ),
});
add("a cable in the ground within reach of a spade", "design/buried-too-shallow", "warning", {
  at: "route buried method D depth 50 mm",
  fault: way(
    `${rcbo()}\ncable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3\nroute buried method D depth 50 mm\nlength 12 m\nserves heating\nIb 5 A`,
  ),
  right: way(
    `${rcbo()}\ncable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3\nroute buried method D depth 600 mm\nlength 12 m\nserves heating\nIb 5 A`,
  ),
});
add(
  "a cable in a metal-framed wall without an RCD",
  "rcd/missing-in-metal-frame",
  "error",
  slip(
    `${rcbo()}\n${twin().replace("clipped method C", "wall method 102 depth 60 mm metal-frame")}\nserves heating\nIb 5 A`,
    rcbo(),
    mcb(),
    shop,
    "route wall method 102 depth 60 mm metal-frame",
  ),
);
add(
  "a shallow cable without an RCD, though only skilled people come",
  "rcd/missing-for-concealed",
  "error",
  slip(
    `${rcbo()}\n${twin().replace("clipped method C", "wall method C depth 20 mm")}\nserves heating\nplace skilled-only\nIb 5 A`,
    rcbo(),
    mcb(),
    shop,
    "route wall method C depth 20 mm",
  ),
);
add("unsheathed singles clipped to a wall", "design/singles-outside-containment", "error", {
  at: "route clipped method C",
  fault: way(
    `${rcbo()}\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute clipped method C\nlength 12 m\nserves sockets\nIb 5 A`,
  ),
  right: way(
    `${rcbo()}\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit 20 mm method B\nlength 12 m\nserves sockets\nIb 5 A`,
  ),
  setting: shop,
});
add("a thin protective conductor that runs by itself", "protective/separate-below-minimum", "error", {
  at: "route clipped carries cpc",
  fault: way(
    `${mcb()}\ncable singles line 2.5 mm² cpc 1.5 mm²\nroute conduit 20 mm method B carries line neutral\nroute clipped carries cpc\nlength 12 m\nserves heating\nIb 5 A`,
  ),
  right: way(
    `${mcb()}\ncable singles line 2.5 mm² cpc 4 mm²\nroute conduit 20 mm method B carries line neutral\nroute clipped carries cpc\nlength 12 m\nserves heating\nIb 5 A`,
  ),
  setting: shop,
});
add("one core alone in steel wire armour", "design/single-core-in-steel", "error", {
  at: "cable armoured 90 °C line 16 mm² cpc 16 mm² cores 1",
  fault: way(
    "device BS 88-2 50 A 80 kA gG\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 1\nroute tray method F\nlength 12 m\nserves heating\nIb 45 A",
  ),
  right: way(
    "device BS 88-2 50 A 80 kA gG\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 3\nroute tray method E\nlength 12 m\nserves heating\nIb 45 A",
  ),
  setting: shop,
});
const trunking = "containment T1 trunking 50 mm by 50 mm length 10 m";
const inTrunking = way(
  `${rcbo()}\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute trunking in T1 method B grouped 2\nlength 12 m\nserves sockets\nIb 5 A`,
);
const beside = (serves: string, extra = ""): string =>
  way(
    `${rcbo()}\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute trunking in T1 method B grouped 2\nlength 12 m\nserves ${serves}\nIb 5 A${extra}`,
    "Bells",
    "radial",
    2,
  );
add("extra-low voltage beside mains in one trunking", "containment/voltages-mixed", "warning", {
  at: trunking,
  fault: `${trunking}\n${inTrunking}\n${beside("selv")}`,
  right: `${trunking}\n${inTrunking}\n${beside("heating")}`,
  setting: shop,
});
add("a shared protective conductor too small for one circuit", "containment/shared-cpc-too-small", "error", {
  at: "route method B grouped 2 in C1 carries line neutral",
  fault: `containment C1 conduit 32 mm length 6 m bends 1\n${way("device BS 88-2 50 A 80 kA gG\ncable singles line 16 mm² cpc 6 mm²\nroute method B grouped 2 in C1 carries line neutral\nlength 12 m\nserves heating\nIb 45 A")}\n${way(`${mcb("B6")}\ncable singles line 1.5 mm² cpc 1.0 mm²\nroute method B grouped 2 in C1\nlength 12 m\nserves lighting\nIb 2 A`, "Lights", "radial", 2)}`,
  right: `containment C1 conduit 32 mm length 6 m bends 1\n${way("device BS 88-2 50 A 80 kA gG\ncable singles line 16 mm² cpc 6 mm²\nroute method B grouped 2 in C1\nlength 12 m\nserves heating\nIb 45 A")}\n${way(`${mcb("B6")}\ncable singles line 1.5 mm² cpc 1.0 mm²\nroute method B grouped 2 in C1 carries line neutral\nlength 12 m\nserves lighting\nIb 2 A`, "Lights", "radial", 2)}`,
  setting: shop,
});

// Charging points, generators, batteries.
add(
  "a charging point outdoors on a PME earth",
  "place/charger-combined-earth",
  "error",
  slip(`${charger}\nplace outdoors\ningress IP55`, 'open-PEN "In the unit"', "", { supply: PME }, "serves ev-charger"),
);
add(
  "a charging point indoors on a PME earth",
  "place/charger-combined-earth",
  "warning",
  slip(`${charger}\nplace indoors`, 'open-PEN "In the unit"', "", { supply: PME }, "serves ev-charger"),
);
add(
  "a charging point behind type A with nothing said of direct current",
  "rcd/charger-dc-detection",
  "warning",
  slip(charger, 'dc-detection "In the unit"', "", {}, "device BS EN 61009 B40 6 kA 30 mA type A"),
);
add(
  "a charging point whose RCBO leaves the neutral connected",
  "rcd/charger-poles",
  "error",
  slip(charger, "device BS EN 61009 B40 6 kA 30 mA type A", "device BS EN 61009 B40 single-pole 6 kA 30 mA type A"),
);
add(
  "a charging point behind type AC",
  "rcd/type-unsuitable",
  "error",
  slip(charger, "device BS EN 61009 B40 6 kA 30 mA type A", "device BS EN 61009 B40 6 kA 30 mA type AC"),
);
add(
  "a charging point with an appliance on its circuit",
  "design/charger-shares-circuit",
  "error",
  slip(charger, "serves ev-charger", "serves ev-charger appliance"),
);
add("a charging point that shares its RCD", "rcd/charger-shares-rcd", "error", {
  at: "serves ev-charger",
  fault: `${way(but(charger, "device BS EN 61009 B40 6 kA 30 mA type A", `${mcb("B40")}\nbehind east`))}\n${way(behind(sockets), "Sockets", "radial", 2)}`,
  right: `${way(charger)}\n${way(behind(sockets), "Sockets", "radial", 2)}`,
  setting: { board: east },
});
add("busbars below the supply and the source together", "coordination/busbar-below-sources", "error", {
  at: "busbar 100 A",
  fault: `busbar 100 A\n${way(pv)}`,
  right: `busbar 125 A\n${way(pv)}`,
  setting: { supply: `${TNS}\ncutout BS 88-3 100 A\ntails 25 mm²` },
});
add("panels on a circuit of sockets", "design/source-with-loads", "error", slip(pv, "serves pv", "serves pv sockets"));
add(
  "a single-pole RCBO on a battery",
  "coordination/source-poles",
  "warning",
  slip(
    pv,
    "device BS EN 61009 B20 double-pole 6 kA 30 mA type A bidirectional",
    "device BS EN 61009 B20 single-pole 6 kA 30 mA type A bidirectional",
  ),
);
add(
  "an inverter without separation behind type A",
  "rcd/inverter-direct-current",
  "warning",
  slip(pv, "inverter separated", "inverter unseparated"),
);
add("an island without an electrode", "network/island-without-electrode", "error", {
  at: 'island "Battery inverter"',
  fault: way(sockets),
  right: way(sockets),
  setting: { supply: `${PME}\nisland "Battery inverter"` },
  but: { supply: `${PME}\nisland "Battery inverter" electrode 84 Ω` },
});
add("a generator whose neutral is not earthed", "network/standby-not-earthed", "error", {
  at: 'standby "Diesel set" Ze 0.30 Ω electrode 60 Ω neutral unlinked',
  fault: way(sockets),
  right: way(sockets),
  setting: { supply: `${PME}\nstandby "Diesel set" Ze 0.30 Ω electrode 60 Ω neutral unlinked` },
  but: { supply: `${PME}\nstandby "Diesel set" Ze 0.30 Ω electrode 60 Ω neutral linked` },
});
add("a generator without an electrode", "network/standby-not-earthed", "error", {
  at: 'standby "Diesel set" Ze 0.30 Ω neutral linked',
  fault: way(sockets),
  right: way(sockets),
  setting: { supply: `${PME}\nstandby "Diesel set" Ze 0.30 Ω neutral linked` },
  but: { supply: `${PME}\nstandby "Diesel set" Ze 0.30 Ω electrode 60 Ω neutral linked` },
});
add("a loop too high on the second source", "loop/standby-over-limit", "error", {
  at: mcb("B16"),
  fault: way(`${mcb("B16")}\n${twin()}\nserves heating\nIb 5 A`),
  right: way(`${rcbo()}\n${twin()}\nserves heating\nIb 5 A`),
  setting: { supply: `${TNS}\nstandby "Inverter" gives 25 A electrode 60 Ω neutral linked` },
});
add("a UPS too weak for the breakers on it", "loop/standby-over-limit", "error", {
  at: mcb("B16"),
  fault: way(`${mcb("B16")}\n${twin()}\nserves heating\nIb 5 A`),
  right: way(`${rcbo()}\n${twin()}\nserves heating\nIb 5 A`),
  setting: { supply: `${TNS}\nstandby "UPS" Ipf 0.05 kA neutral through` },
});
add("two sources and no notice", "record/notice-missing", "warning", {
  at: "serves pv",
  fault: way(`${pv}\n${dead('insulation 500 V L-E 280 MΩ joined "Inverter isolated"')}\n${live()}`, "Roof array"),
  right: way(`${pv}\n${dead('insulation 500 V L-E 280 MΩ joined "Inverter isolated"')}\n${live()}`, "Roof array"),
  setting: tested,
  but: { supply: `${TNS}\nnotice "Two sources: at the meter and the board"` },
});
const feeder = (number: number): string =>
  way(
    "device BS 88-2 40 A 80 kA gG\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 3\nroute clipped method C\nlength 12 m\nIb 20 A\nfeeds B",
    `Feed ${number}`,
    "feeder",
    number,
  );
const fedTwice = (line: string): string =>
  `${feeder(1)}\n${feeder(2)}\n}\nboard B "Plant" {\nfed-from A\n${line}main-switch BS EN 60947-3 100 A\n${way(lights)}`;
add("a board that two ways feed", "network/two-feeders", "error", {
  at: "feeds B",
  fault: fedTwice(""),
  right: fedTwice('changeover "Three-position switch, interlocked"\n'),
  setting: shop,
});

// RCDs that are missing, shared, coarse or of the wrong type.
add(
  "lights of a home without an RCD",
  "rcd/missing-for-lighting",
  "error",
  slip(lights, rcbo("B6"), mcb("B6"), {}, "serves lighting"),
);
for (const premises of ["tall-residential", "outbuilding", "shared-house"])
  add(
    `lights without an RCD, ${premises}`,
    "rcd/missing-for-lighting",
    "error",
    slip(`${lights}`, rcbo("B6"), mcb("B6"), { premises }, "serves lighting"),
  );
add(
  "lights of student rooms without an RCD",
  "rcd/missing-for-lighting",
  "warning",
  slip(lights, rcbo("B6"), mcb("B6"), { premises: "student" }, "serves lighting"),
);
add(
  "lighting within reach of the public without an RCD",
  "rcd/missing-for-public-lighting",
  "error",
  slip(
    `${rcbo("C6")}\n${armoured}\nserves lighting\nplace public\ningress IP65\nIb 1 A`,
    rcbo("C6"),
    mcb("C6"),
    shop,
    "serves lighting",
  ),
);
add("type AC on new sockets", "rcd/type-unsuitable", "error", slip(sockets, rcbo(), rcbo("B16", "30 mA type AC")));
add("type AC on new lights", "rcd/type-unsuitable", "warning", slip(lights, rcbo("B6"), rcbo("B6", "30 mA type AC")));
add(
  "floor heating without an RCD",
  "rcd/missing-for-floor-heating",
  "error",
  slip(`${rcbo()}\n${twin()}\nserves floor-heating\nIb 5 A`, rcbo(), mcb(), {}, "serves floor-heating"),
);
add(
  "mobile equipment outdoors without an RCD",
  "rcd/missing-outdoors",
  "error",
  slip(
    `${rcbo("B32")}\n${armoured}\nserves mobile\nplace outdoors\ningress IP55\nIb 20 A`,
    rcbo("B32"),
    mcb("B32"),
    shop,
    "serves mobile",
  ),
);
add(
  "sockets of a home without an RCD, for skilled people",
  "rcd/missing-for-sockets",
  "error",
  slip(`${sockets}\nplace skilled-only`, rcbo(), mcb(), {}, "serves sockets"),
);
add(
  "sockets of a workshop without an RCD, by who uses them alone",
  "rcd/omitted-without-assessment",
  "warning",
  slip(
    `${mcb()}\n${twin()}\nserves sockets\nplace skilled-only\nIb 5 A\ndeparture 411.3.3 "Risk assessment 12 in the site file"`,
    'departure 411.3.3 "Risk assessment 12 in the site file"',
    "",
    shop,
    "place skilled-only",
  ),
);
add("one RCD for a whole home", "rcd/protects-everything", "warning", {
  at: "rcd east BS EN 61008 80 A 30 mA type A",
  fault: [
    way(behind(sockets)),
    way(but(lights, rcbo("B6"), `${mcb("B6")}\nbehind east`), "Lights", "radial", 2),
    way(but(lights, rcbo("B6"), `${mcb("B6")}\nbehind east`), "Lights", "radial", 3),
  ].join("\n"),
  right: [way(behind(sockets)), way(lights, "Lights", "radial", 2), way(lights, "Lights", "radial", 3)].join("\n"),
  setting: { board: east },
});
const alarms = `${rcbo("B6")}\n${twin("1.5", "1.0")}\nserves alarms\nIb 1 A`;
add("smoke alarms behind the RCD of sockets", "rcd/alarms-share-rcd", "warning", {
  at: "serves alarms",
  fault: `${way(behind(sockets))}\n${way(but(alarms, rcbo("B6"), `${mcb("B6")}\nbehind east`), "Alarms", "radial", 2)}\n${way(lights, "Lights", "radial", 3)}`,
  right: `${way(behind(sockets))}\n${way(alarms, "Alarms", "radial", 2)}\n${way(lights, "Lights", "radial", 3)}`,
  setting: { board: east },
});
add(
  "fire alarms on a circuit of sockets",
  "design/alarms-share-circuit",
  "error",
  slip(sockets, "serves sockets", "serves sockets alarms", shop),
);
add(
  "class II equipment only, on sockets",
  "design/class-two-with-sockets",
  "error",
  slip(sockets, "Ib 5 A", 'Ib 5 A\nclass-II "Label at the board"', {}, 'class-II "Label at the board"'),
);
add(
  "an RCD smaller than what it protects",
  "coordination/rcd-below-device",
  "error",
  slip(
    `${mcb("B63")}\nrcd BS EN 61008 63 A 30 mA type A\n${twin("16", "6")}\nserves heating\nIb 40 A`,
    "rcd BS EN 61008 63 A 30 mA type A",
    "rcd BS EN 61008 40 A 30 mA type A",
    shop,
  ),
);
add(
  "more than 10 mA in a single small protective conductor",
  "protective/high-conductor-current",
  "error",
  slip(
    `device BS EN 61009 B16 6 kA 100 mA type A\n${twin()}\nserves data\nleakage 4 mA declared\nIb 5 A`,
    `leakage 4 mA declared`,
    `leakage 12 mA declared`,
    shop,
  ),
);

// Places of Part 7.
add(
  "several pitches on one device",
  "place/several-sockets",
  "error",
  slip(
    `device BS EN 61009 C16 6 kA 30 mA type A\n${armoured}\npoints 1\nserves sockets\nplace caravan\ningress IP44\nIb 10 A`,
    "points 1",
    "points 3",
    shop,
  ),
);
const pitch = `device BS EN 60898 C16 6 kA\nbehind east\n${armoured}\nserves sockets\nplace caravan\ningress IP44\nIb 10 A`;
const ownPitch = but(pitch, "device BS EN 60898 C16 6 kA", "device BS EN 61009 C16 6 kA 30 mA type A").replace(
  "\nbehind east",
  "",
);
add("pitches that share an RCD", "place/socket-shares-rcd", "error", {
  at: "place caravan",
  fault: `${way(pitch, "Pitch 1")}\n${way(pitch, "Pitch 2", "radial", 2)}`,
  right: `${way(ownPitch, "Pitch 1")}\n${way(ownPitch, "Pitch 2", "radial", 2)}`,
  setting: { ...shop, board: east },
});
add(
  "a park home without an RCD",
  "place/caravan-without-rcd",
  "error",
  slip(`${rcbo("B32")}\n${armoured}\nserves park-home\nIb 20 A`, rcbo("B32"), mcb("B32"), shop, "serves park-home"),
);
const shows = "fed-from supply\nmain-switch BS EN 61008 100 A 300 mA type A delayed double-pole";
add("lights of a stand without an RCD", "place/show-without-rcd", "error", {
  ...slip(`${lights}\nplace exhibition`, rcbo("B6"), mcb("B6"), shop, "place exhibition"),
  but: { board: shows },
});
add("a stand whose cable has no RCD at its origin", "place/show-without-origin-rcd", "error", {
  at: "place exhibition",
  fault: way(`${lights}\nplace exhibition`),
  right: way(lights),
  setting: shop,
});
add("a ride on a PME earth", "place/combined-earth", "error", {
  at: "place fairground",
  fault: way(`${lights}\nplace fairground`),
  right: way(`${lights}\nplace fairground\nearthing TT\nelectrode rod 80 Ω`),
  setting: { ...shop, supply: PME, board: shows },
});
add(
  "lights of a mobile unit without an RCD",
  "place/mobile-unit-without-rcd",
  "warning",
  slip(`${lights}\nplace mobile-unit`, rcbo("B6"), mcb("B6"), shop, "place mobile-unit"),
);
add("a mobile unit outdoors on a PME earth", "place/combined-earth", "error", {
  at: "place mobile-unit",
  fault: way(`${lights}\nplace mobile-unit`),
  right: way(`${lights}\nplace mobile-unit indoors`),
  setting: { ...shop, supply: PME },
});
add(
  "a place with a risk of fire without an RCD",
  "place/fire-risk-without-rcd",
  "error",
  slip(`${rcbo()}\n${twin()}\nserves heating\nplace fire-risk\nIb 5 A`, rcbo(), mcb(), shop, "place fire-risk"),
);
add("a medical location, which is judged by nobody here", "place/medical-not-checked", "information", {
  at: "place medical",
  fault: way(`${sockets}\nplace medical`),
  right: way(sockets),
  setting: shop,
});
add(
  "livestock without supplementary bonding stated",
  "place/bonding-not-stated",
  "warning",
  slip(
    `${lights}\nplace agricultural\ningress IP44\nsupplementary-bonding fitted`,
    "supplementary-bonding fitted",
    "",
    farm,
    "place agricultural",
  ),
);
add("a farm's feeder without an RCD", "place/farm-feeder-without-rcd", "warning", {
  at: "place agricultural",
  fault: `${but(feeder(1), "feeds B", "feeds B\nplace agricultural")}\n}\nboard B "Barn" {\nfed-from A\nmain-switch BS EN 60947-3 100 A\n${way(lights)}`,
  right: `${but(feeder(1), "feeds B", "rcd BS EN 61008 63 A 300 mA type A delayed\nfeeds B\nplace agricultural")}\n}\nboard B "Barn" {\nfed-from A\nmain-switch BS EN 60947-3 100 A\n${way(lights)}`,
  setting: farm,
});
const onFarm = (serves: string): string =>
  `${rcbo()}\n${twin()}\nserves ${serves}\nplace agricultural\ningress IP44\nsupplementary-bonding fitted\nIb 5 A`;
add("fans of livestock behind the RCD of sockets", "place/fans-share-rcd", "warning", {
  at: "serves ventilation",
  fault: `${way(behind(onFarm("ventilation")), "Fans")}\n${way(behind(onFarm("sockets")), "Sockets", "radial", 2)}`,
  right: `${way(onFarm("ventilation"), "Fans")}\n${way(behind(onFarm("sockets")), "Sockets", "radial", 2)}`,
  setting: { ...farm, board: east },
});
const sites: Setting = {
  ...shop,
  supply: "earthing TN-S\nU0 55 V\nZe 0.10 Ω\nIpf 1.2 kA\nearthing-conductor 16 mm²\nspd fitted",
};
add(
  "a loop too long at 110 V",
  "loop/design-loop-over-limit",
  "error",
  slip(`${mcb("B16")}\n${twin().replace("12 m", "10 m")}\nserves sockets\nIb 5 A`, "length 10 m", "length 60 m", sites),
);

// Boards, earthing, supply.
add("two electrodes behind one RCD", "network/electrodes-share-device", "warning", {
  at: "electrode rod 90 Ω",
  fault: `${way(`${mcb()}\nbehind east\nearthing TT\nelectrode rod 80 Ω\n${armoured}\nserves heating\nIb 5 A`)}\n${way(`${mcb()}\nbehind east\nearthing TT\nelectrode rod 90 Ω\n${armoured}\nserves heating\nIb 5 A`, "Paddock", "radial", 2)}`,
  right: `${way(`${rcbo()}\nearthing TT\nelectrode rod 80 Ω\n${armoured}\nserves heating\nIb 5 A`)}\n${way(`${rcbo()}\nearthing TT\nelectrode rod 90 Ω\n${armoured}\nserves heating\nIb 5 A`, "Paddock", "radial", 2)}`,
  setting: { ...shop, board: east },
});
add("an RCD on TN-C", "network/combined-conductor", "error", {
  at: "earthing TN-C",
  fault: way(sockets),
  right: way(sockets),
  setting: { supply: TNS.replace("TN-S", "TN-C") },
  but: { supply: PME },
});
add("a consumer unit of plastic in a home", "design/enclosure-combustible", "error", {
  at: "enclosure plastic",
  fault: `enclosure plastic\n${way(sockets)}`,
  right: `enclosure steel\n${way(sockets)}`,
});
add("a consumer unit of plastic in a home wired long ago", "design/enclosure-combustible", "information", {
  at: "enclosure plastic",
  fault: `enclosure plastic\n${way(sockets)}`,
  right: `enclosure steel\n${way(sockets)}`,
  setting: existing,
});
add("a main switch that leaves the neutral of a home closed", "coordination/main-switch-poles", "error", {
  at: "main-switch BS EN 60947-3 100 A single-pole",
  fault: way(sockets),
  right: way(sockets),
  setting: { board: "fed-from supply\nmain-switch BS EN 60947-3 100 A single-pole" },
  but: { board: "fed-from supply\nmain-switch BS EN 60947-3 100 A double-pole" },
});
const heaters = [1, 2, 3, 4]
  .map((number) => way(`${mcb("B32")}\n${twin("6", "2.5")}\nserves heating\nIb 10 A`, "Heater", "radial", number))
  .join("\n");
const cutout: Setting = { ...shop, supply: `${TNS}\ncutout BS 88-3 100 A\ntails 25 mm²` };
add("a main switch below the cut-out", "coordination/switch-below-device", "warning", {
  at: "main-switch BS EN 60947-3 63 A double-pole",
  fault: heaters,
  right: heaters,
  setting: { ...cutout, board: "fed-from supply\nmain-switch BS EN 60947-3 63 A double-pole" },
  but: { board: "fed-from supply\nmain-switch BS EN 60947-3 100 A double-pole" },
});
add("busbars below the cut-out", "coordination/busbar-below-device", "warning", {
  at: "busbar 80 A",
  fault: `busbar 80 A\n${heaters}`,
  right: `busbar 100 A\n${heaters}`,
  setting: cutout,
});
add("a board that stands less than the fault", "coordination/assembly-below-fault", "error", {
  at: "conditional-rating 3 kA",
  fault: `conditional-rating 3 kA\n${way(sockets.replaceAll(" 6 kA", " 10 kA"))}`,
  right: `conditional-rating 16 kA\n${way(sockets.replaceAll(" 6 kA", " 10 kA"))}`,
  setting: { supply: TNS.replace("Ipf 1.2 kA", "Ipf 4 kA").replace("Ze 0.20", "Ze 0.06") },
});
add(
  "an open enclosure in the rain",
  "place/ip-code-too-low",
  "warning",
  slip(
    `${rcbo()}\n${armoured}\nserves outdoor-sockets\nplace outdoors\ningress IP55\nIb 5 A`,
    "ingress IP55",
    "ingress IP20",
  ),
);
add("no surge protection, and fire alarms", "surge/omitted-with-safety-service", "error", {
  at: "serves alarms",
  fault: way(alarms, "Fire alarm"),
  right: way(lights),
  setting: { ...shop, supply: TNS.replace("spd fitted", 'spd not-fitted "Not wanted"') },
});
add("no surge protection stated on new work", "surge/not-stated", "warning", {
  at: "supply {",
  fault: way(`${sockets}\n${dead()}\n${live()}`),
  right: way(`${sockets}\n${dead()}\n${live()}`),
  setting: { ...tested, supply: TNS.replace("\nspd fitted", "") },
  but: { supply: TNS },
});
add("long leads of a surge protective device", "surge/leads-too-long", "warning", {
  at: "spd fitted T2 leads 1.4 m",
  fault: `spd fitted T2 leads 1.4 m\n${way(sockets)}`,
  right: `spd fitted T2 leads 0.4 m\n${way(sockets)}`,
});
add("a thin earth of a surge protective device", "surge/conductor-too-small", "warning", {
  at: "spd fitted T1 earth 6 mm²",
  fault: `spd fitted T1 earth 6 mm²\n${way(sockets)}`,
  right: `spd fitted T1 earth 16 mm²\n${way(sockets)}`,
});
add(
  "more than 16 A behind small lampholders",
  "design/lampholder-device",
  "warning",
  slip(`${rcbo("B16")}\n${twin()}\nserves lighting\nIb 5 A`, rcbo("B16"), rcbo("B20")),
);
add(
  "a motor without overload protection",
  "design/motor-overload-missing",
  "warning",
  slip(
    `device BS EN 60898 C20 6 kA\n${twin("4", "1.5")}\nserves motor\nload 3 kW efficiency 85 % "Saw"\npower-factor 80 %\nstarting direct 80 A\noverload 20 A`,
    "overload 20 A",
    "",
    { premises: "industrial" },
    'load 3 kW efficiency 85 % "Saw"',
  ),
);

// Tests that were not made, and what they show.
const wholly = `${sockets}\n${dead()}\n${live()}`;
const missing = (name: string, check: string, line: string, at: string): void =>
  add(name, check, "error", { at, fault: way(but(wholly, line, "")), right: way(wholly), setting: tested });
missing(
  "no insulation test of new work",
  "insulation/missing",
  "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ",
  'way 1 radial "Load" {',
);
missing("no continuity of new work", "continuity/missing", "R1+R2 0.23 Ω", 'way 1 radial "Load" {');
missing("no loop of new work", "live/zs-missing", "Zs 0.43 Ω", "live 2026-03-05 {");
missing("no polarity of new work", "polarity/missing", "polarity ok", 'way 1 radial "Load" {');
missing("no test of a new RCD", "rcd/test-missing", "rcd 30 mA 1x 24.1 ms", rcbo());
missing("no press of a new RCD's button", "rcd/test-button-missing", "test-button ok", rcbo());
add("no insulation test of old work", "insulation/missing", "warning", {
  at: 'way 1 radial "Load" {',
  fault: way(but(wholly, "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ", "")),
  right: way(wholly),
  setting: { ...tested, ...existing },
});
add("no test once equipment was connected", "insulation/not-tested-with-equipment", "warning", {
  at: 'insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ "Alarms off their bases"',
  fault: way(
    `${alarms}\n${dead('insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ "Alarms off their bases"', "0.36")}\n${live(undefined, "Zs 0.56 Ω")}`,
    "Alarms",
  ),
  right: way(
    `${alarms}\n${dead('insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ "Alarms off their bases"\ninsulation 250 V L-E 280 MΩ joined "Alarms on their bases"', "0.36")}\n${live(undefined, "Zs 0.56 Ω")}`,
    "Alarms",
  ),
  setting: tested,
});
add("type A that trips above its rating on a.c.", "rcd/test-trip-current", "error", {
  at: "trip-current 38 mA sinusoidal",
  fault: way(`${sockets}\n${dead()}\n${live("rcd 30 mA 1x 24.1 ms\ntrip-current 38 mA sinusoidal")}`),
  right: way(`${sockets}\n${dead()}\n${live("rcd 30 mA 1x 24.1 ms\ntrip-current 22 mA sinusoidal")}`),
  setting: tested,
});
add("bonding not stated", "protective/bonding-not-stated", "warning", {
  at: "supply {",
  fault: way(wholly),
  right: way(wholly),
  setting: { ...tested, supply: TNS.replace(/\nbonding.*/, "") },
  but: { supply: TNS },
});
add("bonding not tested", "protective/bonding-not-tested", "warning", {
  at: "bonding water 10 mm²",
  fault: way(wholly),
  right: way(wholly),
  setting: { ...tested, supply: TNS.replace(" continuity 0.02 Ω", "") },
  but: { supply: TNS },
});
add("the earthing conductor not stated", "protective/earthing-not-stated", "warning", {
  at: "supply {",
  fault: way(wholly),
  right: way(wholly),
  setting: { ...tested, supply: TNS.replace(/\nearthing-conductor.*/, "") },
  but: { supply: TNS },
});
const inspection = (line: string): string =>
  `${way(`${wholly}`)}\n}\ninspection periodic 2026-03-04 to 2026-03-05 {\nclient "The owner"\nreason "Sale"\nextent "All"\noutcome satisfactory\ntested by "R.M." 2026-03-05\n${line}`;
add("an old installation tested, and no day for the next time", "inspection/incomplete", "warning", {
  at: "inspection periodic 2026-03-04 to 2026-03-05 {",
  fault: inspection(""),
  right: inspection('next-inspection 2031-03-05 "Five years, let"'),
  setting: { ...tested, ...existing },
});

/** What the same list asks and no check judges, with the reason. */
export const notJudged: Readonly<Record<string, string>> = {
  "a thinner cable beyond a point, without a fuse within 3 m":
    "A run has one cable: a way whose cable changes is written as two, and the second is judged by its own device.",
  "a moving machine without emergency switching":
    "Whether a machine needs it is a judgement on the machine (465, 537.3.3); a schedule of circuits has nothing to judge it by, and a remark on every motor says nothing of any.",
  "arc fault detection where it is only recommended":
    "The same sentence on every board tells nobody anything: `explain afdd/missing` says what is recommended where.",
  "the grid in the floor of a livestock house":
    "It is a part of the supplementary bonding that the way states as fitted; whether metal lies in the floor only the building shows.",
  "lampholders that are there for certain":
    "What the holders are stands in no schedule of circuits, so a larger device is asked about and is no error.",
  "functional extra-low voltage and separation":
    "Each is refused in one sentence by protective-measure, and nothing of it is half judged.",
};
