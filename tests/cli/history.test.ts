/** Readings over the years and commits, and those that were changed after they were signed for, by a real git. */
import { afterEach, describe, expect, it } from "vitest";
import { historySchema } from "../../server/cli/history-json.ts";
import { TestRepository } from "../helpers/repository.ts";
import { faultsAgainst, type Schema } from "../helpers/schema.ts";
import { runIn } from "./run.ts";

const way = (id: string, tests: string) => `    way ${id} radial "Oven" {
      device  BS EN 60898 B32 6 kA
      cable   flat-twin line 6 mm² cpc 2.5 mm²
      length  12 m
${tests}    }
`;
const live = (day: string, reading: string) => `      live ${day} with M1 {\n        Zs  ${reading}\n      }\n`;
const schedule = (ways: string, signed = 'tested by "R.M." 2026-03-06') => `wayfile 1
instrument M1 "Tester" {
  due       2029-11-03
  accuracy  loop 2 % 2 digits
}
installation "Gull Slip" {
  standard  BS 7671:2018+A2:2022
  ${signed}
  board A "Main" {
    fed-from  supply
${ways}  }
}
`;

const made: TestRepository[] = [];
const begun = (text: string, name = "house.ways"): TestRepository => {
  const one = new TestRepository();
  made.push(one);
  one.day = "2026-03-06";
  one.commit("First", { [name]: text }, "R. Moss");
  return one;
};
afterEach(() => {
  for (const one of made.splice(0)) one.end();
});

const changed = "2026-04-01";
const later = (one: TestRepository, text: string, who = "B. Adder", name = "house.ways"): void => {
  one.day = changed;
  one.commit("Tidied", { [name]: text }, who);
};

