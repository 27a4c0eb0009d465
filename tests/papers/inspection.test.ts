/** The paper of an inspection: which it is, what it must hold, and when it may not be given. */
import { describe, expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { inspectionReport } from "../../server/reports/inspection/inspection.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";

interface Parts {
  readonly edition?: string;
  readonly work?: string;
  readonly inspection?: string;
  readonly heater?: string;
}

const tests = `dead 2026-05-01 with M1 {
        R1+R2       0.18 Ω
        insulation  500 V L-N >999 MΩ L-E 200 MΩ N-E >999 MΩ
        polarity    ok
      }
      live 2026-05-01 with M1 {
        Zs           0.49 Ω
        rcd          30 mA 1x 22 ms
        test-button  ok
        function     ok
      }`;

const hut = ({ edition = "A2:2022", work = "existing", inspection = "", heater = tests }: Parts): string => `wayfile 1
instrument M1 "Tester" { serial "77" }
installation "Peat hut" {
  standard  BS 7671:2018+${edition}
  stage     tested
  work      ${work}
  premises  commercial
  location  "North bank"
  designed  by "D.E." 2026-04-01
  installed by "F.G." 2026-04-20
  tested    by "A.B." 2026-05-02
  ${inspection}
  supply {
    earthing            TN-S
    U0                  230 V
    Ze                  0.30 Ω
    Ipf                 0.9 kA
    cutout              BS 88-3 80 A
    tails               25 mm²
    earthing-conductor  16 mm²
    bonding             water 10 mm²  length 5 m  continuity 0.01 Ω
    spd                 fitted
    polarity            ok
    measured            2026-05-01 with M1
  }
  board A "Hut board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    live 2026-05-01 with M1 {
      Zdb       0.30 Ω
      Ipf       0.9 kA
      polarity  ok
    }
    way 1 radial "Heater" {
      device  BS EN 61009 B16 10 kA 30 mA type A
      cable   flat-twin line 2.5 mm² cpc 1.5 mm²
      route   clipped method C
      length  9 m
      serves  heating
      Ib      9 A
      ${heater}
    }
  }
}
`;

const periodic = (lines: string): string => `inspection periodic 2026-05-01 to 2026-05-02 {
    client "Mill Lane Housing" address "4 Mill Lane"
    reason "Change of tenant"
    limitation agreed board A way 1 "Heater" why "in use" with "The manager"
    inspected 4.5 ok
    inspected C2 "Enclosure"
    next-inspection 2031-05-01 "Five years"
    tested by "A.B." 2026-05-02 position "Inspector" firm "Own firm"
    authorised by "C.D." 2026-05-03
    ${lines}
  }`;

function paperOf(parts: Parts): string {
  const file = fileOfText("hut.ways", hut(parts));
  const { files } = checkProject(file, { file: () => ({ failure: "no." }), resolve: (_, use) => use });
  const [installation] = installationsOf([file]);
  if (!installation) throw new Error("There is no installation.");
  const paper = inspectionReport(
    [installation],
    files.flatMap(({ findings }) => findings),
  );
  return "failure" in paper ? `REFUSED ${paper.failure}` : reportText(paper).replace(/\s+/g, " ");
}

// What stood there before is asked of old work; a signature without a declaration says nothing.
describe("a paper of new work", () => {
  const before = ["Occupier", "Reason", "Wired", "Additions", "Records", "Last inspected"];
  const named = (paper: string) => before.filter((name) => paper.includes(` ${name} `));

  test("names what stood there before only where that is stated", () => {
    expect(named(paperOf({ work: "new" }))).toEqual([]);
    const initial = 'inspection initial 2026-05-01 {\n    occupier "A tenant"\n    tested by "A.B." 2026-05-02\n  }';
    expect(named(paperOf({ work: "new", inspection: initial }))).toEqual(["Occupier"]);
    expect(named(paperOf({ inspection: periodic("") }))).toEqual(before);
  });

  test("declares what each signature stands for", () => {
    const complies = "complies with BS 7671:2018+A2:2022, apart from the departures stated in this paper.";
    const declared = (paper: string) => /I declare .*?\. /.exec(paper)?.[0].trim() ?? "";
    const initial = declared(paperOf({ work: "new" }));
    expect([initial.startsWith("I declare that the work beside my name"), initial.endsWith(complies)]).toEqual([
      true,
      true,
    ]);
    const minor = paperOf({
      work: "addition",
      inspection: 'inspection minor 2026-05-01 {\n    work-done "A socket"\n  }',
    });
    expect(minor).toContain("does not impair the safety of the existing installation");
    expect(declared(paperOf({ inspection: periodic("") }))).toContain("within the extent and the limitations stated");
  });
});

describe("a condition report", () => {
  // What BS 7671 Appendix 6 asks of a condition report, section by section, from memory.
  test.each([
    ["title", "condition report: periodic inspection"],
    ["edition", "BS 7671:2018+A2:2022"],
    ["who ordered it", "Mill Lane Housing, 4 Mill Lane"],
    ["reason", "Change of tenant"],
    ["days", "2026-05-01 to 2026-05-02"],
    ["limitation, and with whom it was agreed", "agreed limitation A/1 Heater: in use The manager"],
    ["concealed cables", "Cables concealed in the fabric"],
    ["outcome", "Outcome: unsatisfactory for continued use"],
    ["observation", "1 C2 board A Cover cracked potentially dangerous: urgent remedial action"],
    ["next inspection, and why", "Next inspection by 2031-05-01: Five years."],
    ["who inspected", "Inspected and tested by A.B., Inspector, Own firm signature"],
    ["who authorised it", "Authorised for issue by C.D. signature"],
    ["earthing", "Earthing TN-S"],
    ["fault current", "Ipf 0.9 kA"],
    ["bonding", "Main bonding water 10 mm²"],
    ["items by sight", "4.5 ✓ Enclosure C2"],
    ["schedule", "Circuit details and test results: Board A"],
    ["guidance for recipients", "FI is to be investigated without delay"],
  ])("holds its %s", (_, text) => {
    expect(paperOf({ inspection: periodic('observation C2 "Cover cracked" board A') })).toContain(text);
  });

  test("shows what the codes come to where the signatory overrules them", () => {
    const text = paperOf({
      inspection: periodic('observation C3 "No chart" board A\n    outcome unsatisfactory "Damp throughout"'),
    });
    expect(text).toContain(
      "unsatisfactory for continued use, by the signatory; the codes alone come to satisfactory. Reason: Damp throughout.",
    );
  });

  test("judges further investigation by the edition, and says that it is due all the same", () => {
    const inspection = periodic('observation FI "Buzzing at the board" board A');
    expect(paperOf({ inspection })).toContain("Outcome: unsatisfactory");
    const later = paperOf({ inspection, edition: "A4:2026" });
    expect(later).toContain("Outcome: satisfactory");
    expect(later).toContain("Further investigation is still required without delay.");
  });

  test("prints no item number of an edition whose list was not seen", () => {
    expect(paperOf({ inspection: periodic("") })).toMatch(/\b4\.5\b/);
    expect(paperOf({ inspection: periodic(""), edition: "A4:2026" })).not.toMatch(/\b4\.5\b/);
  });
});

describe("a certificate", () => {
  test("is given where every test is there and passes", () => {
    const text = paperOf({ work: "new" });
    expect(text).toContain("installation certificate: initial verification");
    for (const role of ["Design D.E.", "Construction F.G.", "Inspection and testing A.B."])
      expect(text).toContain(role);
  });

  test.each([
    ["missing", "", /^REFUSED No installation certificate can be given: .*required tests? (is|are) missing/],
    [
      "failed",
      tests.replace("0.49", "4.9"),
      /^REFUSED No installation certificate can be given: .*A\/1 fails: Zs, the far point 4\.9 Ω/,
    ],
    [
      "limited",
      tests.replace("200 MΩ", 'LIM "in use"'),
      /^REFUSED No installation certificate can be given: .*test is limited/,
    ],
  ])("is refused with the reason where a test is %s", (_, heater, refusal) => {
    expect(paperOf({ work: "new", heater })).toMatch(refusal);
  });
});

test("an existing installation without an inspection gives no report", () => {
  expect(paperOf({})).toBe(
    "REFUSED No condition report can be given: no inspection is written in the schedule (begin one with “inspection periodic” and its day). “wayfile check” shows where.",
  );
});

test("the paper of minor work sets no next inspection", () => {
  const minor = paperOf({
    work: "addition",
    inspection:
      'inspection minor 2026-05-01 {\n work-done "Heater moved"\n covers board A way 1\n tested by "A.B." 2026-05-01\n }',
  });
  expect(minor).toContain("Heater moved");
  expect(minor).not.toMatch(/next inspection/i);
});

describe("what is found and not observed", () => {
  const low = tests.replace("L-E 200 MΩ", "L-E 0.2 MΩ");
  const free = periodic("outcome satisfactory").replace(/\n {4}limitation.*/, "");

  test("is named before a report says that nothing requires action", () => {
    const paper = paperOf({ inspection: free, heater: low });
    expect(paper).toContain(
      "No observation was made. !! Found in the schedules, and named by no observation: Usually C2: L-E reads 0.2 MΩ",
    );
    expect(paper).not.toContain("nothing requires remedial action");
    expect(paperOf({ inspection: free })).toContain("No observation was made: nothing requires remedial action.");
  });

  test("is not named once an observation does", () => {
    const observed = free.replace("outcome satisfactory", 'observation C2 "Damp heater" board A way 1');
    const paper = paperOf({ inspection: observed, heater: low });
    expect(paper).toContain("Damp heater");
    expect(paper).not.toContain("named by no observation");
  });
});
