/** `wayfile compare` between files, folders, revisions, the index and standard input, by a real git. */
import { readdirSync, readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { compareSchema } from "../../server/cli/compare-json.ts";
import { builtProgram } from "../helpers/program.ts";
import { TestRepository } from "../helpers/repository.ts";
import { runAt } from "../helpers/run-command.ts";
import { faultsAgainst, type Schema } from "../helpers/schema.ts";
import { runIn, runWithInput } from "./run.ts";

const schedule = (Zs: string, more = "") => `wayfile 1
use "shared/meters.ways"
installation "Gull Slip" {
  standard  BS 7671:2018+A2:2022
  board A "Main" {
    fed-from  supply
    way 1 radial "Oven" {
      device  BS EN 60898 B32 6 kA
      length  12 m
      live 2026-03-05 with M1 {
        Zs  ${Zs}
      }
${more}    }
  }
}
`;
const meters = (serial: string) =>
  `wayfile 1\ninstrument M1 "Tester" {\n  serial  "${serial}"\n  due     2026-11-03\n}\n`;
const files = { "house.ways": schedule("0.42 Ω"), "shared/meters.ways": meters("1") };

const made: TestRepository[] = [];
const repositoryOf = (given: Readonly<Record<string, string>>): TestRepository => {
  const one = new TestRepository();
  made.push(one);
  one.commit("First", given);
  return one;
};
afterEach(() => {
  for (const one of made.splice(0)) one.end();
});

describe("revisions", () => {
  it("is the disk where one is named alone, and a file where the other is one", async () => {
    const { folder } = altered();
    for (const args of [
      ["HEAD"],
      ["HEAD", "house.ways"],
      ["HEAD:house.ways"],
      ["HEAD", "."],
      [":house.ways", "house.ways"],
    ]) {
      const { code, out, err } = await runIn(folder, "compare", ...args);
      expect({ code, err }, args.join(" ")).toEqual({ code: 0, err: "" });
      expect(out, args.join(" ")).toMatch(/A\/1 +Zs, 2026-03-05 \(altered\) +0\.42 Ω +0\.47 Ω/);
    }
  });

  it("is one in a repository that has no files", async () => {
    const one = altered();
    one.commit("Second");
    one.git("clone", "-q", "--bare", ".", "bare.git");
    const { code, out } = await runIn(`${one.folder}/bare.git`, "compare", "main~1", "main");
    expect(code).toBe(0);
    expect(out).toMatch(/A\/1 +Zs, 2026-03-05 \(altered\) +0\.42 Ω +0\.47 Ω/);
  });

  it("is written with the folder one is in, and says so where it is not", async () => {
    const one = repositoryOf({ "site/house.ways": schedule("0.42 Ω").replace("shared", "../shared"), ...files });
    const named = await runIn(`${one.folder}/site`, "compare", "HEAD:./house.ways", "house.ways");
    expect(named.code).toBe(0);
    one.remove("house.ways");
    one.commit("Moved");
    const { code, err } = await runIn(`${one.folder}/site`, "compare", "HEAD:house.ways", "house.ways");
    expect({ code, err }).toEqual({
      code: 2,
      err: "There is no “house.ways” in “HEAD:house.ways”: write “./house.ways” for the one in this folder.\n",
    });
  });

  function altered(): TestRepository {
    const one = repositoryOf(files);
    one.write({ "house.ways": schedule("0.47 Ω") });
    return one;
  }

  it("are two with dots between them, or what a branch did since it left", async () => {
    const one = repositoryOf(files);
    one.git("checkout", "-q", "-b", "site");
    one.commit("On site", { "house.ways": schedule("0.47 Ω") });
    one.git("checkout", "-q", "main");
    one.commit("Meanwhile", { "house.ways": schedule("0.42 Ω", '      note "Seen"\n') });
    const two = await runIn(one.folder, "compare", "main..site");
    expect(two.out).toContain("(altered)");
    expect(two.out).toMatch(/note +"Seen" +not there/);
    const since = await runIn(one.folder, "compare", "main...site");
    expect(since.out).toContain("(altered)");
    expect(since.out).not.toMatch(/note +"Seen" +not there/);
    expect((await runIn(one.folder, "compare", "main:house.ways", "site:house.ways")).out).toContain("(altered)");
    expect((await runIn(`${one.folder}/shared`, "compare", "main:./meters.ways", "site:../house.ways")).code).toBe(0);
  });

  it("read what a file uses from the same revision", async () => {
    const one = repositoryOf(files);
    one.commit("Another meter", { "shared/meters.ways": meters("2") });
    one.write({ "shared/meters.ways": meters("3") });
    const committed = await runIn(one.folder, "compare", "HEAD~1:house.ways", "HEAD:house.ways");
    expect(committed.out).toMatch(/instrument M1, serial +"1" +"2"/);
    const disk = await runIn(one.folder, "compare", "HEAD", "house.ways");
    expect(disk.out).toMatch(/instrument M1, serial +"2" +"3"/);
    one.git("add", "-A");
    one.write({ "shared/meters.ways": meters("4") });
    expect((await runIn(one.folder, "compare", "HEAD", ":")).out).toMatch(/instrument M1, serial +"2" +"3"/);
  });

  it("know a schedule that moved to another file, and those that came and went", async () => {
    const one = repositoryOf({ ...files, "barn.ways": schedule("0.30 Ω").replace("Gull Slip", "Barn") });
    one.move("house.ways", "sites/house.ways");
    one.write({
      "sites/shared/meters.ways": meters("1"),
      "shed.ways": schedule("0.20 Ω").replace("Gull Slip", "Shed"),
    });
    one.remove("barn.ways");
    const { out, err } = await runIn(one.folder, "compare", "HEAD");
    expect(err).toBe("");
    expect(out).toMatch(/gone +barn\.ways +Barn/);
    expect(out).toMatch(/new +shed\.ways +Shed/);
    expect(out).toContain("The file was house.ways and is sites/house.ways.");
  });

  it.each(["--all", "nowhere", "HEAD:none.ways", "HEAD~9", ":none.ways"])(
    "%s is refused in a sentence",
    async (name) => {
      const { folder } = repositoryOf(files);
      const { code, out, err } = await runIn(folder, "compare", name, "house.ways");
      expect([code, out]).toEqual([2, ""]);
      expect(err).toMatch(/^[“A-Z].*\.\n$/);
    },
  );
});

describe("other versions", () => {
  it("come from standard input, with what they use from the disk", async () => {
    const one = repositoryOf(files);
    const { out, err, code } = await runWithInput(one.folder, schedule("0.47 Ω"), "compare", "house.ways", "-");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("After: standard input");
    expect(out).toContain("(altered)");
    const there = await runWithInput(`${one.folder}/shared`, schedule("0.47 Ω"), "compare", "-", "../house.ways");
    expect({ code: there.code, err: there.err }).toEqual({ code: 0, err: "" });
    expect((await runWithInput(one.folder, "", "compare", "-", "-")).code).toBe(2);
  });

  it("are one brief and many submissions, a row each", async () => {
    const one = repositoryOf({
      ...files,
      "offers/a.ways": schedule("0.42 Ω").replace('"shared', '"../shared'),
      "offers/b.ways": schedule("0.42 Ω").replace('"shared', '"../shared').replace("B32", "B40"),
    });
    const { out, code } = await runIn(one.folder, "compare", "house.ways", "offers/a.ways", "offers/b.ways");
    expect(code).toBe(0);
    expect(out).toMatch(/offers\/a\.ways +the same +0 /);
    expect(out).toMatch(/offers\/b\.ways +1 place +1 /);
    // Neither states a supply, which is an error of both.
    expect(out).toMatch(/offers\/b\.ways .* the same +kept +0 +1 error and 2\s+warnings\n/);
    expect((await runIn(one.folder, "compare", "house.ways", "offers")).out).toBe(out);
  });

  it("are no wider than the window, and break no word where there is room", async () => {
    const one = repositoryOf({ "house.ways": schedule("2.42 Ω"), "shared/meters.ways": meters("1") });
    const excused = schedule("2.42 Ω", '      departure 411.4.4 "Agreed with the owner"\n');
    one.write({ "house.ways": excused });
    const { out } = await runAt(one.folder, { width: 72 }, ["compare", "HEAD"]);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(72);
    expect(out).toMatch(/^record\/departure-unused +not found /m);
  });

  it("that are all in one version only compared nothing, and say so", async () => {
    const one = repositoryOf({
      ...files,
      "a/house.ways": schedule("0.42 Ω"),
      "b/shed.ways": schedule("0.42 Ω").replace("Gull", "Tern"),
    });
    const { out } = await runIn(one.folder, "compare", "a", "b");
    expect(out).toContain("No installation is in both: nothing was compared.");
    expect(out).not.toContain("The same");
  });

  it("end with 1 where they differ and that was wanted", async () => {
    const one = repositoryOf(files);
    expect((await runIn(one.folder, "compare", "HEAD", "house.ways", "--exit-code")).code).toBe(0);
    one.write({ "house.ways": schedule("420 mΩ") });
    expect((await runIn(one.folder, "compare", "HEAD", "house.ways", "--exit-code")).code).toBe(0);
    one.write({ "house.ways": schedule("0.43 Ω") });
    expect((await runIn(one.folder, "compare", "HEAD", "house.ways", "--exit-code")).code).toBe(1);
    one.write({ "house.ways": schedule("0.42") });
    expect((await runIn(one.folder, "compare", "HEAD", "house.ways", "--exit-code")).code).toBe(1);
  });

  it("that hold nothing are refused", async () => {
    const one = repositoryOf({ "empty.ways": "wayfile 1\n" });
    const { code, err } = await runIn(one.folder, "compare", "HEAD:empty.ways", "empty.ways");
    expect({ code, err }).toEqual({ code: 2, err: "“HEAD:empty.ways” holds nothing that can be compared.\n" });
  });
});

describe("folders of many files", () => {
  const titled = (title: string, Zs = "0.42 Ω") => schedule(Zs).replace("Gull Slip", title);
  const site = (changed: string, late: string) => ({
    "shared/meters.ways": meters("1"),
    "a.ways": titled("Alder"),
    "b.ways": titled("Birch", changed),
    "c.ways": `use "a.ways"\n${titled("Cedar").replace('use "shared/meters.ways"\n', "")}`,
    "d.ways": titled("Damson").replace("meters.ways", "lost.ways"),
    "e.ways": titled("Elm").replace("meters.ways", `${late}.ways`),
    "shared/old.ways": meters("2"),
    "shared/new.ways": meters("3"),
    "board.ways": 'wayfile 1\nboard B "Annexe" {\n  fed-from  supply\n}\n',
  });
  const under = (name: string, files: Readonly<Record<string, string>>) =>
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`${name}/${path}`, text]));

  it("give what differs and count what is the same, whatever uses what", async () => {
    const { folder } = repositoryOf({
      ...under("before", { ...site("0.42 Ω", "old"), "gone.ways": titled("Gorse") }),
      ...under("after", { ...site("0.47 Ω", "new"), "moved/gone.ways": titled("Gorse") }),
    });
    const { code, out, err } = await runIn(folder, "compare", "before", "after", "--format", "json");
    expect(code).toBe(2);
    expect(err).toContain("“shared/lost.ways” cannot be used: there is no such file.");
    const [compared] = JSON.parse(out).comparisons;
    expect(compared.installations.map(({ path, formerPath }: Record<string, string>) => [path, formerPath])).toEqual([
      ["b.ways", null],
      ["e.ways", null],
      ["moved/gone.ways", "gone.ways"],
    ]);
    expect(compared.came.map(({ path }: { path: string }) => path)).toEqual(["shared/old.ways"]);
    expect(compared.went.map(({ path }: { path: string }) => path)).toEqual(["shared/new.ways"]);
    expect(compared.installationsCompared).toBe(7);
  });

  it("go on where one of them cannot be read, name it, and take what it holds for neither new nor gone", async () => {
    const latin = new Uint8Array([...Buffer.from(titled("Cherry")), 0xe9, 0x0a]);
    const newer = titled("Dogwood").replace("wayfile 1", "wayfile 9");
    const before = { "b.ways": titled("Beech"), "c.ways": titled("Cherry"), "d.ways": titled("Dogwood") };
    const after = { ...before, "b.ways": titled("Beech", "0.47 Ω"), "d.ways": newer };
    const shared = { "shared/meters.ways": meters("1") };
    const one = repositoryOf({
      ...under("before", { ...before, ...shared }),
      ...under("after", { ...after, ...shared }),
    });
    const { folder } = one;
    one.write({ "after/c.ways": latin });
    const found = await runIn(folder, "compare", "before", "after", "--format", "json");
    expect(found.code).toBe(2);
    const bad =
      "“after/c.ways” cannot be read: it is not UTF-8 text: the first bad byte (E9) stands at line 16, column 1.\n";
    expect(found.err).toBe(`${bad}“d.ways” is in a newer version of the language than 1: get a newer program.\n`);
    const [compared] = JSON.parse(found.out).comparisons;
    expect(compared.installations.map(({ path }: { path: string }) => path)).toEqual(["b.ways"]);
    expect([compared.came, compared.went, compared.installationsCompared]).toEqual([[], [], 1]);
    const back = await runIn(folder, "compare", "after", "before", "--format", "json");
    expect(JSON.parse(back.out).comparisons[0]).toMatchObject({ came: [], went: [] });
    const alone = await runIn(folder, "compare", "before/c.ways", "after/c.ways");
    expect(alone).toEqual({ code: 2, out: "", err: bad });
    one.git("add", "-A");
    one.commit("Bytes");
    const staged = await runIn(folder, "compare", "HEAD:after", "before");
    expect(staged.code).toBe(2);
    expect(staged.err).toContain("“HEAD:after:after/c.ways” cannot be read: it is not UTF-8 text");
    expect(staged.out).toContain("0.47 Ω");
  });

  const settings = ["text", "markdown", "html", "json"];
  it.each(settings)("say by several threads, and with what was kept, what one thread says, as %s", async (format) => {
    const sites = (Zs: string) =>
      Object.fromEntries(
        Array.from({ length: 24 }, (_, index) => [`${index}.ways`, titled(`Site ${index}`, index % 5 ? Zs : "0.42 Ω")]),
      );
    const { folder } = repositoryOf({
      ...under("before", { ...sites("0.42 Ω"), ...site("0.42 Ω", "old") }),
      ...under("after", { ...sites("1.47 Ω"), ...site("0.47 Ω", "new"), "shared/broken.ways": "wayfile 1\nboard {\n" }),
    });
    const args = ["compare", "before", "after", "--format", format];
    const alone = await runAt(folder, {}, args);
    expect(alone.out.length).toBeGreaterThan(7_000);
    const threads = { program: await builtProgram(), count: 2 };
    expect(await runAt(folder, { threads }, [...args, "--threads", "2"])).toEqual(alone);
    const cache = { folder: `${folder}/kept`, program: "one" };
    expect(await runAt(folder, { cache, threads }, [...args, "--threads", "2"])).toEqual(alone);
    const entries = readdirSync(cache.folder, { recursive: true }).filter((name) =>
      String(name).endsWith(".comparison"),
    );
    expect(entries.length).toBeGreaterThan(18);
    expect(await runAt(folder, { cache }, args)).toEqual(alone);
  });
});

