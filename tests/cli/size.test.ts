/** Proposals on the command line: what is printed, what is written, and what is refused. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { faultsAgainst, type Schema } from "../helpers/schema.ts";
import { Folder, schedule } from "./run.ts";

const ways = `    way 3 radial "Water heater" {
      # beside the sink
      cable        flat-twin  # as the rest of the house
      route        clipped  method C  grouped 2
      length       18 m
      serves       water-heater
      load         5 kW
      note         "Kept as it is"
    }

    way 4 radial "Not drawn yet"
    way 5 spare

    way 6 radial "Far heater" {
      route        wall  method 103
      length       10 m
      serves       heating
      Ib           60 A
    }`;
const folder = () => new Folder({ "a.ways": schedule(ways) });
const read = (where: Folder) => readFileSync(where.at("a.ways"), "utf8");

describe("a proposal", () => {
  test("is printed with its working and what ruled out the next smaller", async () => {
    const { code, out, err } = await folder().run("size", "a.ways", "--way", "A/3");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("\n  device BS EN 60898 B25 6 kA\n  cable flat-twin line 4 mm² cpc 1.5 mm²\n");
    expect(out).toContain("Ib = Σ P / U = 5000 W / 230 V = 21.7 A");
    expect(out).toContain("Iz = 37 A × 0.8 = 29.6 A");
    expect(out).toMatch(/\n {2}B20 BS EN 60898 +In 20 A is below Ib 21\.7 A\n/);
    expect(out).toMatch(/\n {2}2\.5 mm², cpc 1\.5 mm² +capacity of the cable: Iz 21\.6 A against In 25 A\n/);
    expect(out).toMatch(/Nothing was written; --write puts the lines into the way\.\n$/);
  });

  test("is not written unless it is asked for", async () => {
    const where = folder();
    await where.run("size", "a.ways", "--way", "A/3");
    expect(read(where)).toBe(schedule(ways));
  });

  test("is written into its way, and nothing else changes", async () => {
    const where = folder();
    const { code, out } = await where.run("size", "a.ways", "--way", "A/3", "--write");
    expect(code).toBe(0);
    expect(out).toMatch(/Written to a\.ways\.\n$/);
    const before = schedule(ways).split("\n");
    const after = read(where).split("\n");
    expect(before.filter((line) => !after.includes(line))).toEqual([
      "      cable        flat-twin  # as the rest of the house",
    ]);
    expect(after.filter((line) => !before.includes(line))).toEqual([
      "      device       BS EN 60898 B25 6 kA",
      "      cable        flat-twin  line 4 mm²  cpc 1.5 mm²  # as the rest of the house",
    ]);
    const again = await where.run("size", "a.ways", "--way", "A/3", "--write");
    expect(again.out).toMatch(/This is what is written there already\.\n$/);
    expect(read(where)).toBe(after.join("\n"));
  });

  test("keeps Windows line ends and the byte order mark", async () => {
    const where = new Folder({ "a.ways": `\ufeff${schedule(ways).replaceAll("\n", "\r\n")}` });
    await where.run("size", "a.ways", "--way", "A/3", "--write");
    const text = read(where);
    expect(text.startsWith("\ufeffwayfile 1\r\n")).toBe(true);
    expect(text.replaceAll("\r\n", "")).not.toContain("\n");
    expect(text).toContain("      device       BS EN 60898 B25 6 kA\r\n");
  });

  const tested = `    way 3 radial "Water heater" {
      device       BS EN 60898 C32 6 kA
      cable        flat-twin line 6 mm² cpc 2.5 mm²
      route        clipped  method C
      length       18 m
      serves       water-heater
      load         5 kW
      dead 2026-03-04 {
        R1+R2        0.19 Ω
      }
    }`;

  test("is not written over what was tested", async () => {
    const where = new Folder({ "a.ways": schedule(tested) });
    const { code, err } = await where.run("size", "a.ways", "--way", "A/3", "--write");
    expect(code).toBe(2);
    expect(err).toMatch(
      /^Way A\/3 has tests, and they are of the device and cable that are written: nothing was written\./,
    );
    expect(read(where)).toBe(schedule(tested));
  });

  test("is written over it when forced, and the way says what was tested", async () => {
    const where = new Folder({ "a.ways": schedule(tested) });
    const { code } = await where.run("size", "a.ways", "--way", "A/3", "--write", "--despite-tests");
    expect(code).toBe(0);
    expect(read(where)).toContain(
      'note         "The tests here are of device BS EN 60898 C32 6 kA, cable flat-twin line 6 mm² cpc 2.5 mm²; device and cable were proposed anew since"',
    );
    expect(read(where)).toContain("R1+R2        0.19 Ω");
  });

  test("never touches a reading", async () => {
    const tests = `      dead 2026-03-04 {\n        R1+R2        0.31 Ω\n      }\n`;
    const where = new Folder({
      "a.ways": schedule(ways.replace('      note         "Kept', `${tests}      note         "Kept`)),
    });
    const { out } = await where.run("size", "a.ways", "--way", "A/3", "--write", "--despite-tests");
    expect(read(where)).toContain(tests);
    expect(out).toContain("Readings are recorded here: they are of what was installed, not of what is proposed.");
  });

  test("is there for programs too", async () => {
    const { code, out } = await folder().run("size", "a.ways", "--way", "A/3", "--format", "json");
    expect(code).toBe(0);
    const report = JSON.parse(out);
    const schema = JSON.parse((await folder().run("schema", "size")).out) as Schema;
    expect(await faultsAgainst(schema, report)).toEqual([]);
    expect(report).toMatchObject({
      version: 1,
      path: "a.ways",
      way: "A/3",
      outcome: "fits",
      device: "device BS EN 60898 B25 6 kA",
      cable: "cable flat-twin line 4 mm² cpc 1.5 mm²",
      written: false,
      changes: true,
    });
    expect(report.decisions.map(({ title }: { title: string }) => title)).toEqual([
      "Design current",
      "Kind of device",
      "Kind of cable",
      "Rating of the device",
      "Size of the cable",
      "Least size",
      "Capacity of the cable",
      "Voltage drop",
      "Loop impedance",
      "Protective conductor",
      "Breaking capacity",
      "RCD",
    ]);
  });
});

describe("what would be", () => {
  test("is asked with a current or a power, in one word or two, and the file stays as it is", async () => {
    const where = folder();
    for (const load of [["28 A"], ["28", "A"], ["28A"]]) {
      const { code, out } = await where.run("size", "a.ways", "--way", "A/3", "--load", ...load);
      expect(code).toBe(0);
      expect(out).toContain("Ib = 28 A, as requested");
      expect(out).toMatch(/Nothing was written: this rests on what the way does not state\.\n$/);
    }
    const { out } = await where.run("size", "--load", "4.6", "kW", "--way", "A/3", "a.ways");
    expect(out).toContain("Ib = P / U = 4600 W / 230 V = 20 A");
    expect(read(where)).toBe(schedule(ways));
  });

  test.each([
    [["--load", "28"], "A load is a current or a power with its unit, such as 28 A or 6.4 kW; “28” is not."],
    [["--load", "28 mm"], "A load is a current or a power with its unit, such as 28 A or 6.4 kW; “28 mm” is not."],
    [["--load", "0 A"], "A load is a current or a power with its unit, such as 28 A or 6.4 kW; “0 A” is not."],
    [
      ["--load", "28 A", "--write"],
      "What would be is not written: put the load into the way, and size it with --write then.",
    ],
  ])("%j is refused", async (more, sentence) => {
    const { code, out, err } = await folder().run("size", "a.ways", "--way", "A/3", ...more);
    expect({ code, out, err }).toEqual({ code: 2, out: "", err: `${sentence}\n` });
  });

  test("goes without a route, says so, and writes nothing even when told to", async () => {
    const text = schedule('    way 1 radial "Heater" {\n      length 9 m\n      Ib 13 A\n      serves heating\n    }');
    const where = new Folder({ "a.ways": text });
    const { code, out } = await where.run("size", "a.ways", "--way", "A/1", "--write");
    expect(code).toBe(0);
    expect(out).toContain("The route was assumed: route ");
    expect(out).toMatch(/Nothing was written: this rests on what the way does not state\.\n$/);
    expect(read(where)).toBe(text);
  });
});

describe("no proposal", () => {
  test("where facts are missing: they are named", async () => {
    const { code, out } = await folder().run("size", "a.ways", "--way", "A/4");
    expect(code).toBe(1);
    expect(out).toContain("What is missing:\n  the design current (Ib), or the loads\n  the route: ");
  });

  test("for a spare way", async () => {
    const { code, out } = await folder().run("size", "a.ways", "--way", "A/5");
    expect(code).toBe(1);
    expect(out).toContain("a circuit: this way is spare");
  });

  test("where nothing that is made fits", async () => {
    const where = folder();
    const { code, out } = await where.run("size", "a.ways", "--way", "A/6", "--write");
    expect(code).toBe(1);
    expect(out).toContain("Nothing fits. No flat-twin cable fits behind B63 BS EN 60898.");
    expect(read(where)).toBe(schedule(ways));
  });

  test.each([
    [["a.ways", "--way", "A/9"], "There is no way 9 on board A: there is 3, 4, 5, 6."],
    [["a.ways", "--way", "B/3"], "There is no board “B” in an installation here: there is A."],
    [["a.ways", "--way", "3"], "A way is named by its board and its number, such as A/3; “3” is not."],
    [["b.ways", "--way", "A/3"], "“b.ways” cannot be read: there is no such file."],
  ])("%j is refused in one sentence", async (args, sentence) => {
    expect(await folder().run("size", ...args)).toEqual({ code: 2, out: "", err: `${sentence}\n` });
  });
});
