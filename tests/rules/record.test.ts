import { describe, expect, it } from "vitest";
import { editions } from "../../server/tables/editions.ts";
import { find, fixed, marked } from "../helpers/find.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const file = (lines: string): string => `wayfile 1\ninstallation "Kiln {house}" {\n${lines}\n}\n`;
const tested = { stage: "tested" } as const;

describe("the edition", () => {
  it("is offered newest first where none is named, and the line lands in the block", () => {
    const [finding] = find("record/no-standard", file("  stage design"));
    expect(finding?.fixes).toHaveLength(editions.length);
    expect(finding && fixed(finding)).toBe('installation "Kiln {house}" {\n  standard BS 7671:2018+A4:2026\n');
    expect(finding?.fixes.at(-1)?.title).toContain("BS 7671:2001");
  });

  it("that is not known offers the nearest first", () => {
    const [finding] = find("record/unknown-edition", file("standard BS 7671:2018+A2:2021"));
    expect(finding && fixed(finding)).toContain("standard BS 7671:2018+A2:2022");
    expect(find("record/unknown-edition", file("standard BS7671:2018 + A2:2022"))).toEqual([]);
  });

  it("whose numbers were not seen is said once for the file", () => {
    const two = file('standard BS 7671:2018+A4:2026\nboard A "x" {\nfed-from supply\nway 1 spare\nway 2 spare\n}');
    expect(find("record/edition-unverified", two)).toHaveLength(1);
  });

  it.each([
    ["BS 7671:2008+A3:2015", "2018-12-30", 0],
    ["BS 7671:2008+A3:2015", "2019-06-30", 0],
    ["BS 7671:2008+A3:2015", "2019-07-01", 1],
    ["BS 7671:2018", "2022-09-27", 0],
    ["BS 7671:2018", "2022-09-28", 1],
    // Amendment 3 adds one rule for circuits fed from both ends; naming Amendment 2 alone is no slip.
    ["BS 7671:2018+A2:2022", "2026-03-05", 0],
    ["BS 7671:2018+A2:2022", "2026-10-14", 0],
    ["BS 7671:2018+A2:2022", "2026-10-15", 1],
    ["BS 7671:2018+A4:2026", "2026-10-15", 0],
  ])("%s designed on %s", (standard, day, count) => {
    const lines = `standard ${standard}\nwork new\ndesigned by "K.A." ${day}`;
    expect(find("record/edition-superseded", file(lines))).toHaveLength(count);
    expect(find("record/edition-superseded", file(lines.replace("work new", "work existing")))).toEqual([]);
  });
});

describe("how far the work is", () => {
  it("offers every stage, and tells of tests that go unasked", () => {
    const [finding] = find("record/no-stage", file("standard BS 7671:2018"));
    expect(finding?.fixes.map(({ title }) => title)).toContain("Add “stage dead-tested”");
  });

  it.each([
    ["dead 2026-03-04 {\n R1+R2 0.3 Ω\n }", true],
    ["live 2026-03-05 {\n Zs 0.6 Ω\n }", true],
    ["Ib 6 A", false],
  ])("says that missing tests go unasked where %s is written: %s", (line, says) => {
    const lines = `standard BS 7671:2018\nboard A {\nway 1 radial "x" {\n ${line}\n}\n}`;
    const [finding] = find("record/no-stage", file(lines));
    expect(finding?.message.includes("missing tests are not reported")).toBe(says);
  });

  it("dead tests at the stage dead-tested are in their place", () => {
    const lines = 'way 1 radial "x" {\n dead 2026-03-04 {\n R1+R2 0.3 Ω\n }\n}';
    expect(find("record/stage-behind", lines, { stage: "dead-tested" })).toEqual([]);
    const [finding] = find("record/stage-behind", lines, { stage: "design" });
    expect(finding?.severity).toBe("information");
    expect(finding && fixed(finding)).toContain("stage dead-tested");
  });
});

