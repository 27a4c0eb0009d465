/** What a record needs in thirty years: names that changed, times nobody has the day of, tests that do not count. */
import { describe, expect, test } from "vitest";
import { format } from "../../server/format/format.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { comparisonOf } from "../../server/reports/compare/comparison.ts";
import { comparisonReport } from "../../server/reports/compare/report.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { summaryOf } from "../../server/reports/summary/summary.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

const schedule = (board: string, own = ""): string => `wayfile 1
installation "Yard" {
  standard  BS 7671:2018+A2:2022
  stage     dead-tested
${own}
  board A "Yard" {
    fed-from  supply
${board}
  }
}
`;

const installationOf = (text: string) => {
  const [installation] = installationsOf([fileOfText("sample.ways", text)]);
  if (!installation) throw new Error("The sample has no installation.");
  return installation;
};

const language = (text: string): string[] =>
  findingsOf(text).flatMap(({ check, line }) => (check.startsWith("language/") ? [`${check.slice(9)} ${line}`] : []));

const way = (id: number, title: string, reading: string, more = "") =>
  `way ${id} radial "${title}" {\n${more}\ndead 2026-03-04 {\nR1+R2 ${reading} Ω\n}\n}`;

const compared = (before: string, after: string): string =>
  reportText(
    comparisonReport(
      comparisonOf(
        { called: "before", installation: installationOf(before) },
        { called: "after", installation: installationOf(after) },
      ),
    ),
  );

describe("a way that took another number and another title", () => {
  const before = schedule([way(5, "Oven", "0.85"), way(6, "Lights", "0.73")].join("\n"));
  const moved = (former: string) => schedule([way(5, "Lights", "0.73"), way(6, "Cooker", "0.85", former)].join("\n"));

  test("keeps its readings", () => {
    const report = compared(before, moved('formerly 5 "Oven" 2026-02-27'));
    expect(report).not.toMatch(/R1\+R2/);
    expect(report).toMatch(/Way A\/6 “Cooker”, was A\/5/);
    expect(report).not.toContain("formerly");
  });

  test("would take those of another without saying so", () => {
    expect(compared(before, moved(""))).toMatch(/R1\+R2/);
  });

  test("is that way in all that is compared later", () => {
    const now = moved('formerly 5 "Oven" 2026-02-27');
    expect(compared(now, now.replace("0.85", "0.95"))).toMatch(/A\/6 +R1\+R2, 2026-03-04 \(altered\) +0.85 Ω +0.95 Ω/);
  });

  test("and a board likewise", () => {
    const after = before.replace('board A "Yard" {', 'board M "Yard" {\nformerly A');
    expect(compared(before, after)).toMatch(/^Board M “Yard”, was A$/m);
  });
});

describe("times nobody has the day of", () => {
  test.each(["1985", "1985-06", "about 1985", "before 2001", "after 1970-01-01"])("%s", (time) => {
    expect(language(schedule(`installed by "unknown" ${time}`))).toEqual([]);
  });

  test.each([
    ['tested by "R.M." 1985', "not-a-date 7"],
    ['tested by "R.M." about 1985', "not-a-date 7"],
    ['installed by "R.M." about', "missing-argument 7"],
    ['installed by "R.M." 1685', "wrong-argument 7"],
  ])("%s is none", (line, wanted) => {
    expect(language(schedule(line).replace("\n\n", "\n"))).toEqual([wanted]);
  });

  test("a test bears its day", () => {
    expect(language(schedule('way 1 radial "Oven" {\ndead 1985 {\n}\n}'))).toContain("not-a-date 9");
  });
});

describe("tests that are struck out", () => {
  const tests = (struck: string) =>
    schedule(
      `way 1 radial "Oven" {\nlength 3 m\ndead 2026-03-04 {\n${struck}R1+R2 88 Ω\n}\ndead 2026-03-01 {\nR1+R2 0.2 Ω\n}\n}`,
    );
  const struck = tests('struck-out by "R.M." 2026-03-06 "Read on way 6"\n');

  test("are read by no check", () => {
    const about = (text: string) => findingsOf(text).filter(({ message }) => message.includes("88 Ω"));
    expect(about(tests("")).map(({ check }) => check)).toEqual(["drift/resistance-risen", "continuity/open"]);
    expect(about(struck)).toEqual([]);
  });

  test("are shown with who and why", () => {
    const installation = installationOf(struck);
    const page = reportText(summaryOf(installation, checkInstallation(installation)));
    expect(page).toMatch(/A\/1 +dead tests of 2026-03-04: R1\+R2 +Read on way 6 +R\.M\., 2026-03-06/);
  });

  test("stay where they stand", () => {
    expect(format(struck)?.text).toContain("R1+R2        88 Ω");
  });

  test("need a reason", () => {
    expect(language(tests('struck-out by "R.M."\n'))).toEqual(["missing-argument 11"]);
  });
});

describe("a reading that is corrected", () => {
  const corrected = schedule(
    'way 1 radial "Oven" {\ndead 2026-03-04 {\nR1+R2 0.26 Ω was 0.62 Ω "Figures turned round"\n}\n}',
  );

  test("stands, and what stood before is shown", () => {
    const installation = installationOf(corrected);
    const page = reportText(summaryOf(installation, checkInstallation(installation)));
    expect(language(corrected)).toEqual([]);
    expect(page).toMatch(/A\/1 +R1\+R2 +0\.62 Ω +Figures turned round/);
  });

  test("says why", () => {
    expect(language(corrected.replace(' "Figures turned round"', ""))).toEqual(["missing-argument 10"]);
  });

  test("is no form for what is not read", () => {
    expect(language(schedule('way 1 radial "Oven" {\nlength 3 m was 2 m "Measured"\n}'))).toEqual(["wrong-argument 9"]);
  });
});

describe("details of one's own", () => {
  const details = (text: string) => findingsOf(text).filter(({ check }) => check === "record/detail-against-field");

  test("stand in every block, and nothing is said of them", () => {
    const text = schedule(
      'detail asset "DB-014"\nway 1 radial "Oven" {\ndetail photo "img/12.jpg"\ndead 2026-03-04 {\ndetail weather "frost"\n}\n}',
      'detail drawing "E-101"\ninstrument M1 {\ndetail drawer "3"\n}\nsupply {\ndetail meter "7781"\n}',
    );
    expect(language(text)).toEqual([]);
    expect(details(text)).toEqual([]);
    expect(format(text)?.text).toContain('detail       asset "DB-014"');
  });

  test("are compared with what is declared", () => {
    const fields =
      'field asset in board way required\nfield fitted in way kind date\nfield colour in way one-of "red" "blue"';
    const text = schedule(
      'detail asset "DB-014"\nway 1 radial "Oven" {\ndetail assset "7"\ndetail fitted "last year"\ndetail colour "green"\n}\nway 2 spare',
      fields,
    );
    expect(details(text).map(({ message }) => message)).toMatchInlineSnapshot(`
      [
        "The detail “asset” is not recorded here, and this schedule requires it: write detail asset "…".",
        "This schedule declares no field “assset” for this place: did you mean “asset”?",
        "The detail “fitted” is a day, such as 2026-03-05; “last year” is not.",
        "The detail “colour” is one of red or blue; “green” is not.",
      ]
    `);
  });
});
