import { plain } from "../../calc/result.ts";
import { containmentRule } from "../common/containments.ts";
import { inPlaceOf } from "../common/writing.ts";
import { factSpot, valueSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/route-disagrees",
  severity: "warning",
  since: "0.1",
  title: "A route states another kind or size of enclosure than the one it names.",
  why: "Only one of the two can be there, and how full it is was calculated from the other. Leave the size to the line that describes the conduit or trunking.",
  clauses: ["522.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 1
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        conduit 20 mm  method B  in C1
                           ^^^^^
    }
    way 2 radial "Saw" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        trunking  method B  grouped 2  in C1
                   ^^^^^^^^
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 1
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        conduit 25 mm  method B  grouped 2  in C1
    }
    way 2 radial "Saw" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        conduit  method B  grouped 2  in C1
    }
  }
}`,
    },
  ],
  judge({ name, title, fact, size, isConduit, contents }, report) {
    const own = isConduit ? "conduit" : "trunking";
    const related = [{ spot: factSpot(fact), message: `Description of ${name}.` }];
    for (const { route } of contents) {
      const { kind, size: written } = route.args;
      if (kind && kind.value !== own) {
        report(valueSpot(route, kind), {
          message: `This route states ${kind.value}, but ${name} is a ${title}: which is right?`,
          related,
          // A size beside the kind is that of the other enclosure.
          fixes: written ? [] : [inPlaceOf(kind, own)],
        });
      } else if (written && written.value !== size) {
        report(valueSpot(route, written), {
          message: `This route states ${plain(written.value)} mm, but ${name} is a ${title}: which is right?`,
          related,
          fixes: [inPlaceOf(written, `${plain(size)} mm`)],
        });
      }
    }
  },
});
