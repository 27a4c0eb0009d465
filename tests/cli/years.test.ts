/** A record of several years as a technical lead walks through it: real commits, and what each command says of them. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { TestRepository } from "../helpers/repository.ts";
import { addedTo, inspectedBefore, rewired } from "../helpers/years.ts";
import { runIn } from "./run.ts";

let record: TestRepository;
beforeAll(async () => {
  record = new TestRepository();
  record.day = "2022-11-04";
  record.commit("Rewire, tested", { "house.ways": rewired }, "Kim Ash");
  record.git("tag", "rewired");
  record.day = "2024-05-22";
  record.commit("Shower added on way 4", { "house.ways": addedTo }, "Kim Ash");
  record.git("tag", "added");
  record.day = "2026-03-09";
  record.commit("Inspection before the sale", { "house.ways": inspectedBefore }, "Jo Marsh");
});
afterAll(() => record.end());

const run = (...args: readonly string[]) => runIn(record.folder, ...args);
/** Text without the blanks of its columns. */
const tight = (text: string) => text.replace(/ {2,}/g, " | ").replace(/-{3,}/g, "");

describe("the record of a house", () => {
  test.each(["rewired", "added", "main"])("as of %s is laid out and has no error and no warning", async (revision) => {
    const text = record.git("show", `${revision}:house.ways`);
    const one = new TestRepository({ "house.ways": text });
    expect((await runIn(one.folder, "fmt", "--check", "house.ways")).code).toBe(0);
    const { out } = await runIn(one.folder, "check", "--format", "concise", "house.ways");
    expect(out).toMatch(/4 ways: 0 errors, 0 warnings/);
    one.end();
  });

  test("an addition is a new way where a spare one was, and the inspection says what it came to", async () => {
    const { out } = await run("compare", "rewired", "added");
    const said = tight(out);
    expect(said).toContain("\n1 new way.\n");
    expect(said).toMatch(/A\/4 \| “Shower” \| radial, BS EN 61009 B40.*\n.*was spare/);
    expect(said).not.toContain("gone");
    expect(said).toMatch(/inspection initial 2024-05-21, work-done \| not there \| "Circuit for a shower, way 4"/);
    // Its day is in its name.
    expect(said).not.toContain("2024-05-21, 2024-05-21");
  });

  test("a periodic inspection is its outcome, and every reading beside the last one", async () => {
    const { out } = await run("compare", "added", "main");
    const said = tight(out);
    expect(said).toContain("4 ways changed and 37 new readings.");
    expect(said).toMatch(/inspection periodic 2026-03-03, outcome \| not there \| satisfactory/);
    expect(said).toMatch(/inspection periodic 2026-03-03, \| not there \| 1 C3 board A item 4\.9\s+observation/);
    expect(said).toContain("Zs, 2026-03-05 | 0.62 Ω, 2022-11-03 | 0.66 Ω | at most 1.74 Ω cold: 62 % left");
    expect(said).toContain("insulation 500 V, L-E, 2026-03-04 | >999 MΩ, 2022-11-02 | 190 MΩ");
    expect(said).toMatch(/test-button; function, 2026-03-05 \| ok, 2022-11-03 \| ok/);
    // What is read alike is one row: three pairs of way 1, and none of its own for each.
    expect(out.match(/insulation 500 V, L-N, L-E and N-E/g)).toHaveLength(2);
  });

  test("a reading is followed over its days and commits, pair by pair where a year says it of all", async () => {
    const { out } = await run("history", "house.ways", "A/2");
    const said = tight(out);
    expect(said).toMatch(/2022-11-03 \| 0\.62 Ω \| ● \| Kim Ash, 2022-11-04/);
    expect(said).toMatch(/A\/2 · insulation 500 V · L-E\n=+\nmeasured \| reading \| first written\n/);
    expect(said).toMatch(
      /2022-11-02 \| >999 MΩ \| Kim Ash, 2022-11-04 \([0-9a-f]+\)\n2026-03-04 \| 190 MΩ \| Jo Marsh/,
    );
    expect(said).not.toContain("insulation 500 V · each");
  });

  test("the register says what presses", async () => {
    const { out } = await run("register", "--on", "2026-05-04");
    expect(out).toMatch(/3 Weir Cottages {2}house\.ways/);
    expect(out).toMatch(/tested 2026-03-05, next inspection 2036-03-05, least margin 62 % left \(A\/2 Zs/);
    expect((await run("register", "--on", "2027-01-05")).out).toContain("calibration of M1 lapsed 2026-11-04");
  });

  test("blame names who measured: a later visit moves no line of an earlier one", () => {
    const lines = record.git("blame", "--line-porcelain", "house.ways").split(/^(?=[0-9a-f]{40} )/m);
    const whose = (what: RegExp) =>
      lines.filter((line) => what.test(line)).map((line) => /^author (.*)$/m.exec(line)?.[1]);
    expect(whose(/\t +Zs +(0\.33|0\.62|1\.04|0\.29) Ω/)).toEqual(["Kim Ash", "Kim Ash", "Kim Ash", "Kim Ash"]);
    expect(whose(/\t +Zs +(0\.35|0\.66|1\.09|0\.31) Ω/)).toEqual(["Jo Marsh", "Jo Marsh", "Jo Marsh", "Jo Marsh"]);
    expect(whose(/\t +cable +flat-twin/)).toEqual(["Kim Ash", "Kim Ash", "Kim Ash", "Kim Ash"]);
  });

  test("an old reading that was touched is found by its signature, with nothing else", async () => {
    const file = join(record.folder, "house.ways");
    const before = readFileSync(file, "utf8");
    expect((await run("check", "--history")).code).toBe(0);
    record.write({ "house.ways": before.replace("Zs           0.62 Ω", "Zs           0.60 Ω") });
    const { code, out } = await run("check", "--history", "--format", "concise");
    expect(code).toBe(1);
    expect(out).toMatch(
      /error history\/signed-reading-changed A\/2 · live 2022-11-03 · Zs was 0\.62 Ω when K\.A\. signed for it on 2022-11-03; it is 0\.60 Ω now/,
    );
    expect(tight((await run("compare", "HEAD")).out)).toContain(
      "A/2 | Zs, 2022-11-03 (altered) | 0.62 Ω, signed for by K.A. | 0.60 Ω",
    );
    record.write({ "house.ways": before });
  });

  test("two branches, one that tests and one that corrects the design, merge to what both say", async () => {
    const text = readFileSync(join(record.folder, "house.ways"), "utf8");
    const program = join(import.meta.dirname, "../../server/main.cli.ts");
    record.git("config", "merge.wayfile.driver", `"${process.execPath}" "${program}" merge --driver %A %O %B %L %P`);
    const driver = await run("git", "setup");
    expect(driver.code).toBe(0);
    record.git("checkout", "-q", "-b", "survey", "main");
    record.commit("Longer than drawn", { "house.ways": text.replace("length       22 m", "length       24 m") });
    record.git("checkout", "-q", "-b", "visit", "main");
    const again = `      live 2026-04-20 with M1 {
        Zs           0.65 Ω
      }
    }

    way 3 `;
    record.commit("Tested again", { "house.ways": text.replace("    }\n\n    way 3 ", again) });
    record.git("merge", "-q", "-m", "Both", "survey");
    const { out, code } = await run("compare", "main", "HEAD");
    expect(code).toBe(0);
    expect(tight(out)).toMatch(/length \| 22 m \| 24 m/);
    expect(tight(out)).toContain("Zs, 2026-04-20 | 0.66 Ω, 2026-03-05 | 0.65 Ω");
    expect(out).not.toMatch(/altered|gone/);
    record.git("checkout", "-q", "main");
  });
});
