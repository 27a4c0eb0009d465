import { describe, expect, it } from "vitest";
import { languageChecks } from "../../server/model/problems.ts";
import { nearestPages, pageOf, pages } from "../../server/rules/frame/catalogue.ts";
import { formerIds } from "../../server/rules/frame/former-ids.ts";
import { observationChecks } from "../../server/rules/frame/observation-checks.ts";
import { rules } from "../../server/rules/list.ts";

describe("the catalogue of checks", () => {
  it("has each check once", () => {
    const ids = pages.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it("has every rule, every check of the language and those of the frame", () => {
    const wanted = [
      ...rules.map(({ id }) => id),
      ...languageChecks.map((name) => `language/${name}`),
      "history/signed-reading-changed",
      ...observationChecks.map(({ id }) => id),
      "record/departure-renamed",
      "record/departure-unused",
      "check/failed",
      "check/too-large",
      "check/under-way",
    ];
    for (const id of wanted) expect(pageOf(id)?.id).toBe(id);
    expect(pages).toHaveLength(new Set(wanted).size);
  });

  it("says of each what it finds and why it matters, in whole sentences", () => {
    for (const { id, title, why } of pages) {
      expect(title, id).toMatch(/^\S.{8,}[.?]$/);
      expect(why, id).toMatch(/^\S.{20,}[.?]$/);
    }
  });

  it("knows a check by the id it had before, and gives that id to no other", () => {
    const now = new Set(pages.map(({ id }) => id));
    for (const [former, present] of formerIds) {
      expect(now.has(former), former).toBe(false);
      expect(pageOf(former)?.id).toBe(present);
    }
  });

  it("names checks by family and plain words", () => {
    for (const { id } of pages) expect(id).toMatch(/^[a-z]+\/[a-z0-9]+(-[a-z0-9]+)*$/);
  });

  it("finds a page by its name, its regulation, part of its id, or a misspelling", () => {
    expect(nearestPages("zs-over-limit")[0]?.id).toBe("loop/zs-over-limit");
    expect(nearestPages("411.4.4").every(({ clauses }) => clauses.includes("411.4.4"))).toBe(true);
    expect(nearestPages("rcd/time").every(({ id }) => id.startsWith("rcd/time"))).toBe(true);
    expect(nearestPages("rcd/time-zeor")[0]?.id).toBe("rcd/time-zero");
    expect(nearestPages("xyzzy-plugh-quux")).toEqual([]);
    expect(nearestPages(" ")).toEqual([]);
  });
});
