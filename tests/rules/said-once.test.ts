/** What may be said once for several circuits, lines or pairs of conductors means the same as when it is written out. */
import { describe, expect, test } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { insulationOf } from "../../server/readings/insulation.ts";
import { comparisonOf } from "../../server/reports/compare/comparison.ts";
import { comparisonReport } from "../../server/reports/compare/report.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { applyEdits } from "../../server/text/lines.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

const type = `circuit-type lights radial {
  device  BS EN 61009 B10 10 kA 30 mA type A
  cable   flat-twin  line 1.5 mm²  cpc 1 mm²
  route   clipped  method C
  serves  lighting
}
`;
const shared = type.split("\n").slice(1, 5).join("\n");

const schedule = (ways: string, { types = "", phases = "three" } = {}): string => `wayfile 1
${types}installation "Yard" {
  standard  BS 7671:2018+A2:2022
  stage     dead-tested
  supply {
    earthing  TN-S
    phases    ${phases}
    Ze        0.18 Ω
  }
  board A "Yard" {
    fed-from  supply
${ways}
  }
}
`;

const own = `length 31 m
Ib 2 A
dead 2026-03-04 {
  R1+R2 9.7 Ω
  insulation 500 V each >999 MΩ
  polarity ok
}`;

/** The ways in their place, and what each test of insulation read. */
function studied(text: string) {
  const [installation] = installationsOf([fileOfText("sample.ways", text)]);
  return (installation?.boards ?? []).flatMap(({ board, context }) => board.ways.map((way) => studyWay(way, context)));
}

const checks = (text: string): string[] =>
  findingsOf(text)
    .map(({ check, message }) => `${check}: ${message}`)
    .sort();

describe("a circuit type", () => {
  const typed = schedule(`way 1L1 as lights "Corridor" {\n${own}\n}`, { types: type });
  const written = schedule(`way 1L1 radial "Corridor" {\n${shared}\n${own}\n}`);

  test("means what its lines mean in the way", () => {
    expect(checks(typed)).toEqual(checks(written));
    expect(checks(typed).some((line) => line.startsWith("continuity/"))).toBe(true);
    const [way] = studied(typed);
    expect([way?.isSpare, way?.cable?.line, way?.facts.one("device")?.args.curve?.rating]).toEqual([
      false,
      studied(written)[0]?.cable?.line,
      10,
    ]);
  });

  test("gives way to a line of the way itself", () => {
    const text = schedule(`way 1L1 as lights {\ndevice BS EN 61009 B16 10 kA 30 mA type A\n${own}\n}`, { types: type });
    expect(
      studied(text)[0]
        ?.facts.all("device")
        .map(({ args }) => args.curve?.rating),
    ).toEqual([16]);
  });

  test("is told of where the way names it", () => {
    const text = schedule(`way 1L1 as lights {\nlength 31 m\nIb 2 A\n}`, { types: type.replace("B10", "B32") });
    const line = text.split("\n").findIndex((one) => one.includes("as lights")) + 1;
    const found = findingsOf(text).filter(({ check }) => check.startsWith("design/"));
    expect([...new Set(found.map(({ line: at }) => at))]).toEqual([line]);
  });

  test("that nothing defines is one fault, and what it may say is not missing", () => {
    const text = schedule(`way 1L1 as lihgts "Corridor" {\nlength 31 m\nIb 2 A\n}`, { types: type });
    const found = findingsOf(text).filter(({ line }) => line > 15);
    expect(
      found.map(({ check }) => check).filter((check) => !/^(continuity|insulation|polarity)\/missing$/.test(check)),
    ).toEqual(["language/unknown-name"]);
  });

  test("that is defined twice is a fault", () => {
    const text = schedule(`way 1L1 as lights {\n${own}\n}`, { types: type + type });
    expect(findingsOf(text).map(({ check }) => check)).toContain("language/duplicate-name");
  });

  test("holds no lengths, loads or readings", () => {
    const text = schedule("way 1L1 spare", { types: type.replace("serves", "length 3 m\nIb 2 A\nserves") });
    expect(findingsOf(text).filter(({ check }) => check === "language/unknown-word")).toHaveLength(2);
  });
});

