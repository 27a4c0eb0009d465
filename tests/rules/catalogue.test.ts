import { describe, expect, it } from "vitest";
import { languageChecks } from "../../server/model/problems.ts";
import { nearestPages, pageOf, pages } from "../../server/rules/frame/catalogue.ts";
import { formerIds } from "../../server/rules/frame/former-ids.ts";
import { historyChecks } from "../../server/rules/frame/history-checks.ts";
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
      ...historyChecks.map(({ id }) => id),
      ...observationChecks.map(({ id }) => id),
      "record/departure-renamed",
      "record/departure-unused",
      "record/departure-without-reason",
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
    // Of a section all that rest on one of its regulations.
    expect(nearestPages("411.4").length).toBeGreaterThan(0);
    expect(nearestPages("411.4").every(({ clauses }) => clauses.some((one) => one.startsWith("411.4")))).toBe(true);
    expect(nearestPages("rcd/time").every(({ id }) => id.startsWith("rcd/time"))).toBe(true);
    expect(nearestPages("rcd/time-zeor")[0]?.id).toBe("rcd/time-zero");
    expect(nearestPages("xyzzy-plugh-quux")).toEqual([]);
    expect(nearestPages(" ")).toEqual([]);
  });

  const withTrait = (has: (rule: (typeof rules)[number]) => boolean | undefined): string[] => {
    const byFamily = Map.groupBy(
      rules.filter(has).map(({ id }) => id.split("/")),
      ([family]) => family,
    );
    return [...byFamily]
      .map(
        ([family, ids]) =>
          `${family}: ${ids
            .map(([, name]) => name)
            .toSorted()
            .join(" ")}`,
      )
      .toSorted();
  };

  // A person who is sent into an enclosure without being shown how to isolate can be killed, so each is named here again.
  it("shows how to isolate wherever what puts it right has somebody open the installation", () => {
    expect(withTrait(({ opens }) => opens)).toEqual([
      "continuity: lines-differ missing no-protective-conductor open point-against-length point-open r1r2-against-length r2-against-length r2-against-loop r2-ratio",
      "design: neutral-shared",
      "diagnosis: readings-disagree",
      "drift: insulation-fallen resistance-risen",
      "insulation: all-low below-minimum board-below-minimum board-disagrees low-on-new missing not-tested-with-equipment outlier pair-missing zero",
      "live: function-failed phase-sequence-reversed",
      "loop: board-disagrees board-off-scale cpc-open expected-over-limit low-for-tt over-any-limit point-over-limit relies-on-rcd zs-against-length zs-below-electrode zs-disagrees zs-over-limit zs-over-rcd-limit",
      "polarity: wrong wrong-upstream",
      "population: unlike-neighbours",
      "protective: bonding-missing bonding-not-tested bonding-reads-high earthing-reads-high open supplementary-reads-high",
      "rcd: test-button-failed time-over-limit tripped-at-half",
      "record: polarity-disagrees spare-in-use",
      "ring: bridged cpc-ratio ends-against-length ends-differ ends-missing legs-swapped-between-rings link-missing links-not-crossed open-conductor point-open point-reading points-missing poor-contact",
    ]);
    for (const { id, opens, why } of rules) expect([id, pageOf(id)?.why !== why]).toEqual([id, opens ?? false]);
  });

  // What is compared with a limit is left out: no explanation of the readings may speak for it.
  it("lets a diagnosis speak for those that compare one reading with the others or with the drawing, and no more", () => {
    expect(withTrait((rule) => rule.scope === "way" && rule.compares)).toEqual([
      "continuity: lines-differ open point-against-length point-open r1r2-against-length r2-against-length r2-ratio",
      "loop: zs-below-conductors zs-disagrees",
      "ring: bridged cpc-ratio ends-against-length ends-differ identical-readings link-missing links-not-crossed open-conductor point-open point-reading poor-contact r1r2-against-ring",
    ]);
    expect(withTrait((rule) => rule.scope === "way" && rule.verdict)).toEqual(["diagnosis: readings-disagree"]);
  });
});
