/** What the work is to each part decides what is reported of it. */
import { describe, expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const schedule = (board: string, old: string, kind = "addition") => `wayfile 1
instrument M1 "Multifunction tester" {
  serial  "4471"
  due     2026-12-01
}
installation "Brook Cottage" {
  standard   BS 7671:2018+A2:2022
  stage      tested
  work       ${kind}
  premises   dwelling
  designed   by "K.A." 2026-02-01
  installed  by "K.A." 2026-03-04
  tested     by "K.A." 2026-03-05
  supply {
    earthing            TN-C-S
    Ze                  0.21 Ω
    Ipf                 1.4 kA
    cutout              BS 88-3 80 A
    tails               25 mm²
    earthing-conductor  16 mm²
    bonding             water 10 mm²  continuity 0.03 Ω
    spd                 fitted
    polarity            ok
    measured            2026-03-05 with M1
  }
  board A "Hall board" {
    ${board}
    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    Zdb          0.21 Ω
    Ipf          1.4 kA
    way 1 ring "Sockets" {
      ${old}
      device  BS EN 60898 B32 6 kA
      cable   flat-twin  line 2.5 mm²  cpc 1.5 mm²
      serves  sockets
    }
    way 7 radial "Shower" {
      work    new
      device  BS EN 61009 B40 6 kA 30 mA type A
      cable   flat-twin 70 °C  line 10 mm²  cpc 4 mm²
      route   clipped method C
      length  14 m
      load    8.5 kW
      serves  shower
      place   bathroom zone 1
      ingress IPX4
      supplementary-bonding not-fitted "All pipes plastic"
      dead 2026-03-05 with M1 {
        R1+R2  0.09 Ω
        insulation  500 V each >999 MΩ
        polarity ok
      }
      live 2026-03-05 with M1 {
        Zs   0.30 Ω
        rcd  30 mA 1x 24.1 ms test-button ok
        polarity ok
        function ok
      }
    }
  }
}
`;

const checksIn = (text: string): string[] =>
  installationsOf([fileOfText("a.ways", text)])
    .flatMap((installation) => [...checkInstallation(installation).findings])
    .map(({ check, severity }) => `${severity} ${check}`);

describe("an addition to an old board", () => {
  it("asks of the old circuits all that it asks of new ones where nothing says what they are", () => {
    const found = checksIn(schedule("", ""));
    expect(found).toContain("error rcd/missing-for-sockets");
    expect(found).toContain("warning live/not-tested");
  });

  it.each([
    ["work existing", ""],
    ["", "work existing"],
    ["", "work not-part"],
  ])("with “%s” on the board and “%s” on the way asks nothing of the old circuit", (board, old) => {
    expect(checksIn(schedule(board, old))).toEqual([]);
  });

  it("asks of an altered circuit of an old board all that it asks of a new one", () => {
    expect(checksIn(schedule("work existing", "work altered"))).toContain("error rcd/missing-for-sockets");
  });

  it("leaves out what an old board has had for years, though each of its circuits is of the work", () => {
    const tests = "live 2021-03-05 with M1 { Ipf 1.0 kA }\n    live 2026-03-05 with M1 { Ipf 1.4 kA }";
    const drifted = "warning drift/fault-current-changed";
    expect(checksIn(schedule(tests, "work altered"))).toContain(drifted);
    expect(checksIn(schedule(`work existing\n    ${tests}`, "work altered"))).not.toContain(drifted);
  });

  it("reports a reading of an old circuit that fails, also where it is no part of the work", () => {
    const dead = "work not-part\n      live 2026-03-05 with M1 {\n        Zs  9.1 Ω\n      }";
    expect(checksIn(schedule("", dead))).toEqual(["error loop/zs-over-limit"]);
  });

  it("reports a device that lets its cable overheat, also where the circuit is no part of the work", () => {
    const with200 = (cable: string) =>
      checksIn(
        schedule("", "work not-part")
          .replace('ring "Sockets"', 'radial "Sockets"')
          .replace("BS EN 60898 B32 6 kA", "BS EN 60898 B200 10 kA")
          .replace("flat-twin  line 2.5 mm²", `${cable}  line 2.5 mm²`),
      );
    expect(with200("flat-twin")).toContain("error design/over-any-capacity");
    expect(with200("armoured 90 °C")).toContain("error design/over-any-capacity");
    // Whatever else there is to say of it is for whoever inspects it.
    expect(checksIn(schedule("", "work not-part").replace("2.5 mm²  cpc 1.5", "10 mm²  cpc 0.5"))).toEqual([]);
  });

  it("asks everything of a part that a periodic inspection is of", () => {
    const found = checksIn(schedule("work existing", "", "existing"));
    expect(found).toContain("warning live/not-tested");
  });
});
