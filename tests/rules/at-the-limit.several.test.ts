/** Messages and days that turn with one more or one less. */
import { describe, expect, it } from "vitest";
import { againstLength } from "../../server/readings/population.ts";
import { find, fixed } from "../helpers/find.ts";
import { holdAtLimits, type Limit } from "../helpers/limits.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const annexe = (feeder: string, ...devices: readonly string[]): string => {
  const ways = devices.map((device, at) => `way ${at + 1} radial "Bench" {\ndevice ${device}\n}`).join("\n");
  return `wayfile 1\ninstallation "Works" {\nsupply {\nearthing TN-S\n}\nboard A "Main" {\nfed-from supply\nway 1 feeder "Annexe" {\ndevice ${feeder}\nfeeds B\n}\n}\nboard B "Annexe" {\nfed-from A\n${ways}\n}\n}`;
};

// Three years and 45 days are 1141 of them, with a leap year between; guidance has three years for workshops.
const next: Limit = {
  check: "inspection/next-too-late",
  text: `wayfile 1\ninstallation "Kiln house" {\npremises industrial\ninspection periodic 2026-03-05 {\nnext-inspection # "By its condition"\n}\n}`,
  found: {
    "2029-03-05": "",
    "2029-04-18": "",
    "2029-04-19": ["information", "3.1 years to the next inspection; for industrial premises 3 is the longest"],
    "2031-03-05": ["information", "5 years"],
  },
};
// A place on a board may have a shorter one than its premises: a construction site three months, a home ten years.
const places: Limit = {
  check: "inspection/next-too-late",
  text: `wayfile 1\ninstallation "House" {\npremises dwelling\ninspection periodic 2026-03-05 {\nnext-inspection # "By its condition"\n}\nboard A "Main" {\nplace construction\n}\n}`,
  found: { "2026-06-05": "", "2026-07-18": "", "2026-07-25": "information", "2031-03-05": "information" },
};
// A home that is let has five years, whoever says so.
const letHome: Limit = {
  check: "inspection/next-too-late",
  text: `wayfile 1\ninstallation "House" {\npremises dwelling\ninspection periodic 2026-03-05 {\n#\nnext-inspection 2036-03-05 "Ten years"\n}\n}`,
  found: {
    'client "The owner"': "",
    'reason "Outlet moved"': "",
    'client "Mill Lane Lettings"': [
      "information",
      "10 years to the next inspection; for let premises 5 is the longest",
    ],
    'reason "Change of tenant"': "information",
    'occupier "The tenants"': "information",
  },
};
holdAtLimits([next, places, letHome]);

describe("devices that may open together", () => {
  const said = (feeder: string, ...devices: readonly string[]) =>
    find("coordination/no-selectivity", annexe(feeder, ...devices)).map(({ message }) => message);
  const b40 = "BS EN 60898 B40 6 kA";
  // B32 and B40 surely open at 160 A and 200 A, where B63 may open from 189 A on: only the larger is in question.
  it.each([
    [["BS EN 60898 B63 6 kA", b40], "B40 BS EN 60898 downstream: 189 A, at least 200 A required"],
    [["BS EN 60898 B63 6 kA", b40, b40], "B40 BS EN 60898 downstream and one other: 189 A"],
    [["BS EN 60898 B63 6 kA", b40, b40, b40], "B40 BS EN 60898 downstream and 2 others: 189 A"],
    [
      ["BS EN 60898 B63 6 kA", "BS EN 60898 C32 6 kA", b40],
      "C32 BS EN 60898 downstream and one other: 189 A, at least 320 A",
    ],
    [
      ["BS EN 60898 B63 6 kA", b40, "BS EN 60898 C32 6 kA"],
      "C32 BS EN 60898 downstream and one other: 189 A, at least 320 A",
    ],
    [["BS EN 60898 B63 6 kA", b40, "BS EN 60898 B32 6 kA"], "B40 BS EN 60898 downstream: 189 A"],
    [
      ["BS 88-2 63 A 80 kA gG", "BS 88-2 50 A 80 kA gG", "BS 88-2 63 A 80 kA gG"],
      "63 A BS 88-2 downstream and one other: fuses of class gG",
    ],
  ] as const)("of %j: %s", ([feeder, ...devices], words) => {
    const [message = ""] = said(feeder, ...devices);
    expect(message).toContain(words);
  });

  it("are none where the one upstream holds until the others have opened", () => {
    expect(said("BS EN 60898 B63 6 kA", "BS EN 60898 B32 6 kA")).toEqual([]);
    expect(said("BS EN 60898 D63 6 kA", b40, b40)).toEqual([]);
  });
});

it("what is known by its length is no spare, no ring, and nothing with metal in parallel", () => {
  const read = "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 20 m\ndead 2026-03-04 {\nR1+R2 0.39 Ω\n}";
  const ways = [
    `way 1 radial "A" {\n${read}\n}`,
    `way 2 ring "B" {\n${read}\n}`,
    `way 3 radial "C" {\nparallel-path "Pipes"\n${read}\n}`,
    `way 4 radial "D" {\n${read.replace("0.39 Ω", "0.39 Ω calculated")}\n}`,
    `way 5 radial "E" {\n${read.replace("length 20 m\n", "")}\n}`,
    `way 6 radial "F" {\n${read}\n}`,
  ];
  const node = nodeOf(installationOf(inSetting(ways.join("\n"), { stage: "dead-tested" }).text), "A");
  expect(againstLength(node).map(({ way }) => way.id)).toEqual(["1", "6"]);
});

// What stood there stays in a note on the line below, whether the line goes on or not.
it.each([
  ["device BS EN 60898 B41\nIb 5 A", 'device BS EN 60898 B45\nnote "Corrected: was written B41"\nIb 5 A'],
  ["device BS EN 60898 B41 6 kA\nIb 5 A", 'device BS EN 60898 B45 6 kA\nnote "Corrected: was written B41"\nIb 5 A'],
  ["Ib 5 A\ndevice BS EN 60898 B41", 'Ib 5 A\ndevice BS EN 60898 B45\nnote "Corrected: was written B41"'],
])("%j, written wrongly, is %j", (lines, corrected) => {
  const [finding] = find("design/device-rating-unusual", `way 1 radial "Kiln" {\n${lines}\n}`, { stage: "tested" });
  expect(finding && fixed(finding)).toContain(corrected);
});
