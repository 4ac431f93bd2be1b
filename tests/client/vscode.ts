/** Stands in for the editor where a test reads words of the client: they are those of the author, with values in their places. */
export const l10n = { t: (words: string, ...values: readonly (string | number)[]): string => words.replace(/\{(\d+)\}/g, (_, n: string) => String(values[Number(n)])) };