describe("the supply", () => {
  const missing = (supply: string, stage: "design" | "tested" = "design") =>
    find("record/supply-incomplete", "way 1 spare", { supply, stage })[0]?.message;

  it("names what it lacks, once each", () => {
    expect(missing("U0 230 V")).toContain("lacks earthing, Ze and Ipf");
    expect(missing("earthing TN-S\nZe 0.3 Ω")).toContain("lacks Ipf");
    expect(missing("earthing TN-S\nZe 0.3 Ω\nPSCC 1.2 kA\nPEFC 1.1 kA")).toBeUndefined();
  });

  it("does not lack what stands there under another word", () => {
    const lacks = (supply: string) =>
      findingsOf(inSetting("way 1 spare", { supply, stage: "design" }).text)
        .filter(({ check }) => check === "record/supply-incomplete")
        .map(({ message }) => message);
    expect(lacks("arrangement TN-S\nexternal-impedance 0.3 Ω\nPFC 1.2 kA")).toEqual([]);
    expect(lacks("kind green\nZe 0.3 Ω\nIpf 1.2 kA")).toEqual([expect.stringContaining("lacks earthing")]);
  });

  it("is an error without its earthing, for then no loop is judged, and asked about for the rest", () => {
    const gravity = (supply: string) => find("record/supply-incomplete", "way 1 spare", { supply })[0]?.severity;
    expect(gravity("Ze 0.3 Ω\nIpf 1 kA")).toBe("error");
    expect(gravity("earthing TN-S\nIpf 1 kA")).toBe("warning");
  });

  it("wants the electrode of a TT supply instead of Ze", () => {
    expect(missing("earthing TT\nIpf 1 kA")).toContain("lacks electrode");
    expect(missing("earthing TT\nelectrode 84 Ω\nIpf 1 kA")).toBeUndefined();
  });

  it("takes the fault current of the board at the origin", () => {
    const setting = { supply: "earthing TN-S\nZe 0.3 Ω", board: "fed-from supply\nIpf 1.2 kA" };
    expect(find("record/supply-incomplete", "way 1 spare", setting)).toEqual([]);
  });

  it("is missed as a whole where there are boards", () => {
    const text = file('standard BS 7671:2018\nboard A "x" {\nfed-from supply\n}');
    expect(find("record/supply-incomplete", text)[0]?.message).toContain("not described");
  });
});

describe("the circuit", () => {
  const all = ["no-device", "no-cable", "no-length", "no-kind", "no-description", "serves-not-stated"];

  it.each(all)("a spare way lacks nothing: %s", (name) => {
    expect(find(`record/${name}`, "way 9 spare")).toEqual([]);
  });

  it("a line that could not be read is not missing", () => {
    const { text } = inSetting('way 1 radial "x" {\n device BS EN 60898 B32 6\n cable flat-twin line 6\n length 12\n}');
    const checks = findingsOf(text).map(({ check }) => check);
    expect(checks).toContain("language/missing-unit");
    expect(checks.filter((check) => /^record\/no-(device|cable|length)$/.test(check))).toEqual([]);
  });

  it("each kind is offered after the number", () => {
    const [finding] = find("record/no-kind", 'way 3 "Hall sockets"');
    expect(finding && fixed(finding)).toContain('way 3 ring "Hall sockets"');
  });

  it("a length is not asked of what was there already, nor a use of a feeder", () => {
    expect(find("record/no-length", 'way 1 radial "x"', { work: "existing" })).toEqual([]);
    expect(find("record/no-length", 'way 1 radial "x" {\nrun A 4 m S1\n}')).toEqual([]);
    expect(find("record/serves-not-stated", 'way 1 feeder "x" { feeds A }')).toEqual([]);
  });

  it("a device alone in a spare way is only asked about", () => {
    const found = find("record/spare-in-use", "way 9 spare { device BS EN 60898 B32 6 kA }");
    expect(found.map(({ severity }) => severity)).toEqual(["information"]);
  });
});