describe("history", () => {
  it("gives each day's figure, who wrote it, who changed it from what, and the drift with its uncertainty", async () => {
    const one = begun(schedule(way("1", live("2026-03-05", "0.42 Ω"))));
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    one.write({ "house.ways": schedule(way("1", live("2026-03-05", "0.47 Ω") + live("2028-03-05", "0.55 Ω"))) });
    const { code, out, err } = await runIn(one.folder, "history", "house.ways", "A/1 Zs");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/A\/1 · live 2026-03-05 · Zs +0\.42 Ω +0\.47 Ω +B\. Adder, 2026-04-01 \([0-9a-f]{8}\)/);
    // 2 % of the reading and 2 digits of its last figure: 0.0094 + 0.02 Ω, and 0.011 + 0.02 Ω.
    expect(out).toMatch(/2026-03-05 +0\.47 Ω +±0\.029 Ω +─*●─* +R\. Moss, 2026-03-06/);
    expect(out).toMatch(/2028-03-05 +0\.55 Ω +±0\.031 Ω +·+─*●─* +not committed yet/);
    expect(out).toContain("Risen by 0.08 Ω, more than the ±0.06 Ω of both readings' instruments.");
  });

  it("gives the same to programs, of its schema", async () => {
    const one = begun(schedule(way("1", live("2026-03-05", "0.42 Ω"))));
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    one.write({ "house.ways": schedule(way("1", live("2026-03-05", "0.47 Ω") + live("2028-03-05", "0.55 Ω"))) });
    const { code, out, err } = await runIn(one.folder, "history", "house.ways", "A/1 Zs", "--format", "json");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    const json = JSON.parse(out) as unknown;
    expect(await faultsAgainst(historySchema as unknown as Schema, json)).toEqual([]);
    const hash = expect.stringMatching(/^[0-9a-f]{8}$/);
    const first = { commit: hash, author: "R. Moss", day: "2026-03-06", subject: "First" };
    const second = { commit: hash, author: "B. Adder", day: "2026-04-01", subject: "Tidied" };
    const open = { commit: null, author: null, day: null, subject: null };
    expect(json).toEqual({
      version: 1,
      file: "house.ways",
      address: "A/1 Zs",
      commits: [open, second, first],
      readings: [
        {
          reading: "A/1 · Zs",
          days: [
            {
              day: "2026-03-05",
              address: "A/1 · live 2026-03-05 · Zs",
              text: "0.47 Ω",
              value: { amount: 0.47, unit: "Ω", sign: "=" },
              uncertainty: { amount: 0.0294, instrument: "M1" },
              writings: [
                { kind: "read", before: null, after: "0.42 Ω", ...first },
                { kind: "altered", before: "0.42 Ω", after: "0.47 Ω", ...second },
              ],
            },
            {
              day: "2028-03-05",
              address: "A/1 · live 2028-03-05 · Zs",
              text: "0.55 Ω",
              value: { amount: 0.55, unit: "Ω", sign: "=" },
              uncertainty: { amount: 0.031, instrument: "M1" },
              writings: [{ kind: "read", before: null, after: "0.55 Ω", ...open }],
            },
          ],
          drift: {
            amount: 0.08,
            unit: "Ω",
            uncertainty: 0.0604,
            isMore: true,
            text: "risen by 0.08 Ω, more than the ±0.06 Ω of both readings' instruments",
          },
        },
      ],
      remarks: [],
    });
    expect(await faultsAgainst(historySchema as unknown as Schema, { ...(json as object), more: 1 })).not.toEqual([]);
  });

  it("gives programs every reading there is, bounds, words and what was not measured too", async () => {
    for (const name of ["heron-wharf/workshop.ways", "alder-row/periodic.ways", "larkfield/cottage.ways"]) {
      const { code, out } = await runIn("examples", "history", name, "--format", "json");
      expect(code).toBe(0);
      expect(await faultsAgainst(historySchema as unknown as Schema, JSON.parse(out))).toEqual([]);
    }
  });

  it("follows a circuit to its present number, and a file to its present name", async () => {
    const long = way("2", live("2026-03-05", "0.30 Ω")).replace("Oven", "Hob").replace("12 m", "9 m");
    const one = begun(schedule(way("1", live("2026-03-05", "0.42 Ω")) + long));
    one.move("house.ways", "sites/house.ways");
    later(one, schedule(way("3", live("2026-03-05", "0.42 Ω")) + long), "B. Adder", "sites/house.ways");
    const { out } = await runIn(one.folder, "history", "sites/house.ways", "A/3 · Zs");
    expect(out).toMatch(/2026-03-05 +0\.42 Ω +.*R\. Moss, 2026-03-06/);
    expect(out).not.toContain("Changed after");
  });

  it("lists all readings without an address, those taken again with their drift", async () => {
    const one = begun(
      schedule(
        way("1", live("2021-03-05", "0.42 Ω") + live("2026-03-05", "0.42 Ω")) + way("2", live("2026-03-05", "0.4 Ω")),
      ),
    );
    const { out } = await runIn(one.folder, "history", "house.ways");
    expect(out).toMatch(/A\/1 · Zs +2021-03-05: 0\.42 Ω; 2026-03-05: 0\.42 Ω +unchanged/);
    expect(out).toContain("1 reading was taken on one day only");
    expect((await runIn(one.folder, "history", "house.ways", "--format", "html")).out).toMatch(/^<!DOCTYPE html>/);
  });

  it("gives a change to its author where another branch removed the file and wrote it again", async () => {
    const one = begun(schedule(way("1", live("2026-03-05", "0.42 Ω"))));
    const first = schedule(way("1", live("2026-03-05", "0.42 Ω")));
    one.git("checkout", "-q", "-b", "again");
    one.remove("house.ways");
    one.commit("Removed", {}, "C. Dorn");
    one.day = "2026-05-01";
    one.commit("Again", { "house.ways": first }, "C. Dorn");
    one.git("checkout", "-q", "main");
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    one.day = "2026-06-01";
    one.git("merge", "-q", "--no-ff", "-m", "Both", "again");
    const { out } = await runIn(one.folder, "history", "house.ways", "A/1 Zs");
    expect(out).toMatch(/A\/1 · live 2026-03-05 · Zs +0\.42 Ω +0\.47 Ω +B\. Adder, 2026-04-01/);
    expect(out).toMatch(/2026-03-05 +0\.47 Ω .*R\. Moss, 2026-03-06/);
  });

  it("goes on behind a file that was removed and written again", async () => {
    const text = schedule(way("1", live("2026-03-05", "0.42 Ω")));
    const one = begun(text);
    one.remove("house.ways");
    one.commit("Removed", {}, "C. Dorn");
    one.day = "2026-05-01";
    one.commit("Again", { "house.ways": text.replace("0.42", "0.40") }, "C. Dorn");
    const { out } = await runIn(one.folder, "history", "house.ways", "A/1 Zs");
    expect(out).toMatch(/Zs +0\.42 Ω +gone +C\. Dorn, 2026-03-06/);
    expect(out).toMatch(/Zs +not there +0\.40 Ω +C\. Dorn, 2026-05-01/);
    expect(out).toMatch(/2026-03-05 +0\.40 Ω .*R\. Moss, 2026-03-06/);
  });

  it("follows a reading whose tests took another day", async () => {
    const tests = (day: string) => live(day, "0.42 Ω\n        PEFC 1.2 kA");
    const one = begun(schedule(way("1", tests("2026-03-05"))));
    later(one, schedule(way("1", tests("2026-03-06"))));
    const { out } = await runIn(one.folder, "history", "house.ways", "A/1 Zs");
    expect(out).toMatch(/live 2026-03-06 · +live 2026-03-05 with M1 +live 2026-03-06 with M1 +B\. Adder, 2026-04-01/);
    expect(out).toMatch(/2026-03-06 +0\.42 Ω .*R\. Moss, 2026-03-06/);
  });

  it("finds a board in the file it is in", async () => {
    const board = `wayfile 1\nboard B "Barn" {\n  fed-from A\n${way("1", live("2026-03-05", "0.42 Ω"))}}\n`;
    const one = begun(schedule("").replace("wayfile 1", 'wayfile 1\nuse "barn.ways"'));
    one.commit("Barn", { "barn.ways": board }, "C. Dorn");
    const { code, out } = await runIn(one.folder, "history", "house.ways", "B/1 Zs");
    expect(code).toBe(0);
    expect(out).toContain("History: barn.ways, B/1 Zs");
    expect(out).toMatch(/2026-03-05 +0\.42 Ω .*C\. Dorn, 2026-03-06/);
  });

  it.each([
    ["A/9 Zs", /No reading is recorded at “A\/9 Zs”/],
    ["A/1 Ze", /No reading is recorded at “A\/1 Ze” in “house.ways”: recorded there are Zs\./],
    ["· ·", /is no address/],
  ])("%s is refused in a sentence", async (address, sentence) => {
    const one = begun(schedule(way("1", live("2026-03-05", "0.42 Ω"))));
    const { code, err } = await runIn(one.folder, "history", "house.ways", address);
    expect(code).toBe(2);
    expect(err).toMatch(sentence);
  });
});

