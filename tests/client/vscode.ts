/** Stands in for the editor where a test reads words of the client: they are those of the author, with values in their places; and kinds of files as its API numbers them. */
export const l10n = { t: (words: string, ...values: readonly (string | number)[]): string => words.replace(/\{(\d+)\}/g, (_, n: string) => String(values[Number(n)])) };
export const FileType = { Unknown: 0, File: 1, Directory: 2, SymbolicLink: 64 };
