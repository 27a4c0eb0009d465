/** Lines as an electrician would first write them: each is answered so that its fixes lead to a line that is read. */
import { describe, expect, test } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { applyEdits } from "../../server/text/lines.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { inSetting } from "../helpers/sample.ts";

interface Case {
  /** The line as it is written, in its surroundings. */
  readonly text: (line: string) => string;
  readonly line: string;
  readonly message: string;
  /** What the fixes make of it; nothing where it is not for a program to say. */
  readonly fixed?: string;
}

const tested: Setting = { stage: "tested", before: "instrument M1" };
const inWay = (line: string) => inSetting(`way 1 radial "Bench" {\n${line}\n}`, tested).text;
const inDead = (line: string) => inWay(`dead 2026-03-04 with M1 {\n${line}\n}`);
const inLive = (line: string) => inWay(`live 2026-03-05 with M1 {\n${line}\n}`);
const inSupply = (line: string) =>
  inSetting("way 1 spare", { ...tested, supply: `earthing TN-S\nZe 0.30 Ω\n${line}` }).text;
const inBoard = (line: string) => inSetting("way 1 spare", { ...tested, board: `fed-from supply\n${line}` }).text;
const inSupplyAlone = (line: string) => inSetting("way 1 spare", { ...tested, supply: line }).text;
const inInspection = (line: string) =>
  inSetting("way 1 spare").text.replace("work new", `work new\n  inspection periodic 2026-03-05 {\n    ${line}\n  }`);

// The installation has an addition: a board or a way of it is new or altered.
const ofWhole = (line: string) => inSetting("way 1 spare").text.replace("work new", line);
const partWork = (text: Case["text"], [said, own, of]: readonly [string, string, string]): Case => ({
  text,
  line: `work ${said}`,
  message: `“${said}” does not state ${of}: did you mean “${own}”?`,
  fixed: `work ${own}`,
});