test("a change of a circuit type names the ways it is a change of", () => {
  const before = schedule('way 1L1 as lights "Corridor"\nway 1L2 as lights "Store"', { types: type });
  const [was, is] = [before, before.replace("B10", "B6")].map((text) => {
    const [installation] = installationsOf([fileOfText("sample.ways", text)]);
    if (!installation) throw new Error("The sample has no installation.");
    return { called: "a version", installation };
  });
  const report = was && is ? reportText(comparisonReport(comparisonOf(was, is))) : "";
  expect(report).toMatch(/circuit-type lights, device +BS EN 61009 B10 .* B6 /);
  expect(report).toContain("(A/1L1 and A/1L2)");
});

describe("insulation of each pair", () => {
  const pairs = (ways: string, phases = "three") =>
    studied(schedule(ways, { phases })).map((study) => insulationOf(study)?.values.map(({ pair }) => pair));
  const tested = (line: string) => `dead 2026-03-04 {\ninsulation 500 V ${line}\n}`;

  test("is that of the conductors the circuit has", () => {
    const three = `way 1 radial {\nphase three\n${tested("each >999 MΩ")}\n}`;
    const motor = `way 2 radial {\nphase three\ncable armoured line 4 mm² cores 3\n${tested("each >999 MΩ")}\n}`;
    const single = `way 3L2 radial {\n${tested("each >999 MΩ")}\n}`;
    const joined = `way 4L3 radial {\n${tested("each >999 MΩ joined")}\n}`;
    expect(pairs([three, motor, single, joined].join("\n"))).toEqual([
      ["L-L", "L-E", "L-N", "N-E"],
      ["L-L", "L-E"],
      ["L-E", "L-N", "N-E"],
      ["L-E"],
    ]);
  });

  test("leaves a pair that is named its own reading", () => {
    const [study] = studied(schedule(`way 1L1 radial {\n${tested("L-E 4 MΩ each >999 MΩ")}\n}`));
    const test = study && insulationOf(study);
    expect(test?.values.find(({ pair }) => pair === "L-E")?.quantity.value).toBe(4e6);
  });

  test("below the minimum is one finding", () => {
    const text = schedule(`way 1L1 radial {\n${tested("each 0.3 MΩ")}\n}`);
    expect(findingsOf(text).filter(({ check }) => check === "insulation/below-minimum")).toHaveLength(1);
  });
});

describe("a result beside another reading", () => {
  const way = (dead: string, live: string) =>
    schedule(
      `way 1L1 as lights {\nlength 31 m\nIb 2 A\ndead 2026-03-04 {\n${dead}\n}\nlive 2026-03-05 {\n${live}\n}\n}`,
      {
        types: type,
      },
    );
  const beside = way("R1+R2 0.94 Ω polarity ok", "rcd 30 mA 1x 24 ms test-button ok");
  const apart = way("R1+R2 0.94 Ω\npolarity ok", "rcd 30 mA 1x 24 ms\ntest-button ok");

  test("means what a line of its own means", () => {
    expect(checks(beside)).toEqual(checks(apart));
    expect(checks(way("R1+R2 0.94 Ω", "rcd 30 mA 1x 24 ms"))).not.toEqual(checks(apart));
  });

  test("is repeated by a line of its own", () => {
    const text = way("R1+R2 0.94 Ω polarity ok\npolarity ok", "test-button ok\nrcd 30 mA 1x 24 ms test-button failed");
    expect(findingsOf(text).filter(({ check }) => check === "language/repeated")).toHaveLength(2);
  });

  test("that is wrong is found where it stands", () => {
    const text = way("R1+R2 0.94 Ω polarity wrong", "rcd 30 mA 1x 24 ms test-button failed");
    const line = (of: string) => text.split("\n").findIndex((one) => one.includes(of)) + 1;
    const errors = findingsOf(text).filter(({ severity }) => severity === "error");
    expect(errors.map(({ line: at }) => at)).toEqual([line("polarity wrong"), line("test-button failed")]);
  });
});

describe("the line in the number of a way", () => {
  const phases = (id: string, more: string, supply = "three") =>
    studied(schedule(`way ${id} radial {\n${more}\n}`, { phases: supply })).map(
      ({ facts }) => facts.one("phase")?.args.phase.value,
    );

  test.each([
    ["1L2", "", "three", "L2"],
    ["6/L3", "", "three", "L3"],
    ["1L2", "", "single", undefined],
    ["1L4", "", "three", undefined],
    ["L2", "", "three", undefined],
    ["1L2", "phase L3", "three", "L3"],
    ["1L2", "cable armoured line 4 mm² cores 3", "three", "L2"],
    ["1L2", "cable armoured line 4 mm² cores 4", "three", undefined],
  ])("%s %s on a board of %s", (id, more, supply, wanted) => {
    expect(phases(id, more, supply)).toEqual([wanted]);
  });

  test("against the line of the way", () => {
    const found = findingsOf(schedule("way 1L2 radial {\nphase L3\n}"));
    expect(found.filter(({ check }) => check === "demand/line-against-name")).toHaveLength(1);
  });
});

