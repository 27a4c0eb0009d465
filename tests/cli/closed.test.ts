/** What leaves the program: pages that run and fetch nothing, files that are written whole or not at all. */
import { execFileSync } from "node:child_process";
import {
  closeSync,
  existsSync,
  linkSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
} from "node:fs";
import { describe, expect, it } from "vitest";
import { withoutWaiting } from "../../server/disk/pieces.ts";
import { hostileSchedule } from "../helpers/hostile.ts";
import { Folder } from "./run.ts";

const hostile = '</title><script>alert(1)</script><img src=x onerror=y>"=1+1';

const pages: readonly (readonly string[])[] = [
  ...["working", "summary", "editions", "worksheet", "schedule", "inspection"].map((name) => [
    name,
    "--format",
    "html",
  ]),
  ["worksheet", "--fill"],
  ["register", "--no-cache", "--format", "html"],
  ["compare", "--format", "html", "base.ways"],
];

/** What a page may do, by its own words. */
const policyOf = (page: string): string =>
  /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/.exec(page)?.[1] ?? "";

describe("a page that is saved", () => {
  it.each(pages)("%s %s %s fetches nothing and runs nothing but its own", async (...command) => {
    // Of the other no paper can be given: it holds no inspection.
    const periodic = readFileSync("examples/alder-row/periodic.ways", "utf8");
    const meter = 'instrument M1 "Meter" { due 2027-01-01 }';
    const schedule = command[0] === "inspection" ? periodic.replace(/^use .*$/m, meter) : undefined;
    const folder = new Folder({ "a.ways": hostileSchedule(hostile, schedule), "base.ways": hostileSchedule("Loft") });
    const { out } = await folder.run(...command, "a.ways");
    expect(out).toMatch(/^<!doctype html>/i);
    const policy = policyOf(out);
    expect(policy).toMatch(/(?:^|; )?default-src 'none'/);
    expect(policy).not.toMatch(/https?:|\*|connect-src (?!'none')|'unsafe-eval'|script-src 'unsafe-inline'/);
    // It stands before anything of the schedule's.
    expect(out.indexOf("Content-Security-Policy")).toBeLessThan(out.indexOf("alert(1)"));
    const scripts = [...out.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g)];
    if (!policy.includes("script-src 'sha256-")) expect(scripts).toEqual([]);
    for (const [, script] of scripts) expect(script).not.toMatch(/<\/|<script|<img/i);
    const tags = [...out.replace(/<script\b[\s\S]*?<\/script>/g, "").matchAll(/<[a-z][^>]*>/g)].map(([tag]) => tag);
    expect(tags.filter((tag) => /\son\w+\s*=|javascript:|\b(?:src|href)="?(?:https?:)?\/\//i.test(tag))).toEqual([]);
    expect(tags.filter((tag) => /^<img /.test(tag))).toEqual([]);
  });
});

describe("a table for a spreadsheet", () => {
  it("holds no formula of a stranger", async () => {
    for (const text of ["@SUM(1)", '=HYPERLINK("x")']) {
      const folder = new Folder({ "a.ways": hostileSchedule(text) });
      for (const command of ["schedule", "register"]) {
        const { out } = await folder.run(
          command,
          ...(command === "register" ? ["--no-cache"] : []),
          "--format",
          "csv",
          "a.ways",
        );
        const cells = out.replace(/^\ufeff/, "").split(/\r\n|,/);
        expect(cells.filter((cell) => /^"?[\s]*[=+@]/.test(cell))).toEqual([]);
        expect(out).toContain(`'${text.replaceAll('"', '""')}`);
        if (command === "register") continue;
        const { bytes } = await folder.run(
          command,
          ...(command === "register" ? ["--no-cache"] : []),
          "--format",
          "xlsx",
          "a.ways",
        );
        expect(
          Buffer.from(bytes ?? [])
            .subarray(0, 2)
            .toString(),
        ).toBe("PK");
        folder.write("t.xlsx", bytes ?? new Uint8Array());
        const sheet = execFileSync(
          "python3",
          [
            "-c",
            "import sys,zipfile;z=zipfile.ZipFile(sys.argv[1]);print(''.join(z.read(n).decode() for n in z.namelist() if 'sheet' in n))",
            folder.at("t.xlsx"),
          ],
          { encoding: "utf8" },
        );
        expect(sheet).not.toMatch(/<f>|<f /);
      }
    }
  });
});

describe("a file that cannot be written", () => {
  const commands: readonly (readonly string[])[] = [
    ["schedule", "a.ways", "-o"],
    ["worksheet", "a.ways", "--fill", "-o"],
    ["register", "--no-cache", "a.ways", "-o"],
    ["check", "a.ways", "--output-file"],
  ];

  it.each(commands)("%s %s %s ends with 2 and one sentence", async (...command) => {
    const folder = new Folder({ "a.ways": hostileSchedule("Loft") });
    mkdirSync(folder.at("folder.html"));
    const full = existsSync("/dev/full") ? ["/dev/full"] : [];
    for (const to of ["folder.html", "nowhere/x.html", ...full]) {
      const typed = to === "/dev/full" && command[0] !== "worksheet" && command[0] !== "check";
      const { code, out, err } = await folder.run(...command, to, ...(typed ? ["--format", "html"] : []));
      expect({ to, code, out }).toEqual({ to, code: 2, out: "" });
      expect(err).toMatch(/^“[^\n]+” cannot be written: [^\n]+\.\n$/);
    }
    if (existsSync("/dev/full")) expect(statSync("/dev/full").isCharacterDevice()).toBe(true);
    expect(readdirSync(folder.path).sort()).toEqual(["a.ways", "folder.html"]);
    expect(readFileSync(folder.at("a.ways"), "utf8")).toBe(hostileSchedule("Loft"));
  });

  it.each(commands)("%s %s %s never takes a schedule for its target, by any name", async (...command) => {
    const folder = new Folder({ "a.ways": hostileSchedule("Loft"), "b.ways": "wayfile 1\n" });
    symlinkSync(folder.at("a.ways"), folder.at("link.html"));
    linkSync(folder.at("a.ways"), folder.at("same.html"));
    const format = command[0] === "worksheet" ? [] : ["--format", command[0] === "check" ? "json" : "html"];
    for (const to of ["a.ways", "b.ways", "new.ways", "link.html"]) {
      const { code, err } = await folder.run(...command, to, ...format);
      expect({ to, code }).toEqual({ to, code: 2 });
      expect(err).toMatch(/^“[^\n]+” cannot be written: [^\n]+\.\n$/);
    }
    // Another name of the same file gets a file of its own.
    expect((await folder.run(...command, "same.html", ...format)).code).not.toBe(2);
    expect(readFileSync(folder.at("a.ways"), "utf8")).toBe(hostileSchedule("Loft"));
    expect(readFileSync(folder.at("same.html"), "utf8")).not.toBe(hostileSchedule("Loft"));
    expect(readdirSync(folder.path).sort()).toEqual(["a.ways", "b.ways", "link.html", "same.html"]);
  });

  it.each(commands)("%s %s %s does not wait for a pipe that nobody reads", async (...command) => {
    const folder = new Folder({ "a.ways": hostileSchedule("Loft") });
    execFileSync("mkfifo", [folder.at("pipe.html")]);
    const { code, err } = await folder.run(...command, "pipe.html");
    expect({ code, err }).toEqual({ code: 2, err: "“pipe.html” cannot be written: nothing reads from it.\n" });
  });

  it("is never put in the place of a pipe", async () => {
    const folder = new Folder({ "a.ways": "wayfile 1\n" });
    execFileSync("mkfifo", [folder.at("pipe")]);
    // A reader that is there before: one in a process of its own may come too late, and then waits for ever.
    const reader = openSync(folder.at("pipe"), withoutWaiting);
    const { code } = await folder.run(
      "check",
      "--format",
      "concise",
      "--statistics",
      "--output-file",
      "pipe",
      "a.ways",
    );
    const read = readFileSync(reader, "utf8");
    closeSync(reader);
    expect(code).toBe(0);
    expect(statSync(folder.at("pipe")).isFIFO()).toBe(true);
    expect(read).not.toBe("");
  });
});
