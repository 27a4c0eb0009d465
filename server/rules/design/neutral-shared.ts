import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/neutral-shared",
  severity: "error",
  since: "0.1",
  title: "A neutral is shared by two circuits.",
  why: "Anyone who isolates one way and works on it meets a neutral that the other circuit keeps live. It may carry the load of both, and RCDs trip without a fault. Usual readings do not show it. Put it right as well as recording it.",
  opens: true,
  clauses: ["314.4"],
  examples: [
    {
      bad: `way 1 radial "Landing lights" {
  serves       lighting
  shared-neutral "Way 5, at the two-way switch"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Landing lights" {
  serves       lighting
}`,
    },
  ],
  check({ facts, device, way }, report) {
    const shared = facts.one("shared-neutral");
    if (!shared) return;
    report(factSpot(shared), {
      message: `The neutral of way ${way.id} is shared with another circuit: lock off both before work on either, and give each its own neutral.`,
      related: device
        ? [{ spot: factSpot(device.fact), message: "Isolating this device alone does not make the circuit safe." }]
        : [],
    });
  },
});
