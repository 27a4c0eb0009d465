import { describe, expect, it } from "vitest";
import { complete } from "../../server/features/completion.ts";
import { atCursor, loft, loftWith } from "../helpers/cursor.ts";

/** What is offered for the piece that is being typed, as an editor would filter it. */
async function offered(sample: string): Promise<string> {
  const { snapshot, cursor } = await atCursor(sample);
  const all = complete(snapshot, cursor);
  const fitting = all.filter(({ label, aliases, spot }) => {
    const typed = spot.segment.text.slice(spot.start, spot.end).toLowerCase();
    return [label.toLowerCase(), ...aliases].some((word) => word.startsWith(typed));
  });
  return fitting.map(({ label }) => label).join(", ");
}

const inWay = (line: string) => loft.replace("      serves  lighting\n", `      serves  lighting\n      ${line}\n`);
const inSupply = (line: string) => loft.replace("    Ipf       0.92 kA\n", `    ${line}\n`);

describe("completion", () => {
  it("offers the words of a block that are not used up", async () => {
    expect(await offered(inWay("┆"))).toMatchInlineSnapshot(
      `"route, run, load, behind, place, dead, live, formerly, work, settings, rcd, afdd, phase, feeds, points, spurs, fused, outlet-rcd, floor-area, protective-measure, ingress, supplementary-bonding, earthing, electrode, open-PEN, starting, overload, drivers, dc-detection, inverter, load-control, power-factor, diversity, neutral-harmonics, leakage, duplicate-cpc, disconnect, max-Zs, parallel-path, terminals, shared-neutral, vulnerable, class-II, designed, installed, tested, departure, query, answer, note, detail"`,
    );
    expect(await offered(inSupply("p┆"))).toMatchInlineSnapshot(`"Ipf, polarity, phases, PSCC, PEFC, phase-sequence"`);
    expect(await offered(loft.replace("    way 9 spare", "    w┆"))).toMatchInlineSnapshot(
      `"way, water-heater, appliance, work"`,
    );
    expect(await offered("┆")).toMatchInlineSnapshot(
      `"wayfile, use, instrument, installation, may-ignore, cable-type, device-figures, circuit-type, field, board, departure, query, answer, note, detail"`,
    );
  });

  it("offers a circuit on a board before a word that a board rarely has", async () => {
    const labels = (await offered(loft.replace(/^( *)way /m, "$1┆\n$1way "))).split(", ");
    expect(labels.filter((label) => ["way", "lighting", "live"].includes(label))).toEqual(["way", "lighting", "live"]);
  });

  it("offers choices, then the labels of the line that are not there yet", async () => {
    expect(await offered(inWay("route ┆"))).toMatchInlineSnapshot(
      `"clipped, conduit, trunking, ceiling, wall, floor, tray, ladder, free-air, overhead, duct, buried, method, steel, plastic, flexible, grouped, bunched, layer, tray-layer, ladder-layer, ambient, insulated, depth, soil, apart, length, bends, metal-frame, in, legs, carries, factor, by"`,
    );
    expect(await offered(inWay("route clipped method C ┆"))).toMatchInlineSnapshot(
      `"steel, plastic, flexible, grouped, bunched, layer, tray-layer, ladder-layer, ambient, insulated, depth, soil, apart, length, bends, metal-frame, in, legs, carries, factor, by"`,
    );
    expect(await offered(inWay("route clipped method ┆"))).toMatchInlineSnapshot(
      `"C, 100, 101, 102, 103, A, B, D, E, F"`,
    );
  });

  it("finds the standard of a device by what is said for it on site, and says what each is of", async () => {
    const withDevice = (said: string) => loft.replace(/^ +device .*$/m, `      device ${said}┆`);
    expect(await offered(withDevice("mcb"))).toBe("BS EN 60898");
    expect(await offered(withDevice("rcbo"))).toBe("BS EN 61009");
    expect(await offered(withDevice("fuse"))).toBe("BS 88-2, BS 88-3, BS 3036");
    const { snapshot, cursor } = await atCursor(withDevice(""));
    for (const { label, detail } of complete(snapshot, cursor).filter((one) => one.label.startsWith("BS ")))
      expect(detail, label).toMatch(/fuse|circuit-breaker/);
  });

  it("offers every pair at once, and no board as the one that feeds it", async () => {
    const insulation = loft.replace(/insulation .*$/m, "insulation 500 V ┆");
    expect(await offered(insulation)).toMatch(/^each, L-N, L-E, N-E/);
    expect((await offered(loft.replace(/fed-from .*$/m, "fed-from ┆"))).split(", ")).not.toContain("A");
  });

  it("finds a word by what is said for it on site", async () => {
    expect(await offered(inWay("route under┆"))).toBe("floor, buried");
    expect(await offered(loft.replace("cable   flat-twin", "cable   swa┆"))).toBe("armoured");
    expect(await offered(inSupply("earthing pme┆"))).toBe("TN-C-S");
  });

  it("offers the files a path may name, while it is typed", async () => {
    const known = ["sample.ways", "meters.ways", "boards/annexe.ways", "my tools.ways"].map(
      (name) => `file:///schedules/${encodeURI(name)}`,
    );
    const paths = async (line: string) => {
      const { snapshot, cursor } = await atCursor(loft.replace("wayfile 1\n", `wayfile 1\n${line}\n`), {
        "meters.ways": "",
      });
      return complete(snapshot, cursor, [...known, "file:///other/b.ways"]).map(({ label }) => label);
    };
    expect(await paths('use "┆"')).toEqual(["meters.ways", "my tools.ways", "boards/annexe.ways", "../other/b.ways"]);
    expect(await paths('use "meters.ways"\nuse "boards/┆')).not.toContain("meters.ways");
    expect(await paths('note "┆"')).toEqual([]);
  });

  it("offers the names in scope", async () => {
    expect(await offered(loftWith("behind  east┆").replace("east┆", "┆"))).toMatchInlineSnapshot(`"east"`);
    expect(await offered(inWay("dead 2026-03-04 with ┆"))).toMatchInlineSnapshot(`"M1"`);
    expect(await offered(inWay("cable t┆"))).toMatchInlineSnapshot(`"twin, flat-twin, singles"`);
  });

  it("offers units after a number", async () => {
    expect(await offered(loft.replace("0.64 Ω", "0.64 ┆"))).toMatchInlineSnapshot(`"Ω, mΩ"`);
    expect(await offered(inWay("load 3 ┆"))).toMatchInlineSnapshot(`"kW, W, A, mA"`);
  });

  it("offers the standards, then the ratings that are made", async () => {
    expect(await offered(inWay("afdd ┆"))).toMatchInlineSnapshot(`"BS EN 62606"`);
    expect(
      await offered(loft.replace("device  BS EN 61009 B6 6 kA 30 mA type A", "device BS EN 6┆")),
    ).toMatchInlineSnapshot(`"BS EN 60898, BS EN 61009, BS EN 60947-2"`);
    expect(
      await offered(loft.replace("device  BS EN 61009 B6 6 kA 30 mA type A", "device BS EN 61009 C┆")),
    ).toMatchInlineSnapshot(`"C6, C10, C32, C16, C20, C40, C25, C50, C63, C1, C2, C3, C4, C13, C45, C80, C100, C125"`);
    expect(
      await offered(loft.replace("device  BS EN 61009 B6 6 kA 30 mA type A", "device BS 88-3 ┆")),
    ).toMatchInlineSnapshot(
      `"32 A, 16 A, 20 A, 63 A, 5 A, 45 A, 80 A, 100 A, gG, gM, back-up, single-pole, double-pole, three-pole, four-pole, type, bidirectional, unidirectional"`,
    );
  });

  it("offers editions, and the number of the next way", async () => {
    expect(await offered(loft.replace("standard  BS 7671:2018+A2:2022", "standard ┆"))).toMatchInlineSnapshot(
      `"BS 7671:2018+A4:2026, BS 7671:2018+A2:2022+A3:2024, BS 7671:2018+A2:2022, BS 7671:2018+A1:2020, BS 7671:2018, BS 7671:2008+A3:2015, BS 7671:2008+A1:2011, BS 7671:2008, BS 7671:2001"`,
    );
    expect(await offered(loft.replace("way 9 spare", "way 9 spare\n    way ┆"))).toMatchInlineSnapshot(
      `"10, radial, ring, feeder, spare, as"`,
    );
  });

  it("offers checks to depart from", async () => {
    expect(await offered(inWay("departure loop/zs┆"))).toMatchInlineSnapshot(
      `"loop/zs-against-length, loop/zs-below-board, loop/zs-below-conductors, loop/zs-below-electrode, loop/zs-disagrees, loop/zs-over-cold-limit, loop/zs-over-limit, loop/zs-over-rcd-limit, loop/zs-over-written-limit"`,
    );
  });

  it("offers what finds something here first, then what does on the board and elsewhere", async () => {
    const shown = (await offered(inWay("departure ┆"))).split(", ");
    const { snapshot } = await atCursor(inWay("┆"));
    const here = snapshot.findings.map(({ check }) => check).filter((check) => !check.startsWith("language/"));
    expect(here.length).toBeGreaterThan(0);
    expect(new Set(shown.slice(0, new Set(here).size))).toEqual(new Set(here));
    const ofWay = snapshot.findings.filter(({ spot }) => spot.segment.text.includes("serves  lighting"));
    const first = new Set(ofWay.map(({ check }) => check).filter((check) => !check.startsWith("language/")));
    expect(first.size).toBeGreaterThan(0);
    expect(new Set(shown.slice(0, first.size))).toEqual(first);
  });

  it("offers the result of a button before the name of an RCD", async () => {
    expect((await offered(inWay("live 2026-03-05 {\n test-button ┆\n}"))).split(", ").slice(0, 2)).toEqual([
      "ok",
      "failed",
    ]);
  });

  it("leaves texts and comments to the writer", async () => {
    expect(await offered(inWay('note "the ┆'))).toBe("");
    expect(await offered(inWay("# the ┆"))).toBe("");
  });

  it("writes a block with places to fill in", async () => {
    const { snapshot, cursor } = await atCursor(loft.replace("way 9 spare", "way 9 spare\n    ┆"));
    const snippets = complete(snapshot, cursor).flatMap(({ snippet }) => snippet ?? []);
    expect(snippets.join("\n\n")).toMatchInlineSnapshot(`
      "way 10 \${1|radial,ring|} "\${2}" {
      	$0
      }

      way 10 feeder "\${1}" {
      	device       BS 88-2 \${2|63,40,80,100,50,32|} A gG
      	cable        armoured 90 °C  line \${3|16,10,25,35|} mm²  cpc-by armour  cores \${4|3,2,4|}
      	route        \${5|tray  method E,clipped  method C,buried  method D|}
      	length       \${6} m
      	feeds        \${7}
      }$0

      way 10 ring "\${1:Sockets}" {
      	$0
      }

      way 10 radial "\${1:Sockets}" {
      	$0
      }

      way 10 radial "\${1:Lighting}" {
      	$0
      }

      way 10 radial "\${1:Cooker}" {
      	$0
      }

      way 10 radial "\${1:Shower}" {
      	$0
      }

      way 10 radial "\${1:Water heater}" {
      	$0
      }

      way 10 radial "\${1:Heating}" {
      	$0
      }

      way 10 radial "\${1:Smoke and heat alarms}" {
      	$0
      }

      way 10 radial "\${1:Appliance}" {
      	$0
      }

      way 10 radial "\${1:Motor}" {
      	$0
      }

      containment \${1} \${2|conduit,trunking|} \${3} "\${4}" {
      	$0
      }

      dead \${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} with \${2:M1} {
      	$0
      }

      live \${1:$CURRENT_YEAR-$CURRENT_MONTH-$CURRENT_DATE} with \${2:M1} {
      	$0
      }"
    `);
  });
});