const cases: readonly Case[] = [
  ...["R1 + R2 0.45 Ω", "R1 +R2 0.45 Ω", "r1 + r2 0.45 Ω"].map((line) => ({
    text: inDead,
    line,
    message: `“${line.startsWith("r") ? "r1 + r2" : "R1 + R2"}” is written R1+R2.`,
    fixed: "R1+R2 0.45 Ω",
  })),
  ...["-", "--", "—"].map((dash) => ({
    text: inLive,
    line: `Zs ${dash}`,
    message: `“${dash.charAt(0)}” is no result: write what was read, LIM with the reason, or N/A where it does not apply; or delete the line.`,
  })),
  ...(
    [
      ["rcd 30 mA 1x 0.024 s", "“0.024 s” is written 24 ms.", "rcd 30 mA 1x 24 ms"],
      ["rcd 0.03 A 1x 24 ms", "“0.03 A” is written 30 mA.", "rcd 30 mA 1x 24 ms"],
      [
        "rcd 30 ma 1x 24 ms",
        "“ma” is not a unit here: a rated residual current is written in mA.",
        "rcd 30 mA 1x 24 ms",
      ],
      ["rcd 30 mA ½ no-trip", "“½” is written 0.5x.", "rcd 30 mA 0.5x no-trip"],
      ["rcd 30 mA 24 ms @ 1x", "Blanks alone divide the parts of a line: leave out “@”.", "rcd 30 mA 24 ms  1x"],
      ["rcd n/a", "“n/a” is written N/A.", "rcd N/A"],
      ["function √", "“√” is written ok.", "function ok"],
    ] as const
  ).map(([line, message, fixed]) => ({ text: inLive, line, message, fixed })),
  ...(
    [
      ["rcd 24/12", "“24/12” is two times: each has a line of its own with its multiple, such as 1x and 5x, and ms."],
      ["function ✗", "“✗” is written as a word: wrong, or failed."],
    ] as const
  ).map(([line, message]) => ({ text: inLive, line, message })),
  {
    text: inLive,
    line: "trip-current 22 mA ac",
    message: "“ac” does not state the waveform of the test current: did you mean “sinusoidal”?",
    fixed: "trip-current 22 mA sinusoidal",
  },
  ...(
    [
      ["settings Ir 63 A", "“Ir” is written thermal.", "settings thermal 63 A"],
      ["settings Ii 900 A", "“Ii” is written instantaneous.", "settings instantaneous 900 A"],
      ["settings Isd 500 A within 100 ms", "“Isd” is written short-time.", "settings short-time 500 A within 100 ms"],
      ["serves data rack", "“data rack” is written data: leave out “rack”.", "serves data"],
      ["serves hearing loop", "“hearing loop” is written appliance.", "serves appliance"],
      ["serves outdoor lights", "“outdoor lights” is written lighting.", "serves lighting"],
      ["serves rotary converter", "“rotary converter” is written motor.", "serves motor"],
      ["limitation none", "“limitation none”: where nothing was left out, nothing is written.", ""],
    ] as const
  ).map(([line, message, fixed]): Case => ({ text: inWay, line, message, fixed })),
  {
    text: inLive,
    line: 'limitation "no access"',
    message:
      'What was not measured is written where its reading would stand, with LIM and the reason, as in Zs LIM "no access". What limits an inspection stands in its own block.',
  },
  {
    text: inInspection,
    line: "limitation none",
    message: "“limitation none”: where nothing was left out, nothing is written.",
    fixed: "",
  },
  {
    text: inSupply,
    line: "voltage 400 V",
    message:
      "The voltage of a supply is stated to earth: U0 230 V, as it is taken to be where nothing is written; 400 V is between its lines.",
    fixed: "U0 230 V",
  },
  {
    text: inSupply,
    line: "voltage 241 V",
    message:
      "What was measured stands in a block of tests: live 2026-03-05 { voltage 241 V }. The nominal voltage, U0, is taken as 230 V.",
  },
  ...["delayed", "S"].map((said) => ({
    text: inWay,
    line: `device BS EN 61009 C32 10 kA 300 mA ${said} type A`,
    message:
      "A delay is stated of an RCD on its own line: rcd BS EN 61008 63 A 100 mA type A delayed. An RCBO for additional protection has none.",
  })),
  {
    text: inWay,
    line: "device BS EN 60898 rating 32 A curve B 6 kA",
    message: "“32 A” is written without its name: leave out “rating”.",
  },
  {
    text: inWay,
    line: "device BS EN 60898 curve B 32 A 6 kA",
    message: "The type and the rated current are one word: B32.",
    fixed: "device BS EN 60898 B32 6 kA",
  },
  {
    text: inWay,
    line: "device BS EN 60898 B32 breaking capacity 6 kA",
    message: "“6 kA” is written without its name: leave out “breaking capacity”.",
    fixed: "device BS EN 60898 B32 6 kA",
  },
  {
    text: inWay,
    line: "load power 3 kW",
    message: "“3 kW” is written without its name: leave out “power”.",
    fixed: "load 3 kW",
  },
  ...["poles 2", "poles two", "pole DP"].map((said) => ({
    text: inWay,
    line: `device BS EN 60898 B32 6 kA ${said}`,
    message: `“${said}” is written double-pole.`,
    fixed: "device BS EN 60898 B32 6 kA double-pole",
  })),
  {
    text: inWay,
    line: "device BS EN 60898 32 A B curve 6 kA",
    message: "The type and the rated current are one word: B32.",
    fixed: "device BS EN 60898 B32 6 kA",
  },
  {
    text: inWay,
    line: "route conduit method B grouped 3 circuits",
    message: "The parts of a line follow one another: leave out “circuits”.",
    fixed: "route conduit method B grouped 3",
  },
  {
    text: inDead,
    line: "ring r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
    message: "“ring” is not a word of the dead tests of a way: did you mean “ends”?",
    fixed: "ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
  },
  {
    text: inLive,
    line: "earth loop 0.62 Ω",
    message: "“earth loop” is written Zs.",
    fixed: "Zs 0.62 Ω",
  },
  {
    text: inWay,
    line: "circuit breaker BS EN 60898 B32 6 kA",
    message: "“circuit breaker” is written device.",
    fixed: "device BS EN 60898 B32 6 kA",
  },
  {
    text: ofWhole,
    line: "standard BS7671 18th edition AMD 2",
    message: "The edition is written by its number and year, with its amendments, as in: standard BS 7671:2018+A2:2022",
  },
  {
    text: inSupplyAlone,
    line: "earthing system TN-C-S",
    message: "“earthing system” is written earthing.",
    fixed: "earthing TN-C-S",
  },
  {
    text: inSupplyAlone,
    line: "arrangement TN-C-S",
    message: "“arrangement” is not a word of the supply: did you mean “earthing”?",
    fixed: "earthing TN-C-S",
  },
  {
    text: inSupply,
    line: "gas-bonding 10 mm²",
    message: "“gas-bonding” is not a word of the supply: did you mean “bonding”?",
  },
  {
    text: inBoard,
    line: 'description "Main board"',
    message: 'What a board is called stands in quotes on its first line, as in: board A "Main board" {',
  },
  {
    text: inWay,
    line: "installation-method C",
    message:
      "“installation-method” is method, and stands on the line of “route”: route conduit 25 mm method B grouped 2",
  },
  {
    text: inWay,
    line: "voltage-drop 3 %",
    message:
      "“voltage-drop” is not written: what is permitted or expected is calculated, and shown beside the reading.",
  },
  {
    text: inWay,
    line: "r1 0.31 Ω",
    message: "“r1” stands on the line of “ends”, in the dead tests of a way: ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
  },
  {
    text: inDead,
    line: 'tester "R.M."',
    message:
      'Who tested, and with which instrument, stands on the line that opens the tests: dead 2026-03-04 by "R.M." with M1 {',
  },
  {
    text: inDead,
    line: "test-voltage 500 V",
    message: "The voltage of the test stands on the line of what was read with it, as in: insulation 500 V L-E 310 MΩ",
  },
  {
    text: inBoard,
    line: "spare 8",
    message: "A way begins with its word and its number, as in: way 8 spare",
    fixed: "way 8 spare",
  },
  {
    text: inBoard,
    line: 'way 2 lighting "Lights" {\n}',
    message: "“lighting” is what the circuit supplies: leave it out here, and write serves lighting in the way.",
    fixed: 'way 2 "Lights" {\n}',
  },
  {
    text: inLive,
    line: "afdd ok",
    message:
      "“afdd” is not a word of the live tests of a way, but of a way or a circuit type; here the word is “afdd-test”.",
  },
  {
    text: inWay,
    line: "rcd 18 ms",
    message: "Here “rcd” takes no “18 ms”; that is a line of the live tests of a way: rcd 30 mA 1x 24 ms",
  },
  {
    text: inSupply,
    line: "service head BS 88-3 100 A",
    message: "“service head” is written cutout.",
    fixed: "cutout BS 88-3 100 A",
  },
  {
    text: inWay,
    line: "power-factor 0.8",
    message: "0.8 lacks its unit: a share of the whole is written in %.",
    fixed: "power-factor 80 %",
  },
  ...["load", 'load "Kiln"'].map((said) => ({
    text: inWay,
    line: said,
    message: '“load” needs its power or its current, as in: load 9.5 kW rated 240 V "Shower"',
  })),
  {
    text: inInspection,
    line: 'C2 "No RCD for the garden sockets" board A way 1',
    message: "“C2” stands on the line of “observation”: observation C2",
    fixed: 'observation C2 "No RCD for the garden sockets" board A way 1',
  },
  {
    text: inInspection,
    line: 'by "P.D."',
    message:
      "“by” is not a word of an inspection. It stands on a line of another word: observation, designed, installed or tested.",
  },
  {
    text: inInspection,
    line: "overall unsatisfactory",
    message: "“overall” is not a word of an inspection: did you mean “outcome”?",
    fixed: "outcome unsatisfactory",
  },
  {
    text: ofWhole,
    line: 'address "2 Mill Lane"',
    message: "“address” is not a word of an installation: did you mean “location”?",
    fixed: 'location "2 Mill Lane"',
  },
  {
    text: inWay,
    line: "not tested",
    message:
      'What was not measured is written where its reading would stand, with LIM and the reason, as in live 2026-03-05 { Zs LIM "no access" }.',
  },
  {
    text: inWay,
    line: "load 11 kW motor",
    message: "What the circuit supplies is stated on a line of its own: serves motor.",
    fixed: "serves motor\nload 11 kW",
  },
  ...["999+ MΩ", "+999 MΩ", "999 MΩ +"].map((said) => ({
    text: inDead,
    line: `insulation 500 V L-N ${said} L-E >999 MΩ N-E >999 MΩ`,
    message: "What is beyond the range of the meter is written >999 MΩ.",
    fixed: "insulation 500 V L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ",
  })),
  {
    text: inLive,
    line: "Zs 99.9+ Ω",
    message: "What is beyond the range of the meter is written >99.9 Ω.",
    fixed: "Zs >99.9 Ω",
  },
  {
    text: (line) => inWay(`${line}\nZs 0.6 Ω\n}`),
    line: "live 2026-03-05 with M1\n{",
    message: "A block begins on the line of its word: move this { to the end of the line above.",
    fixed: "live 2026-03-05 with M1 {",
  },
  {
    text: (line) => inSetting(`${line}\nlength 7 m\n}`).text,
    line: 'way 1 radial "Lights"\n{',
    message: "A block begins on the line of its word: move this { to the end of the line above.",
  },
  {
    text: inWay,
    line: "serves shower 8.5kW",
    message: "What it draws is stated on a line of its own: load 8.5 kW.",
    fixed: "load 8.5 kW\nserves shower",
  },
  {
    text: inWay,
    line: "B6 1.0 mm²",
    message:
      "“B6” is a part of the device, which stands on a line of its own with its standard: device BS EN 60898 B6 6 kA.",
  },
  {
    text: inWay,
    line: "tested 2026-03-04 {\n  r1 0.42 Ω\n  Zs 0.49 Ω\n}",
    message:
      "“tested” is one line and takes no block: these lines stand in dead 2026-03-04 with M1 { or live 2026-03-05 with M1 {.",
  },
  ...["6000", "6000 A"].map((said) => ({
    text: inWay,
    line: `device BS EN 60898 B20 ${said}`,
    message: `“${said}” is in amperes: a breaking capacity is written 6 kA.`,
    fixed: "device BS EN 60898 B20 6 kA",
  })),
  {
    text: inWay,
    line: "device BS EN 60898 B20 6 ka",
    message: "“ka” is not a unit here: a breaking capacity is written in kA.",
    fixed: "device BS EN 60898 B20 6 kA",
  },
  {
    text: inWay,
    line: "device BS EN 61009 B20 6 kA 30",
    message: "30 lacks its unit: a rated residual current is written in mA.",
    fixed: "device BS EN 61009 B20 6 kA 30 mA",
  },
  {
    text: inWay,
    line: "device BS EN 60898 Type B 20 6 kA",
    message: "The type and the rated current are one word: B20.",
    fixed: "device BS EN 60898 B20 6 kA",
  },
  {
    text: inWay,
    line: "device BS EN 60898 B-20 6 kA",
    message: "“B-20” is written B20.",
    fixed: "device BS EN 60898 B20 6 kA",
  },
  {
    text: inWay,
    line: 'device "BS EN 60898" B20 6 kA',
    message: '"BS EN 60898" is written without quotes: BS EN 60898.',
    fixed: "device BS EN 60898 B20 6 kA",
  },
  {
    text: inWay,
    line: 'device BS EN 60898 "B20" 6 kA',
    message: '"B20" is written without quotes: B20.',
    fixed: "device BS EN 60898 B20 6 kA",
  },
  {
    text: inLive,
    line: 'Zs "0.57 Ω"',
    message: '"0.57 Ω" is written without quotes: 0.57 Ω.',
    fixed: "Zs 0.57 Ω",
  },
  {
    text: inLive,
    line: "Zs tbc",
    message: "“tbc” gives no figure. Write what was read, as in: Zs 0.62 Ω; or LIM, if only that was noted.",
  },
  {
    text: inLive,
    line: "Zs LIM no access, agreed with the client",
    message: 'The reason for a limitation is written in quotes: "no access, agreed with the client".',
    fixed: 'Zs LIM "no access, agreed with the client"',
  },
  {
    text: inDead,
    line: "polarity LIM not looked at",
    message: 'The reason for a limitation is written in quotes: "not looked at".',
    fixed: 'polarity LIM "not looked at"',
  },
  {
    text: inLive,
    line: "Zs 0.57 Ω 0.55 Ω",
    message: "“Zs” has its figure: that of one line stands behind its name, such as L1 0.55 Ω.",
  },
  {
    text: inLive,
    line: "Zs 0,57 Ω",
    message: "“0,57 Ω” is not a number: it is written 0.57 Ω.",
    fixed: "Zs 0.57 Ω",
  },
  // Taken for a decimal point, a comma between thousands would divide what was read by a thousand.
  {
    text: inSupply,
    line: "Ipf 1,200 A",
    message: "“1,200 A” may be 1200 A or 1.200 A: write the one that is meant.",
    fixed: "Ipf 1200 A",
  },
  {
    text: inLive,
    line: "rcd 24",
    message: "This board has no RCD called “24”. If it is a figure, write its unit, such as 30 mA or 24 ms.",
  },
  ...["A2", "A2:2022", "amendment 2"].map((said) => ({
    text: (line: string) => ofWhole("work new").replace(/standard .*/, line),
    line: `standard BS 7671:2018 ${said}`,
    message: `An amendment is joined to its standard: BS 7671:2018+A2${said.endsWith("2022") ? ":2022" : ""}.`,
    // Of its year the check of editions knows.
    fixed: `standard BS 7671:2018+A2${said.endsWith("2022") ? ":2022" : ""}`,
  })),
  {
    text: (line) => ofWhole("work new").replace(/standard .*/, line),
    line: "standard 18th edition",
    message: "The edition is written by its number and year, with its amendments, as in: standard BS 7671:2018+A2:2022",
  },
  {
    text: (line) => ofWhole(line),
    line: 'installed by "R.M." about',
    message: "“about” is followed by the year, as in: about 1985.",
  },
  {
    text: (line) => ofWhole(line),
    line: 'installed by "R.M." 2026-3-5',
    message: "A day is written year-month-day: 2026-03-05.",
    fixed: 'installed by "R.M." 2026-03-05',
  },
  ...(
    [
      ["4P", "four-pole"],
      ["4 pole", "four-pole"],
      ["4-pole", "four-pole"],
      ["3P", "three-pole"],
      ["3P+N", "four-pole"],
      ["1P+N", "double-pole"],
      ["2p", "double-pole"],
      ["DP", "double-pole"],
      ["SP", "single-pole"],
      ["TP", "three-pole"],
      ["triple pole", "three-pole"],
    ] as const
  ).map(([said, poles]) => ({
    text: inWay,
    line: `device BS EN 60898 C32 ${said} 10 kA`,
    message: `“${said}” is written ${poles}.`,
    fixed: `device BS EN 60898 C32 ${poles} 10 kA`,
  })),
  {
    text: inBoard,
    line: "main-switch BS EN 60947-3 125 A 4P",
    message: "“4P” is written four-pole.",
    fixed: "main-switch BS EN 60947-3 125 A four-pole",
  },
  ...["TPN", "TP&N", "TP & N"].map((said) => ({
    text: inWay,
    line: `device BS EN 60898 C32 ${said} 10 kA`,
    message: `“${said.replaceAll(" ", "")}” does not state whether the neutral opens: write four-pole where it does, three-pole where not.`,
    fixed: "device BS EN 60898 C32 three-pole 10 kA",
  })),
  {
    text: inWay,
    line: "device BS EN 60898 C32 20 A",
    message: "“C32” is rated 32 A, and 20 A stands beside it: keep the one on the device.",
    fixed: "device BS EN 60898 C32",
  },
  {
    text: inWay,
    line: "device BS EN 60898 C32 32 A",
    message: "“C32” has the rated current with it: leave out “32 A”.",
    fixed: "device BS EN 60898 C32",
  },
  {
    text: inWay,
    line: "device B32",
    message: "“device” needs the standard that is on the device, as in: device BS EN 60898 B32",
    fixed: "device BS EN 60898 B32",
  },
  {
    text: inWay,
    line: "device B32 30 mA type A",
    message: "“device” needs the standard that is on the device, as in: device BS EN 61009 B32",
    fixed: "device BS EN 61009 B32 30 mA type A",
  },
  {
    text: inWay,
    line: "device BS EN 60947-2 MCCB 160 A 25 kA",
    message: "BS EN 60947-2 says that already: leave out “MCCB”.",
    fixed: "device BS EN 60947-2 160 A 25 kA",
  },
  {
    text: inWay,
    line: "device BS 3036 MCB 30 A",
    message:
      "“MCB” is usually a device to BS EN 60898, and BS 3036 is written: keep the standard that is on the device, and leave out “MCB”.",
    fixed: "device BS 3036 30 A",
  },
  ...[">200", "0.8", "200"].map((read) => ({
    text: inDead,
    line: `insulation ${read}`,
    message:
      "“insulation” says of each figure which it is: insulation 500 V  L-N 310 MΩ  L-E >999 MΩ  N-E >999 MΩ; or each, where all read alike",
  })),
  {
    text: inDead,
    line: "insulation 500 V >200",
    message:
      "“insulation” says of each figure which it is: insulation 500 V  L-N 310 MΩ  L-E >999 MΩ  N-E >999 MΩ; or each, where all read alike",
    fixed: "insulation 500 V each >200 MΩ",
  },
  {
    text: inDead,
    line: "insulation 500",
    message: "500 lacks its unit: a test voltage is written in V.",
  },
  {
    text: inDead,
    line: 'insulation LIM "Lamps in"',
    message: "“insulation” states the test voltage of a test that was not made too: insulation 500 V LIM",
    fixed: 'insulation 500 V LIM "Lamps in"',
  },
  {
    text: inDead,
    line: "insulation OL",
    message: "“OL” loses the range. Write > and the top of the instrument's range, such as >999 MΩ.",
  },
  ...(
    [
      ["Zs 0R9", "“0R9” is written 0.9 Ω.", "Zs 0.9 Ω"],
      ["Zs 0.9R", "“0.9R” is written 0.9 Ω.", "Zs 0.9 Ω"],
      ["Zs >1R37", "“>1R37” is written >1.37 Ω.", "Zs >1.37 Ω"],
      // What is calculated stays so when its unit is written.
      ["Zs 0.9 calculated", "0.9 lacks its unit: a loop impedance is written in Ω or mΩ.", "Zs 0.9 Ω calculated"],
      ["rcd 1x 25", "25 lacks its unit: a trip time is written in ms.", "rcd 1x 25 ms"],
      ["rcd x1 25", "The multiple of the rated residual current is written 1x.", "rcd 1x 25 ms"],
      ["rcd 1x 25 x5 12 ms", "25 lacks its unit: a trip time is written in ms.", "rcd 1x 25 ms\nrcd 5x 12 ms"],
      ["rcd 1x 25 ms x5 12 ms", "“x5” is written 5x, on a line of its own.", "rcd 1x 25 ms\nrcd 5x 12 ms"],
      ["rcd 30 mA 1x 25 ms 180", "“180” is written from-180.", "rcd 30 mA 1x 25 ms from-180"],
      ["rcd 1x 25 ms 0 deg", "“0 deg” is written from-0.", "rcd 1x 25 ms from-0"],
      ["function test ok", "“function test” is written function.", "function ok"],
    ] as const
  ).map(([line, message, fixed]) => ({ text: inLive, line, message, fixed })),
  ...(
    [
      ["inspected 1.1 to 3.8 ok", "“1.1 to 3.8” is written 1.1..3.8.", "inspected 1.1..3.8 ok"],
      ["inspected 4.1-4.9 ok", "“4.1-4.9” is written 4.1..4.9.", "inspected 4.1..4.9 ok"],
      ["inspected all ok", "“all” names no item: write their numbers, as in: inspected 4.1..4.6 4.13 ok", undefined],
      [
        "next-inspection 10 years",
        '“10 years” is written as the day on which they end, and the reason: next-inspection 2031-03-05 "Let dwelling: five years or change of tenant"',
        undefined,
      ],
      ["tested by J.M. 3/11/26", 'A name or initials is written in quotes: "J.M.".', 'tested by "J.M." 2026-11-03'],
    ] as const
  ).map(([line, message, fixed]) => ({
    text: inInspection,
    line,
    message,
    ...(fixed === undefined ? {} : { fixed }),
  })),
  {
    text: inWay,
    line: "route insulated ceiling",
    message:
      "“insulated” has the length surrounded by thermal insulation behind it, a figure in mm, and here it has none.",
  },
  {
    text: inWay,
    line: "route in loft",
    message: "“in loft” is written ceiling: behind “in” stands the name of a conduit or trunking.",
    fixed: "route ceiling",
  },
  {
    text: inWay,
    line: "reference method C",
    message: "“reference method” is method, and stands on the line of “route”: route conduit 25 mm method B grouped 2",
  },
  {
    text: inSupply,
    line: "bonding gas 10mm",
    message: "10 mm is a length, but a conductor size belongs here, in mm².",
    fixed: "bonding gas 10 mm²",
  },
  {
    text: inSupply,
    line: "spd type 1+2",
    message: "“type 1+2” is written fitted T1-T2.",
    fixed: "spd fitted T1-T2",
  },
  {
    text: inSupply,
    line: "pv 10 kW",
    message: "“pv” is stated by the way that it is on: serves pv.",
  },
  {
    text: inBoard,
    line: "elcb BS 842 60 A",
    message:
      "“elcb”: a breaker that compares the currents of line and neutral is an rcd. One that is operated by a voltage to earth is not counted on: leave it out, and state it in an observation or a note.",
  },
  {
    text: inWay,
    line: "cable flat-twin line 1.0 mm² cpc 1.0 mm² old colours",
    message: 'The colours of the cores are a note or an observation: note "old colours".',
    fixed: 'cable flat-twin line 1.0 mm² cpc 1.0 mm²\nnote "old colours"',
  },
  {
    text: inWay,
    line: "mode 3",
    message: '“mode” is not a word of a way. A fact of your own is written: detail mode "3".',
  },
  { text: inLive, line: "reading 3 Ω", message: "“reading” is not a word of the live tests of a way." },
  {
    text: inWay,
    line: "serves door entry",
    message: "“door entry” is written control.",
    fixed: "serves control",
  },
  { text: inWay, line: "serves hand dryer", message: "“hand dryer” is written appliance.", fixed: "serves appliance" },
  {
    text: inWay,
    line: "serves fish tank",
    message:
      "“fish tank” does not state what it supplies: it is one of 27 words, such as sockets, outdoor-sockets or lighting; what has no word of its own is an appliance.",
  },
  {
    text: inWay,
    line: "load 15 kW pf 0.9",
    message: "“pf 0.9” is stated on a line of its own: power-factor 90 %. A load in kVA has it in it already.",
    fixed: "power-factor 90 %\nload 15 kW",
  },
  {
    text: (line) => inSetting("way 1 spare").text.replace("way 1 spare", line),
    line: 'way 4 TP radial "Lift" {\n}',
    message: "“TP” is stated inside the way, on a line of its own: phase three.",
  },
  {
    text: (line) => inSetting("way 1 spare").text.replace("way 1 spare", line),
    line: 'way 4 L2 radial "Lights" {\n}',
    message: "“L2” is stated inside the way, on a line of its own: phase L2.",
  },
  {
    text: (line) => inSetting("way 1 spare").text.replace("way 1 spare", line),
    line: 'way 4 radial "Lift" three-phase {\n}',
    message: "“three-phase” is stated inside the way, on a line of its own: phase three.",
  },
  {
    text: (line) => inSetting("way 1 spare", { board: line }).text,
    line: "fed-from supply way 3",
    message:
      "“fed-from” names the board alone; which of its ways feeds this board is stated in that way, by feeds and this board's name.",
    fixed: "fed-from supply",
  },
  {
    text: inBoard,
    line: "containment C1 trunking 50x75 steel",
    message: "“50x75” is written 50 mm by 75 mm.",
    fixed: "containment C1 trunking 50 mm by 75 mm steel",
  },
  {
    text: inDead,
    line: 'polarity wrong "Swapped at the switch"',
    message: '“polarity” takes no text: write it on a line of its own, as note "Swapped at the switch".',
    fixed: 'polarity wrong\nnote "Swapped at the switch"',
  },
  {
    text: inDead,
    line: "ends r1 0.61 Ω rn open r2 1.41 Ω",
    message: "“open” is written as what the meter showed: > and the top of its range, such as >999 Ω.",
  },
  {
    text: inLive,
    line: "Zs OL",
    message: "“OL” loses the range. Write > and the top of the instrument's range, such as >999 Ω.",
  },
  {
    text: inWay,
    line: "device rewireable 5 A",
    message: "“rewireable” is stated by the standard on it, such as BS 3036.",
    fixed: "device BS 3036 5 A",
  },
  {
    text: inBoard,
    line: "enclosure metal",
    message: "“metal” does not state what it is made of: did you mean “steel”?",
    fixed: "enclosure steel",
  },
  {
    text: inBoard,
    line: 'fed-from "supply"',
    message: '"supply" is a name, and is written without quotes: supply.',
  },
  {
    text: (line) =>
      inSetting(`way 1 radial "Bench" {\n${line}\n}`, {
        board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A",
      }).text,
    line: 'behind "east"',
    message: '"east" is a name, and is written without quotes: east.',
    fixed: "behind east",
  },
  {
    text: inDead,
    line: 'at "left of the sink" L-N 0.22 Ω',
    message:
      '“"left of the sink"” does not belong here. The line is written so: at S1 L-N 0.22 Ω L-E 0.29 Ω polarity ok',
  },
  ...[inWay, inBoard].flatMap((text) =>
    (
      [
        ["addition", "new"],
        ["added", "new"],
        ["EIC", "new"],
        ["alteration", "altered"],
        ["extended", "altered"],
        ["replaced", "altered"],
        ["minor", "altered"],
        ["old", "existing"],
        ["EICR", "existing"],
      ] as const
    ).map(([said, own]) => partWork(text, [said, own, "what the work is to this part"])),
  ),
  ...(
    [
      ["added", "addition"],
      ["extension", "addition"],
      ["altered", "addition"],
      ["minor-works", "addition"],
      ["periodic", "existing"],
      ["rewire", "new"],
    ] as const
  ).map(([said, own]) => partWork(ofWhole, [said, own, "what kind of work it is"])),
  {
    text: inBoard,
    line: "ip IP44",
    message: "“ip” is written ingress, and has its place in a way or a circuit type.",
  },
  {
    text: (line) => inWay(`cable armoured 90 °C line 70 mm² cpc 70 mm²\n${line}`),
    line: "cable armoured 90 °C line 50 mm² cpc 50 mm²",
    message:
      "“cable” is written here already: of cables in parallel write one, and parallel with their number. Unequal ones, and a size that changes along the route, are not judged here (433.4.2, 433.2).",
  },
  {
    text: inWay,
    line: "device 10 A Type B MCB",
    message: "The type and the rated current are one word: B10.",
    fixed: "device B10 BS EN 60898",
  },
  {
    text: inWay,
    line: "device BS EN 60898 Type C 16 A",
    message: "The type and the rated current are one word: C16.",
    fixed: "device BS EN 60898 C16",
  },
  {
    text: inWay,
    line: "device MCB B32",
    message: "“MCB” is stated by the standard on it, such as BS EN 60898.",
    fixed: "device BS EN 60898 B32",
  },
  {
    text: inWay,
    line: "device RCBO B32 30 mA",
    message: "“RCBO” is stated by the standard on it, such as BS EN 61009.",
    fixed: "device BS EN 61009 B32 30 mA",
  },
  {
    text: inWay,
    line: "device BSEN60898 B32",
    message: "“BSEN60898” is written BS EN 60898.",
    fixed: "device BS EN 60898 B32",
  },
  { text: inWay, line: "device 3036 30 A", message: "“3036” is written BS 3036.", fixed: "device BS 3036 30 A" },
  {
    text: inWay,
    line: "cable T&E line 2.5 mm² cpc 1.5 mm²",
    message: "“T&E” is written flat-twin.",
    fixed: "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
  },
  {
    text: inWay,
    line: "cable twin and earth 2.5/1.5",
    message: "“twin and earth” is written flat-twin.",
    fixed: "cable flat-twin line 2.5 mm²  cpc 1.5 mm²",
  },
  {
    text: inWay,
    line: "cable armoured XLPE line 16 mm² 3 core cpc-by armour",
    message: "“3 core” is written cores 3.",
    fixed: "cable armoured 90 °C line 16 mm² cores 3 cpc-by armour",
  },
  {
    text: inWay,
    line: "cable flat-twin 2.5mm cpc 1.5 mm²",
    message: "Each conductor has a size of its own: write line 2.5 mm², and that of the cpc.",
    fixed: "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
  },
  {
    text: inWay,
    line: "route clipped direct",
    message: "“clipped direct” is written clipped: leave out “direct”.",
    fixed: "route clipped",
  },
  {
    text: inWay,
    line: "route clipped C",
    message: "“C” stands behind “method”: method C.",
    fixed: "route clipped method C",
  },
  {
    text: inWay,
    line: "serves EV charger",
    message: "“EV charger” is written ev-charger.",
    fixed: "serves ev-charger",
  },
  {
    text: inWay,
    line: "serves socket outlets",
    message: "“socket outlets” is written sockets.",
    fixed: "serves sockets",
  },
  {
    text: inWay,
    line: "motor",
    message: "“motor” stands on the line of “serves”: serves motor",
    fixed: "serves motor",
  },
  {
    text: inWay,
    line: "load 2 hp",
    message: "“2 hp” is written in kilowatts: 1.49 kW.",
    fixed: "load 1.49 kW",
  },
  {
    text: inWay,
    line: "load 22kw",
    message: "“22 kw” is written in kilowatts: 22 kW.",
    fixed: "load 22 kW",
  },
  {
    text: inWay,
    line: "starting DOL",
    message: "“DOL” does not state how it is started: did you mean “direct”?",
    fixed: "starting direct",
  },
  {
    text: inWay,
    line: "starting VSD",
    message: "“VSD” does not state how it is started: did you mean “drive”?",
    fixed: "starting drive",
  },
  {
    text: inWay,
    line: "serves VFD",
    message: "“VFD” does not state what it supplies: did you mean “motor”?",
    fixed: "serves motor",
  },
  {
    text: inWay,
    line: "serves hook-up",
    message: "“hook-up” does not state what it supplies: did you mean “outdoor-sockets”?",
    fixed: "serves outdoor-sockets",
  },
  {
    text: inWay,
    line: "serves shore power",
    message: "“shore power” is written outdoor-sockets.",
    fixed: "serves outdoor-sockets",
  },
  {
    text: inWay,
    line: "place outside",
    message: "“outside” does not state where it is: did you mean “outdoors”?",
    fixed: "place outdoors",
  },
  {
    text: inWay,
    line: "place dental surgery",
    message: "“dental surgery” is written medical.",
    fixed: "place medical",
  },
  {
    text: inWay,
    line: "phase brown",
    message: "“brown” does not state which line: did you mean “L1”?",
    fixed: "phase L1",
  },
  {
    text: inWay,
    line: "device BS EN 60898 B",
    message: "“B” is followed by the rated current: B32.",
  },
  {
    text: inWay,
    line: "load 3",
    message: "3 lacks its unit: a power is written in kW or W.",
  },
  {
    text: inWay,
    line: "route clip",
    message: "“clip” does not state how it runs: did you mean “clipped”?",
    fixed: "route clipped",
  },
  {
    text: inWay,
    line: "place bath",
    message: "“bath” does not state where it is: did you mean “bathroom”?",
    fixed: "place bathroom",
  },
  {
    text: inWay,
    line: "efficiency 80 %",
    message: "“efficiency” stands on the line of “load”: load … efficiency …",
  },
  {
    text: inWay,
    line: "cpc 1.5 mm²",
    message: "“cpc” stands on the line of “cable”: cable flat-twin line 2.5 mm² cpc 1.5 mm²",
  },
  {
    text: inWay,
    line: "cable armoured 4c line 16 mm² 90C cpc-by armour",
    message: "“90C” is written 90 °C.",
    fixed: "cable armoured cores 4 line 16 mm² 90 °C cpc-by armour",
  },
  {
    text: inWay,
    line: "serves lights, and sockets",
    message: "The parts of a line follow one another: leave out “and”.",
    fixed: "serves lighting sockets",
  },
  {
    text: inWay,
    line: "spare",
    message: '“spare” stands on the line of the way itself, as in: way 1 radial "Lighting"',
  },
  { text: inDead, line: "R1+R2 n/a", message: "“n/a” is written N/A.", fixed: "R1+R2 N/A" },
  {
    text: inDead,
    line: "R2 not tested",
    message: "“not tested” is written LIM, with the reason in quotes.",
    fixed: 'R2 LIM "why"',
  },
  {
    text: inDead,
    line: "ends 0.45 0.44 0.75",
    message: "“ends” says of each figure which it is: ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
    fixed: "ends r1 0.45 Ω rn 0.44 Ω r2 0.75 Ω",
  },
  {
    text: inDead,
    line: "insulation 500 V all >200 MΩ",
    message: "“all” is written each.",
    fixed: "insulation 500 V each >200 MΩ",
  },
  {
    text: inSupply,
    line: "bonding water gas 10 mm²",
    message: "“bonding” has what is bonded already: “gas” needs a line of its own.",
  },
  {
    text: inSupply,
    line: 'bonding gas none "No clamp"',
    message: "“none” does not state that it is not bonded: did you mean “missing”?",
    fixed: 'bonding gas missing "No clamp"',
  },
  {
    text: inWay,
    line: "location bathroom",
    message: "“location” is not a word of a way, but of an installation or a board; here the word is “place”.",
    fixed: "place bathroom",
  },
  { text: inWay, line: "size 2.5 mm²", message: "“size” is not a word of a way: did you mean “cable”?" },
  {
    text: inDead,
    line: "r1 0.45 Ω rn 0.45 Ω r2 0.75 Ω",
    message: "“r1” stands on the line of “ends”: ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω",
    fixed: "ends r1 0.45 Ω rn 0.45 Ω r2 0.75 Ω",
  },
  {
    text: inDead,
    line: "R1+R2 = 0.68 Ω",
    message: "Blanks alone divide the parts of a line: leave out “=”.",
    fixed: "R1+R2  0.68 Ω",
  },
  {
    text: inDead,
    line: "insulation resistance 500 V L/N 200 MΩ LE 200 MΩ",
    message: "“insulation resistance” is written insulation.",
    fixed: "insulation 500 V L-N 200 MΩ L-E 200 MΩ",
  },
  ...(
    [
      ["L+N-E", "L-E", true],
      ["LN-E", "L-E", true],
      ["L/N-E", "L-E", true],
      ["live-earth", "L-E", false],
      ["L to E", "L-E", false],
      ["L-PE", "L-E", false],
      ["all-E", "L-E", true],
      ["live to neutral", "L-N", false],
      ["N to E", "N-E", false],
    ] as const
  ).map(([said, pair, joined]): Case => {
    const written = `${pair} 200 MΩ${joined ? " joined" : ""}`;
    return {
      text: inDead,
      line: `insulation 500 V ${said} 200 MΩ`,
      message: `“${said}” is written ${pair}${joined ? ", with joined behind the figure" : ""}: ${written}.`,
      fixed: `insulation 500 V ${written}`,
    };
  }),
  { text: inDead, line: "polarity ✓", message: "“✓” is written ok.", fixed: "polarity ok" },
  {
    text: inDead,
    line: "rotation ok",
    message:
      "“rotation” is written phase-sequence, and has its place in the supply, the tests of a supply, a board, the live tests of a way or the live tests of a board.",
  },
  {
    text: inLive,
    line: "Zs: 0,71 Ω",
    message: "“0,71 Ω” is not a number: it is written 0.71 Ω.",
    fixed: "Zs 0.71 Ω",
  },
  {
    text: inLive,
    line: "RCD trip time 28 ms",
    message: "“RCD trip time” is written rcd.",
    fixed: "rcd 28 ms",
  },
  {
    text: inLive,
    line: "rcd test button ok",
    message: "“rcd test button” is written test-button.",
    fixed: "test-button ok",
  },
  {
    text: inWay,
    line: "dead 4/3/26 with M1 {\npolarity ok\n}",
    message: "A day is written year-month-day: 2026-03-04.",
    fixed: "dead 2026-03-04 with M1 {\npolarity ok\n}",
  },
  {
    text: inWay,
    line: "live 5 March 2026 with M1 {\nZs 0.6 Ω\n}",
    message: "A day is written year-month-day: 2026-03-05.",
    fixed: "live 2026-03-05 with M1 {\nZs 0.6 Ω\n}",
  },
  {
    text: inWay,
    line: "dead 31.02.2026 with M1 {\npolarity ok\n}",
    message: "31.02.2026 is not a day in any calendar.",
  },
  {
    text: inSupply,
    line: "main fuse BS 1361 100 A",
    message: "“main fuse” is written cutout.",
    fixed: "cutout BS 1361 100 A",
  },
  {
    text: inSupply,
    line: "earthing conductor 16 mm²",
    message: "“earthing conductor” is written earthing-conductor.",
    fixed: "earthing-conductor 16 mm²",
  },
  {
    text: inSupply,
    line: "main bonding water 10 mm²",
    message: "“main bonding” is written bonding.",
    fixed: "bonding water 10 mm²",
  },
  {
    text: inSupplyAlone,
    line: "earthing TN-C-S\nPFC 1.5 kA",
    message: "“PFC” is not a word of the supply: did you mean “Ipf”?",
    fixed: "earthing TN-C-S\nIpf 1.5 kA",
  },
  {
    text: inBoard,
    line: "main switch BS EN 60947-3 100 A DP",
    message: "“main switch” is written main-switch.",
    fixed: "main-switch BS EN 60947-3 100 A double-pole",
  },
  {
    text: inBoard,
    line: "spd yes",
    message: "“yes” does not state whether one is fitted: did you mean “fitted”?",
    fixed: "spd fitted",
  },
  {
    text: inSupply,
    line: "Ipf 1.2 kA by enquiry",
    message: "“by enquiry” is written declared.",
    fixed: "Ipf 1.2 kA declared",
  },
  {
    text: inSupply,
    line: "Ipf 1.2 kA by measurement",
    message: "What is not marked otherwise was measured: leave out “by measurement”.",
    fixed: "Ipf 1.2 kA ",
  },
  { text: inSupply, line: "spd type 2", message: "“type 2” is written fitted T2.", fixed: "spd fitted T2" },
  {
    text: inSupply,
    line: "spd T2",
    message: "“spd” needs whether one is fitted, as in: spd fitted T2 leads 0.4 m earth 6 mm²",
    fixed: "spd fitted T2",
  },
  {
    text: inLive,
    line: "rcd 30 mA pass",
    message: "“pass” gives no figure. Write what was read, as in: rcd 30 mA 1x 24 ms; or LIM, if only that was noted.",
    fixed: 'rcd 30 mA LIM "Only a tick was recorded"',
  },
  {
    text: inDead,
    line: "R1+R2 ok",
    message: "“ok” gives no figure. Write what was read, as in: R1+R2 0.41 Ω; or LIM, if only that was noted.",
    fixed: 'R1+R2 LIM "Only a tick was recorded"',
  },
  {
    text: inLive,
    line: "rcd 30 mA 1x 22 ms 5x 14 ms",
    message: "“rcd” has the test current as a multiple of IΔn already: “5x” needs a line of its own.",
    fixed: "rcd 30 mA 1x 22 ms\nrcd 30 mA 5x 14 ms",
  },
  {
    text: inLive,
    line: "rcd 30 mA trip current 22 mA",
    message: "A ramp test has a line of its own: trip-current 22 mA.",
    fixed: "trip-current 22 mA",
  },
  {
    text: inWay,
    line: "device BS EN 61009 B32 6 kA RCD 30 mA type A",
    message: "The rated residual current already says that it is an RCD: leave out “RCD”.",
    fixed: "device BS EN 61009 B32 6 kA 30 mA type A",
  },
  {
    text: inWay,
    line: "cable flat-twin line 1 mm² no cpc",
    message: "“no cpc” is written cpc-by none.",
    fixed: "cable flat-twin line 1 mm² cpc-by none",
  },
  {
    text: inWay,
    line: "load 3 kVA",
    message: "“3 kVA” is written in watts, which at a power factor of one draw the same current: 3 kW.",
    fixed: "load 3 kW",
  },
  { text: inWay, line: "serves fire alarm", message: "“fire alarm” is written alarms.", fixed: "serves alarms" },
  {
    text: inWay,
    line: "supplementary-bonding 4 mm²",
    message:
      "Here “supplementary-bonding” takes no “4 mm²”; that is a line of a board: supplementary-bonding bathroom 4 mm² continuity 0.12 Ω",
  },
  {
    text: inLive,
    line: "max Zs 1.37 Ω",
    message: "“max Zs” is written max-Zs, and has its place in a way.",
  },
  { text: inWay, line: "max Zs 1.37 Ω", message: "“max Zs” is written max-Zs.", fixed: "max-Zs 1.37 Ω" },
  {
    text: inWay,
    line: "maximum permitted Zs 1.37 Ω",
    message: "“maximum permitted Zs” is written max-Zs.",
    fixed: "max-Zs 1.37 Ω",
  },
  { text: inLive, line: "max-zs 1.37 Ω", message: "“max-zs” is not a word of the live tests of a way, but of a way." },
  {
    text: inLive,
    line: "permitted 1.37 Ω",
    message: "“permitted” is not written: what is permitted or expected is calculated, and shown beside the reading.",
  },
  ...["three-phase", "3ph", "3 phase", "three phase", "3-phase"].map((said) => ({
    text: inWay,
    line: `load 5.5 kW ${said}`,
    message: `“${said}” is stated on a line of its own: phase three.`,
    fixed: "phase three\nload 5.5 kW",
  })),
  {
    text: inWay,
    line: 'load 5.5 kW single-phase "Saw"',
    message: "A way is single-phase unless phase three is written: leave out “single-phase”.",
    fixed: 'load 5.5 kW "Saw"',
  },
  {
    text: inWay,
    line: "device BS EN 60898 C16 10 kA three-phase",
    message: "“three-phase” is stated on a line of its own: phase three.",
    fixed: "phase three\ndevice BS EN 60898 C16 10 kA",
  },
  {
    text: inBoard,
    line: "main-switch RCD 63 A 100 mA type A",
    message: "“RCD” is stated by the standard on it, such as BS EN 61008.",
    fixed: "main-switch BS EN 61008 63 A 100 mA type A",
  },
  {
    text: inSupply,
    line: "earth 6 mm²",
    message: "“earth” is not a word of the supply: did you mean “earthing-conductor”?",
    fixed: "earthing-conductor 6 mm²",
  },
  { text: inBoard, line: "fed-from supply 3ph", message: "“3ph” is stated on a line of its own: phases three." },
  ...["50x50", "50x50 mm", "50mm x 50mm", "50 mm x 50 mm", "50 mm by 50 mm"].map((sides) => ({
    text: inWay,
    line: `route trunking ${sides} method B`,
    message:
      "The two sides of a trunking are written where it is described, for all circuits in it: containment T1 trunking 50 mm by 50 mm. The route then says in T1.",
  })),
  ...(
    [
      ["100x50", "“100x50” is written 100 mm by 50 mm.", "100 mm by 50 mm"],
      ["100mm x 50mm", "“x 50mm” is written by 50 mm.", "100mm by 50 mm"],
      ["100 mm x 50 mm", "“x 50 mm” is written by 50 mm.", "100 mm by 50 mm"],
    ] as const
  ).map(([sides, message, fixed]) => ({
    text: (line: string) => inSetting("way 1 spare").text.replace("work new", `work new\n${line}`),
    line: `containment T1 trunking ${sides} length 4 m`,
    message,
    fixed: `containment T1 trunking ${fixed} length 4 m`,
  })),
  {
    text: inBoard,
    line: "main-switch 100 A",
    message: "“main-switch” needs the standard on the switch, as in: main-switch BS EN 60947-3 100 A double-pole 400 V",
  },
];

