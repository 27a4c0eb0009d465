import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/neutral-shared",
  severity: "error",
  since: "0.1",
  title: "A neutral that serves two circuits.",
  why: "Whoever switches one way off and works on it meets a neutral that the other circuit holds live. It may carry the load of both, and RCDs trip for no fault. Usual readings do not show it; what was seen is put right, not only noted.",
  clauses: ["314.4"],
  examples: [
    {
      bad: `way 1 radial "Landing lights" {
  serves          lighting
  shared-neutral  "Way 5, at the two-way switch"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Landing lights" {
  serves  lighting
}`,
    },
  ],
  check({ facts, device, way }, report) {
    const shared = facts.one("shared-neutral");
    if (!shared) return;
    report(factSpot(shared), {
      message: `The neutral of way ${way.id} serves another circuit too: lock off both before anyone works on either, and give each a neutral of its own.`,
      related: device ? [{ spot: factSpot(device.fact), message: "This device alone does not make it safe." }] : [],
    });
  },
});
