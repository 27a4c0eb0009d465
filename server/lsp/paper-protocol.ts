/** Papers that leave the house, and readings that come back. The extension imports only these types. */
import type { Fill, PaperFormat, PaperKind } from "../reports/common/paper-kinds.ts";

export interface PaperQuestion {
  readonly uri: string;
  readonly paper: PaperKind;
  readonly format: PaperFormat;
  readonly fill?: Fill;
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
  /** What foreign headings were said to be, as `heading=ours`; missing where nobody was asked yet. */
  readonly column?: readonly string[];
  /** The day of the tests where the table has none, ISO 8601. */
  readonly on?: string;
}

/** A column with a heading that is none of ours. */
export interface AskedColumn {
  readonly heading: string;
  readonly samples: readonly string[];
  readonly guess?: string;
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
  /** Instead of edits: what has to be said first. */
  readonly asks?: {
    readonly columns: readonly AskedColumn[];
    /** What a column may hold. */
    readonly ours: readonly string[];
    /** No column holds the day. */
    readonly day: boolean;
  };
  /** The settings with what was said, to be kept; `uri` is missing where there are none yet. */
  readonly settings?: { readonly uri?: string; readonly text: string };
}

export const enterReadingsRequest = "wayfile/enterReadings";
