import { rcdLimit } from "../../calc/practice.ts";
import { isOutsideWork, workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

/** What a title names that hardly ever does without additional protection. */
const asksForRcd =
  /\b(?:sockets?|ring final|showers?|bath(?:room)?s?|en-?suite|wet ?room|ev|(?:car )?charg(?:er|ers|ing point)|under-?floor|floor heating)\b/i;

export default wayRule({
  id: "record/serves-not-stated",
  severity: "information",
  since: "0.1",
  title: "It is not stated what a circuit supplies.",
  why: "The RCD it needs, its disconnection time and its voltage drop depend on whether it supplies sockets, lighting or one appliance. They are judged only where it is stated.",
  clauses: ["514.9.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  device       BS EN 60898 B32 6 kA
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  serves       cooker
}`,
    },
    {
      bad: `way 1 radial "Kitchen sockets" {
^^^
  device       BS EN 60898 B20 6 kA
}`,
      good: `way 1 radial "Kitchen sockets" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    if (isSpare || isBare || study.isFeeder || facts.has("serves")) return;
    const named = asksForRcd.test(way.title) && lacksRcd(study);
    report(wordSpot(way.header), {
      message: named
        ? `“${way.title}” looks like a circuit that needs an RCD of 30 mA or less, and way ${way.id} has none: write serves and the use, by which it is judged.`
        : `It is not stated what way ${way.id} supplies, so whether it needs an RCD is not judged: write serves and the use.`,
      ...(named ? { severity: "warning" as const } : {}),
    });
  },
});

/** New work whose device is written, with no RCD that gives additional protection. */
function lacksRcd(study: WayStudy): boolean {
  const { device, facts, rcds } = study;
  if (!device || facts.isUnread("rcd") || facts.isUnread("behind")) return false;
  if (workOf(study) === "existing" || isOutsideWork(study)) return false;
  return rcds.every(({ sensitivity }) => sensitivity > rcdLimit("additional").value);
}
