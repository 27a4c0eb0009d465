import { describe, expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { reportText } from "../../server/reports/setting/text.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { cameLater, citations } from "../../server/tables/citations.ts";
import { citedIn } from "../../server/tables/cited.ts";
import { editionOf, editions } from "../../server/tables/editions.ts";
import { tables } from "../../server/tables/index.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const house = (standard: string): string => `wayfile 1
installation "Old house" {
  standard ${standard}
  stage tested
  work existing
  premises dwelling
  supply {
    earthing TN-S
    Ze 0.35 Ω
    Ipf 1.2 kA
    tails 16 mm²
    cutout BS 1361 80 A
    earthing-conductor 6 mm²
    bonding water 6 mm²
  }
  board A "Main" {
    fed-from supply
    way 1 ring "Sockets" {
      device BS EN 60898 B32 6 kA
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      route wall method 103
      length 60 m
      serves sockets
      live 2010-05-05 {
        Zs 1.5 Ω
      }
    }
    way 2 radial "Cooker" {
      device BS 3036 30 A
      cable flat-twin line 6 mm² cpc 1.0 mm²
      route conduit method B grouped 3 insulated 500 mm
      length 90 m
      serves cooker
      load 9 kW
    }
    way 3 radial "Pump" {
      device BS EN 60898 C20 3 kA
      cable singles line 4 mm² cpc 4 mm²
      route conduit method B
      length 80 m
      Ib 18 A
    }
  }
}`;

const older = editions.filter(({ id }) => !/\+A2|\+A4/.test(id));

describe("a source of an earlier edition", () => {
  it("is cited as that edition numbers it: every row of the table of numbers", () => {
    for (const { facts } of citations.rows) {
      for (const [id, column] of [
        ["BS 7671:2008", "first"],
        ["BS 7671:2008+A1:2011", "a1"],
        ["BS 7671:2008+A3:2015", "a3"],
      ] as const) {
        const named = (number: string) => (/^(?:\d\d\.\d|\d\d|4[A-Z])/.test(number) ? `Table ${number}` : number);
        const then = facts[column];
        const cited = citedIn(editionOf(id))(`BS 7671:2018+A2:2022, ${named(facts.present)}`);
        expect(cited).toBe(then ? `${id}, ${named(then)}` : `BS 7671:2018+A2:2022, ${named(facts.present)}`);
      }
    }
  });

  it("is the whole or nothing: half a citation would lead to the wrong page", () => {
    const cite = citedIn(editionOf("BS 7671:2008"));
    expect(cite("BS 7671:2018+A2:2022, 433.1.204")).toBe("BS 7671:2008, 433.1.5");
    expect(cite("BS 7671:2018+A2:2022, 523.9 and Table 52.2")).toBe("BS 7671:2008, 523.7 and Table 52.2");
    expect(cite("BS 7671:2018+A2:2022, 314.1 and 531.3.2")).toBe("BS 7671:2018+A2:2022, 314.1 and 531.3.2");
    expect(cite("Zs = U0 × Cmin (BS 7671:2018+A2:2022, 411.4.4)")).toBe("Zs = U0 × Cmin (BS 7671:2008, 411.4.5)");
    expect(cite("IET On-Site Guide, Table I1; BS 7671:2018, Tables 43.1 and 54.2 to 54.5")).toBe(
      "IET On-Site Guide, Table I1; BS 7671:2008, Tables 43.1 and 54.2 to 54.5",
    );
  });

  it("keeps its number within the 18th Edition, but for what an amendment brought", () => {
    const cite = citedIn(editionOf("BS 7671:2018"));
    expect(cite("BS 7671:2018+A2:2022, Table 41.3")).toBe("BS 7671:2018, Table 41.3");
    for (const number of Object.keys(cameLater))
      expect(cite(`BS 7671:2018+A2:2022, ${number}`)).toBe(`BS 7671:2018+A2:2022, ${number}`);
    const later = citedIn(editionOf("BS 7671:2018+A2:2022+A3:2024"));
    expect(later("BS 7671:2018+A2:2022, Table 41.3")).toBe("BS 7671:2018+A2:2022, Table 41.3");
  });

  it("of every table here stays a citation of one standard, and no letter more is changed", () => {
    for (const edition of older)
      for (const { ref } of tables) {
        const cited = citedIn(edition)(ref);
        if (cited === ref) continue;
        expect(cited.startsWith(`${edition.id}, `) || cited.includes(`; ${edition.id}, `)).toBe(true);
        expect(cited.split("; ")).toHaveLength(ref.split("; ").length);
      }
  });

  it("is what a working and the findings of such a house show", () => {
    const text = house("BS 7671:2008");
    const [installation] = installationsOf([fileOfText("house.ways", text)]);
    if (!installation) throw new Error("no installation");
    const working = reportText(workingOf(installation));
    for (const number of ["Table 41.1", "Table 4D5", "Table 4C1", "Table 4B1", "411.4.5", "Table 54.7", "433.1.5"])
      expect(working).toContain(number);
    // What is left is what that edition did not yet say, or says elsewhere in a way not known here.
    const left = new Set(working.match(/BS 7671:2018\+A2:2022, [^;()\n.]*[\d)]/g) ?? []);
    for (const one of left) expect(citedIn(installation.edition)(one)).toBe(one);
    expect(working).not.toMatch(/BS 7671:2018\+A2:2022, (?:Table 4[1BCDE]|411\.4\.4|433\.1\.20)/);
    const sources = checkInstallation(installation).findings.flatMap(({ source }) => source?.ref ?? []);
    expect(sources.length).toBeGreaterThan(5);
    for (const ref of sources) expect(ref).not.toMatch(/2018\+A2:2022, (?:Table 4[1BCDE]|411\.4\.4|433\.1\.20)/);
  });
});
