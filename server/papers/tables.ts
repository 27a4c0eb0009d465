/** What reads and writes tables with a library, as one part that is loaded when it is asked for. */
export { tableOfCsv } from "./read-csv.ts";
export { tableOfWorkbook } from "./read-workbook.ts";
export { workbookOf } from "./workbook.ts";
