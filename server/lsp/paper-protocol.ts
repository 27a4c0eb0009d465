/** Papers that leave the house, and readings that come back. The extension imports only these types. */

export interface PaperQuestion {
  readonly uri: string;
  readonly paper: "schedule" | "inspection" | "sheet";
  readonly format: "pdf" | "xlsx" | "csv" | "html" | "markdown" | "text";
  readonly fill?: "filled" | "blank" | "last";
  /** The day it is made, ISO 8601. */
  readonly printed?: string;
}

export interface PaperAnswer {
  /** The file, as base64: some are bytes. */
  readonly base64: string;
}

export const paperRequest = "wayfile/paper";

/** Readings from a filled sheet, a workbook or a table of a meter. */
export interface EnterQuestion {
  readonly uri: string;
  /** The name of the file, by whose ending a workbook is known. */
  readonly name: string;
  readonly base64: string;
}

export interface EnterAnswer {
  readonly edits: readonly {
    readonly uri: string;
    readonly range: {
      readonly start: { readonly line: number; readonly character: number };
      readonly end: { readonly line: number; readonly character: number };
    };
    readonly newText: string;
  }[];
  /** What was entered, what was there already, and what did not fit. */
  readonly report: string;
  readonly misfits: number;
}

export const enterReadingsRequest = "wayfile/enterReadings";
