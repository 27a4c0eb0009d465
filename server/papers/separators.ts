/** What may separate the columns of a CSV, by its name. */
export const separators = { comma: ",", semicolon: ";", tab: "\t" } as const;
export type Separator = keyof typeof separators;
export const separatorNames = Object.keys(separators);
