/** What is behind a feeder is judged by its own lines, and for what it does by itself. */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";

const file = (ways: string, board: string) => `wayfile 1
installation "Works" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  premises     industrial
  supply {
    earthing     TN-S
    phases       three
    Ze           0.12 Ω
    Ipf          3.9 kA
  }
  board A "Main" {
    fed-from     supply
    phases       three
    way 1 feeder "Shop" {
      ${ways}
      cable        armoured 90 °C line 16 mm² cpc 16 mm²
      length       30 m
      feeds        B
    }
  }
  board B "Shop" {
    fed-from     A
    ${board}
  }
}`;

describe("a board behind a feeder", () => {
  const impedances = "Zdb 0.24 Ω\n    Ipf 0.9 kA";

  it("on one line has a fault current of one line", () => {
    expect(find("fault/one-phase-figure", file("phase L1", impedances))).toEqual([]);
    expect(find("fault/one-phase-figure", file("", `phase L1\n    ${impedances}`))).toEqual([]);
    expect(find("fault/one-phase-figure", file("phase three", impedances))).toHaveLength(1);
  });

  it("has a circuit that drops too much by itself, whatever flows above it", () => {
    const circuit = (length: string) => `way 1 radial "Yard lights" {
      device       BS EN 60898 B10 6 kA
      cable        flat-twin line 1.5 mm² cpc 1 mm²
      route        clipped method C
      length       ${length}
      serves       lighting
      load         1.5 kW
    }
    way 2 radial "Heater" {
      device       BS EN 60898 B32 6 kA
      cable        flat-twin line 6 mm² cpc 2.5 mm²
      route        clipped method C
      length       4 m
      serves       heating
      load         7 kW
    }
    way 3 radial "Bench" {
      device       BS EN 60898 C32 6 kA
      serves       sockets
    }`;
    const severity = (length: string) =>
      find("drop/over-limit", file("phase L1", circuit(length))).map((finding) => finding.severity);
    expect(severity("60 m")).toEqual(["warning"]);
    expect(severity("34 m")).toEqual(["information"]);
  });
});
