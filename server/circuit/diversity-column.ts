/** Which column of the published allowances a kind of premises has. */
import type { DiversityColumn } from "../tables/diversity-shares.ts";

/** Nothing where the table has no column for it. */
const columns: Readonly<Record<string, DiversityColumn>> = {
  dwelling: "household",
  outbuilding: "household",
  "shared-house": "hotel",
  student: "hotel",
  commercial: "shop",
};

export const columnOf = (premises: string | undefined): DiversityColumn | undefined =>
  premises !== undefined && Object.hasOwn(columns, premises) ? columns[premises] : undefined;
