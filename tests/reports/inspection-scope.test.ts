/** A certificate is of the work, and the old circuits beside it are no part of it. */
import { expect, it } from "vitest";
import { latestInspection } from "../../server/model/inspections.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { inspectionReport } from "../../server/reports/inspection/inspection.ts";
import { placeText } from "../../server/reports/inspection/scope.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

/** Zs of 0.98 Ω is within the 1.09 Ω of the old fuse, and above 0.8 of it. */
const refusalOf = (work: string, Zs: string): string => {
  const text = `wayfile 1
installation "Terrace" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         addition
  premises     dwelling
  supply {
    earthing     TN-S
    Ze           0.62 Ω
    Ipf          0.37 kA
  }
  board A "Board" {
    fed-from     supply
    way 1 radial "Immersion" {
      work         ${work}
      device       BS 3036 30 A
      cable        flat-twin  line 4 mm²  cpc 1.5 mm²
      length       9 m
      serves       water-heater
      live 2026-03-02 {
        Zs           ${Zs}
      }
    }
  }
}
`;
  const [installation] = installationsOf([fileOfText("terrace.ways", text)]);
  const report = installation && inspectionReport([installation], checkInstallation(installation).findings);
  return report && "failure" in report ? report.failure : "";
};

it("an old circuit that passes only cold does not hold a certificate back, and one of the work does", () => {
  expect(refusalOf("existing", "0.98 Ω")).not.toContain("A/1 fails");
  expect(refusalOf("altered", "0.98 Ω")).toContain("A/1 fails");
});

it.each([
  ["way 5", "way 5"],
  ["way 1 2", "ways 1, 2"],
  ["board A way 1 2", "A/1, A/2"],
  ["board A", "board A"],
])("circuits that were sampled out by %s are shown as %s", (line, wanted) => {
  const text = `wayfile 1
installation "Elm House" {
  standard BS 7671:2018+A2:2022
  inspection 2026-03-05 periodic {
    sampled-out ${line} "Alike to way 3"
  }
  board A "Consumer unit" {
    fed-from supply
    way 1 radial "Cooker" { device BS EN 60898 B32 6 kA }
    way 2 radial "Shower" { device BS EN 60898 B32 6 kA }
    way 5 radial "Alarm" { device BS EN 60898 B6 6 kA }
  }
}
`;
  const [installation] = installationsOf([fileOfText("elm.ways", text)]);
  const sampled = installation && latestInspection(installation.head)?.facts.one("sampled-out");
  expect(sampled && placeText(sampled)).toBe(wanted);
});