describe("files without an installation", () => {
  const board = (name: string, Zs: string, title = "Annexe") => `wayfile 1
board ${name} "${title}" {
  fed-from  supply
  way 1 radial "Oven" {
    device  BS EN 60898 B32 6 kA
    length  12 m
    live 2026-03-05 with M1 {
      Zs  ${Zs}
    }
  }
  way 2 radial "Hob" {
    device  BS EN 60898 B40 6 kA
    length  9 m
    live 2026-03-05 with M1 {
      Zs  0.31 Ω
    }
  }
}
`;
  const both = async (before: string, after: string) => {
    const { folder } = repositoryOf({ "before.ways": before, "after.ways": after });
    return await runIn(folder, "compare", "--exit-code", "before.ways", "after.ways");
  };

  it("are compared by what they state, and nothing is judged", async () => {
    const { code, out, err } = await both(board("B", "0.42 Ω"), board("C", "0.47 Ω"));
    expect({ code, err }).toEqual({ code: 1, err: "" });
    expect(out).toMatch(/C\/1 +Zs, 2026-03-05 \(altered\) +0\.42 Ω +0\.47 Ω/);
    expect(out).toMatch(/board +“Annexe” +B +C\n/);
    expect(out).toMatch(/Nothing is judged: these parts are in no installation here/);
    expect(out).not.toContain("at most");
  });

  it.each([
    [
      "an instrument",
      'instrument M1 "Tester" {\n  due  2026-11-03\n}\n',
      "2026-11-03",
      "2027-11-03",
      "instrument M1, due",
    ],
    ["a field of one's own", 'field asset in way "The number on the label"\n', "the label", "the tag", "field asset"],
    [
      "a circuit type",
      "circuit-type T1 {\n  device  BS EN 60898 B32 6 kA\n}\n",
      "B32",
      "B40",
      "circuit-type T1, device",
    ],
  ])("hold %s, whose change is a row", async (_, block, from, to, name) => {
    const before = `wayfile 1\n${block}`;
    const { code, out } = await both(before, before.replace(from, to));
    expect(out).toContain(name);
    expect(code).toBe(1);
    expect((await both(before, before)).out).toMatch(
      /Both state the same: \d+ readings? and \d+ other lines? were compared/,
    );
  });

  it("are looked at in a folder too, where nothing there uses them", async () => {
    const one = repositoryOf({
      "house.ways": schedule("0.42 Ω"),
      "shared/meters.ways": meters("1"),
      "lent.ways": board("B", "0.42 Ω"),
    });
    one.write({ "lent.ways": board("B", "0.47 Ω"), "shared/meters.ways": meters("2") });
    const { out } = await runIn(one.folder, "compare", "HEAD");
    expect(out).toMatch(/B\/1 +Zs, 2026-03-05 \(altered\)/);
    // What a schedule uses is compared there, and once.
    expect(out.match(/instrument M1, serial/g)).toHaveLength(1);
    expect(out).toContain("2 schedules were compared; 2 differ.");
  });

  it("a circuit that went to another board is one row with its former name", async () => {
    const oven = / {2}way 1 radial[\s\S]*?\n {2}}\n/.exec(board("B", "0.42 Ω"))?.[0] ?? "";
    const empty = 'board C "Yard" {\n  fed-from  B\n}\n';
    const moved = board("B", "0.42 Ω").replace(oven, "") + empty.replace("}\n", `${oven.replace("way 1", "way 5")}}\n`);
    const { out } = await both(board("B", "0.42 Ω") + empty, moved);
    expect(out).toMatch(/way +“Oven” +B\/1 +C\/5/);
    expect(out).not.toMatch(/gone|new way/);
  });
});

