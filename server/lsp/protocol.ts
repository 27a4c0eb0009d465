/** Requests of our own, beside those of the protocol. The extension imports only these types. */
interface Choice {
  readonly id: string;
  readonly label: string;
  readonly detail: string;
}

export interface ChoicesAnswer {
  readonly earthing: readonly Choice[];
  readonly standards: readonly Choice[];
  readonly premises: readonly Choice[];
}

export interface NewScheduleQuestion {
  readonly name: string;
  readonly earthing: string;
  readonly standard: string;
  readonly premises?: string;
  readonly ways?: number;
}

export interface NewScheduleAnswer {
  readonly text: string;
}

export const choicesRequest = "wayfile/choices";
export const newScheduleRequest = "wayfile/newSchedule";

/** A worksheet of the way or board at a position; of everything where no position is given. */
export interface WorksheetQuestion {
  readonly uri: string;
  readonly position?: { readonly line: number; readonly character: number };
}

export interface WorksheetAnswer {
  readonly title: string;
  readonly text: string;
  readonly markdown: string;
  readonly html: string;
}

export const worksheetRequest = "wayfile/worksheet";

/** The kind of the code action that adds the tests of a way, ready to fill. */
export const blanksKind = "refactor.rewrite.tests";

/**
 * Where the cursor is: a notification of an editor that began with `cursor: true` in its initialization options. The
 * line being written is then calm until it is left.
 */
export interface CursorNote {
  readonly uri: string;
  readonly line: number;
  /** Whether nothing was typed for a while. */
  readonly rests: boolean;
}

export const cursorNote = "wayfile/cursor";

/** A report as Markdown: of what `of` names (`A/3`, `A`), else of what is at the position, else of the installation. */
export interface ReportQuestion {
  readonly kind: "working" | "summary" | "size" | "editions";
  readonly uri: string;
  readonly position?: { readonly line: number; readonly character: number };
  readonly of?: string;
}

export interface ReportAnswer {
  readonly title: string;
  readonly markdown: string;
  /** What it is of, to be asked for again after the lines have moved. */
  readonly of?: string;
}

export const reportRequest = "wayfile/report";

/** Every installation of the folders that are open, the most urgent first. */
export interface RegisterAnswer {
  /** The day that due days are compared with. */
  readonly day: string;
  readonly installations: readonly RegisteredInstallation[];
  /** Files beyond those that were read. */
  readonly left: number;
}

export interface RegisteredInstallation {
  readonly uri: string;
  readonly title: string;
  /** The file, below the folder that all of them lie in. */
  readonly file: string;
  /** What needs attention, the gravest first. */
  readonly attention: readonly string[];
  readonly particulars: readonly string[];
  readonly isFaulty: boolean;
}

export const registerRequest = "wayfile/register";
