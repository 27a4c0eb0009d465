import type { Column } from "../setting/document.ts";

/** The heading of a column in a file of values: its key, and the unit of its figures. */
export const headingOf = ({ key, unit }: Pick<Column, "key" | "unit">): string =>
  unit === "" ? key : `${key} (${unit})`;
