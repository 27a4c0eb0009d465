import { describe, expect, it } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { atCursor, loft, loftWith } from "../helpers/cursor.ts";

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
      - cold by other ways: 1.10 Ω (0.8 of the printed value, rounded (Guidance Note 3)), 1.10 Ω (divided by 1.24, rounded (On-Site Guide))
      - expected: Ze + R1+R2 = 0.64 Ω
      - design, hot: 0.61 Ω

      \`\`\`text
      Ia = 5 × In = 5 × 32 A = 160 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
      cold Zs × 0.8 = 1.37 Ω × 0.8 = 1.09 Ω
      Zs = Ze + (R1+R2) = 0.42 Ω + 0.22 Ω = 0.64 Ω
      \`\`\`

      *BS 7671:2018+A2:2022, Table 41.3; BS 7671:2018+A2:2022, 411.4.4 (computed). BS 7671 Appendix 3 (was Appendix 14 in the 17th Edition).*"
    `);
  });

  it("explains a word, with the figures of its line", async () => {
    expect(await shown(loftWith("R1+┆R2       0.22 Ω"))).toMatchInlineSnapshot(`
      "on “R1+R2”
      **R1+R2** — Resistance of line and protective conductor together, to the far point.

      Links line and protective conductor at the board and measures at each point; the highest counts. Proves polarity too.

      - expected by the ends of the ring: 0.16 Ω
      - expected by length: 0.16 Ω

      \`\`\`text
      (r1 + r2) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      r = 2.5 mm² copper = 7.41 mΩ/m
      (r1 + r2) per metre = 7.41 mΩ + 7.41 mΩ = 14.82 mΩ/m
      R = length × resistance per metre = 42 m × 14.82 mΩ/m = 0.62 Ω
      (r1 + r2) / 4 = 0.62 Ω / 4 = 0.16 Ω
      \`\`\`

      *BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3; IET On-Site Guide, Table I1 (computed)*

      Limits: Regulation 643.2.1."
    `);
  });

  it("shows the room between load, device and cable", async () => {
    expect(await shown(loftWith("device  BS EN 61009 B┆6 6 kA 30 mA type A"))).toMatchInlineSnapshot(`
      "on “B6”
      **B6** — Type and rated current, such as B32.

      - device: B6 BS EN 61009
      - currents: Ib 2.1 A ≤ In 6 A ≤ Iz 20 A; room: 3.9 A to the device, 14 A to the cable
      - breaks: 6 kA, where 0.92 kA (Ipf) is to be broken
      - must disconnect: within 0.4 s
      - Zs at most: 7.28 Ω
      - RCD: 30 mA type A BS EN 61009

      \`\`\`text
      final circuit, fixed equipment = 6 A against 32 A = Table 41.1 applies
      TN, U0 = 230 V = BS 7671:2018+A2:2022, Table 41.1 = 0.4 s
      Ia = 5 × In = 5 × 6 A = 30 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 30 A = 7.28 Ω
      \`\`\`

      *BS 7671:2018+A2:2022, Table 41.1; BS 7671:2018+A2:2022, 411.3.2.2; BS 7671:2018+A2:2022, Table 41.3 (published)*"
    `);
  });

  it("reckons a ring by the ring's own rule", async () => {
    expect(await shown(loftWith("ca┆ble   singles 70 °C line 2.5 mm² cpc 2.5 mm²"))).toMatchInlineSnapshot(`
      "on “cable”
      **cable** — The cable: how it is made, and the size of each conductor.

      - line: 2.5 mm², 7.41 mΩ/m at 20 °C
      - protective conductor: 2.5 mm², 7.41 mΩ/m at 20 °C
      - capacity: 24 A by method B
      - currents: In 32 A, the ring's cable 24 A ≥ 20 A
      - protective conductor wanted: 2.5 mm² (by the table)

      \`\`\`text
      r = 2.5 mm² copper = 7.41 mΩ/m
      It = BS 7671:2018+A2:2022, Table 4D1A = 24 A
      cpc for S = 2.5 mm² = S = 2.5 mm²
      \`\`\`

      *BS EN 60228, Tables 1 to 3; BS 7671:2018+A2:2022, Table 4D1A; BS 7671:2018+A2:2022, Table 54.7 (published)*

      Limits: Appendix 4 for capacity and drop; Table 54.7 for the protective conductor."
    `);
  });

  it("expects more of a spur than of the ring", async () => {
    expect(await shown(loftWith("┆at S5       L-N 0.22 Ω L-E 0.22 Ω polarity ok"))).toMatchInlineSnapshot(`
      "on “at”
      **at** — What was read at a point, with the legs cross-connected at the board.

      On the ring each point reads a quarter of the sum of the two ends; a spur reads more by its own cable.

      - L-N expected: 0.21 Ω, 0.059 Ω of it the spur's
      - L-E expected half way round: 0.21 Ω, 0.059 Ω of it the spur's
      - within: 0.050 Ω

      \`\`\`text
      (r1 + rn) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      (r1 + r2) / 4 = (0.31 Ω + 0.31 Ω) / 4 = 0.16 Ω
      spur adds = 4 m × 14.82 mΩ/m = 0.059 Ω
      tolerance = between like readings of a ring = 0.050 Ω
      \`\`\`

      *BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3; IET On-Site Guide, Table I1; Common practice, ring final circuit test (common practice)*

      Limits: Each within 0.05 Ω of its own expectation (common practice)."
    `);
  });

  it("holds a trip time against its longest", async () => {
    expect(await shown(loftWith("rcd          30 mA 1x 2┆4 ms"))).toMatchInlineSnapshot(`
      "on “24 ms”
      **24 ms** — The trip time.

      - at most, at 1 × IΔn: 300 ms, 92 % left
      - this edition asks for it: yes

      \`\`\`text
      longest at 1 × IΔn = BS EN 61008-1 and BS EN 61009-1, break times = 300 ms
      \`\`\`

      *BS EN 61008-1 and BS EN 61009-1, break times (published)*"
    `);
  });

  it("reckons the length's resistance and drop", async () => {
    expect(await shown(loftWith("length  1┆8 m"))).toMatchInlineSnapshot(`
      "on “18 m”
      **18 m** — The length of the cable run.

      - to the far point: 18 m
      - R1+R2 expected at 20 °C: 0.54 Ω
      - voltage drop: 0.48 % of U0, where 3 % is advised

      \`\`\`text
      r = 1.5 mm² copper = 12.1 mΩ/m
      r = 1 mm² copper = 18.1 mΩ/m
      (r1 + r2) per metre = 12.1 mΩ + 18.1 mΩ = 30.2 mΩ/m
      R = length × resistance per metre = 18 m × 30.2 mΩ/m = 0.54 Ω
      drop = mV/A/m × Ib × L = 29 mV/A/m × 2.1 A × 18 m = 1.1 V
      drop / U = 1.1 V / 230 V = 0.48 %
      limit, lighting, public supply = 3 %
      \`\`\`

      *IET On-Site Guide, Table I1; BS 7671:2018+A2:2022, Table 4D5; BS 7671:2018+A2:2022, Appendix 4, section 6.4 (computed)*"
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
      - currents: Ib 2.1 A ≤ In 6 A ≤ Iz 20 A; room: 3.9 A to the device, 14 A to the cable

      \`\`\`text
      It = BS 7671:2018+A2:2022, Table 4D5 = 20 A
      \`\`\`

      *BS 7671:2018+A2:2022, Table 4D5 (published)*"
    `);
    expect(await shown(loftWith("earthing  TN┆-S"))).toMatchInlineSnapshot(`
      "on “TN-S”
      **TN-S** — Separate neutral and earth from the source, often the cable's sheath."
    `);
  });

  it("names the edition and whether it is in force", async () => {
    expect(await shown(loftWith("standard  BS 76┆71:2018+A2:2022"))).toMatchInlineSnapshot(`
      "on “BS 7671:2018+A2:2022”
      **BS 7671:2018+A2:2022** — The edition the work was done to.

      - edition: 18th Edition, Amendment 2, no longer for new work
      - for work from: 2022-03-28
      - Cmin: 0.95

      *BS 7671:2018+A2:2022, 411.4.4 (published)*"
    `);
  });

  it("puts what was found there first, with the reason", async () => {
    expect(await shown(loft.replace("0.64 Ω", "1┆.64 Ω"))).toMatchInlineSnapshot(`
      "on “1.64 Ω”
      **Zs 1.64 Ω is above what Ze and R1+R2 give (0.64 Ω): look for a joint that is loosening, or R1+R2 read at a nearer point.**

      \`\`\`text
      Zs = Ze + (R1+R2) = 0.42 Ω + 0.22 Ω = 0.64 Ω
      agreement of loop readings, as a share of what is expected = 0.2
      \`\`\`

      Zs is what the board has, and the circuit's own R1+R2. Well above: a joint is loosening, or R1+R2 was read at another point. Well below: metal in parallel, or one of three figures is from another circuit or another day.

      *loop/zs-disagrees; BS 7671:2018+A2:2022, 411.4.4; Common practice, agreement of loop readings, as a share of what is expected*

      ---

      **Zs 1.64 Ω is above the 1.37 Ω of the B32 BS EN 60898 device: only the RCD would disconnect. Look for a poor joint, and record that the RCD is the means of disconnection if it stays.**

      \`\`\`text
      Ia = 5 × In = 5 × 32 A = 160 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
      Zs = 50 V / IΔn = 50 V / 30 mA = 1667 Ω
      \`\`\`

      It is allowed, but it rests the whole protection on one mechanism that nobody presses. On a TN supply a loop this high is first a sign of a poor joint or a circuit that is too long.

      *loop/relies-on-rcd; BS 7671:2018+A2:2022, Table 41.3; BS 7671:2018+A2:2022, Table 41.5*

      ---

      **1.64 Ω** — The loop impedance.

      - limit, hot: 1.37 Ω, passed by 20 %
      - limit, cold: 1.09 Ω, passed by 50 %
      - cold by other ways: 1.10 Ω (0.8 of the printed value, rounded (Guidance Note 3)), 1.10 Ω (divided by 1.24, rounded (On-Site Guide))
      - expected: Ze + R1+R2 = 0.64 Ω
      - design, hot: 0.61 Ω

      \`\`\`text
      Ia = 5 × In = 5 × 32 A = 160 A
      Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
      cold Zs × 0.8 = 1.37 Ω × 0.8 = 1.09 Ω
      Zs = Ze + (R1+R2) = 0.42 Ω + 0.22 Ω = 0.64 Ω
      \`\`\`

      *BS 7671:2018+A2:2022, Table 41.3; BS 7671:2018+A2:2022, 411.4.4 (computed). BS 7671 Appendix 3 (was Appendix 14 in the 17th Edition).*"
    `);
  });

  it("is silent where nothing stands", async () => {
    expect(await shown(loft.replace("way 9 spare", "┆\n    way 9 spare"))).toBe("nothing");
  });
});
