import type { OwnFigure } from "../calc/own-device.ts";
import type { Context } from "../model/installation.ts";
import type { Sourced } from "../tables/source.ts";
import { familyOf } from "../tables/standard-values.ts";
import type { Device } from "./device.ts";

/** What the schedule states of a device from a book of one's own: of its standard, its type and its rating. */
export function ownFiguresOf(device: Device | undefined, { names }: Context): readonly OwnFigure[] {
  if (device?.rating === undefined) return [];
  return names.devices.flatMap(({ args }): OwnFigure[] => {
    const { standard, curve, rating, loop, opens, within, by } = args;
    const alike =
      (curve?.rating ?? rating?.value) === device.rating &&
      curve?.curve === device.curve &&
      (device.family ? familyOf(standard.value) === device.family : sameStandard(standard.value, device.standard));
    if (!alike) return [];
    const as = (figure: { readonly value: number } | undefined): Sourced<number> | undefined =>
      figure && { value: figure.value, source: { ref: `As stated, “${by.value}”`, standing: "quoted" } };
    const [Zs, Ia] = [as(loop), as(opens)];
    return [{ time: within.value, ...(Zs ? { loop: Zs } : {}), ...(Ia ? { opens: Ia } : {}) }];
  });
}

const sameStandard = (one: string, other: string): boolean => plainly(one) === plainly(other);
const plainly = (standard: string): string => standard.toUpperCase().replace(/\s+/g, "");
