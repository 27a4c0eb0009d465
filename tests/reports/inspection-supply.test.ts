/** The particulars of the supply, as an assessor looks for them. */
import { expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { inspectionReport } from "../../server/reports/inspection/inspection.ts";
import { supplyRows } from "../../server/reports/inspection/supply.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const sourcesIn = (supply: string, ways: string): string | undefined => {
  const text = `wayfile 1
installation "Farmhouse" {
  supply {
    earthing     TN-S
    ${supply}
  }
  board A "House" {
    fed-from     supply
    ${ways}
  }
}
`;
  const [installation] = installationsOf([fileOfText("farm.ways", text)]);
  return installation && new Map(supplyRows(installation)).get("Other sources");
};

it.each([
  ["", "way 1 spare", "none stated"],
  ['other-source "Battery in the garage"', "way 1 spare", '"Battery in the garage"'],
  ['standby "Diesel set" Ze 0.42 Ω', "way 1 spare", '"Diesel set" Ze 0.42 Ω'],
  ["", 'way 5 radial "Roof array" {\n      serves pv\n    }', "A/5 Roof array"],
])("other sources of %s %s are %s", (supply, ways, shown) => expect(sourcesIn(supply, ways)).toBe(shown));

it.each([
  ["", "single-phase"],
  ["phases       single", "single-phase"],
  ["phases       three", "three-phase"],
])("live conductors of %j are %s", (supply, shown) => {
  const text = `wayfile 1\ninstallation "Hall" {\n  supply {\n    earthing     TN-S\n    ${supply}\n  }\n}\n`;
  const [installation] = installationsOf([fileOfText("hall.ways", text)]);
  expect(installation && new Map(supplyRows(installation)).get("Live conductors")).toBe(shown);
});

const wiredIn = (head: string, board: string, inspection = ""): string | undefined => {
  const text = `wayfile 1
installation "Farmhouse" {
  work         existing
  ${head}
  board A "House" {
    fed-from     supply
    ${board}
  }
  inspection periodic 2026-03-03 {
    reason       "Change of owner"
    ${inspection}
  }
}
`;
  const [installation] = installationsOf([fileOfText("farm.ways", text)]);
  const report = installation && inspectionReport([installation], checkInstallation(installation).findings);
  const lines = report && !("failure" in report) ? reportText(report).split("\n") : [];
  return lines
    .find((line) => /^\s*Wired\b/.test(line))
    ?.trim()
    .replace(/\s+/g, " ");
};

it.each([
  ["", "", "", "Wired not stated"],
  ['installed by "unknown" about 1985', "", "", "Wired about 1985"],
  ["", 'installed by "unknown" before 1979', "", "Wired board A before 1979"],
  ['installed by "unknown" about 1985', "", "wired about 1962", "Wired about 1962"],
])("installed %s, board %s, %s: %s", (head, board, inspection, shown) =>
  expect(wiredIn(head, board, inspection)).toBe(shown),
);

const periodicPaper = (): string => {
  const text = `wayfile 1
installation "Annexe" {
  standard     BS 7671:2018+A2:2022
  work         existing
  inspection periodic 2026-03-04 {
    tested       by "P.V." 2026-03-05
  }
  supply {
    earthing     TN-S
    polarity     ok
  }
  board A "Annexe" {
    fed-from     supply
    spd          fitted T2
    way 1 radial "Heater" {
      live 2026-03-04 {
        Zs           0.62 Ω
        rcd          30 mA 1x LIM "Cannot be switched off"
      }
    }
  }
}
`;
  const [installation] = installationsOf([fileOfText("annexe.ways", text)]);
  const report = installation && inspectionReport([installation], checkInstallation(installation).findings);
  if (!report || "failure" in report) throw new Error(report?.failure);
  return reportText(report).replace(/\s+/g, " ");
};

it.each([
  ["the voltage that every limit rests on", "U0 230 V, nominal"],
  ["what was found at the origin, of the first board", "Polarity of the supply ok"],
  ["the type of surge protection", "Surge protection fitted T2"],
  ["who tested a board, by the inspection", "Tested by P.V."],
  ["a circuit of which one test was limited", "A/1 Heater tested in part"],
])("shows %s", (_, shown) => expect(periodicPaper()).toContain(shown));
