import { earthings } from "../../grammar/choices.ts";
import { editions } from "../tables/editions.ts";
import { languageVersion } from "../workspace/project.ts";

/** What a new schedule may be started with. */
export const earthingChoices: readonly string[] = Object.keys(earthings);

export const standardChoices = editions
  .toReversed()
  .map(({ id, name, inForce }) => ({ id, label: id, detail: inForce ? name : `${name}, withdrawn` }));

/** A schedule to go on from: it says what every schedule must, and nothing that would have to be taken back. */
export function newSchedule({
  name,
  earthing,
  standard,
}: {
  readonly name: string;
  readonly earthing: string;
  readonly standard: string;
}): string {
  const title = name.replace(/[\r\n]+/g, " ").replace(/["\\]/g, "\\$&");
  return `wayfile ${languageVersion}

installation "${title}" {
  standard  ${standard}
  stage     design
  work      new

  supply {
    earthing  ${earthing}
    U0        230 V
  }

  board A "Main board" {
    fed-from     supply
    main-switch  BS EN 60947-3 100 A

    way 1 spare
  }
}
`;
}
