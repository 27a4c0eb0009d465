/** What a report can be written as, for options and help. Light: a command loads what it needs when it is called. */
export const registerFormats = ["text", "markdown", "html", "csv", "xlsx", "json"] as const;
/** What has a JSON schema. */
export const schemaNames = ["settings", "check", "check-lines", "compare", "history", "register", "size"] as const;
