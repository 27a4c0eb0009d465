import type { Column } from "../setting/document.ts";

/** The heading of a column in a file of values: its key, and the unit of its figures. */
export const headingOf = ({ key, unit }: Pick<Column, "key" | "unit">): string =>
  unit === "" ? key : `${key} (${unit})`;

/** The key of a heading, with or without its unit. */
export const keyOfHeading = (heading: string): string => heading.replace(/\s*\([^)]*\)\s*$/, "").trim();
