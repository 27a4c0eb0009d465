import { rcdsAt } from "../../boards/board-rcds.ts";
import { meets, rcdsKnown } from "../../circuit/additional-protection.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import { ownRcd, placeRcdLimit, placeRcdRow, placeSpot } from "../../circuit/places.ts";
import { isOwnRcd } from "../../circuit/rcds.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import { rcboInstead } from "../common/additional.ts";
import { type BoardSubject, boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "place/socket-shares-rcd",
  severity: "error",
  since: "0.1",
  title: "The socket of a pitch or berth shares its RCD with another circuit.",
  why: "Each socket has an RCD of its own, so that a fault on one boat or caravan leaves the others their supply, and nobody resets what they cannot see.",
  clauses: ["708.415.1", "708.553.1.13", "709.531.2"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      bad: `way 1 radial "Berth 1" {
  device       BS EN 60898 C16 6 kA
  behind       east
  serves       sockets
  place        marina
  ^^^^^^^^^^^^^^^^^^^
}
way 2 radial "Quay lights" {
  device       BS EN 60898 B6 6 kA
  behind       east
  serves       lighting
}`,
      good: `way 1 radial "Berth 1" {
  device       BS EN 61009 C16 6 kA 30 mA type A
  serves       sockets
  place        marina
}
way 2 radial "Quay lights" {
  device       BS EN 60898 B6 6 kA
  behind       east
  serves       lighting
}`,
    },
  ],
  check(subject, report) {
    for (const study of subject.studies) {
      const need = ownRcd(study);
      const row = need && placeRcdRow(study, need.place);
      if (!row || !rcdsKnown(study)) continue;
      const limit = placeRcdLimit(row);
      const [rcd, ...rest] = study.rcds.filter((one) => meets(one, limit));
      if (!rcd || [rcd, ...rest].some(isOwnRcd)) continue;
      const others = sharing(subject, study, rcd);
      if (others.length === 0) continue;
      const later = laterRule(study);
      report(factSpot(placeSpot(study, need.place)), {
        message: `This socket shares the ${rcdName(rcd)} RCD with way ${others.map(({ way }) => way.id).join(", ")}; it needs one of its own.${later.words}`,
        ...(later.severity ? { severity: later.severity } : {}),
        source: need.source,
        related: [{ spot: factSpot(rcd.fact), message: `Shared RCD: ${rcdName(rcd)}.` }],
        fixes: rcboInstead(study, limit.value),
      });
    }
  },
});

/** The other ways an RCD protects. One upstream of the board protects all of the board's ways. */
function sharing({ studies }: BoardSubject, study: WayStudy, rcd: Rcd): readonly WayStudy[] {
  const here = rcdsAt(studies).find((one) => one.rcd.fact === rcd.fact);
  const behind = here?.ways ?? studies.filter(({ isSpare }) => !isSpare);
  return behind.filter((one) => one !== study);
}
