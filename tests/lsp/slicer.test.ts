/** Long work in slices, with a clock and a queue of messages that the test moves by hand. */
import { describe, expect, it } from "vitest";
import { CheckProgress } from "../../server/lsp/progress.ts";
import { Slicer } from "../../server/lsp/slicer.ts";
import { CheckRun } from "../../server/workspace/check-run.ts";

/** A world in which each way takes some milliseconds, and messages are dealt with when the test says so. */
function world(millisecondsAWay: number) {
  let time = 0;
  const due: (() => void)[] = [];
  const log: string[] = [];
  let current = true;
  function* steps(name: string, ways: number) {
    for (let way = 0; way < ways; way++) {
      time += millisecondsAWay;
      log.push(name);
      yield;
    }
    return [];
  }
  return {
    log,
    steps,
    check: (name: string, ways: number): CheckRun => new CheckRun(steps(name, ways), () => current),
    runtime: { soon: (run: () => void) => void due.push(run), now: () => time },
    async messages(): Promise<boolean> {
      const run = due.shift();
      run?.();
      await new Promise((resolve) => setImmediate(resolve));
      return run !== undefined;
    },
    edit: () => {
      current = false;
    },
  };
}

const wanted = { isWanted: () => true };

describe("other work in slices", () => {
  it("lets in what has arrived between its steps, and ends where nobody waits for it any more", async () => {
    const { runtime, steps, log, messages } = world(1);
    const slicer = new Slicer(runtime);
    let isWanted = true;
    const all = slicer.through(steps("a", 20), () => isWanted);
    const left = slicer.through(steps("b", 20), () => isWanted);
    expect(log.join("")).toBe("a".repeat(8) + "b".repeat(8));
    await messages();
    expect(log.join("")).toBe("a".repeat(8) + "b".repeat(8) + "a".repeat(8));
    isWanted = false;
    while (await messages());
    await Promise.all([all, left]);
    expect(log.length).toBe(24);
  });
});

describe("checks in slices", () => {
  it("stop after a few milliseconds for what has arrived, and go on from there", async () => {
    const { runtime, check, log, messages } = world(1);
    const end = new Slicer(runtime).run(check("a", 100), wanted);
    expect(log.length).toBe(8);
    await messages();
    expect(log.length).toBe(16);
    while (await messages());
    expect(await end).toBe("done");
    expect(log.length).toBe(100);
  });

  it("take turns: between two messages only one of them works", async () => {
    const { runtime, check, log, messages } = world(2);
    const slicer = new Slicer(runtime);
    const ends = ["a", "b", "c"].map((name) => slicer.run(check(name, 12), wanted));
    log.length = 0;
    const turns: string[] = [];
    for (let more = true; more; ) {
      more = await messages();
      const turn = new Set(log.splice(0));
      expect(turn.size).toBeLessThanOrEqual(1);
      turns.push(...turn);
    }
    expect(turns).toEqual(["a", "b", "c", "a", "b", "c"]);
    expect(await Promise.all(ends)).toEqual(["done", "done", "done"]);
  });

  it("end within a slice once nobody wants them, or their text is another", async () => {
    const first = world(1);
    let isWanted = true;
    const unwanted = new Slicer(first.runtime).run(first.check("a", 1_000), { isWanted: () => isWanted });
    isWanted = false;
    await first.messages();
    expect(await unwanted).toBe("unwanted");
    expect(first.log.length).toBe(8);
    const second = world(1);
    const outdated = new Slicer(second.runtime).run(second.check("a", 1_000), wanted);
    second.edit();
    await second.messages();
    expect(await outdated).toBe("outdated");
    expect(second.log.length).toBe(8);
  });

  it("may be left where what is checked will do for now, and another goes on from there", async () => {
    const { runtime, check, log, messages } = world(1);
    const slicer = new Slicer(runtime);
    const work = check("a", 40);
    expect(await slicer.run(work, { ...wanted, isEnough: () => log.length >= 8 })).toBe("enough");
    expect(log.length).toBe(8);
    const rest = slicer.run(work, wanted);
    while (await messages());
    expect(await rest).toBe("done");
    expect(log.length).toBe(40);
  });

  it("stop after a single way that takes long", async () => {
    const { runtime, check, log } = world(50);
    void new Slicer(runtime).run(check("slow", 100), wanted);
    expect(log.length).toBe(1);
  });
});

describe("progress", () => {
  function shown() {
    let time = 0;
    const said: unknown[] = [];
    const reporter = {
      begin: (...all: unknown[]) => said.push(["begin", ...all]),
      report: (...all: unknown[]) => said.push(["report", ...all]),
      done: () => said.push(["done"]),
    };
    const connection = { window: { createWorkDoneProgress: async () => reporter } };
    const progress = new CheckProgress(connection as never, { now: () => time }, 200);
    const at = (now: number): void => {
      time = now;
    };
    const settle = () => new Promise((resolve) => setImmediate(resolve));
    return { progress, said, settle, at };
  }

  it("is not shown for what takes a moment", async () => {
    const { progress, said, settle, at } = shown();
    at(400);
    progress.progressed(100);
    progress.end();
    await settle();
    expect(said).toEqual([]);
  });

  it("says how many ways are checked, and goes when the check ends", async () => {
    const { progress, said, settle, at } = shown();
    at(600);
    progress.progressed(50);
    await settle();
    progress.progressed(100);
    progress.end();
    await settle();
    expect(said).toEqual([
      ["begin", "Checking schedules", 25, "50 of 200 ways", false],
      ["report", 50, "100 of 200 ways"],
      ["done"],
    ]);
  });
});