const beside: readonly Case[] = [
  ...(
    [
      ["route clipped to joists", "to joists", "route clipped"],
      ["route clipped along the wall method C", "along the wall", "route clipped method C"],
    ] as const
  ).map(([line, said, fixed]) => ({
    text: inWay,
    line,
    message: `“clipped” says how it runs: leave out “${said}”, or write it as a note.`,
    fixed,
  })),
  { text: inWay, line: "route through loft", message: "“through loft” is written ceiling.", fixed: "route ceiling" },
  {
    text: inWay,
    line: "serves ring final sockets",
    message: "“ring final” is the kind of the circuit, and stands where the way begins: way 1 ring. Leave it out here.",
    fixed: "serves sockets",
  },
  {
    text: inWay,
    line: "serves kitchen sockets",
    message: "“sockets” says what it supplies: leave out “kitchen”, which belongs to the name of the way.",
    fixed: "serves sockets",
  },
  {
    text: inWay,
    line: "cable mineral bare line 2.5 mm² cpc-by sheath",
    message:
      "“bare” is stated by the temperature of the sheath: 105 °C where nobody can touch it and nothing near it burns, otherwise 70 °C.",
    fixed: "cable mineral 70 °C line 2.5 mm² cpc-by sheath",
  },
  {
    text: inWay,
    line: "cable mineral covered line 2.5 mm² cpc-by sheath",
    message: "“covered” is stated by the temperature of the sheath: 70 °C.",
    fixed: "cable mineral 70 °C line 2.5 mm² cpc-by sheath",
  },
  ...["Zs 0.5 at S1", "Zs 0.5 Ω at S1"].map((line) => ({
    text: inLive,
    line,
    message: "A reading at a point is a line of that point: at S1 Zs 0.5 Ω.",
    fixed: "at S1 Zs 0.5 Ω",
  })),
  {
    text: inDead,
    line: "R1+R2 0.31 Ω at S4",
    message: "A reading at a point is a line of that point: at S4 L-E 0.31 Ω.",
    fixed: "at S4 L-E 0.31 Ω",
  },
  ...["DB", "DB2", "board"].map((board) => ({
    text: inLive,
    line: `Zs 0.5 at ${board}`,
    message:
      "The loop impedance at the board is a reading of the board: live 2026-03-05 { Zdb 0.5 Ω }. That of the circuit is read at its furthest point.",
  })),
  {
    text: ofWhole,
    line: "work new installation",
    message: "“new installation” is written new: leave out “installation”.",
    fixed: "work new",
  },
  {
    text: ofWhole,
    line: "work new\n  date 2026-04-09",
    message:
      'A day stands on the line of who signed for it, as in: tested by "R.M." 2026-04-09; the day of a test is that of its block: dead 2026-04-09 { … }.',
  },
  {
    text: inSupply,
    line: "date 2026-04-09",
    message: "A day stands on the line of what was measured: measured 2026-04-09.",
    fixed: "measured 2026-04-09",
  },
  {
    text: inBoard,
    line: "date 2026-04-09",
    message: "A day stands on the line that opens its tests: live 2026-04-09 { … }.",
  },
  {
    text: inDead,
    line: "date 2026-04-09",
    message: "A day stands on the line that opens these tests: dead 2026-04-09 { … }.",
  },
];

