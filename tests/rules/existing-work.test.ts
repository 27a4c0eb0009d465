/**
 * What a rule of today finds in old work is noted and is no fault: the work was done to the rules of its day. Which checks
 * that goes for is stated here again, since one that condemned old work would have it torn out, and one that let new work
 * off would leave it as it is.
 */
import { expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Finding, Rule } from "../../server/rules/frame/rule.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { inSetting, unmark } from "../helpers/sample.ts";

const later = "The rule may be later than this work: noted, not a fault.";

/** What a check finds in the faulty samples of its page, as work of a kind. */
const found = {
  new: new Map(rules.map((rule) => [rule.id, findIn(rule, "new")])),
  existing: new Map(rules.map((rule) => [rule.id, findIn(rule, "existing")])),
};

function findIn(rule: Rule, work: "new" | "existing"): readonly Finding[] {
  return rule.examples.flatMap(({ bad, setting }) => {
    const { text } = inSetting(unmark(bad).text, { ...setting, work });
    const stated = /^(\s*)work +(?:new|addition|existing)$/m.test(text)
      ? text.replace(/^(\s*)work +(?:new|addition|existing)$/m, `$1work ${work}`)
      : text.replace(/^(installation .*\{)$/m, `$1\n  work ${work}`);
    return installationsOf([fileOfText("sample.ways", stated)]).flatMap(
      (installation) => checkInstallation(installation, [rule]).findings,
    );
  });
}

const noted = {
  afdd: "missing",
  coordination: "source-poles",
  demand: "charger-without-load-control",
  design: "charger-shares-circuit enclosure-combustible lift-shares-circuit source-with-loads",
  place:
    "agricultural-without-rcd cable-not-allowed caravan-without-rcd charger-combined-earth combined-earth construction-without-rcd equipment-not-allowed fans-share-rcd farm-feeder-without-rcd fire-risk-without-rcd ip-code-too-low marina-without-rcd mobile-unit-without-rcd pool-by-name pool-without-rcd sauna-without-rcd several-sockets show-without-origin-rcd show-without-rcd socket-shares-rcd sockets-near-bath",
  protective: "outbuilding-bonding separate-below-minimum",
  rcd: "alarms-share-rcd charger-poles charger-shares-rcd concealed-depth-not-stated inverter-direct-current leakage-too-high missing-for-charger missing-for-concealed missing-for-floor-heating missing-for-lighting missing-for-public-lighting missing-for-sockets missing-in-bathroom missing-in-metal-frame missing-outdoors omitted-without-assessment protects-everything public-reach-not-stated sensitivity-too-high source-shares-rcd type-unsuitable unidirectional-with-source",
  surge: "conductor-too-small leads-too-long omitted-with-safety-service",
};

it("notes what a later rule finds in old work, and names no other", () => {
  const ids = rules.filter((rule) => found.existing.get(rule.id)?.some(({ message }) => message.includes(later)));
  const byFamily = Map.groupBy(
    ids.map(({ id }) => id.split("/")),
    ([family]) => family as string,
  );
  const asListed = [...byFamily].map(([family, all]) => [
    family,
    all
      .map(([, name]) => name)
      .toSorted()
      .join(" "),
  ]);
  expect(Object.fromEntries(asListed)).toEqual(noted);
});

it.each(Object.entries(noted).flatMap(([family, names]) => names.split(" ").map((name) => `${family}/${name}`)))(
  "%s is a fault of new work, and noted of old",
  (id) => {
    const [ofNew = [], ofOld = []] = [found.new.get(id), found.existing.get(id)];
    expect(ofNew.map(({ severity, message }) => [severity, message.includes(later)])).toContainEqual([
      rules.find((one) => one.id === id)?.severity,
      false,
    ]);
    expect(ofNew.filter(({ message }) => message.includes(later))).toEqual([]);
    const told = ofOld.filter(({ message }) => message.includes(later));
    expect(new Set(told.map(({ severity }) => severity))).toEqual(new Set(["information"]));
  },
);

it("no fix that a check offers is taken without being asked for: what stands in a record is somebody's statement", () => {
  const safe = [...found.new, ...found.existing].flatMap(([id, findings]) =>
    findings.flatMap(({ fixes }) => fixes.flatMap((fix) => (fix.safe ? [`${id}: ${fix.title}`] : []))),
  );
  expect(safe).toEqual([]);
});
