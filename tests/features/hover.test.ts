import { describe, expect, it } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { atCursor, loft, loftWith, openSample } from "../helpers/cursor.ts";

async function shown(sample: string): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample);
  const found = hover(snapshot, cursor);
  if (!found) return "nothing";
  const { segment, start, end } = found.spot;
  return `on “${segment.text.slice(start, end)}”\n${found.markdown}`;
}

describe("hovers", () => {
  it("tells a loop impedance's limit, hot and cold, and what it should be", async () => {
    expect(await shown(loftWith("Zs           0.6┆4 Ω"))).toMatchInlineSnapshot(`
      "on “0.64 Ω”
      **0.64 Ω** — The loop impedance.

      - limit, hot: 1.37 Ω, 53 % left
      - limit, cold: 1.09 Ω, 41 % left
      - expected: Ze + R1+R2 = 0.64 Ω
      - design, hot: 0.68 Ω
      - other published cold limits: 1.10 Ω, 0.8 of the printed value, rounded (Guidance Note 3); 1.10 Ω, divided by 1.24, rounded (On-Site Guide)

      *BS 7671:2018+A2:2022, Table 41.3, 411.4.4 (calculated). 0.8 is the factor of Appendix 3 (Appendix 14 in the 17th Edition).*

      \`\`\`text
      Ia = 5 × In = 5 × 32 A = 160 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
      cold Zs × 0.8, rounded down = 1.37 Ω × 0.8 = 1.09 Ω
      Zs = Ze + (R1+R2) = 0.42 Ω + 0.22 Ω = 0.64 Ω
      \`\`\`"
    `);
  });

  it("tells what flows behind the RCD that counts a protective conductor current", async () => {
    const text = await shown(`wayfile 1
installation "Joinery" {
  standard BS 7671:2018+A2:2022
  board A "Main" {
    fed-from supply
    rcd east BS EN 61008 63 A 30 mA type A
    way 1 radial "Desks" {
      behind east
      leakage 4┆ mA
    }
    way 2 radial "Server" {
      behind east
      leakage 2 mA
    }
  }
}
`);
    expect(text).toContain("- behind RCD east: 6 mA, where 9 mA at most should flow\n- high from: 10 mA");
    expect(text).toContain("A/1 4 mA + A/2 2 mA = 6 mA");
  });

  it("tells what lets flow through busbars, and what is drawn through them", async () => {
    const text = await shown(`wayfile 1
installation "Joinery" {
  standard BS 7671:2018+A2:2022
  supply {
    cutout BS 88-3 100 A
  }
  board A "Main" {
    fed-from supply
    busbar 10┆0 A
    way 1 radial "Kiln" {
      device BS EN 60898 B32 6 kA
      Ib 30 A
    }
  }
}
`);
    expect(text).toContain(
      "- protected upstream by: 100 A, the cut-out\n- devices downstream: 32 A\n- drawn at most: 30 A",
    );
  });

  it("explains a word, with the figures of its line", async () => {
    expect(await shown(loftWith("R1+┆R2       0.22 Ω"))).toMatchInlineSnapshot(`
      "on “R1+R2”
      **R1+R2** — Resistance of line and protective conductor together, to the furthest point.

      - limit: at most 0.67 Ω cold, 67 % left
      - expected by the ends of the ring: 0.16 Ω
      - expected by length, on the ring: 0.16 Ω
      - expected by length, at the end of a spur: 0.21 Ω

      *BS 7671:2018+A2:2022, Table 41.3, 411.4.4, 643.2.1, and Guidance Note 3; IET On-Site Guide, Table I1; BS EN 60228, Tables 1 to 3 (calculated). 0.8 is the factor of Appendix 3 (Appendix 14 in the 17th Edition).*

      \`\`\`text
      (r1 + r2) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      r of 2.5 mm² copper = 7.41 mΩ/m
      (r1 + r2) per metre = 7.41 mΩ + 7.41 mΩ = 14.82 mΩ/m
      R = length × resistance per metre = 42 m × 14.82 mΩ/m = 0.62 Ω
      (r1 + r2) / 4 = 0.62 Ω / 4 = 0.16 Ω
      cross-connected, both ways round = 22 m of 42 m round, 4 m of spur, (7.41 mΩ + 7.41 mΩ)/m = 0.21 Ω
      \`\`\`

      Line and protective conductor are linked at the board and measured at each point; the highest reading is recorded. It proves polarity as well, which may stand on the same line. Of three lines each may be written behind it: \`R1+R2 0.42 Ω L1 0.40 Ω L2 0.42 Ω L3 0.41 Ω\`.

      Limits: Regulation 643.2.1."
    `);
  });

  it("shows the room between load, device and cable", async () => {
    expect(await shown(loftWith("device  BS EN 61009 B┆6 6 kA 30 mA type A"))).toMatchInlineSnapshot(`
      "on “B6”
      **B6** — Type and rated current, such as B32.

      - currents: Ib 2.1 A ≤ In 6 A ≤ Iz 20 A; 3.9 A to spare in the device, 14 A to spare in the cable
      - breaks: 6 kA, where 0.92 kA (Ipf) is to be broken
      - must disconnect: within 0.4 s
      - Zs at most: 7.28 Ω hot, 5.82 Ω cold
      - RCD: 30 mA type A BS EN 61009

      *BS 7671:2018+A2:2022, Table 41.1, 411.3.2.2, Table 41.3, 433.1.1, Table 4D5 (calculated)*

      \`\`\`text
      final circuit of fixed equipment, 6 A, not above 32 A: Table 41.1 applies
      time for TN at U0 230 V = 0.4 s (BS 7671:2018+A2:2022, Table 41.1)
      Ia = 5 × In = 5 × 6 A = 30 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 30 A = 7.28 Ω
      Ib ≤ In holds: 2.1 A ≤ 6 A
      In ≤ Iz holds: 6 A ≤ 20 A
      \`\`\`"
    `);
  });

  it("calculates a ring by the ring's own rule", async () => {
    expect(await shown(loftWith("ca┆ble   singles 70 °C line 2.5 mm² cpc 2.5 mm²"))).toMatchInlineSnapshot(`
      "on “cable”
      **cable** — The cable: its construction, and the size of each conductor.

      - line: 2.5 mm², 7.41 mΩ/m at 20 °C
      - protective conductor: 2.5 mm², 7.41 mΩ/m at 20 °C
      - capacity: 24 A by method B
      - currents: In 32 A, Iz of the ring's cable 24 A ≥ 20 A
      - protective conductor, at least: 2.5 mm² (by the table)

      *BS EN 60228, Tables 1 to 3; BS 7671:2018+A2:2022, Table 4D1A, 433.1.204, Table 54.7 (as quoted elsewhere)*

      \`\`\`text
      r of 2.5 mm² copper = 7.41 mΩ/m
      It = 24 A (BS 7671:2018+A2:2022, Table 4D1A)
      Minimum current-carrying capacity Iz (ring and unfused spur) = 20 A
      cpc for a line of S = 2.5 mm² = S = 2.5 mm²
      \`\`\`

      Limits: Appendix 4 for current-carrying capacity and voltage drop; Table 54.7 for the protective conductor."
    `);
  });

  it("expects more of a spur than of the ring", async () => {
    expect(await shown(loftWith("┆at S5       L-N 0.22 Ω L-E 0.22 Ω polarity ok"))).toMatchInlineSnapshot(`
      "on “at”
      **at** — Readings at a point, with the legs cross-connected at the board.

      - L-N expected: 0.21 Ω, 0.059 Ω of it the spur's
      - L-E expected half way round: 0.21 Ω, 0.059 Ω of it the spur's
      - within: 0.05 Ω
      - by lengths and sizes, cross-connected: L-N 0.21 Ω (read 0.01 Ω higher), L-E 0.21 Ω (read 0.01 Ω higher)
      - Zs there, cold: 0.63 Ω, at most 1.09 Ω cold, 41 % left
      - this point: reads the highest to earth and is the farthest for Zs

      *BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3; IET On-Site Guide, Table I1; Common practice, ring final circuit test*

      \`\`\`text
      (r1 + rn) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      (r1 + r2) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      the spur adds = 4 m × 14.82 mΩ/m = 0.059 Ω
      tolerance between like readings of a ring = 0.05 Ω
      \`\`\`

      Every point on the ring should read about a quarter of the sum of the two end-to-end readings; a spur reads higher by its own cable.

      Limits: Each within 0.05 Ω of the expected reading (common practice)."
    `);
  });

  it("says at the name of a point what should be read there, and what is left", async () => {
    expect(await shown(loftWith("run     A 7 m S1 6 m S2 9 m S┆3 8 m S4 12 m A"))).toMatchInlineSnapshot(`
      "on “S3”
      **S3** — a point of the circuit

      \`\`\`wayfile
      run     A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
      \`\`\`

      - by lengths and sizes, cross-connected: L-N 0.16 Ω, L-E 0.16 Ω
      - Zs there, cold: 0.58 Ω, at most 1.09 Ω cold, 47 % left

      *BS EN 60228, Tables 1 to 3; BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3 (calculated)*

      \`\`\`text
      cross-connected, both ways round = 22 m of 42 m round, (7.41 mΩ + 7.41 mΩ)/m = 0.16 Ω
      \`\`\`"
    `);
    expect(await shown(loftWith("run     S3 4 m S┆5"))).toMatchInlineSnapshot(`
      "on “S5”
      **S5** — a point of the circuit

      \`\`\`wayfile
      run     S3 4 m S5
      \`\`\`

      - by lengths and sizes, cross-connected: L-N 0.21 Ω, L-E 0.21 Ω
      - Zs there, cold: 0.63 Ω, at most 1.09 Ω cold, 41 % left
      - this point: reads the highest to earth and is the farthest for Zs

      *BS EN 60228, Tables 1 to 3; BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3 (calculated)*

      \`\`\`text
      cross-connected, both ways round = 22 m of 42 m round, 4 m of spur, (7.41 mΩ + 7.41 mΩ)/m = 0.21 Ω
      \`\`\`"
    `);
  });

  it("says at a reading of a point how far it is away", async () => {
    expect(await shown(loftWith("at S1       L-N 0.16 Ω L-┆E 0.16 Ω polarity ok"))).toMatchInlineSnapshot(`
      "on “L-E”
      **L-E** — Line to protective conductor, cross-connected.

      - L-N expected: 0.16 Ω
      - L-E expected half way round: 0.16 Ω
      - within: 0.05 Ω
      - by lengths and sizes, cross-connected: L-N 0.16 Ω (as read), L-E 0.16 Ω (as read)
      - Zs there, cold: 0.51 Ω, at most 1.09 Ω cold, 53 % left

      *BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3; Common practice, ring final circuit test*

      \`\`\`text
      (r1 + rn) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      (r1 + r2) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      tolerance between like readings of a ring = 0.05 Ω
      \`\`\`"
    `);
  });

  it("holds a trip time against its longest", async () => {
    expect(await shown(loftWith("rcd          30 mA 1x 2┆4 ms"))).toMatchInlineSnapshot(`
      "on “24 ms”
      **24 ms** — The trip time.

      - at most, at 1 × IΔn: 300 ms, 92 % left
      - this test: required by this edition

      *BS EN 61008-1 and BS EN 61009-1, break times (as quoted elsewhere)*

      \`\`\`text
      longest at 1 × IΔn = 300 ms (BS EN 61008-1 and BS EN 61009-1, break times)
      \`\`\`"
    `);
  });

  it("calculates the length's resistance and drop", async () => {
    expect(await shown(loftWith("length  1┆8 m"))).toMatchInlineSnapshot(`
      "on “18 m”
      **18 m** — The length of the cable run.

      - to the far point: 18 m
      - R1+R2 expected at 20 °C: 0.54 Ω
      - at most, by the loop: 189.3 m
      - voltage drop: 0.48 % in this circuit, where 3 % is advised from the origin on

      *IET On-Site Guide, Table I1; BS 7671:2018+A2:2022, Table 41.3, 411.4.4, Table 4D5, Appendix 4, section 6.4; IET On-Site Guide, Table I3 (calculated). The factors follow from a rise of 0.4 % per kelvin.*

      \`\`\`text
      r of 1.5 mm² copper = 12.1 mΩ/m
      r of 1 mm² copper = 18.1 mΩ/m
      (r1 + r2) per metre = 12.1 mΩ + 18.1 mΩ = 30.2 mΩ/m
      R = length × resistance per metre = 18 m × 30.2 mΩ/m = 0.54 Ω
      l max = l × (limit − loop at the board) / (R1+R2) = 18 m × (7.28 Ω − 0.42 Ω) / 0.6523 Ω = 189.3 m
      drop = mV/A/m × Ib × L = 29 mV/A/m × 2.1 A × 18 m = 1.1 V
      drop / U = 1.1 V / 230 V = 0.48 %
      drop advised at most, lighting, public supply = 3 %
      \`\`\`"
    `);
  });

  it("shows a name as it is defined", async () => {
    expect(await shown(loftWith("behind  ea┆st"))).toMatchInlineSnapshot(`
      "on “east”
      **east** — an RCD of the board

      \`\`\`wayfile
      rcd east     BS EN 61008 63 A 30 mA type A
      \`\`\`"
    `);
    expect(await shown(loftWith("live 2026-03-05 with M┆1 {"))).toMatchInlineSnapshot(`
      "on “M1”
      **M1** — a test instrument

      \`\`\`wayfile
      instrument M1 "Multifunction tester" { due 2027-01-01 }
      \`\`\`"
    `);
  });

  it("says what a choice and a label mean", async () => {
    expect(await shown(loftWith("route   clip┆ped method C"))).toMatchInlineSnapshot(`
      "on “clipped”
      **clipped** — Clipped to a surface.

      - capacity of this stretch: 20 A
      - currents: Ib 2.1 A ≤ In 6 A ≤ Iz 20 A; 3.9 A to spare in the device, 14 A to spare in the cable

      *BS 7671:2018+A2:2022, Table 4D5, 433.1.1 (calculated)*

      \`\`\`text
      It = 20 A (BS 7671:2018+A2:2022, Table 4D5)
      Ib ≤ In holds: 2.1 A ≤ 6 A
      In ≤ Iz holds: 6 A ≤ 20 A
      \`\`\`"
    `);
    expect(await shown(loftWith("earthing  TN┆-S"))).toMatchInlineSnapshot(`
      "on “TN-S”
      **TN-S** — Separate neutral and protective conductor from the source; the earth is often the cable sheath."
    `);
  });

  it("names the edition and whether it is in force", async () => {
    expect(await shown(loftWith("standard  BS 76┆71:2018+A2:2022"))).toMatchInlineSnapshot(`
      "on “BS 7671:2018+A2:2022”
      **BS 7671:2018+A2:2022** — The edition of the wiring regulations.

      - edition: 18th Edition, Amendment 2, no longer for new work
      - for work from: 2022-03-28
      - voltage factor Cmin: 0.95

      *BS 7671:2018+A2:2022, 411.4.4 (as quoted elsewhere)*"
    `);
  });

  it("puts what is new first: a finding's message stands above the hover already", async () => {
    expect(await shown(loft.replace("0.64 Ω", "1┆.64 Ω"))).toMatchInlineSnapshot(`
      "on “1.64 Ω”
      **1.64 Ω** — The loop impedance.

      - limit, hot: 1.37 Ω, 20 % over
      - limit, cold: 1.09 Ω, 51 % over
      - expected: Ze + R1+R2 = 0.64 Ω
      - design, hot: 0.68 Ω
      - other published cold limits: 1.10 Ω, 0.8 of the printed value, rounded (Guidance Note 3); 1.10 Ω, divided by 1.24, rounded (On-Site Guide)

      *BS 7671:2018+A2:2022, Table 41.3, 411.4.4 (calculated). 0.8 is the factor of Appendix 3 (Appendix 14 in the 17th Edition).*

      \`\`\`text
      Ia = 5 × In = 5 × 32 A = 160 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
      cold Zs × 0.8, rounded down = 1.37 Ω × 0.8 = 1.09 Ω
      Zs = Ze + (R1+R2) = 0.42 Ω + 0.22 Ω = 0.64 Ω
      agreement of loop readings, as a share of what is expected = 0.2
      Before opening anything: isolate and lock off, prove the tester, prove dead, prove the tester again.
      Zs = 50 V / IΔn = 50 V / 30 mA = 1667 Ω
      \`\`\`

      Zs is the impedance of the board plus the circuit's own R1+R2. *(loop/zs-disagrees)*"
    `);
  });

  it("does not repeat a finding's message, whatever word of its line is rested on", async () => {
    const { snapshot } = await openSample(loft.replace("0.64 Ω", "1.64 Ω").replace("      behind  east\n", ""));
    expect(snapshot.findings.length).toBeGreaterThan(2);
    for (const { spot, message, check } of snapshot.findings) {
      for (const offset of [spot.start, spot.end - 1]) {
        const { markdown = "" } = hover(snapshot, { segment: spot.segment, offset }) ?? {};
        expect(markdown).not.toContain(message);
        expect(markdown, check).toMatch(/\*\([a-z]+\/[a-z0-9-]+\)\*$/);
      }
    }
  });

  it("does not hold a ring's device against the cable of one leg", async () => {
    const text = await shown(loftWith("dev┆ice  BS EN 60898 B32 6 kA"));
    expect(text).toContain("- currents: In 32 A, Iz of the ring's cable 24 A ≥ 20 A");
    expect(text).toContain("433.1.204");
    expect(text).not.toMatch(/In ≤ Iz|\*\*>\*\*/);
  });

  it("calls the board's impedance Zdb in the working of Zs", async () => {
    const text = await shown(
      loftWith("Zs           0.6┆4 Ω").replace("    main-switch", "    Zdb          0.40 Ω\n    main-switch"),
    );
    expect(text).toContain("Zs = Zdb + (R1+R2) = 0.40 Ω + 0.22 Ω = 0.62 Ω");
  });

  it("gives the limit of every figure that has one", async () => {
    expect(await shown(loft.replace("Ze        0.42 Ω", "Ze        0.4┆2 Ω"))).toContain("declared at most: 0.80 Ω");
    const electrode = loft.replace("earthing  TN-S", "earthing  TT\n    electrode rod 6┆0 Ω");
    expect(await shown(electrode)).toContain("stable up to: 200 Ω, 70 % left");
    const bonding = loft.replace("earthing  TN-S", "earthing  TN-C-S\n    tails 25 mm²\n    bonding water ┆6 mm²");
    expect(await shown(bonding)).toContain("at least: 10 mm², which this is not");
    const area = loft.replace("serves  sockets", "serves  sockets\n      floor-area ┆80 m²");
    expect(await shown(area)).toContain("a ring serves at most: 100 m², 20 % left");
    const voltage = loft.replace("test-button  ok", "test-button  ok\n        voltage 2┆40 V");
    expect(await shown(voltage)).toContain("at most: 253 V, 5 % left");
    const ofBoard = loft.replace(
      "fed-from     supply",
      "fed-from     supply\n    live 2026-03-05 with M1 {\n      rcd east 30 mA 1x 2┆4 ms\n    }",
    );
    expect(await shown(ofBoard)).toContain("at most, at 1 × IΔn: 300 ms, 92 % left");
  });

  it("expects as much of R1+R2 as the longest spur adds", async () => {
    expect(await shown(loftWith("R1+┆R2       0.22 Ω"))).toContain("at the end of a spur: 0.21 Ω");
    expect(await shown(loftWith("run     S3 ┆4 m S5"))).toContain("R1+R2 expected at the end of a spur: 0.21 Ω");
  });

  it("tells more than three words of why a slip of the pen matters", async () => {
    const text = await shown(loft.replace("0.64 Ω", "0,6┆4 Ω"));
    expect(text).toContain("0,64");
    expect(text).not.toMatch(/\nIt is never guessed\. \*/);
  });

  it("does not hold a test voltage against a resistance", async () => {
    const text = await shown(loftWith("insulation  5┆00 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ"));
    expect(text).toContain("500 V");
    expect(text).not.toMatch(/over|left|times/);
  });

  it("says that the least breaking capacity is enough where the board is rated as an assembly", async () => {
    const strong = loft.replace("Ipf       0.92 kA", "Ipf       ┆8.20 kA");
    expect(await shown(strong)).toContain("6 kA, way 3, 37 % over");
    const rated = strong.replace("main-switch", "conditional-rating 16 kA\n    main-switch");
    expect(await shown(rated)).toContain("6 kA, way 3, 37 % over, but the board is rated 16 kA as an assembly");
  });

  it("is silent where nothing stands", async () => {
    expect(await shown(loft.replace("way 9 spare", "┆\n    way 9 spare"))).toBe("nothing");
  });
});
