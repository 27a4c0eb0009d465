/** Which figures belong to which line. */

import type { Supplementary } from "../../boards/supplementary.ts";
import { type Bonding, bondingNeed, earthingLeast, earthingNeed } from "../../readings/earthing.ts";
import type { Snapshot } from "../../workspace/workspace.ts";
import { argAt, boardAt, type CursorContext, installationAt, studyAt } from "../cursor.ts";
import { leakageCard, ratingCard } from "./board.ts";
import { supplementaryCard } from "./bonding.ts";
import type { Card } from "./card.ts";
import { containmentCard } from "./containment.ts";
import { boardPlaceCard, placeCard } from "./place.ts";
import { boardLoopCard, conductorCard, editionCard, electrodeCard, faultCard, zeCard } from "./supply.ts";
import {
  boardRcdCard,
  continuityCard,
  cpcCard,
  endsCard,
  insulationCard,
  loopCard,
  pointCard,
  rampCard,
  rcdCard,
  voltageCard,
} from "./tests.ts";
import { cableCard, deviceCard, floorCard, lengthCard, loadCard, routeCard, timeCard } from "./way.ts";

/** The figures that belong to a line, from the study of its way or from the supply. */
export function cardFor(
  snapshot: Snapshot,
  { segment, around, statement, fact }: CursorContext,
  offset: number,
): Card | undefined {
  const word = statement?.word.image ?? "";
  const study = studyAt(snapshot, segment);
  const [named] = argAt(fact, offset) ?? [];
  const supply = installationAt(snapshot, segment)?.supply;
  switch (`${around.kind} ${word}`) {
    case "live Zs":
      return study && loopCard(study, fact, "value");
    case "way max-Zs":
      return study && loopCard(study, undefined, "value");
    case "live at":
      return study && loopCard(study, fact, "Zs");
    case "live rcd":
      return study && rcdCard(study, fact);
    case "boardLive rcd": {
      const place = boardAt(snapshot, segment);
      return place && boardRcdCard(place.context, fact);
    }
    case "live trip-current":
      return study && rampCard(study);
    case "dead R1+R2":
      return study && continuityCard(study);
    case "dead R2":
      return study && cpcCard(study);
    case "dead ends":
      return study && endsCard(study, fact);
    case "dead at":
      return study && pointCard(study, fact);
    case "dead insulation":
      return study && insulationCard(study.context.edition, study.uses.has("selv"), fact, named);
    case "boardDead insulation":
      return insulationCard(installationAt(snapshot, segment)?.edition, false, fact, named);
    case "way device":
      return study && deviceCard(study, named);
    case "way cable":
      return study && cableCard(study);
    case "board containment":
    case "installation containment":
      return fact && containmentCard(snapshot, fact);
    case "way route":
      return study && routeCard(study, fact);
    case "way length":
    case "way run":
      return study && lengthCard(study);
    case "way place":
      return study && placeCard(study);
    case "board place":
      return boardPlaceCard(
        boardAt(snapshot, segment)
          ?.board.head.facts.one("place")
          ?.args.places.map((one) => one.value) ?? [],
      );
    case "way floor-area":
      return study && floorCard(study, fact);
    case "live voltage":
      return study && voltageCard(study, fact);
    case "way Ib":
    case "way load":
      return study && loadCard(study);
    case "way leakage":
      return study && leakageCard(study, installationAt(snapshot, segment));
    case "board busbar":
    case "board main-switch":
    case "board rcd":
      return ratingCard(installationAt(snapshot, segment), fact);
    case "way disconnect":
      return study && timeCard(study);
    case "installation standard":
      return editionCard((fact?.args.edition as { readonly value?: string } | undefined)?.value);
    case "supply Ze":
    case "supplyLive Ze":
      return zeCard(installationAt(snapshot, segment), fact);
    case "supply electrode":
    case "supplyLive electrode":
    case "board electrode":
    case "way electrode":
      return electrodeCard(fact);
    case "supply tails":
      return supply && conductorCard(earthingNeed(supply), undefined);
    case "supply earthing-conductor":
      return supply && conductorCard(earthingLeast(supply, installationAt(snapshot, segment)?.edition), fact);
    case "supply bonding":
      return supply && conductorCard(bondingNeed(supply, (fact as Bonding | undefined)?.args.metal?.value), fact);
    case "board supplementary-bonding": {
      const place = boardAt(snapshot, segment);
      return place && fact && supplementaryCard(place, fact as unknown as Supplementary);
    }
    case "board Zdb":
    case "boardLive Zdb": {
      const place = boardAt(snapshot, segment);
      return place && boardLoopCard(place.context, fact);
    }
    case "supply Ipf":
    case "supply PSCC":
    case "supply PEFC":
    case "supplyLive Ipf":
    case "supplyLive PSCC":
    case "supplyLive PEFC":
      return faultCard(
        (installationAt(snapshot, segment)?.boards ?? []).filter(
          ({ board }) => board.head.facts.one("fed-from")?.args.from.value === "supply",
        ),
        fact,
      );
    case "board Ipf":
    case "boardLive Ipf": {
      const place = boardAt(snapshot, segment);
      return place && faultCard([place], fact);
    }
    default:
      return undefined;
  }
}