const alone: Sources = { file: () => ({ failure: "there is no such file." }), resolve: (_, use) => use };

const ofLanguage = (text: string) =>
  checkProject(fileOfText("sample.ways", text), alone)
    .files.flatMap(({ findings }) => findings)
    .filter(({ check }) => check.startsWith("language/"));

/** The text with the first fix of the first finding that has one, in its own segment. */
function mended(text: string): string | undefined {
  const finding = ofLanguage(text).find(({ fixes }) => fixes.length > 0);
  const [fix] = finding?.fixes ?? [];
  if (!finding || !fix) return undefined;
  const own = finding.spot.segment.text;
  const at = text.indexOf(own);
  return text.slice(0, at) + applyEdits(own, fix.edits) + text.slice(at + own.length);
}

describe("as it is written on site", () => {
  test.each(["device constructor B32", "cable constructor line 2.5 mm²", "Zs constructor"])("%s", (line) => {
    const messages = ofLanguage((line.startsWith("Zs") ? inLive : inWay)(line)).map(({ message }) => message);
    expect(messages.join("\n")).toContain("constructor");
    expect(messages.join("\n")).not.toContain("native code");
  });

  test.each([...cases, ...beside])("$line", ({ text, line, message, fixed }) => {
    const written = text(line);
    expect(ofLanguage(written).map((finding) => finding.message)).toContain(message);
    if (fixed === undefined) return;
    let now = written;
    for (let round = 0; round < 9 && ofLanguage(now).length > 0; round++) now = mended(now) ?? now;
    // The reason of a limitation is for a person to write.
    const left = ofLanguage(now).filter(({ check }) => check !== "language/limitation-without-reason");
    expect(left.map((finding) => finding.message)).toEqual([]);
    expect(now.replaceAll(/ +/g, " ")).toBe(text(fixed).replaceAll(/ +/g, " "));
  });

  test("tests behind a word that opens no block were made, and are not missing", () => {
    const missing = (word: string): string[] => {
      const lines = `device BS EN 60898 B32 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\n${word} {\n  insulation 500 V L-N 310 MΩ L-E 310 MΩ N-E 310 MΩ\n  Zs 0.49 Ω\n}`;
      const found = checkProject(fileOfText("a.ways", inWay(lines)), alone).files.flatMap(({ findings }) => findings);
      return found.map(({ check }) => check).filter((check) => /missing|not-tested/.test(check));
    };
    expect(missing("detail")).toEqual(missing("tested 2026-03-04"));
    expect(missing("tested 2026-03-04")).not.toContain("live/not-tested");
    expect(missing("tested 2026-03-04")).not.toContain("insulation/missing");
    expect(missing("dead 2026-03-04")).toContain("live/not-tested");
  });
});
