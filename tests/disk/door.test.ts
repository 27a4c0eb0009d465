/** What a schedule may have read, and that both programs have the same answer. */
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { Grounds } from "../../server/disk/grounds.ts";
import { readSchedule } from "../../server/disk/read.ts";
import { readUsed } from "../../server/disk/read-now.ts";
import { within } from "../../server/disk/within.ts";
import { refusals, strangeFolder, welcome } from "../helpers/strange-files.ts";

const folder = strangeFolder();
afterAll(() => folder.remove());

const grounds = new Grounds();
grounds.admit(folder.path);
const at = (use: string): string => resolve(folder.path, use.replaceAll("\\", "/").replace(/^\/+/, "/"));

describe("the door", () => {
  it.each(refusals)("does not open for %s", async (use, failure) => {
    expect(await readSchedule(at(use), grounds)).toEqual({ failure });
    expect(readUsed(at(use), grounds)).toEqual({ failure });
  });

  it.each(welcome)("opens for %s", async (use) => {
    expect(await readSchedule(at(use), grounds)).toEqual({ text: "wayfile 1\n", bom: false });
    expect(readUsed(at(use), grounds)).toEqual({ text: "wayfile 1\n", bom: false });
  });

  it("opens for the repository round a folder, not for what lies beside it", () => {
    const inner = new Grounds();
    inner.admit(join(folder.path, "inner"));
    expect(readUsed(at("meters.ways"), inner)).toHaveProperty("failure");
    const repository = strangeFolder();
    mkdirSync(join(repository.path, ".git"));
    inner.admit(join(repository.path, "inner"));
    expect(readUsed(join(repository.path, "meters.ways"), inner)).toHaveProperty("text");
    expect(readUsed(join(repository.path, "../secret/other.ways"), inner)).toHaveProperty("failure");
    repository.remove();
  });

  it("does not wait for what never answers", async () => {
    expect(await within(5, new Promise<string>(() => {}), "late")).toBe("late");
    expect(await within(60_000, Promise.resolve("here"), "late")).toBe("here");
  });
});
