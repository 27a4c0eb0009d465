/** Where the server has no files of its own, the editor lends it those of its file system. */
export type FileAnswer = { readonly text: string } | { readonly failure: string };

/** The text of the schedule at an address. */
export const readRequest = "wayfile/readFile";
/** The addresses of all schedules in the folders that are open. */
export const listRequest = "wayfile/listFiles";
