/** Which figures belong to which line: a maker for every kind of figures the vocabulary names. */

import type { Figures } from "../../../grammar/traits.ts";
import type { BlockKind } from "../../../grammar/vocabulary.ts";
import type { Supplementary } from "../../boards/supplementary.ts";
import { ownRcds, rcdsOfBoard } from "../../circuit/rcds.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { wordAt } from "../../model/fact-values.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import { type Bonding, bondingNeed, earthingLeast, earthingNeed } from "../../readings/earthing.ts";
import { insulationKind } from "../../readings/insulation.ts";
import { planBoard, planSupply } from "../../readings/plan-board.ts";
import type { Bound } from "../../readings/planned.ts";
import { deviceOnBoard, deviceOnWay, type RcdFact, type TripFact } from "../../readings/rcd-tests.ts";
import type { Snapshot } from "../../workspace/workspace.ts";
import { argAt, boardAt, type CursorContext, installationAt, studyAt } from "../cursor.ts";
import { leakageCard, ratingCard } from "./board.ts";
import { supplementaryCard } from "./bonding.ts";
import { type Card, joinedCards } from "./card.ts";
import { containmentCard } from "./containment.ts";
import { boardPlaceCard, placeCard } from "./place.ts";
import { rcdPlanCard } from "./rcd.ts";
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

/** A line, and what it stands in. */
interface Line {
  readonly snapshot: Snapshot;
  readonly kind: BlockKind;
  readonly fact: Fact | undefined;
  /** The argument under the cursor. */
  readonly named: string | undefined;
  readonly study: WayStudy | undefined;
  readonly place: BoardInPlace | undefined;
  readonly installation: Installation | undefined;
}

type Maker = (line: Line) => Card | undefined;

const ofWay =
  (make: (study: WayStudy, fact: Fact | undefined, named: string | undefined) => Card | undefined): Maker =>
  ({ study, fact, named }) =>
    study && make(study, fact, named);

/** A word without figures has its meaning to show. */
const noFigures: Maker = () => undefined;

/** A maker is given lines of the words that have such figures, and no other. */
const makers: Readonly<Record<Figures, Maker>> = {
  loop: ofWay((study, fact) => loopCard(study, fact, fact?.word === "at" ? "Zs" : "value")),
  "written-limit": ofWay((study) => loopCard(study, undefined, "value")),
  "board-loop": ({ place, fact }) => place && boardLoopCard(place.context, fact),
  "supply-loop": ({ installation, fact }) => zeCard(installation, fact),
  fault: (line) => faultCard(placesOfFault(line), line.fact),
  continuity: ofWay(continuityCard),
  cpc: ofWay(cpcCard),
  "ring-ends": ofWay(endsCard),
  "dead-point": ofWay(pointCard),
  insulation: ({ study, installation, fact, named }) =>
    insulationCard(
      study?.context.edition ?? installation?.edition,
      study !== undefined && insulationKind(study) === "selv-pelv",
      fact,
      named,
    ),
  conductor: conductorOf,
  supplementary: ({ place, fact }) => place && fact && supplementaryCard(place, fact as Supplementary),
  electrode: (line) => electrodeCard(line.fact, boundsOf(line)),
  "rcd-time": ({ study, place, fact }) => {
    const test: RcdFact | undefined = fact;
    return study ? rcdCard(study, test) : place && boardRcdCard(place.context, test);
  },
  "trip-current": ({ study, place, fact }) => {
    const test = fact as TripFact | undefined;
    if (study) return rampCard(test ? deviceOnWay(test, study) : study.rcds[0], test);
    return place && test && rampCard(deviceOnBoard(test, place.context), test);
  },
  leakage: ({ study, installation }) => study && leakageCard(study, installation),
  voltage: ({ installation, fact }) => voltageCard(installation?.supply, fact),
  verdict: noFigures,
  device: ofWay((study, _, named) => deviceCard(study, named)),
  cable: ofWay(cableCard),
  route: ofWay(routeCard),
  length: ofWay(lengthCard),
  place: ofWay(placeCard),
  "board-place": ({ place }) =>
    boardPlaceCard(place?.board.head.facts.one("place")?.args.places.map((one) => one.value) ?? []),
  floor: ofWay(floorCard),
  load: ofWay(loadCard),
  rating: ({ installation, place, fact }) => {
    const rcds = place && fact ? rcdsOfBoard(place.board.head).filter((rcd) => sameLine(rcd.fact, fact)) : [];
    return joinedCards(ratingCard(installation, fact), rcdPlanCard(rcds, place?.context.edition));
  },
  rcd: ofWay((study, fact) =>
    rcdPlanCard(
      ownRcds(study).filter((rcd) => fact && sameLine(rcd.fact, fact)),
      study.context.edition,
    ),
  ),
  time: ofWay(timeCard),
  edition: ({ fact }) => editionCard(wordAt(fact, "edition")),
  tails: ({ installation }) => installation?.supply && conductorCard(earthingNeed(installation.supply), undefined),
  containment: ({ snapshot, fact }) => fact && containmentCard(snapshot, fact),
};

/** What the plan of tests compares a line of the supply or a board with. */
function boundsOf({ study, place, installation, fact }: Line): readonly Bound[] {
  const plan = () =>
    place ? planBoard(place.context, place.board.ways) : installation ? planSupply(installation) : [];
  return (study ? [] : plan()).find(({ recorded }) => recorded && fact && sameLine(recorded.fact, fact))?.bounds ?? [];
}

const sameLine = (one: Fact, other: Fact): boolean => one.segment === other.segment && one.start === other.start;

/** The boards whose devices a fault current is broken by: those at the origin, or the one it was read at. */
function placesOfFault({ kind, place, installation }: Line): readonly BoardInPlace[] {
  if (kind !== "supply" && kind !== "supplyLive") return place ? [place] : [];
  return (installation?.boards ?? []).filter(
    ({ board }) => board.head.facts.one("fed-from")?.args.from.value === "supply",
  );
}

function conductorOf({ installation, fact }: Line): Card | undefined {
  const supply = installation?.supply;
  if (!supply) return undefined;
  if (fact?.word === "earthing-conductor") return conductorCard(earthingLeast(supply, installation.edition), fact);
  return conductorCard(bondingNeed(supply, (fact as Bonding | undefined)?.args.metal?.value), fact);
}

/** The figures that belong to a line, from the study of its way or from the supply. */
export function cardFor(
  snapshot: Snapshot,
  { segment, around, row, fact }: CursorContext,
  offset: number,
): Card | undefined {
  const figures = row?.figures;
  if (!figures) return undefined;
  return makers[figures]({
    snapshot,
    kind: around.kind,
    fact,
    named: argAt(fact, offset)?.[0],
    study: studyAt(snapshot, segment),
    place: boardAt(snapshot, segment),
    installation: installationAt(snapshot, segment),
  });
}