describe("spare ways in a run", () => {
  const names = (line: string) => studied(schedule(line)).map(({ way }) => way.id);

  test.each([
    ["way 10..12 spare", ["10", "11", "12"]],
    ["way 8L2..9L1 spare", ["8L2", "8L3", "9L1"]],
    ["way 8/L2..8/L3 spare", ["8/L2", "8/L3"]],
  ])("%s", (line, wanted) => {
    expect(names(line)).toEqual(wanted);
    expect(findingsOf(schedule(line)).filter(({ check }) => check.startsWith("language/"))).toEqual([]);
  });

  test.each(["way 12..10 spare", "way 10..12 radial", "way 8L2..9 spare", "way 1..9999 spare"])(
    "%s is a fault",
    (line) => {
      expect(findingsOf(schedule(line)).map(({ check }) => check)).toContain("language/wrong-argument");
    },
  );

  test("one of them is defined again", () => {
    const found = findingsOf(schedule('way 10..12 spare\nway 11 radial "Kiln"'));
    expect(found.map(({ check }) => check)).toContain("language/duplicate-name");
  });
});

describe("a proposal for a way of a circuit type", () => {
  const design = (length: number, Ib: number) =>
    schedule(`way 1 as lights "Corridor" {\nlength ${length} m\nIb ${Ib} A\n}`, { types: type, phases: "single" });

  /** The way's text once the proposal is written into it. */
  const proposedFor = (text: string): string | undefined => {
    const [study] = studied(text);
    const { fix } = study ? propose(study, {}) : {};
    return study && fix && applyEdits(study.way.segment.text, fix.edits);
  };

  test("writes lines of the way's own, with all that the type's line says", () => {
    const written = proposedFor(design(131, 14));
    expect(written).toMatch(/\{\s*device BS EN 61009 B16 10 kA 30 mA type A\ncable flat-twin line 16 mm² cpc 6 mm²\n/);
    expect(written).toContain("length 131 m\nIb 14 A");
  });

  test("writes nothing where those of the type do", () => {
    const smallest = design(12, 4).replace("B10", "B6").replace("line 1.5", "line 1.0");
    expect(proposedFor(smallest)).toBe(studied(smallest)[0]?.way.segment.text);
  });
});

test("a shared conduit's circuits are counted where the route is the type's", () => {
  const pipe = type.replace("route   clipped  method C", "route   method B in C1");
  const two = ["1", "2"].map((id) => `way ${id} as lights "Corridor" {\nlength 12 m\nIb 4 A\n}`).join("\n");
  const text = schedule(`containment C1 conduit 25 mm length 6 m bends 1\n${two}`, { types: pipe, phases: "single" });
  const [installation] = installationsOf([fileOfText("sample.ways", text)]);
  const [place] = installation?.boards ?? [];
  const [way] = place?.board.ways ?? [];
  const study = place && way && studyWay(way, place.context);
  const { fix } = study ? propose(study, {}, installation) : {};
  expect(study && fix && applyEdits(study.way.segment.text, fix.edits)).toContain("route method B in C1 grouped 2\n");
});

test("no fix in a way takes hold of a line of its type", () => {
  const device = type.replace("B10", "C6");
  const text = schedule(
    `way 1L1 as lights "Corridor" {\nlength 131 m\nIb 14 A\n${own.split("\n").slice(2).join("\n")}\n}`,
    { types: device },
  );
  const file = fileOfText("sample.ways", text);
  const [installation] = installationsOf([file]);
  const findings = installation ? checkInstallation(installation).findings : [];
  const inWay = findings.filter(({ spot }) => spot.segment.word === "way");
  const [way] = studied(text);
  expect(inWay.length).toBeGreaterThan(0);
  for (const { fixes } of inWay)
    for (const { edits } of fixes) {
      const after = applyEdits(way?.way.segment.text ?? "", edits);
      const found = findingsOf(text.replace(way?.way.segment.text ?? "", after));
      expect(
        found.filter(({ check }) => check.startsWith("language/")),
        after,
      ).toEqual([]);
    }
});
