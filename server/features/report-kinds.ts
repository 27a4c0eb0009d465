/** The reports there are. Light: whoever only asks for one needs none of what makes them. */
export const reportKinds = ["working", "summary", "size", "editions"] as const;
export type ReportKind = (typeof reportKinds)[number];