describe("JSON", () => {
  const boatyard = () =>
    Object.fromEntries(
      ["heron-wharf/boatyard.ways", "heron-wharf/workshop.ways", "shared/instruments.ways"].map((path) => [
        path,
        readFileSync(`examples/${path}`, "utf8"),
      ]),
    );

  it("is of its schema, whatever changed", async () => {
    const one = repositoryOf({ ...files, ...boatyard() });
    const workshop = boatyard()["heron-wharf/workshop.ways"] ?? "";
    one.write({
      "house.ways": schedule("0.47 Ω", '      departure 411.4.4 "Agreed"\n').replace("B32", "C63"),
      "heron-wharf/workshop.ways": workshop
        .replace("way 3 ", "way 13 ")
        .replace("C16 6 kA", "C63 6 kA")
        .replace("0.48 Ω", "0.58 Ω")
        .replace("L-N 638 MΩ", "L-N 0.2 MΩ")
        .replace(/ {2}way 6 [\s\S]*?\n {2}\}\n/, "")
        .replace("spare", 'radial "Kiln" {\n length 3\n}'),
    });
    const { out, code } = await runIn(one.folder, "compare", "HEAD", "--format", "json");
    expect(code).toBe(0);
    const json = JSON.parse(out) as unknown;
    expect(await faultsAgainst(compareSchema as unknown as Schema, json)).toEqual([]);
    expect(out).toMatch(/"effect": "now fails"/);
    expect(out).toMatch(/"state": "went"/);
    const same = JSON.parse((await runIn(one.folder, "compare", "HEAD", "HEAD", "--format", "json")).out) as unknown;
    expect(await faultsAgainst(compareSchema as unknown as Schema, same)).toEqual([]);
    expect(same).toMatchObject({ version: 1, comparisons: [{ differs: false, installationsCompared: 2 }] });
  });

  it("of another shape would be seen", async () => {
    expect(
      await faultsAgainst(compareSchema as unknown as Schema, { version: 2, comparisons: [{ before: 1 }], more: true }),
    ).not.toEqual([]);
  });
});