describe("what was not measured", () => {
  const way = (reading: string) =>
    `way 1 radial "x" {\n device BS EN 61009 B32 6 kA 30 mA\n live 2026-03-05 {\n ${reading}\n }\n}`;

  it.each([
    ["new", "error"],
    ["addition", "warning"],
    ["existing", undefined],
  ] as const)("a limitation on work that is %s", (work, severity) => {
    const lines = way('Zs LIM "could not be reached, agreed with the owner"');
    expect(find("record/limitation-on-new", lines, { ...tested, work })[0]?.severity).toBe(severity);
  });

  it("one sign for several readings is one limitation", () => {
    const lines = 'way 1 radial "x" {\n dead 2026-03-04 {\n insulation 500 V L-N LIM "lamps in" L-E 310 MΩ\n }\n}';
    const [finding] = find("record/limitations", lines, { ...tested, work: "existing" });
    expect(finding?.message).toContain("One test was not made");
    expect(finding?.related[0]?.message).toContain("lamps in");
  });

  it.each([
    ["Zs N/A", 1],
    ["rcd 30 mA 1x N/A", 1],
    ["polarity N/A", 1],
    ["phase-sequence N/A", 0],
    ["afdd-button N/A", 0],
  ])("%s", (reading, count) => {
    expect(find("record/not-applicable", way(reading), tested)).toHaveLength(count);
  });

  it.each([
    ["R1+R2 N/A\nR2 0.21 Ω", 0],
    ["R1+R2 N/A", 1],
    ["ends N/A", 0],
    ["insulation 500 V L-E 310 MΩ L-N N/A", 0],
    ["insulation 500 V L-E N/A", 1],
  ])("of a radial: %s", (lines, count) => {
    const text = `way 1 radial "x" {\n dead 2026-03-04 {\n ${lines}\n }\n}`;
    expect(find("record/not-applicable", text, tested)).toHaveLength(count);
  });
});

describe("questions", () => {
  it("each open one is counted; an answer closes the question above it", () => {
    const lines =
      'way 1 radial "x" {\n query "One?"\n answer "Yes"\n query "Two?"\n}\nway 2 radial "y" {\n query "Three?"\n}';
    const found = find("record/open-query", lines);
    expect(found.map(({ message }) => message)).toEqual(["Not answered: Two?", "Not answered: Three?"]);
  });

  it("an answer in another block answers nothing", () => {
    const lines = 'way 1 radial "x" {\n query "One?"\n}\nway 2 radial "y" {\n answer "Yes"\n}';
    expect(find("record/answer-without-query", lines)).toHaveLength(1);
    expect(find("record/open-query", lines)).toHaveLength(1);
  });
});

describe("hands and days", () => {
  it("the nearest hand counts, and who tested is enough for what was there already", () => {
    const lines = 'way 1 radial "x" {\n tested by "K.A."\n}';
    expect(find("record/not-signed", lines, { ...tested, work: "existing" })).toEqual([]);
    expect(find("record/not-signed", lines, tested)[0]?.message).toContain("designed and installed");
    expect(find("record/not-signed", lines, { stage: "installed" })).toEqual([]);
  });

  it("a day out of order is told once, however many ways it reaches", () => {
    const setting = { board: 'fed-from supply\ninstalled by "D.O." 2026-02-27\ntested by "K.A." 2026-02-20' };
    expect(find("record/signed-out-of-order", "way 1 spare\nway 2 spare", setting).map(marked)).toEqual([
      'tested by "K.A." 2026-02-20',
    ]);
  });
});

it("an amendment without its year is the edition that has it", () => {
  const text = 'wayfile 1\ninstallation "Kiln house" {\n  standard BS 7671:2018+A2\n}\n';
  expect(findingsOf(text).map(({ message }) => message)).toContain(
    "BS 7671:2018+A2 is not an edition known here, so nothing is compared with its limits: was BS 7671:2018+A2:2022 meant?",
  );
});