describe("check --history", () => {
  const check = (one: TestRepository, ...args: string[]) =>
    runIn(one.folder, "check", "--history", "--no-info", ...args);
  const signed = () => begun(schedule(way("1", live("2026-03-05", "0.42 Ω"))));
  const id = "history/signed-reading-changed";
  /** What else is wrong with the sample is still printed: the schedule was checked, and this was not found. */
  const expectSilent = ({ out, err }: { readonly out: string; readonly err: string }) => {
    expect(err).toBe("");
    expect(out).toContain("house.ways");
    expect(out).not.toContain(id);
  };

  it("finds a signed reading that was altered, with who did and what it was", async () => {
    const one = signed();
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    const { code, out } = await check(one);
    expect(code).toBe(1);
    expect(out).toContain(id);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /A\/1 · live 2026-03-05 · Zs was 0\.42 Ω when R\.M\. signed for it on 2026-03-06; it is 0\.47 Ω now \(by B\. Adder on 2026-04-01, commit [0-9a-f]{8}\)/,
    );
    expect((await runIn(one.folder, "check", "--no-info")).out).not.toContain(id);
  });

  it("finds it before it is committed, where it is gone, and where the circuit has another number since", async () => {
    const disk = signed();
    disk.write({ "house.ways": schedule(way("1", live("2026-03-05", "0.47 Ω"))) });
    expect((await check(disk)).out.replace(/\s+/g, " ")).toContain("(not committed yet)");
    const gone = signed();
    later(gone, schedule(way("1", live("2027-03-05", "0.50 Ω"))));
    expect((await check(gone)).out.replace(/\s+/g, " ")).toContain("it is gone now");
    const moved = signed();
    later(moved, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    later(moved, schedule(way("4", live("2026-03-05", "0.47 Ω"))));
    expect((await check(moved)).out).toContain("A/4 · live 2026-03-05 · Zs");
  });

  it("finds it on a board of its own file, signed for in the file that uses it", async () => {
    const board = (Zs: string) => `wayfile 1\nboard B "Barn" {\n  fed-from A\n${way("1", live("2026-03-05", Zs))}}\n`;
    const one = begun(schedule("").replace("wayfile 1", 'wayfile 1\nuse "barn.ways"'));
    one.commit("Barn", { "barn.ways": board("0.42 Ω") });
    later(one, board("0.47 Ω"), "B. Adder", "barn.ways");
    const { out } = await check(one);
    expect(out).toContain(id);
    expect(out).toContain("barn.ways");
  });

  it("finds a signature that was changed for tests in the file that is used", async () => {
    const main = (by: string) =>
      schedule("", `tested by "${by}" 2026-03-06`).replace("wayfile 1", 'wayfile 1\nuse "barn.ways"');
    const one = begun(main("R.M."));
    const board = `wayfile 1\nboard B "Barn" {\n  fed-from A\n${way("1", live("2026-03-05", "0.42 Ω"))}}\n`;
    one.commit("Barn", { "barn.ways": board }, "R. Moss");
    later(one, main("B.A."));
    expect((await check(one)).out).toContain("history/signature-changed");
  });

  const both = `${live("2026-03-05", "0.42 Ω")}      dead 2026-03-04 with M1 {\n        R1+R2  0.13 Ω\n        polarity  ok\n      }\n`;
  const byMoss = "when R\\.M\\. signed for";
  it.each([
    [
      "the day of signed tests that was changed",
      schedule(way("1", both.replace("dead 2026-03-04", "dead 2026-03-05"))),
      "error history/signed-reading-changed A/1 · dead 2026-03-04 was signed for by R\\.M\\. on 2026-03-06; the same readings are dated 2026-03-05 now",
    ],
    [
      "their instrument",
      schedule(way("1", both.replace("2026-03-05 with M1", "2026-03-05"))),
      `error history/signed-reading-changed A/1 · live 2026-03-05 · with was M1 ${byMoss} these tests on 2026-03-06; it is gone now`,
    ],
    [
      "a circuit that is gone with its tests",
      schedule(way("2", "").replace("Oven", "Hob").replace("6 mm²", "10 mm²")),
      `error history/signed-reading-changed A/1 had live 2026-03-05 Zs 0\\.42 Ω, dead 2026-03-04 R1\\+R2 0\\.13 Ω and dead 2026-03-04 polarity ok ${byMoss} them on 2026-03-06; they are gone now`,
    ],
    [
      "a signature that took another name",
      schedule(way("1", both), 'tested by "B.A." 2026-03-06'),
      'error history/signature-changed R\\.M\\. signed for the tests on 2026-03-06; the signature is by "B\\.A\\." 2026-03-06 now',
    ],
    [
      "a signature that is gone",
      schedule(way("1", both), ""),
      "error history/signature-changed R\\.M\\. signed for the tests on 2026-03-06; the signature is gone now",
    ],
    [
      "a circuit with another device, and no test since",
      schedule(way("1", both).replace("B32", "B40")),
      `warning history/circuit-changed A/1 · device was BS EN 60898 B32 6 kA ${byMoss} its tests on 2026-03-06; it is BS EN 60898 B40 6 kA now`,
    ],
  ])("finds %s", async (_, text, sentence) => {
    const one = begun(schedule(way("1", both)));
    later(one, text);
    const out = (await check(one)).out.replace(/\s+/g, " ");
    expect(out).toMatch(new RegExp(`${sentence}.* \\(by B\\. Adder on 2026-04-01, commit [0-9a-f]{8}\\)`));
    expect(out.match(/history\//g)).toHaveLength(1);
  });

  it.each([
    ["2026-03-31", 1],
    ["2026-04-01", 0],
  ])("on the day of the signature, 2026-04-01 or %s, a circuit may still be put right: %i", async (day, count) => {
    const on = (device: string) => schedule(way("1", both).replace("B32", device), `tested by "R.M." ${day}`);
    const one = begun(on("B32"));
    later(one, on("B40"));
    expect((await check(one)).out.match(/history\//g) ?? []).toHaveLength(count);
  });

  it("finds a signed figure without a day until somebody signs again", async () => {
    const ze = (reading: string, signed?: string) =>
      schedule(way("1", both), signed).replace(
        "  board A",
        `  supply {\n    earthing TN-S\n    Ze ${reading}\n  }\n  board A`,
      );
    const one = begun(ze("0.18 Ω"));
    later(one, ze("0.28 Ω"));
    expect((await check(one)).out.replace(/\s+/g, " ")).toMatch(
      /supply · Ze was 0\.18 Ω when R\.M\. signed for it on 2026-03-06; it is 0\.28 Ω now/,
    );
    later(one, ze("0.28 Ω", 'tested by "R.M." 2027-03-06'));
    expect((await check(one)).out).not.toContain("history/");
  });

  it.each([
    [
      "a circuit was tested with its new device",
      schedule(way("1", both + live("2026-04-01", "0.40 Ω")).replace("B32", "B40")),
    ],
    ["whoever tested later signed later", schedule(way("1", both), 'tested by "B.A." 2026-04-02')],
    ["a signature is written otherwise", schedule(way("1", both), 'tested by "RM" 2026-03-06')],
    ["an instrument took another name", schedule(way("1", both)).replaceAll("M1", "T1")],
    ["the length of a circuit was corrected", schedule(way("1", both)).replace("12 m\n", "14 m\n")],
  ])("is silent where %s", async (_, text) => {
    const one = begun(schedule(way("1", both)));
    later(one, text);
    expect((await check(one)).out).not.toContain("history/");
  });

  it.each([
    ["was corrected with its reason", way("1", live("2026-03-05", '0.47 Ω was 0.42 Ω "Figures turned round"'))],
    ["is written in another unit", way("1", live("2026-03-05", "420 mΩ"))],
    ["took another number", way("7", live("2026-03-05", "0.42 Ω"))],
    ["was taken again", way("1", live("2026-03-05", "0.42 Ω") + live("2027-03-05", "0.60 Ω"))],
  ])("is silent where a reading %s", async (_, ways) => {
    const one = signed();
    later(one, schedule(ways));
    expectSilent(await check(one));
  });

  it("does not pass where the copy of the repository is cut off", async () => {
    const one = signed();
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    one.git("clone", "-q", "--depth", "1", `file://${one.folder}`, "copy");
    const { code, err } = await runIn(`${one.folder}/copy`, "check", "--history");
    expect(code).toBe(2);
    expect(err).toContain("The history is not known as a whole. This copy of the repository is cut off");
    const since = await runIn(`${one.folder}/copy`, "check", "--since", "HEAD~1");
    expect(since.err).toMatch(
      /There is no revision “HEAD~1” in this repository\. This copy .* “git fetch --unshallow”/,
    );
    const compared = await runIn(`${one.folder}/copy`, "compare", "HEAD~1");
    expect(compared.err).toContain("“git fetch --unshallow” brings the rest");
  });

  it("is silent where it was restored, and before anybody signed", async () => {
    const one = signed();
    later(one, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    later(one, schedule(way("1", live("2026-03-05", "0.42 Ω"))));
    expectSilent(await check(one));
    const open = begun(schedule(way("1", live("2026-03-05", "0.42 Ω")), ""));
    later(open, schedule(way("1", live("2026-03-05", "0.47 Ω"))));
    expectSilent(await check(open));
  });
});
