import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/caravan-without-rcd",
  severity: "error",
  since: "0.1",
  title: "Sockets of a caravan park, or the supply of a park home, are not protected by a 30 mA RCD.",
  why: "Caravans have metal bodies on damp ground, people step out of them barefoot, and their leads lie in wet grass. Each socket needs a 30 mA RCD of its own.",
  clauses: ["708.415.1"],
  examples: [
    {
      bad: `way 1 radial "Pitch 1" {
  device       BS EN 60898 C40 6 kA
  serves       sockets
  place        caravan
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Pitch 1" {
  device       BS EN 61009 C40 6 kA 30 mA type A
  serves       sockets
  place        caravan
}`,
    },
    {
      bad: `way 1 radial "Home 3" {
  device       BS EN 60898 B32 6 kA
  serves       park-home
  ^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Home 3" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       park-home
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "caravan", "Sockets for caravans and tents need");
    reportMissing(study, report, "park-home", "The supply to a park home needs");
  },
});
