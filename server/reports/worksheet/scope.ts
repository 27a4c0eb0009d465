/** Which way or board a person means by `A/3` or `A`, and its worksheet. */
import type { Installation } from "../../model/installation.ts";
import { targetIn } from "../common/target.ts";
import type { Report } from "../setting/document.ts";
import { worksheet } from "./worksheet.ts";

type Sheet = { readonly report: Report } | { readonly failure: string };

/** The worksheet of what is named, or of the first installation with all its boards. */
export function worksheetOf(installations: readonly Installation[], named?: string, again = false): Sheet {
  if (installations.length === 0)
    return { failure: "There is no installation in this file: a worksheet needs its supply and its edition." };
  const found = targetIn(
    installations,
    named === undefined ? {} : named.includes("/") ? { way: named } : { board: named },
  );
  if ("failure" in found) return found;
  const { installation, place, way } = found;
  return { report: worksheet(installation, { again, ...(place && { board: place }), ...(way && { way }) }) };
}
