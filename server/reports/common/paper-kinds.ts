/** The papers that leave the house, and what they can be written as. Light: options and questions name their choices by it. */
export const paperKinds = ["schedule", "inspection", "sheet"] as const;
export type PaperKind = (typeof paperKinds)[number];

/** For people: what a report is set as. */
export const settingNames = ["text", "markdown", "html"] as const;
export const paperFormats = [...settingNames, "pdf"] as const;
/** A schedule is a table of values too. */
export const scheduleFormats = [...paperFormats, "xlsx", "csv"] as const;
export type PaperFormat = (typeof scheduleFormats)[number];

/** What a sheet is for: to hand over, to fill in, or to fill in with the readings of last time beside the blanks. */
export const fills = ["filled", "blank", "last"] as const;
export type Fill = (typeof fills)[number];
